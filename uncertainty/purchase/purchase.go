// Package purchase says what another instrument would change: the best route on each bench that
// could be had, whether a candidate is worth having, and the coarsest balance that would do.
package purchase

import (
	"cmp"
	"context"
	"slices"

	"minim/equipment"
	"minim/report/words/note"
	"minim/uncertainty/plan"
	"minim/uncertainty/route"
	"minim/uncertainty/search"
	"minim/uncertainty/tolerances"
)

// Purchase says what another instrument would change.
type Purchase struct {
	Prep *route.Prep
	// Choices are the benches that could be had: with each balance that is owned by
	// itself, and with each candidate.
	Choices []Choice
	// Without are what the present bench of the verdict comes to without each measure that its best route
	// uses. Without any other that route can be made as it is.
	Without []Choice
	// Like is the balance that BreakEven and Curves are worked out for, at other
	// readabilities; nil where no balance is owned.
	Like *equipment.Balance
	// MostLeftOver in mL is what a route of BreakEven and Curves may leave over.
	MostLeftOver float64
	// BreakEven is the coarsest readability that meets the tolerance, for a direct
	// weighing and for each number of dilutions. It is empty without a tolerance.
	BreakEven []BreakEven
	// Curves are the least relative expanded uncertainty against readability, for a
	// direct weighing and for each number of dilutions.
	Curves []Curve
	// DirectML is the volume of the wanted solution in mL that takes the least mass
	// that may be weighed on Like, by this model; 0 where there is none.
	DirectML float64
	// Verdict, and what it would be with all that is assumed doubled and halved:
	// nil where little rests on it.
	Verdict         Verdict
	Doubled, Halved *Verdict
	// AssumedShare of the variance of the route that the verdict rests on.
	AssumedShare float64
	NotSearched  []note.Note

	missed missed
	// known are routes that searches for BreakEven have found.
	known []knownRoute
}

// Verdict is what to do.
type Verdict struct {
	// Present is the place of the owned balance with the best route, -1 where there
	// is none; Buy that of the candidate that is worth having, -1 where none is.
	Present, Buy int
	// Meets: the present bench is good enough. Would: with the candidate it is.
	Meets, Would bool
}

// Choice is a bench that could be had, and the best route on it.
type Choice struct {
	// Name of the balance or candidate.
	Name string
	// Balance is the only one of this bench; nil where another kind of instrument
	// is added.
	Balance *equipment.Balance
	// Owned is false for a candidate.
	Owned bool
	Price equipment.Price
	// Best route, and whether it Meets the tolerance. Found is false where the
	// bench allows none.
	Best         route.Result
	Found, Meets bool
	// CutShort: the search had tried enough, so that a better route may exist.
	CutShort bool
	// LeastByUSP is the least mass in g that may be weighed on the balance by the rule of
	// USP <41>, LeastWithin that of which 2 s are within this tolerance, and LeastByModel
	// that which this model holds within it. They are 0 where the balance cannot, or there
	// is no balance, or for the last two no tolerance.
	LeastByUSP, LeastWithin, LeastByModel float64
}

// assumedMatters is the share of a variance above which a verdict rests on what is
// assumed.
const assumedMatters = 0.1

// parts of what is left of the work are for one search of a purchase.
const parts = 20

// Buy compares the bench as it is with what its candidates would make of it.
func Buy(ctx context.Context, p *route.Prep, o plan.Options) (*Purchase, error) {
	if err := p.MayBeMade(); err != nil {
		return nil, err
	}
	limits := o.Search()
	p = limits.Limited(p)
	o.Without, o.Parts, o.Tried = nil, cmp.Or(o.Parts, parts), cmp.Or(o.Tried, new(int64))
	b := &Purchase{Prep: p, Like: finest(p.Kit.Balances)}
	var err error
	if b.Choices, err = b.choices(ctx, p, o); err != nil {
		return nil, err
	}
	b.Verdict = b.judge(b.Choices)
	if err := b.doubt(ctx, o); err != nil {
		return nil, err
	}
	if err := b.withoutEach(ctx, o); err != nil {
		return nil, err
	}
	if b.Like != nil && p.NotPure().None() {
		if o.LeftOver == 0 && o.Volume == 0 {
			o.LeftOver = p.Volume // with no limit at all, any balance will do for a large enough batch
		}
		err = b.readabilities(ctx, o)
	}
	b.NotSearched = b.missed.notes()
	return b, err
}

