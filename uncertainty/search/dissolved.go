package search

import (
	"math"
	"slices"
	"sort"

	"minim/equipment"
	"minim/uncertainty/portable"
	"minim/uncertainty/route"
)

// A solid, or a packet, is made up to a mark or dissolved in a measured volume V of solvent. Of the
// amount A of what counts, of which 1 g brings β mL into the solution (β = φ/P with the apparent
// specific volume φ and the purity P), it then has the concentration
//
//	C = A/(V + A β) = A k/V    k = V/(V + A β) = 1 - C β
//
// with the share k of the solution that is solvent, so that to first order
//
//	dC/C = k dA/A - k dV/V - C dβ
//
// What is diluted further is dissolved in 1, 2 or 5 times a power of ten mL, or in what an
// instrument holds in all, as one would choose it. A search knows C before it knows A. It takes the volume for a factor like that of a mark, and
// what the solid brings into account when C is known.

// addDissolving lists the volumes of solvent in which a solid may be dissolved.
func (b *Bench) addDissolving(at tried) error {
	if !slices.ContainsFunc(b.sources, func(s source) bool { return s.swelling != nil }) {
		return nil
	}
	list, err := b.factors(route.DissolveIn, at, b.prep.TakenFactor)
	for i := range list {
		v := &list[i]
		b.dissolved = append(b.dissolved, making{made: v, volume: v.step.Amount, ratio: 1 / v.step.Amount, factor: v.factor.inverse(), measured: true})
	}
	return err
}

// isRound reports whether solute that is diluted further is dissolved in such a volume.
func isRound(k *equipment.Measure, mL float64) bool {
	digit := mL / math.Pow10(portable.Decade(mL*(1+slack)))
	near := func(x float64) bool { return math.Abs(digit-x) <= slack*x }
	return mL >= k.Capacity*(1-slack) || near(1) || near(2) || near(5)
}

// swell finds 1 + β of a solid.
func (b *Bench) swell(s *source) error {
	if s.step.Verb != route.Weigh && s.step.Verb != route.UsePacket {
		return nil
	}
	f, err := b.prep.SwellingFactor(s.step)
	swelling := b.keys.factor(f)
	s.swelling, s.bulk = &swelling, swelling.own
	for _, p := range swelling.shared {
		if !slices.ContainsFunc(s.shared, func(o part) bool { return o.key == p.key }) { // not of the purity
			s.bulk += float64(p.relative * p.relative)
		}
	}
	s.bulk *= float64(swelling.mean * swelling.mean)
	return err
}

// swells is β, in mL for each g.
func (s *source) swells() float64 {
	if s.swelling == nil {
		return 0
	}
	return s.swelling.mean - 1
}

// swells is β of the sources of a pass: of balances one and the same, of packets near enough to
// choose volumes by.
func (p *pass) swells() float64 {
	if len(p.sources) == 0 {
		return 0
	}
	return p.sources[0].swells()
}

// dissolves reports whether it is measured solvent that solute is dissolved in.
func (m *making) dissolves() bool { return m != nil && m.measured && m.taken == nil }

// leastShare is the least that k can be of a volume of solvent that is to make a concentration: of
// the reading that comes nearest a digit more may be weighed.
func (p *pass) leastShare(concentration, volume float64) float64 {
	by := p.swells()
	if !(by > 0) {
		return 1
	}
	return max(0, 1-float64((concentration+p.digit/volume)*by))
}

// leastBulk is the relative variance that the volume of the solid brings at the least to a
// concentration in a volume of solvent: of the reading that comes nearest a digit less may be
// weighed. The apparent specific volume counts nowhere else in a route by volume.
func (p *pass) leastBulk(concentration, volume float64) float64 {
	least := math.Inf(1)
	for _, s := range p.sources {
		least = min(least, s.bulk)
	}
	c := max(0, concentration-p.digit/volume)
	return float64(c * c * least)
}

// leastDissolved is leastMarked of what is dissolved in measured solvent, for concentrations from
// one to another.
func (p *pass) leastDissolved(b *Bench, need cover, volume, low, concentration float64) float64 {
	least, most := math.Inf(1), volume // of solvent in such a volume
	if by := p.swells(); by < 0 {
		most *= 1 - float64(concentration*by)
	}
	for i := range p.dissolved {
		f := &p.dissolved[i]
		if f.volume > most {
			break
		}
		brings := p.leastBulk(low, f.volume)
		if k := p.leastShare(concentration, f.volume); k > 0 {
			brings += float64(float64(k*k) * (f.with[need] + p.leastSource(b, concentration*min(volume, f.volume/k))))
		}
		least = min(least, brings)
	}
	return least
}

