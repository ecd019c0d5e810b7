package search

import (
	"cmp"
	"errors"
	"math"
	"slices"
	"sync"

	"minim/equipment"
	"minim/uncertainty"
	"minim/uncertainty/portable"
	"minim/uncertainty/route"
)

// What is weighed last in a route is the reading that comes nearest to the target: so much of solute, of
// a stock or of a solution that was made, weighed up to a total with solvent. A part m and the total M are one
// factor of the mass fraction w, which makes a concentration
//
//	C = w ρ    dC/C = k dw/w - C dφ    k = ρ/ρ0
//
// with the density ρ0 of the solvent. What is weighed up may be diluted by volume, once or twice; the total is
// then 1, 2 or 5 times a power of ten g, ten digits of the balance or more. Otherwise it is the mass
// of as much solvent as a vessel of the kit holds, or as is wanted.

// mostAfterWeighing is how often what is weighed up is diluted by volume at the most: a weaker solution can be
// weighed up as well (judgement, for the time that a search takes).
const mostAfterWeighing = 2

// weighingUp is what is weighed up on a bench, for all walks.
type weighingUp struct {
	*sync.Mutex
	bench *Bench
	// last are the totals of the solution that is wanted, round those of what is diluted further.
	last, round []route.Step
	masses      map[*equipment.Balance][]float64 // that are round
	starts      []draft
	densities
	// factors are those of portions, with their linearity. Rounds are numbered by keys of their own, of which each walk has
	// a copy for what it finds; begun are solutions as factors of a route that dilutes them.
	keys    *keys
	factors map[portionKey]route.Factor
	rounds  map[portionKey][]*portion
	begun   map[portionKey]*begun
	// samples are some of these; mixed: they have influences that measures pull at.
	samples []factor
	pulled  map[int]bool
	mixed   bool
	// least is what each round total brings at the least to a route with each start, by cells of the solute in it.
	grams cells
	least [][][]float64
}

// densities are those of solutions by their mass fraction w: ρ = ρ0/(1 + w ρ0 β) with β = φ - 1/ρ0.
type densities struct {
	prep *route.Prep
	// bulk are the limits of β, constant: it is one and the same, and not as in the table of stocks.
	bulk     span
	constant bool
	// of the solvent, and the least and the most of the solutions over that.
	solvent, lightest, heaviest float64
}

// newDensities are those of solutions of all strengths.
func newDensities(p *route.Prep) densities {
	d := densities{prep: p, bulk: span{math.Inf(1), math.Inf(-1)}, solvent: p.Density(0), lightest: 1, heaviest: 1}
	for i := range 100 {
		w := float64(i+1) / 100
		density := p.Density(w)
		if !(density > 0) || math.IsInf(density, 1) {
			break // there is none so strong
		}
		by := (1 - density/d.solvent) / (w * density)
		d.bulk = span{min(d.bulk.low, by), max(d.bulk.high, by)}
		d.lightest, d.heaviest = min(d.lightest, density/d.solvent), max(d.heaviest, density/d.solvent)
	}
	d.constant = d.bulk.high-d.bulk.low < 1e-9
	return d
}

// of is the density of a mass fraction, in g/mL, and fraction the mass fraction of a concentration, more than 1
// where there is none so strong.
func (d *densities) of(fraction float64) float64 {
	if d.constant {
		return d.solvent / (1 + float64(fraction*d.solvent*d.bulk.low))
	}
	return d.prep.Density(fraction)
}

func (d *densities) fraction(concentration float64) float64 {
	density := d.solvent * (1 - float64(concentration*d.bulk.low))
	switch {
	case concentration > d.heaviest*d.solvent || d.constant && !(density > 0):
		return math.Inf(1)
	case d.constant:
		return concentration / density
	}
	return d.prep.MassFraction(concentration)
}

