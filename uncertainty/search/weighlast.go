package search

import (
	"math"
	"slices"

	"minim/uncertainty/contest"
	"minim/uncertainty/route"
)

// A route that weighs a solution last is built from both ends: from the end as far as it measures volumes, and from
// the beginning up to the last weighing, of which the reading brings it to the target. What is weighed before is 1,
// 2 or 5 times a power of ten, ten digits of the balance or more. Of solutions that are weighed for
// others each is made by weighing, on one balance but for the solute; or one alone is made by volume, of a
// round mass, a packet or a stock. The factors of the portions bound the variance of such a route; one
// that may not be beaten is evaluated by its model.

// lastWeighing is what a walk needs to know for it.
type lastWeighing struct {
	// needed in mL is what the volumes behind need, of a mass fraction aim.
	needed, aim float64
	path        []*portion
	state       state // of the path
	keys        *keys // of its influences
	portions    map[portionKey]*portion
	seen        int  // of what is made by volume
	ups         []up // of what is diluted further
}

// up is a start that is weighed up to a total, with what it leaves over and brings at the least.
type up struct {
	start       *draft
	part, total route.Step
	leftOver    float64
	least       float64
}

// weighUp finishes routes of which so much is weighed up last, and what dilutes it.
func (w *walk) weighUp(needed float64) {
	u, x := w.Bench.up, &w.last
	x.needed, x.seen = needed, 0
	if w.pass.dilutions > 0 {
		if x.aim = u.fraction(w.wanted()); x.aim < 1 && !w.hopelessWith(&w.pass.remainder.of[0], needed) {
			w.weighedUp()
		}
		return
	}
	if x.keys == nil {
		x.keys, x.portions = u.keys.clone(), make(map[portionKey]*portion)
	}
	x.aim, x.state = u.fraction(w.prep.ConcentrationOf(w.prep.Target.Value)), x.keys.newState(nil)
	for i := range u.starts {
		w.makeUp(&u.starts[i])
	}
	w.measureFirst()
}

// weighedUp puts all that can be weighed up in front of the volumes, and then chooses the instruments of these.
func (w *walk) weighedUp() {
	u, x, before, least := w.Bench.up, &w.last, w.volumes.leftOver, math.Inf(1)
	leftOver := math.Inf(1)
	x.ups = x.ups[:0]
	for i := range u.round {
		for k := range u.starts {
			d, total := &u.starts[k], u.round[i]
			part, last, made := w.lastOf(d, total)
			if d.dilutions+1+w.pass.dilutions > w.options.Steps || !(made >= w.enough(x.needed)*(1-slack)) || w.tooConcentrated(&last) || !w.goOn() {
				continue
			}
			one := up{d, part, total, Volume(before + max(0, made-x.needed)), u.least[i][k][u.grams.of(x.aim*total.Amount)]}
			if !w.hopelessUp(&one, w.volumes.least) {
				x.ups = append(x.ups, one)
				least, leftOver = min(least, one.least), min(leftOver, one.leftOver)
			}
		}
	}
	if len(x.ups) > 0 {
		w.volumes.leftOver = leftOver
		w.build(&group{least: least, with: ofNone(least)}, x.needed)
		w.volumes.leftOver = before
	}
}

// hopelessUp reports whether all routes are beaten which dilute what is weighed up so that the dilutions bring so much.
func (w *walk) hopelessUp(one *up, behind float64) bool {
	return one.leftOver > w.mostLeftOver || behind+one.least > w.judge.least || w.known.beatsAll(w.pass.operations(), one.leftOver, behind+one.least)
}

// diluteWeighedUp finishes routes that dilute by volume what is weighed up.
func (w *walk) diluteWeighedUp() {
	behind, before := w.state.leastVariance(), w.volumes.leftOver
	if !w.several && !w.Bench.up.mixed {
		behind = w.state.variance() * (1 - slack)
	}
	for i := range w.last.ups {
		one := &w.last.ups[i]
		if w.hopelessUp(one, behind) || !w.goOn() {
			continue
		}
		f, err := w.Bench.up.solution(one.start, one.part, one.total)
		if w.err = err; err != nil {
			return
		}
		if f.possible && one.used() <= w.mostSolute {
			w.volumes.leftOver = one.leftOver
			w.finish(chain{begin: append(slices.Clip(one.start.steps), one.part, one.total), ways: w.ways, mayBeNothing: !(f.low > 0)}, &f.factor)
		}
	}
	w.volumes.leftOver = before
}