// directFrom is the volume in mL of the wanted solution that takes the least mass that
// may be weighed on a balance like that of the kit; 0 where there is none.
func (b *Purchase) directFrom(coverage float64) (float64, error) {
	share := tolerances.HalfWidth(b.Prep)
	if share == 0 || !b.Prep.NotPure().None() {
		return 0, nil
	}
	least, can := b.Like.Least(share)
	if !can {
		return 0, nil
	}
	_, solute, err := b.Prep.SourceFactor(coverage, route.Step{Verb: route.Weigh, Balance: b.Like, Amount: least})
	return solute / b.Prep.ConcentrationOf(b.Prep.Target.Value), err
}

// finest is the balance that reads finest, nil without one.
func finest(balances []*equipment.Balance) *equipment.Balance {
	if len(balances) == 0 {
		return nil
	}
	return slices.MinFunc(balances, func(a, b *equipment.Balance) int { return cmp.Compare(a.Readability, b.Readability) })
}

// choices works out what each bench allows.
func (b *Purchase) choices(ctx context.Context, p *route.Prep, o plan.Options) ([]Choice, error) {
	var list []Choice
	for _, k := range benches(p.Kit) {
		if err := b.search(ctx, p, &k, cmp.Or(doubted[p.AssumedFactor], "with"), o); err != nil {
			return nil, err
		}
		k.choice.setLeast(tolerances.HalfWidth(p))
		list = append(list, k.choice)
	}
	return list, nil
}

// search finds the best route on a bench, and says of what was not searched that it is with, or without, that.
func (b *Purchase) search(ctx context.Context, p *route.Prep, k *benchChoice, said string, o plan.Options) error {
	on := *p
	on.Kit = k.kit
	result, searched, err := plan.Best(ctx, &on, o)
	if err != nil {
		return err
	}
	b.missed.add(note.Of(said, k.choice.Name), searched.NotSearched)
	k.choice.CutShort = searched.CutShort
	if result != nil {
		k.choice.Best, k.choice.Found = *result, true
		k.choice.Meets = p.Meets(result)
	}
	return nil
}

// withoutEach works out what the bench comes to without each measure that its best route uses.
func (b *Purchase) withoutEach(ctx context.Context, o plan.Options) error {
	if b.Verdict.Present < 0 {
		return nil
	}
	present := &b.Choices[b.Verdict.Present]
	kit := b.Prep.Kit
	if present.Balance != nil {
		kit = search.WithBalances(kit, present.Balance)
	}
	for _, k := range kit.Measures {
		if !slices.ContainsFunc(present.Best.Route.Steps, func(s route.Step) bool { return s.Measure != nil && s.Measure.Name == k.Name }) {
			continue
		}
		one := benchChoice{Choice{Name: k.Name, Owned: true, Price: k.Price}, kit.Without(k.Name)}
		if err := b.search(ctx, b.Prep, &one, "without", o); err != nil {
			return err
		}
		b.Without = append(b.Without, one.choice)
	}
	return nil
}

// setLeast works out the least masses for a share; 0 is none.
func (c *Choice) setLeast(share float64) {
	switch {
	case c.Balance == nil:
		return
	case share > 0:
		c.LeastWithin = leastWithin(c.Balance, share)
		c.LeastByModel, _ = c.Balance.Least(share)
	}
	if usp := leastWithin(c.Balance, shareOfUSP); usp <= c.Balance.Capacity {
		c.LeastByUSP = usp
	}
}

// shareOfUSP is the share of a mass that USP <41> asks of accurate weighing, with a factor of
// 2, whatever a preparation asks for; leastOfDigit is the part of a digit below which it takes no
// standard deviation to lie.
const (
	shareOfUSP   = 0.0010
	leastOfDigit = 0.41
)

// leastWithin is the least mass in g of which two standard deviations s, of at least 0.41 d,
// are no more than a share: by the rule of USP <41> 2000 s.
func leastWithin(b *equipment.Balance, share float64) float64 {
	s := b.Readability
	if b.Repeatability.Known {
		s = b.Repeatability.S
	}
	return 2 * max(s, leastOfDigit*b.Readability) / share
}

// benchChoice is a kit that could be had.
type benchChoice struct {
	choice Choice
	kit    *equipment.Kit
}

// asItIs is the name of a bench without a balance.
const asItIs = "bench as it is"