// draft is the beginning of a route.
type draft struct {
	steps []route.Step // that made it, but for portions
	part  route.Step   // what is weighed of it next; or a packet
	// fraction is its mass fraction, or the mass of what counts in a packet; left is how much of it there
	// is, in g.
	fraction, left, leftOver float64 // that in mL
	density                  float64
	least                    float64 // relative variance that it brings, but for portions
	measured, dilutions      int     // solutions that were made by volume, and dilutions, of pure solute -1
	bought                   bool    // a stock, or solute, which is not made
}

// newWeighingUp lists what can be weighed up; nil where nothing can: they need the density of the solvent, and a
// prep whose strengths are masses.
func (b *Bench) newWeighingUp() (*weighingUp, error) {
	if !b.prep.Solvent.Density.Known || !b.prep.CountsMass() || len(b.prep.Kit.Balances) == 0 {
		return nil, nil
	}
	u := &weighingUp{Mutex: new(sync.Mutex), bench: b, densities: newDensities(b.prep), grams: newCells(-40, 20, 1), keys: newKeys(), factors: make(map[portionKey]route.Factor),
		rounds: make(map[portionKey][]*portion), begun: make(map[portionKey]*begun), pulled: b.pulled(), masses: make(map[*equipment.Balance][]float64)}
	for _, k := range b.prep.Kit.Balances {
		u.addTotals(k)
	}
	if err := u.addStarts(); err != nil {
		return nil, err
	}
	for i := range u.starts {
		if err := u.sample(&u.starts[i]); err != nil {
			return nil, err
		}
	}
	return u, nil
}

// addTotals adds the masses that a solution is made up to on a balance, as displayed: of the solvent that a vessel
// holds, or of a solution a little stronger than what is wanted, so that it is enough; and round ones.
func (u *weighingUp) addTotals(k *equipment.Balance) {
	p := u.prep
	add := func(list *[]route.Step, grams float64) {
		total := route.Step{Verb: route.WeighUpTo, Balance: k, Amount: k.Displayed(math.Ceil(grams / k.Readability * (1 - 1e-12)))}
		if total.Amount <= k.Capacity*(1+1e-12) && p.Carries(total) == nil && !slices.Contains(*list, total) {
			*list = append(*list, total)
		}
	}
	add(&u.last, p.Volume*p.Density(1.1*p.MassFraction(p.ConcentrationOf(p.Target.Value))))
	add(&u.last, p.Volume*u.solvent)
	for _, m := range p.Kit.Measures {
		if m.Kind.Traits().Receives {
			add(&u.last, m.Capacity*u.solvent)
		}
	}
	u.masses[k] = roundMasses(k)
	for _, grams := range u.masses[k] {
		add(&u.round, grams)
	}
	for _, list := range [][]route.Step{u.last, u.round} {
		slices.SortStableFunc(list, func(a, b route.Step) int { return cmp.Compare(a.Amount, b.Amount) })
	}
}

// leastDigits of what is weighed for a solution that is diluted further: with
// fewer, rounding alone spoils it (common practice, no source).
const leastDigits = 10

// roundMasses are 1, 2 and 5 times powers of ten that a balance shows.
func roundMasses(k *equipment.Balance) []float64 {
	var masses []float64
	for power := math.Pow10(portable.Decade(leastDigits * k.Readability)); power <= k.Capacity; power *= 10 {
		for _, m := range []float64{power, 2 * power, 5 * power} {
			digits := math.Round(m / k.Readability)
			if digits >= leastDigits && m <= k.Capacity && math.Abs(float64(digits*k.Readability)-m) < 1e-9*m {
				masses = append(masses, k.Displayed(digits))
			}
		}
	}
	return masses
}

// addStarts lists what a route may weigh first: solute, a packet, and stocks, on each balance.
func (u *weighingUp) addStarts() error {
	for i := range u.bench.sources {
		s := &u.bench.sources[i]
		switch {
		case s.by != nil:
		case s.isStock():
			fraction, err := u.prep.StockFraction(s.step.Stock) // which may rest on a density of its own
			if err != nil {
				return err
			}
			for _, k := range u.prep.Kit.Balances {
				u.starts = append(u.starts, draft{steps: []route.Step{s.step}, part: weighed(k), fraction: fraction, left: math.Inf(1), bought: true})
			}
		default:
			u.starts = append(u.starts, draft{part: s.step, fraction: s.intended, left: math.Inf(1), dilutions: -1, bought: true})
		}
	}
	return nil
}

