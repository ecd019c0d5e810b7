package search

import (
	"cmp"
	"context"
	"math"
	"slices"

	"minim/equipment"
	"minim/uncertainty/contest"
	"minim/uncertainty/portable"
	"minim/uncertainty/route"
)

// Routes by weighing take any mass that a balance shows, so that a rule names the
// candidates. One balance serves for a whole route. A solution is made up to the
// mass of as much solvent as a vessel of the kit holds, or as is wanted. What is
// weighed for all solutions but the last is 1, 2 or 5 times a power of ten, ten
// digits of the balance or more; for the last it is the reading that comes nearest
// to the target. A part and the total that it is made up to make one factor of the mass
// fraction, so that a lower bound of the variance of a route is put together from factors, as
// of those by volume; a route that may not be beaten is evaluated by its model.

// weigher tries the routes by weighing on one balance.
type weigher struct {
	*search
	ctx     context.Context
	balance *equipment.Balance
	// totals are the masses of solution, masses what may be weighed for one, in g,
	// as displayed.
	totals, masses []float64
	// keys, portions and state are of the factors; linear are the influences of linearity, of
	// which those of one load are local.
	keys          *keys
	portions      map[portionKey]*portion
	linear, local map[int]bool
	state         state
	// round are the portions of each source, or -1, of which the parts are round masses, the
	// least variance first.
	round map[int][]*portion
	// path is what is weighed, of a stock after its start; lighter what the strength of the
	// target changes with its mass fraction, at the least.
	start   []route.Step
	path    []*portion
	lighter float64
	// nearly is how far the figures may be off that are put together from factors.
	nearly float64
	// target and strongest are mass fractions.
	target, strongest float64
	err               error
}

// portion is a part that is weighed and made up to a total, with its factor.
type portion struct {
	part, total route.Step
	factor
	// least is the relative variance that it brings to a route that is diluted further, sure what
	// a part of that mass or less brings to any.
	least, sure float64
}

// portionKey tells portions of one balance apart: by the place of a source, or -1 for an
// aliquot, and by their masses.
type portionKey struct {
	source      int
	part, total float64
}

// byWeighing offers the routes by weighing. They need the density of the solvent, and a
// prep whose strengths are masses.
func (s *search) byWeighing(ctx context.Context) error {
	if !s.prep.Solvent.Density.Known || !s.prep.CountsMass() {
		return nil
	}
	for _, k := range s.prep.Kit.Balances {
		w := &weigher{search: s, ctx: ctx, balance: k, totals: s.totals(k), masses: roundMasses(k), keys: newKeys(), portions: make(map[portionKey]*portion), linear: make(map[int]bool), local: make(map[int]bool)}
		w.state = w.keys.newState(nil)
		w.target, w.strongest = s.prep.MassFraction(s.prep.ConcentrationOf(s.prep.Target.Value)), 1
		if !math.IsInf(s.strongest, 1) {
			w.strongest = s.prep.MassFraction(s.strongest)
		}
		w.nearly = nearlyThat + s.prep.Solvent.Evaporation
		w.lighter = min(1, s.prep.Density(min(1, 1.5*w.target))/s.prep.Density(0))
		if w.prepare(); w.err == nil {
			w.run()
		}
		if w.err != nil {
			return w.err
		}
	}
	return nil
}

// prepare works out the portions of all masses but the last, and which influences they pull
// at the same way.
func (w *weigher) prepare() {
	for _, total := range w.totals {
		for _, m := range w.masses {
			for i := range w.sources {
				if w.sources[i].isWeighed() && w.sources[i].step.Balance == w.balance && m < total {
					w.portion(i, m, total)
				}
			}
			if m < total {
				w.portion(-1, m, total)
			}
		}
		for i := range w.sources {
			if w.sources[i].step.Verb == route.UsePacket {
				w.portion(i, 0, total)
			}
		}
	}
	weights, common := w.weights()
	w.state = w.keys.newState(weights)
	w.round = make(map[int][]*portion)
	for key, p := range w.portions {
		p.least, p.sure = p.own, p.own
		for _, s := range p.shared {
			square := float64(s.relative * s.relative)
			p.least += float64(square * weights[s.key])
			if common[s.key] {
				p.sure += square
			}
		}
		w.round[key.source] = append(w.round[key.source], p)
	}
	for _, list := range w.round {
		slices.SortFunc(list, func(a, b *portion) int {
			return cmp.Or(cmp.Compare(a.least, b.least), cmp.Compare(a.part.Amount, b.part.Amount), cmp.Compare(a.total.Amount, b.total.Amount))
		})
	}
}