// used is the solute in it, as limits count it.
func (one *up) used() float64 {
	switch {
	case one.part.Verb == route.Weigh:
		return one.part.Amount
	case one.part.Packet != nil:
		return one.start.fraction
	}
	return one.part.Amount * one.start.fraction
}

// mine reports whether the walk goes on with the next of a draft from a number on: the walks share out what they begin
// with.
func (w *walk) mine(d *draft, number int) bool {
	return len(w.last.path) > 0 || d.measured > 0 || number%shares == w.share
}

// measureFirst tries what is made by volume and then weighed up.
func (w *walk) measureFirst() {
	for i := range w.sources {
		s := &w.sources[i]
		switch {
		case s.by != nil:
		case s.isStock():
			for k := range w.dilutions {
				if m := &w.dilutions[k]; m.aliquot <= s.volume && m.taken.step.Measure != m.made.step.Measure {
					w.measured(s.step, s.intended*m.ratio, m, 1)
				}
			}
		case s.isWeighed():
			for _, grams := range roundMasses(s.step.Balance) {
				step := s.step
				step.Amount = grams
				for k := range w.firsts {
					w.measured(step, float64(s.intended*grams)/w.firsts[k].volume, &w.firsts[k], 0)
				}
			}
		default:
			for k := range w.firsts {
				w.measured(s.step, s.intended/w.firsts[k].volume, &w.firsts[k], 0)
			}
		}
	}
}

// measured weighs up what is made by volume, of a concentration.
func (w *walk) measured(from route.Step, concentration float64, m *making, dilutions int) {
	if w.last.seen++; w.err != nil || w.last.seen%shares != w.share || concentration > w.strongest {
		return
	}
	u := w.Bench.up
	d := draft{steps: append([]route.Step{from}, m.steps()...), fraction: u.fraction(concentration), measured: 1, dilutions: dilutions, least: m.own}
	for _, s := range m.shared {
		d.least += float64(s.relative * s.relative)
	}
	if !(d.fraction < 1 && d.fraction >= w.last.aim) {
		return
	}
	d.density = u.of(d.fraction)
	d.least *= u.solvent / d.density * u.solvent / d.density
	d.left = m.volume * d.density
	for _, k := range w.prep.Kit.Balances {
		d.part = weighed(k)
		w.makeUp(&d)
	}
}

// makeUp weighs a part of what there is and makes it up to a mass: of the last solution that is weighed up, or of
// one of which a part is weighed up again.
func (w *walk) makeUp(d *draft) {
	u, packet := w.Bench.up, d.part.Packet != nil
	if d.dilutions+1 > w.options.Steps || !packet && d.fraction < w.last.aim || !w.goOn() || w.hopelessDraft(d, 1, w.last.state.leastVariance()) {
		return
	}
	for i, total := range u.last {
		if w.mine(d, i) {
			w.makeLast(d, total)
		}
	}
	if d.measured > 0 || d.dilutions+2 > w.options.Steps || w.err != nil {
		return
	}
	for i, p := range u.rounds[keyOf(&d.part, &route.Step{})] {
		if w.err != nil || w.hopelessDraft(d, 2, w.last.state.leastVariance()+p.own) {
			return // those that follow bring more
		}
		if next := w.made(d, p.part, p.total); p.part.Amount < d.left && !w.tooConcentrated(&next) && w.mine(d, i) {
			before := w.with(p)
			w.makeUp(&next)
			w.without(before)
		}
	}
}

// with takes in a portion.
func (w *walk) with(p *portion) saved {
	x := &w.last
	x.path = append(x.path, p)
	before := x.state.save()
	x.state.grow()
	x.state.multiply(&p.factor)
	return before
}

func (w *walk) without(before saved) {
	w.last.path = w.last.path[:len(w.last.path)-1]
	w.last.state.restore(before)
}

// made is what a part of a draft makes with a total.
func (w *walk) made(d *draft, part, total route.Step) draft {
	next := *d
	next.part, next.left, next.bought, next.dilutions = weighed(total.Balance), total.Amount, false, d.dilutions+1
	if next.fraction /= total.Amount; part.Packet == nil {
		next.fraction *= part.Amount
	}
	next.density = w.Bench.up.of(next.fraction)
	if !d.bought {
		next.leftOver += (d.left - part.Amount) / d.density
	}
	return next
}