// weighed is a part of a solution, on a balance.
func weighed(k *equipment.Balance) route.Step {
	return route.Step{Verb: route.WeighAliquot, Balance: k}
}

// follows reports whether a draft can be weighed up to a total: what is a part of a solution stays on its balance.
func (d *draft) follows(total *route.Step) bool {
	return d.part.Verb != route.WeighAliquot || d.part.Balance == total.Balance
}

// portion is a part that is weighed and made up to a total, with its factor.
type portion struct {
	part, total route.Step
	factor
}

// portionKey tells portions apart: by what the part is of, if not of a solution that was made, and by their
// balances and masses.
type portionKey struct {
	of          any
	by, on      *equipment.Balance
	part, total float64
}

func keyOf(part, total *route.Step) portionKey {
	key := portionKey{nil, part.Balance, total.Balance, part.Amount, total.Amount}
	if part.Verb != route.WeighAliquot {
		key.of = part.Packet
	}
	return key
}

// factorOf a portion is worked out once; of what cannot be it is nothing: its route will not be possible.
func (u *weighingUp) factorOf(part, total route.Step) (route.Factor, error) {
	key := keyOf(&part, &total)
	u.Lock()
	defer u.Unlock()
	f, known := u.factors[key]
	if known {
		return f, nil
	}
	f, err := u.prep.WeighedFactor(part, total)
	if err != nil && !impossible(err) {
		return f, err
	}
	u.factors[key] = f
	return f, nil
}

// impossible reports whether a solution cannot be made, or its mass or volume could be nothing.
func impossible(err error) bool {
	_, no := equipment.WhyNot(err)
	var zero *uncertainty.ZeroDivisorError
	return no || errors.As(err, &zero)
}

// addRounds lists the portions of a draft of which the parts are round masses, the least variance first.
func (u *weighingUp) addRounds(d draft) error {
	masses := []float64{0} // of a packet
	if d.part.Balance != nil {
		masses = u.masses[d.part.Balance]
	}
	var list []*portion
	for _, total := range u.last {
		for _, m := range masses {
			if !d.follows(&total) || m >= total.Amount {
				continue
			}
			part := d.part
			part.Amount = m
			f, err := u.factorOf(part, total)
			if err != nil {
				return err
			}
			list = append(list, &portion{part, total, u.keys.factor(f)})
		}
	}
	slices.SortStableFunc(list, func(a, b *portion) int { return cmp.Compare(a.own, b.own) })
	u.rounds[keyOf(&d.part, &route.Step{})] = list
	return nil
}

// surely is a variance that a part made up to a total brings at the least: that of the next round mass, since
// what is wrong with a weighing grows no faster than its load.
func (u *weighingUp) surely(part, total route.Step) (float64, error) {
	if part.Balance != nil {
		masses := u.masses[part.Balance]
		at, _ := slices.BinarySearch(masses, part.Amount)
		if at == len(masses) || masses[at] >= total.Amount {
			return 0, nil
		}
		part.Amount = masses[at]
	}
	f, err := u.factorOf(part, total)
	return f.Own, err
}

// begun is a solution that was weighed up, as a factor of a route that dilutes it.
type begun struct {
	factor
	possible bool // and informative
}

// sample works out what a start makes with some totals, so that the influences that it has are known.
func (u *weighingUp) sample(d *draft) error {
	for i, total := range u.round {
		if !d.follows(&total) || i > 0 && i < len(u.round)-len(u.masses) {
			continue
		}
		part := d.part
		if k := part.Balance; k != nil {
			part.Amount = k.Displayed(max(1, nearestDigits(total.Amount/10, k)))
		}
		made, err := u.solution(d, part, total)
		if err != nil {
			return err
		}
		for _, s := range made.shared {
			u.mixed = u.mixed || u.pulled[s.key]
		}
		u.samples = append(u.samples, made.factor)
	}
	return nil
}