// beginDissolved tries all volumes of solvent of which so much is needed once the solute is
// dissolved in them.
func (w *walk) beginDissolved(needed float64) {
	share := 1 - float64(w.wanted()*w.pass.swells())
	if !(share > 0) {
		return
	}
	list := w.pass.dissolved
	if w.pass.dilutions == 0 {
		list = w.pass.allDissolved
	}
	before, rounding := w.volumes, math.Abs(w.pass.digit*w.pass.swells()) // as the nearest reading may take up less
	w.solvent = share
	least := (w.enough(needed) - rounding) * share * (1 - 1e-9)
	for at := sort.Search(len(list), func(i int) bool { return list[i].volume >= least }); at < len(list); at++ {
		f := &list[at]
		w.volumes.leftOver = Volume(before.leftOver + max(0, f.volume/share-needed-rounding))
		if !w.goOn() || w.tooMuch() || w.hopeless(before.least) {
			break
		}
		w.begun = before.leftOver
		w.build(f, needed)
	}
	w.volumes, w.solvent = before, 1
}

// begins is by what the relative variances of a first solution count at the least, and leastBegin
// the least that it and its source bring.
func (w *walk) begins(first *group) float64 {
	if len(first.ways) == 0 || !first.ways[0].dissolves() {
		return 1
	}
	k := w.pass.leastShare(w.wanted(), first.volume)
	return k * k
}

func (w *walk) leastBegin(first *group) float64 {
	least := float64(w.begins(first) * (first.least + w.pass.leastSource(w.Bench, w.wanted()*first.volume/w.solvent)))
	if len(first.ways) > 0 && first.ways[0].dissolves() {
		least += w.pass.leastBulk(w.wanted(), first.volume)
	}
	return least
}

// finishWith finishes a route with so much of what counts from a source, of which so much is needed.
func (w *walk) finishWith(c chain, amount float64, f *factor, first *making, needed float64) {
	if !first.dissolves() {
		w.finish(c, f)
		return
	}
	made := first.volume + float64(amount*c.source.swells())
	if made < w.enough(needed)*(1-1e-9) {
		return
	}
	c.mayBeNothing = c.source.mayBeNothing(f, first)
	before := w.volumes.leftOver
	w.volumes.leftOver = Volume(w.begun + max(0, made-needed))
	if w.dissolve(c.source, f, first) {
		w.finish(c, &w.solution)
	}
	w.volumes.leftOver = before
}

// mayBeNothing reports whether the volume of a solid in measured solvent may be so badly known that
// it could be nothing: its mass may be next to nothing, or its apparent specific volume negative.
func (s *source) mayBeNothing(f *factor, first *making) bool {
	by, low := s.swells(), s.swelling.low-1
	least := min(f.low*(2*by-low), (2*f.mean-f.low)*low, 0)
	return first.made.low+float64(1.2*least) <= 0
}

// dissolve makes the product of a source whose volume counts beside that of the solvent, and of
// what that volume of solvent is uncertain by; false where a route with it is hopeless.
func (w *walk) dissolve(s *source, f *factor, first *making) bool {
	concentration := f.mean * first.mean
	share := 1 / (1 + float64(concentration*s.swells()))
	g := &w.solution
	g.mean, g.own, g.shared, g.scatter = f.mean*share, 0, g.shared[:0], g.scatter[:0]
	g.weigh(f, share)
	g.weigh(&first.factor, share)
	if w.hopeless(w.state.leastVariance() + g.own + float64(concentration*share*concentration*share*s.bulk)) {
		return false
	}
	g.weigh(s.swelling, -concentration*share*s.swelling.mean)
	return true
}

// dissolvedReach is what packets make of measured solvent.
func (p *pass) dissolvedReach() span {
	reach := span{math.Inf(1), 0}
	for _, s := range p.sources {
		d := around(p.allDissolved, func(g *group) span { return g.expected })
		for _, concentration := range []float64{s.mean * d.low, s.mean * d.high} {
			concentration /= 1 + float64(concentration*s.swells())
			reach = span{min(reach.low, concentration), max(reach.high, concentration)}
		}
	}
	return reach
}
