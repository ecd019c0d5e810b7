package plan

import (
	"context"
	"math"
	"slices"

	"minim/equipment"
	"minim/uncertainty/portable"
	"minim/uncertainty/route"
)

// Routes by weighing take any mass that a balance shows, so that a rule names the
// candidates. One balance serves for a whole route. A solution is made up to the
// mass of as much solvent as a vessel of the kit holds, or as is wanted. What is
// weighed for all solutions but the last is 1, 2 or 5 times a power of ten, ten
// digits of the balance or more; for the last it is the reading that comes nearest
// to the target. Each is evaluated by its model, unless its left over, its number
// of measurements and a lower bound of its variance show that it is beaten.

// weigher tries the routes by weighing on one balance.
type weigher struct {
	*search
	ctx     context.Context
	balance *equipment.Balance
	// totals are the masses of solution, masses what may be weighed for one, in g,
	// as displayed.
	totals, masses []float64
	// brought is what has been worked out by brings.
	brought map[float64]float64
	// target and strongest are mass fractions.
	target, strongest float64
	err               error
}

// byWeighing offers the routes by weighing. They need the density of the solvent, and a
// prep whose strengths are masses.
func (s *search) byWeighing(ctx context.Context) error {
	if !s.prep.Solvent.Density.Known || !s.prep.CountsMass() {
		return nil
	}
	for _, k := range s.prep.Kit.Balances {
		w := &weigher{search: s, ctx: ctx, balance: k, totals: s.totals(k), masses: roundMasses(k), brought: make(map[float64]float64)}
		w.target = s.prep.MassFraction(s.prep.ConcentrationOf(s.prep.Target.Value))
		w.strongest = 1
		if !math.IsInf(s.strongest, 1) {
			w.strongest = s.prep.MassFraction(s.strongest)
		}
		w.run()
		if w.err != nil {
			return w.err
		}
	}
	return nil
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
			w.diluteStock(s)
		case s.isWeighed() && s.step.Balance == w.balance:
			w.dissolve(s)
		case !s.isWeighed():
			w.dissolvePacket(s)
		}
	}
}

// diluteStock weighs out of a stock, whose mass fraction may rest on a density of its own.
func (w *weigher) diluteStock(s *source) {
	fraction, err := w.prep.StockFraction(s.step.Stock)
	if err != nil {
		w.err = err
		return
	}
	w.dilute(draft{steps: []route.Step{s.step}, fraction: fraction, left: math.Inf(1), bought: true})
}

// draft is the beginning of a route, with the mass fraction of its solution and
// how much of it there is, in g; of pure solute with -1 dilutions.
type draft struct {
	steps          []route.Step
	fraction, left float64
	dilutions      int
	leftOver       float64 // in mL
	bought         bool    // a stock, or solute, which is not made
	// least is a lower bound of the relative variance.
	least float64
}

// dissolve weighs solute and makes it up to a mass.
func (w *weigher) dissolve(s *source) {
	w.makeUp(draft{dilutions: -1, fraction: s.intended, left: math.Inf(1), bought: true}, func(m float64) route.Step {
		step := s.step
		step.Amount = m
		return step
	})
}

// dissolvePacket makes a packet up to a mass.
func (w *weigher) dissolvePacket(s *source) {
	for _, total := range w.totals {
		d := draft{steps: w.upTo(nil, s.step, total), fraction: s.intended / total, left: total}
		w.try(&d)
		w.dilute(d)
	}
}

// dilute weighs a part of a solution and makes it up to a mass.
func (w *weigher) dilute(d draft) {
	w.makeUp(d, func(m float64) route.Step {
		return route.Step{Verb: route.WeighAliquot, Amount: m, Balance: w.balance}
	})
}

// makeUp weighs a part of what there is, by a step that is given its mass, and makes
// it up to a mass: to what is wanted, or to a solution that is diluted further.
func (w *weigher) makeUp(d draft, weigh func(m float64) route.Step) {
	if d.dilutions == w.options.Steps || d.fraction < w.target || d.fraction > w.strongest && !d.bought || w.hopelessDraft(&d) {
		return
	}
	for _, total := range w.totals {
		part := func(m float64) draft {
			next := draft{steps: w.upTo(d.steps, weigh(m), total), fraction: d.fraction * m / total, left: total,
				dilutions: d.dilutions + 1, leftOver: d.leftOver, least: d.least + w.brings(m)}
			if !d.bought {
				next.leftOver += (d.left - m) / w.prep.Density(d.fraction)
			}
			return next
		}
		if m, shown := w.nearestReading(w.target * total / d.fraction); shown && m < min(total, d.left) {
			last := part(m)
			w.try(&last)
		}
		for _, m := range w.masses {
			if m < min(total, d.left) && w.err == nil {
				w.dilute(part(m))
			}
		}
	}
}

// upTo appends two steps: one by which something is weighed, and making up to a
// mass.
func (w *weigher) upTo(before []route.Step, weigh route.Step, total float64) []route.Step {
	if w.mayGoOn() {
		w.counts.built++
	}
	return append(slices.Clip(before), weigh, route.Step{Verb: route.WeighUpTo, Amount: total, Balance: w.balance})
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

// hopelessDraft reports whether all routes that start like this are beaten.
func (w *weigher) hopelessDraft(d *draft) bool {
	leftOver := d.leftOver * (1 - slack)
	return leftOver > w.mostLeftOver || d.least > w.judge.least || w.front.beatsAll(len(d.steps), leftOver, d.least)
}

// brings is a lower bound of the relative variance that weighing a mass brings. Its
// linearity counts as nothing, since another weighing at the same load may take it away. At
// most half of the rest is the rounding at zero, which it may have in common with the
// total. The strength of a solution of density ρ, by volume, changes ρ/ρ0 times as much
// as its mass fraction, with ρ0 the density of the solvent; the last solution is near
// to the target.
func (w *weigher) brings(grams float64) float64 {
	if known, ok := w.brought[grams]; ok {
		return known
	}
	f, _, _, err := w.prep.SourceFactor(route.Step{Verb: route.Weigh, Balance: w.balance, Amount: grams}, w.coverage)
	if err != nil {
		w.err = err
		return 0
	}
	lighter := min(1, w.prep.Density(min(1, 1.5*w.target))/w.prep.Density(0))
	w.brought[grams] = lighter * lighter / 2 * (f.Own - f.Linear)
	return w.brought[grams]
}

// assessing a route by its model takes as long as so many candidates.
const assessing = 1000

// try evaluates a finished route and offers it to the front.
func (w *weigher) try(d *draft) {
	if !w.mayGoOn() || w.hopelessDraft(d) || d.fraction > w.strongest || d.left/w.prep.Density(d.fraction) < w.prep.Volume*(1-slack) {
		return
	}
	r := &route.Route{Steps: d.steps}
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
	return r.Possible && r.Informative && r.Enough(s.prep.Volume) &&
		r.LeftOverML <= s.mostLeftOver && r.SoluteUsed <= s.mostSolute
}