// tooConcentrated reports whether a solution is stronger than may be.
func (w *walk) tooConcentrated(d *draft) bool { return d.fraction*d.density > w.strongest }

// lastOf is the part that brings a draft to what is needed with a total, and so many mL that they make; 0 where that
// cannot be.
func (w *walk) lastOf(d *draft, total route.Step) (part route.Step, last draft, made float64) {
	if part = d.part; !d.follows(&total) {
		return part, last, 0
	}
	if k := part.Balance; k != nil {
		digits := nearestDigits(w.last.aim*total.Amount/d.fraction, k)
		part.Amount = k.Displayed(digits)
		if digits < 1 || part.Amount > k.Capacity || !(part.Amount < min(total.Amount, d.left)) {
			return part, last, 0
		}
	}
	last = w.made(d, part, total)
	return part, last, total.Amount / last.density
}

// makeLast makes what is wanted.
func (w *walk) makeLast(d *draft, total route.Step) {
	u := w.Bench.up
	part, last, made := w.lastOf(d, total)
	if made < w.prep.Volume*(1-slack) || w.tooConcentrated(&last) {
		return
	}
	last.leftOver += max(0, float64(made*(1-u.nearly()))-w.prep.Volume)
	surely, err := u.surely(part, total)
	if w.err = err; err == nil && !w.hopelessDraft(&last, 1, w.last.state.leastVariance()+surely) && w.goOn() {
		w.tryWhole(&last, part, total)
	}
}

// hopelessDraft reports whether all routes that start like this are beaten, with so many more portions, which
// bring that relative variance in all. The strength of a solution of density ρ, by volume, changes ρ/ρ0 times as much as its mass fraction,
// with ρ0 the density of the solvent.
func (w *walk) hopelessDraft(d *draft, portions int, variance float64) bool {
	leftOver, least := d.leftOver*(1-slack), w.Bench.up.atLeast(d.least+variance)
	return leftOver > w.mostLeftOver || least > w.judge.least || w.known.beatsAll(2*(len(w.last.path)+portions+d.measured), leftOver, least)
}

// assessing a route by its model takes as long as so many candidates.
const assessing = 1000

// mayAssess counts them, turn by turn, and reports whether the walk may go on then.
func (w *walk) mayAssess() bool {
	for left := int64(assessing); left > 0; {
		some := min(left, max(1, w.until-w.counts.work()))
		w.counts.tried += some
		if left -= some; left > 0 && !w.mayGoOn() {
			return false
		}
	}
	return true
}

// tryWhole evaluates a finished route and offers it to the front.
func (w *walk) tryWhole(d *draft, part, total route.Step) {
	p := w.portion(part, total)
	if w.err != nil {
		return
	}
	before := w.with(p)
	defer w.without(before)
	if w.hopelessDraft(d, 0, w.last.state.variance()) {
		return
	}
	r := &route.Route{Steps: slices.Clone(d.steps)}
	for _, p := range w.last.path {
		r.Steps = append(r.Steps, p.part, p.total)
	}
	if !w.mayAssess() {
		return
	}
	result, err := w.prep.Assess(r, w.coverage)
	if w.err = err; err == nil && w.allows(&result) {
		w.counts.finished++
		w.offer(w.judge.merit(&result), func() chain { return chain{begin: r.Steps} })
	}
}

// portion is numbered once by the keys of the walk.
func (w *walk) portion(part, total route.Step) *portion {
	key := keyOf(&part, &total)
	if known := w.last.portions[key]; known != nil {
		return known
	}
	f, err := w.Bench.up.factorOf(part, total)
	if w.err = err; err != nil {
		return nil
	}
	p := &portion{part, total, w.last.keys.factor(f)}
	w.last.portions[key] = p
	return p
}

// allows reports whether a route can be done and keeps the limits.
func (s *search) allows(r *route.Result) bool {
	return r.Possible && r.Informative && r.Enough(s.prep.Volume) && contest.LeavesEnough(r) && r.LeftOverML <= s.mostLeftOver && r.SoluteUsed <= s.mostSolute
}

// weighsLast reports whether what is weighed up last is diluted by the volumes of the pass, or is what is wanted.
func (p *pass) weighsLast() bool { return p.from == route.WeighUpTo }