// solution is what a start makes, weighed up to a total.
func (u *weighingUp) solution(d *draft, part, total route.Step) (*begun, error) {
	key, b := keyOf(&part, &total), u.bench
	if len(d.steps) > 0 {
		key.of = d.steps[0].Stock
	}
	b.one.Lock()
	defer b.one.Unlock()
	if known := u.begun[key]; known != nil {
		return known, nil
	}
	made := new(begun)
	u.begun[key] = made
	if b.prep.Carries(part) != nil {
		return made, nil
	}
	f, _, err := b.prep.SourceFactor(b.coverage, append(slices.Clone(d.steps), part, total)...)
	if impossible(err) {
		return made, nil
	}
	if err == nil {
		*made = begun{b.keys.factor(f), f.Uninformative.None()}
	}
	return made, err
}

// bound finds what each start and each round total bring together at the least, where that is diluted further, and
// otherwise the round portions.
func (u *weighingUp) bound(dilutions int) error {
	if dilutions == 0 && len(u.rounds) == 0 {
		drafts := slices.Clone(u.starts)
		for _, k := range u.prep.Kit.Balances {
			drafts = append(drafts, draft{part: weighed(k)})
		}
		for _, d := range drafts {
			if err := u.addRounds(d); err != nil {
				return err
			}
		}
	}
	for i := len(u.least); dilutions > 0 && i < len(u.round); i++ {
		u.least = append(u.least, make([][]float64, len(u.starts)))
		for k := range u.starts {
			u.least[i][k] = slices.Repeat([]float64{math.Inf(1)}, u.grams.count)
			if err := u.leastWith(u.round[i], &u.starts[k], u.least[i][k]); err != nil {
				return err
			}
		}
	}
	return nil
}

// leastWith is what the largest part in each cell of solute brings with a total: the more is weighed, the less is wrong
// with the mass fraction, since the error grows no faster than the load and comes nearer to that of the total.
func (u *weighingUp) leastWith(total route.Step, d *draft, least []float64) error {
	brings := func(part route.Step) (float64, error) {
		if k := part.Balance; k != nil {
			most := math.Ceil(total.Amount/k.Readability*(1-slack)) - 1
			if part.Amount = min(part.Amount, k.Displayed(most)); most < 1 {
				return math.Inf(1), nil
			}
		}
		f, err := u.prep.WeighedFactor(part, total)
		if impossible(err) {
			return 0, nil
		}
		least, _ := u.bench.unpulled(f, u.pulled)
		return u.atLeast(least), err
	}
	switch {
	case !d.follows(&total):
		return nil
	case d.part.Packet != nil:
		all, err := brings(d.part)
		copy(least, slices.Repeat([]float64{all}, len(least)))
		return err
	}
	return (&source{step: d.part, intended: d.fraction}).leastByCell(&u.grams, least, brings)
}

// leastWeighedUp is the least relative variance of what is weighed up, of at most a volume and a concentration.
func (u *weighingUp) leastWeighedUp(volume, concentration float64) float64 {
	least, most := math.Inf(1), volume*u.solvent
	if by := u.bulk.low; by < 0 {
		most = min(most*u.heaviest, most*(1-float64(concentration*by)))
	}
	for i := range u.round {
		grams := u.round[i].Amount
		if grams > most*(1+slack) {
			break
		}
		for k := range u.starts {
			least = min(least, u.least[i][k][u.grams.of(concentration*min(volume, grams/u.solvent/u.lightest))])
		}
	}
	return least
}

// atLeast is what a relative variance of the mass fraction makes of that of the concentration.
func (u *weighingUp) atLeast(variance float64) float64 {
	return float64(u.lightest*u.lightest*variance) * (1 - 2*u.nearly())
}

// nearly is more than the first order of a route by weighing differs from that of its factors: evaporation changes
// densities between portions by less than itself.
func (u *weighingUp) nearly() float64 { return 1e-4 + u.prep.Solvent.Evaporation }