// weights tell of each influence whether all portions of a route pull at it the same way,
// also those that are weighed last: at one that sources alone have, since a route has one of
// them; at the load of an empty vessel, which makes each part less than is read, so that it is
// in all portions; and at loads that hold no total. Common are those of the first two kinds.
func (w *weigher) weights() (weights []float64, common []bool) {
	signs, uses, aliquots := make([]sign, len(w.keys.influences)), make([]int, len(w.keys.influences)), 0
	for key, p := range w.portions {
		if key.source >= 0 {
			for _, s := range p.shared {
				signs[s.key].see(s.relative)
			}
			continue
		}
		aliquots++
		for _, s := range p.shared {
			uses[s.key]++
			signs[s.key].see(s.relative)
		}
	}
	weights, common = make([]float64, len(signs)), make([]bool, len(signs))
	for k, s := range signs {
		atOneLoad := w.local[k] && len(w.balance.Checks) == 0 && s.one()
		common[k] = uses[k] == 0 && !w.linear[k] || atOneLoad && aliquots > 0 && uses[k] == aliquots && s.minus
		if common[k] || atOneLoad && s.plus {
			weights[k] = 1
		}
	}
	return weights, common
}

// portion is a part of a source, or of what there is, made up to a total.
func (w *weigher) portion(source int, part, total float64) *portion {
	key := portionKey{source, part, total}
	if known := w.portions[key]; known != nil {
		return known
	}
	p := &portion{part: route.Step{Verb: route.WeighAliquot, Amount: part, Balance: w.balance}, total: route.Step{Verb: route.WeighUpTo, Amount: total, Balance: w.balance}}
	if source >= 0 {
		if p.part = w.sources[source].step; part > 0 {
			p.part.Amount = part
		}
	}
	f, err := w.prep.WeighedFactor(p.part, p.total)
	if _, no := equipment.WhyNot(err); err != nil && !no {
		w.err = err
	}
	p.factor = w.keys.factor(f) // of what cannot be, nothing: its route will not be possible
	for i := range f.Shared {
		code, key := f.Shared[i].Code, p.shared[i].key
		w.linear[key], w.local[key] = equipment.IsLinearity(code), equipment.IsLocalLinearity(code)
	}
	w.state.grow()
	w.portions[key] = p
	return p
}