// benches lists them: each balance by itself, or the bench without one; and each
// candidate, a balance by itself as well.
func benches(kit *equipment.Kit) []benchChoice {
	var list []benchChoice
	if len(kit.Balances) == 0 {
		list = append(list, benchChoice{Choice{Name: asItIs, Owned: true}, kit})
	}
	for _, b := range kit.Balances {
		list = append(list, benchChoice{Choice{Name: b.Name, Balance: b, Owned: true, Price: b.Price}, search.WithBalances(kit, b)})
	}
	for _, name := range kit.Candidates.Names() {
		with := kit.With(name)
		if b := kit.Candidates.Balance(name); b != nil {
			list = append(list, benchChoice{Choice{Name: name, Balance: b, Price: b.Price}, search.WithBalances(with, b)})
			continue
		}
		list = append(list, benchChoice{Choice{Name: name, Price: kit.Candidates.Measure(name).Price}, with})
	}
	return list
}

// judge says whether the bench is good enough, and which candidate is worth having.
// Where it is not, that is the cheapest that makes it so, one with a price before one
// without; where none does, the one with the greatest chance. Where the bench is good
// enough, it is the best by the policy of those that save a fifth of what is left over or more.
func (b *Purchase) judge(choices []Choice) Verdict {
	v := Verdict{Present: -1, Buy: -1}
	for i := range choices {
		if o := &choices[i]; o.Owned && o.Found && (v.Present < 0 || b.better(o, &choices[v.Present])) {
			v.Present = i
		}
	}
	v.Meets = v.Present >= 0 && choices[v.Present].Meets
	for i := range choices {
		o := &choices[i]
		switch {
		case o.Owned || !o.Found:
		case v.Present >= 0 && !b.worthwhile(o, &choices[v.Present]):
		case v.Buy < 0 || b.buysBetter(o, &choices[v.Buy], v.Meets):
			v.Buy = i
		}
	}
	v.Would = v.Buy >= 0 && choices[v.Buy].Meets
	return v
}

// better reports whether the best route on one bench is better than on another.
func (b *Purchase) better(one, other *Choice) bool {
	return b.Prep.Better(&one.Best, &other.Best)
}

// saves is the part of what is left over, or of the uncertainty, that a candidate
// must save to be worth having where the bench is good enough.
const saves = 0.2

// worthwhile reports whether a candidate is worth having beside the present bench.
func (b *Purchase) worthwhile(candidate, present *Choice) bool {
	r, s := &candidate.Best, &present.Best
	switch {
	case len(b.Prep.Tolerances) == 0:
		return r.HoldsWithin < (1-saves)*s.HoldsWithin
	case candidate.Meets != present.Meets:
		return candidate.Meets
	case candidate.Meets:
		return r.LeftOverML < (1-saves)*s.LeftOverML
	}
	return r.Chance() > s.Chance()+plan.Noticed
}

// buysBetter reports whether one candidate is to be bought rather than another, where
// the bench is good enough or not.
func (b *Purchase) buysBetter(one, other *Choice, enough bool) bool {
	p, q := one.Price, other.Price
	switch {
	case enough || !one.Meets || !other.Meets || p == q:
		return b.better(one, other)
	case p.Stated() != q.Stated():
		return p.Stated()
	}
	return p.Amount < q.Amount
}

// doubt judges again with all that is assumed doubled and halved, where the verdict
// rests on it.
func (b *Purchase) doubt(ctx context.Context, o plan.Options) error {
	if b.Verdict.Present >= 0 {
		b.AssumedShare = b.Choices[b.Verdict.Present].Best.AssumedShare
	}
	if b.AssumedShare < assumedMatters {
		return nil
	}
	var err error
	if b.Doubled, err = b.verdictWith(ctx, 2, o); err != nil {
		return err
	}
	b.Halved, err = b.verdictWith(ctx, 0.5, o)
	return err
}

// doubted says by which factor the spread of what is assumed is multiplied.
var doubted = map[float64]string{2: "with-assumed-doubled", 0.5: "with-assumed-halved"}

// verdictWith is the verdict where the spread of all that is assumed is so many times
// as wide.
func (b *Purchase) verdictWith(ctx context.Context, factor float64, o plan.Options) (*Verdict, error) {
	p := *b.Prep
	p.AssumedFactor = factor
	choices, err := b.choices(ctx, &p, o)
	if err != nil {
		return nil, err
	}
	v := b.judge(choices)
	return &v, nil
}