// totals are the masses that solutions are made up to on a balance: of the solvent
// that a vessel holds, or of a solution a little stronger than what is wanted, so that
// it is enough.
func (s *search) totals(k *equipment.Balance) []float64 {
	target := s.prep.MassFraction(s.prep.ConcentrationOf(s.prep.Target.Value))
	masses := []float64{s.prep.Volume * s.prep.Density(1.1*target), s.prep.Volume * s.prep.Density(0)}
	for _, m := range s.prep.Kit.Measures {
		if m.Kind.Traits().Receives {
			masses = append(masses, m.Capacity*s.prep.Density(0))
		}
	}
	var totals []float64
	for _, m := range masses {
		total := k.Displayed(math.Ceil(m / k.Readability * (1 - 1e-12)))
		if total <= k.Capacity*(1+1e-12) && s.prep.Carries(route.Step{Verb: route.WeighUpTo, Balance: k, Amount: total}) == nil {
			totals = append(totals, total)
		}
	}
	slices.Sort(totals)
	return slices.Compact(totals)
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

// run starts with each source.
func (w *weigher) run() {
	for i := range w.sources {
		switch s := &w.sources[i]; {
		case s.isStock():
			fraction, err := w.prep.StockFraction(s.step.Stock) // which may rest on a density of its own
			if err != nil {
				w.err = err
				return
			}
			w.start = []route.Step{s.step}
			w.makeUp(draft{source: -1, fraction: fraction, left: math.Inf(1), bought: true})
			w.start = nil
		case s.isWeighed() && s.step.Balance == w.balance:
			w.makeUp(draft{source: i, dilutions: -1, fraction: s.intended, left: math.Inf(1), bought: true})
		case s.step.Verb == route.UsePacket:
			for _, total := range w.totals {
				w.with(w.portion(i, 0, total), draft{source: -1, fraction: s.intended / total, left: total}, true)
			}
		}
	}
}

// draft is the beginning of a route, with the mass fraction of its solution and
// how much of it there is, in g; of pure solute with -1 dilutions.
type draft struct {
	source         int // of what is weighed next, -1 of what there is
	fraction, left float64
	dilutions      int
	leftOver       float64 // in mL
	bought         bool    // a stock, or solute, which is not made
}

// makeUp weighs a part of what there is and makes it up to a mass: to what is wanted, or to
// a solution that is diluted further.
func (w *weigher) makeUp(d draft) {
	if d.dilutions == w.options.Steps || d.fraction < w.target || d.fraction > w.strongest && !d.bought || w.hopelessDraft(&d, len(w.path)+1, w.state.leastVariance()) {
		return
	}
	density := w.prep.Density(d.fraction)
	made := func(m, total float64) draft {
		next := draft{source: -1, fraction: d.fraction * m / total, left: total, dilutions: d.dilutions + 1, leftOver: d.leftOver}
		if !d.bought {
			next.leftOver += (d.left - m) / density
		}
		return next
	}
	have := w.state.leastVariance()
	for _, total := range w.totals {
		if m, shown := w.nearestReading(w.target * total / d.fraction); shown && m < min(total, d.left) {
			if last := made(m, total); !w.hopelessDraft(&last, len(w.path)+1, have+w.surely(d.source, m, total)) {
				w.with(w.portion(d.source, m, total), last, true)
			}
		}
	}
	if d.dilutions+1 == w.options.Steps {
		return
	}
	for _, p := range w.round[d.source] {
		if w.err != nil || w.hopelessDraft(&d, len(w.path)+2, have+p.least) {
			return // those that follow bring more
		}
		if m, total := p.part.Amount, p.total.Amount; m < min(total, d.left) {
			w.with(p, made(m, total), false)
		}
	}
}

// surely is a variance that a part made up to a total brings at the least: that of the next
// round mass, since what is wrong with a weighing grows no faster than its load.
func (w *weigher) surely(source int, part, total float64) float64 {
	at, _ := slices.BinarySearch(w.masses, part)
	if at == len(w.masses) || w.masses[at] >= total {
		return 0
	}
	return w.portion(source, w.masses[at], total).sure
}

// with goes on from a portion: it tries the route that ends with it, or dilutes it, or of
// a packet both.
func (w *weigher) with(p *portion, d draft, last bool) {
	if w.err != nil || !w.mayGoOn() {
		return
	}
	w.counts.built++
	before := w.state.save()
	w.state.multiply(&p.factor)
	w.path = append(w.path, p)
	if last {
		w.try(&d)
	}
	if !last || p.part.Verb == route.UsePacket {
		w.makeUp(d)
	}
	w.path = w.path[:len(w.path)-1]
	w.state.restore(before)
}

// mayGoOn reports whether the search may go on: it stops when asked to, or when enough is
// tried.
func (w *weigher) mayGoOn() bool {
	switch {
	case w.err != nil:
	case w.room() <= 0:
		w.err = errEnough
	default:
		w.err = w.ctx.Err()
	}
	return w.err == nil
}

// nearestReading is the reading nearest to a mass, if the balance shows it.
func (w *weigher) nearestReading(grams float64) (nearest float64, shown bool) {
	digits := nearestDigits(grams, w.balance)
	return w.balance.Displayed(digits), digits >= 1 && digits*w.balance.Readability <= w.balance.Capacity
}

// hopelessDraft reports whether all routes that start like this are beaten, which have so many
// portions or more, and a mass fraction of at least that relative variance. The strength of a solution of density ρ, by
// volume, changes ρ/ρ0 times as much as its mass fraction, with ρ0 the density of the solvent;
// the last solution is near to the target.
func (w *weigher) hopelessDraft(d *draft, portions int, leastVariance float64) bool {
	leftOver, least := d.leftOver*(1-slack), w.lighter*w.lighter*leastVariance*(1-2*w.nearly)
	return leftOver > w.mostLeftOver || least > w.judge.least || w.front.beatsAll(2*portions, leftOver, least)
}

// nearlyThat is more than the first order of a route by weighing differs from that of its
// factors, but for evaporation, which changes densities between portions by less than itself.
const nearlyThat = 1e-4

// assessing a route by its model takes as long as so many candidates.
const assessing = 1000

// try evaluates a finished route and offers it to the front.
func (w *weigher) try(d *draft) {
	made, all := d.left/w.prep.Density(d.fraction), *d
	all.leftOver += max(0, float64(made*(1-w.nearly))-w.prep.Volume)
	if w.hopelessDraft(&all, len(w.path), w.state.variance()) || d.fraction > w.strongest || made < w.prep.Volume*(1-slack) {
		return
	}
	steps := slices.Clone(w.start)
	for _, p := range w.path {
		steps = append(steps, p.part, p.total)
	}
	r := &route.Route{Steps: steps}
	w.counts.tried += assessing
	result, err := w.prep.Assess(r, w.coverage)
	switch {
	case err != nil:
		w.err = err
	case w.allows(&result):
		w.counts.finished++
		w.offer(w.judge.merit(&result), func() chain { return chain{whole: r} })
	}
}

// allows reports whether a route can be done and keeps the limits.
func (s *search) allows(r *route.Result) bool {
	return r.Possible && r.Informative && r.Enough(s.prep.Volume) && contest.LeavesEnough(r) &&
		r.LeftOverML <= s.mostLeftOver && r.SoluteUsed <= s.mostSolute
}
