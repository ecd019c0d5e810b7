package search

import (
	"errors"
	"math"
	"slices"
	"sync"

	"minim/equipment"
	"minim/uncertainty"
	"minim/uncertainty/route"
)

// What is diluted further by volume, once or twice, is weighed up as well: solute, or a packet, and then solvent to a
// total M, which is 1, 2 or 5 times a power of ten g, ten digits of the balance or more. The total
// may be weighed on another balance than the solute. Of the amount A of what counts, with the mass
// fraction w = A/M and the density ρ0 of the solvent, it has the concentration
//
//	C = w ρ = A k/V    V = M/ρ0    k = V/(V + A β) = 1 - C β = ρ/ρ0    β = φ - 1/ρ0
//
// so that to first order
//
//	dC/C = k dw/w - C dφ
//
// What is wrong with A and M may cancel where they are weighed on one balance, so that the factor of a
// finished route, and what bounds it, is that of both weighings together.

// mostAfterWeighing is how often what is weighed up is diluted at the most: a weaker solution can be
// weighed up as well (judgement, for the time that a search takes).
const mostAfterWeighing = 2

// weighingUp holds what bounds the factors of solutions that are weighed up.
type weighingUp struct {
	// bulk are the limits of β, lightest the least that k is, of any solution; constant: β is one and
	// the same, and not as in the table of stocks.
	bulk     span
	lightest float64
	constant bool
	// phi is the variance of the apparent specific volume.
	phi float64
	// grams are the cells of solute for which the least is known.
	grams cells
	// factors are those of some solutions, with each source and each total; mixed: they have
	// influences that others pull at, reach is what packets make.
	factors []factor
	mixed   bool
	reach   span
}

// weighsUp reports whether it is a total that solute is weighed up to.
func (m *making) weighsUp() bool { return m.inSolvent() && m.made.place < 0 }

// addWeighingUp lists the totals that solute may be weighed up to.
func (b *Bench) addWeighingUp() error {
	density := b.prep.Solvent.Density
	if b.options.Steps == 0 || !density.Known || !b.prep.CountsMass() || !slices.ContainsFunc(b.sources, func(s source) bool { return s.swelling != nil }) {
		return nil
	}
	for _, k := range b.prep.Kit.Balances {
		for _, grams := range roundMasses(k) {
			total := route.Step{Verb: route.WeighUpTo, Balance: k, Amount: grams}
			if b.prep.Carries(total) != nil {
				continue
			}
			v := &measurement{step: total, place: -1}
			b.weighedUp = append(b.weighedUp, making{made: v, volume: grams / density.Value, ratio: density.Value / grams, factor: factor{mean: 1}, measured: true})
		}
	}
	b.up.bulk, b.up.lightest = b.bulk()
	if by := b.up.bulk.high - b.up.bulk.low; by < 1e-9 {
		b.up.constant = true
	} else {
		b.up.bulk = span{b.up.bulk.low - float64(by/4), b.up.bulk.high + float64(by/4)} // between those strengths
	}
	if err := b.weighUpSome(); err != nil {
		return err
	}
	return b.boundWeighingUp()
}

// bulk is β of solutions of all strengths, and the least of their densities over that of the solvent.
func (b *Bench) bulk() (bulk span, lightest float64) {
	bulk, lightest = span{math.Inf(1), math.Inf(-1)}, 1
	solvent := b.prep.Density(0)
	for i := range 100 {
		w := float64(i+1) / 100
		density := b.prep.Density(w)
		if !(density > 0) || math.IsInf(density, 1) {
			break // there is none so strong
		}
		by := (1 - density/solvent) / (w * density)
		bulk, lightest = span{min(bulk.low, by), max(bulk.high, by)}, min(lightest, density/solvent)
	}
	return bulk, lightest * (1 - slack)
}

// weighUpSome works out one solution of each source and total. Totals that nothing can be weighed up
// to are left out.
func (b *Bench) weighUpSome() error {
	b.up.reach, b.up.phi = span{math.Inf(1), 0}, math.Inf(1)
	var possible []making
	for _, m := range b.weighedUp {
		before := len(b.up.factors)
		for i := range b.sources {
			s := &b.sources[i]
			if s.swelling == nil {
				continue
			}
			f, _, err := b.prep.SourceFactor(b.coverage, s.someOf(m.made.step), m.made.step)
			if impossible(err) {
				continue
			}
			if err != nil {
				return err
			}
			g := b.keys.factor(f)
			b.up.factors = append(b.up.factors, g)
			if s.step.Packet != nil {
				b.up.reach = span{min(b.up.reach.low, g.mean), max(b.up.reach.high, g.mean)}
			}
			b.up.phi = min(b.up.phi, s.ofPhi(&g)/g.mean/g.mean)
		}
		if len(b.up.factors) > before {
			possible = append(possible, m)
		}
	}
	b.weighedUp = possible
	return nil
}

// someOf is a tenth of a total, as near as a balance shows it, or a packet.
func (s *source) someOf(total route.Step) route.Step {
	step := s.step
	if s.isWeighed() {
		step.Amount = step.Balance.Displayed(max(1, nearestDigits(total.Amount/10, step.Balance)))
	}
	return step
}

// impossible reports whether a solution cannot be made, or its mass or volume could be nothing.
func impossible(err error) bool {
	_, no := equipment.WhyNot(err)
	var zero *uncertainty.ZeroDivisorError
	return no || errors.As(err, &zero)
}

// ofPhi is what the apparent specific volume brings to a factor: what counts with the volume of a
// solid alone.
func (s *source) ofPhi(f *factor) (variance float64) {
	has := func(list []part, key int) bool {
		return slices.ContainsFunc(list, func(p part) bool { return p.key == key })
	}
	for _, p := range f.shared {
		if has(s.swelling.shared, p.key) && !has(s.shared, p.key) {
			variance += float64(p.relative * p.relative)
		}
	}
	return variance
}

// boundWeighingUp finds the least that solute and each total bring together.
func (b *Bench) boundWeighingUp() error {
	pulled := b.pulled()
	for i := range b.up.factors {
		b.up.mixed = b.up.mixed || slices.ContainsFunc(b.up.factors[i].shared, func(p part) bool { return pulled[p.key] })
	}
	b.up.grams = newCells(-40, 20, 2)
	for i := range b.weighedUp {
		m := &b.weighedUp[i]
		m.up = &upBound{packets: math.Inf(1), solute: slices.Repeat([]float64{math.Inf(1)}, b.up.grams.count)}
		for k := range b.sources {
			if err := b.boundFrom(&b.sources[k], m, pulled); err != nil {
				return err
			}
		}
	}
	return nil
}

// upBound is the least relative variance of the mass fraction that solute in cells of its mass, or
// packets, make with a total.
type upBound struct {
	solute  []float64
	packets float64
}

// boundFrom takes in what a source brings. The more is weighed the less is wrong with the mass
// fraction: the error grows no faster than the load, and comes nearer to that of the total.
func (b *Bench) boundFrom(s *source, m *making, pulled map[int]bool) error {
	brings := func(solute route.Step) (float64, error) {
		f, err := b.prep.WeighedFactor(solute, m.made.step)
		if impossible(err) {
			return 0, nil
		}
		least, _ := b.unpulled(f, pulled)
		return least, err
	}
	switch {
	case s.step.Packet != nil:
		least, err := brings(s.step)
		m.up.packets = min(m.up.packets, least)
		return err
	case s.isWeighed():
		return s.leastByCell(&b.up.grams, m.up.solute, brings)
	}
	return nil
}

// leastSolute is the least relative variance of the mass fraction of so much solute in g that is weighed
// up to one of the totals of a group, and leastUp that with one of them.
func (p *pass) leastSolute(b *Bench, g *group, grams float64) float64 {
	least, cell := math.Inf(1), b.up.grams.of(grams)
	for i := range g.ways {
		least = min(least, p.leastUp(g.ways[i].making, cell))
	}
	return least
}

func (p *pass) leastUp(total *making, cell int) float64 {
	if p.from == route.Weigh {
		return total.up.solute[cell]
	}
	return total.up.packets
}

// leastPhi is what the apparent specific volume brings at the least to a concentration that is weighed
// up: of the reading that comes nearest some digits less may be weighed.
func (p *pass) leastPhi(b *Bench, concentration, volume float64) float64 {
	c := max(0, concentration-float64(4*p.digit/volume))
	return float64(c * c * b.up.phi)
}

// leastWeighedUp is leastMarked of what is weighed up, for concentrations from one to another.
func (p *pass) leastWeighedUp(b *Bench, need cover, volume, low, concentration float64) float64 {
	least, most := math.Inf(1), volume // of solvent in such a volume
	if by := b.up.bulk.low; by < 0 {
		most *= 1 - float64(concentration*by)
	}
	for i := range p.weighedUp {
		f := &p.weighedUp[i]
		if f.volume > most {
			break
		}
		if need == 0 {
			brings := p.leastSolute(b, f, concentration*min(volume, f.volume/b.up.lightest))
			least = min(least, float64(b.up.lightest*b.up.lightest*brings)+p.leastPhi(b, low, f.volume))
		}
	}
	return least
}

// shares are the least and the most that k may be in a solution of a concentration.
func (u *weighingUp) shares(concentration float64) span {
	return span{max(u.lightest, 1-float64(concentration*u.bulk.high)), 1 - float64(concentration*u.bulk.low)}
}

// beginWeighedUp tries all totals of which so much is needed once solute is weighed up to them.
func (w *walk) beginWeighedUp(needed float64) {
	share := w.up.shares(w.wanted())
	if !(share.high > 0) {
		return
	}
	w.beginIn(w.pass.weighedUp, share, float64(w.pass.digit*max(math.Abs(w.up.bulk.low), math.Abs(w.up.bulk.high))), needed)
}

// weighUp finishes a route of a source that is weighed up to a total, of which so much is needed.
func (w *walk) weighUp(c chain, total *making, needed float64) {
	s, step := c.source, c.source.step
	if s.isWeighed() {
		wanted := w.wanted()
		grams := wanted * total.volume / w.up.shares(wanted).high
		if !w.up.constant {
			grams = w.prep.MassFraction(wanted) * total.made.step.Amount
		}
		if w.hopeless(w.leastWith(total, grams) * (1 - slack)) {
			return
		}
		digits, shown := s.digitsFor(grams)
		if !shown {
			return
		}
		step.Amount = step.Balance.Displayed(digits)
		c.reading = step.Amount
	}
	up, err := w.weighedUps.of(step, total.made)
	switch {
	case err != nil:
		w.err = err
		return
	case !up.possible || !s.isWeighed() && up.concentration > w.strongest:
		return
	}
	amount, used := s.intended, s.intended
	if s.isWeighed() {
		amount, used = s.intended*c.reading, c.reading
	}
	made := amount / up.concentration
	if used > w.mostSolute || made < w.enough(needed)*(1-1e-9) {
		return
	}
	c.mayBeNothing = !(up.low > 0)
	before := w.volumes.leftOver
	w.volumes.leftOver = Volume(w.begun + max(0, made-needed))
	w.finish(c, &up.factor)
	w.volumes.leftOver = before
}

// leastWith is the least relative variance of a route from so much solute that is weighed up.
func (w *walk) leastWith(total *making, grams float64) float64 {
	least, light := w.state.leastVariance(), w.up.lightest
	if !w.several && !w.up.mixed {
		least = w.state.variance()
	}
	return least + float64(light*light*w.pass.leastUp(total, w.up.grams.of(grams))) + w.pass.leastPhi(w.Bench, w.wanted(), total.volume)
}

// weighedUps are solutions that are weighed up, each worked out once, for all walks.
type weighedUps struct {
	*sync.Mutex
	bench *Bench
	known map[upKey]*weighedUp
}

// weighedUp is one, with its concentration in g/mL as intended.
type weighedUp struct {
	factor
	concentration float64
	possible      bool // and informative
}

// upKey tells them apart: by the balance or the packet, the reading, and the total.
type upKey struct {
	balance *equipment.Balance
	packet  *route.Packet
	grams   float64
	total   *measurement
}

func (u *weighedUps) of(solute route.Step, total *measurement) (*weighedUp, error) {
	u.Lock()
	defer u.Unlock()
	key := upKey{solute.Balance, solute.Packet, solute.Amount, total}
	if found := u.known[key]; found != nil {
		return found, nil
	}
	found := new(weighedUp)
	u.known[key] = found
	if u.bench.prep.Carries(solute) != nil {
		return found, nil
	}
	f, concentration, err := u.bench.prep.SourceFactor(u.bench.coverage, solute, total.step)
	if impossible(err) {
		return found, nil
	}
	if err == nil {
		*found = weighedUp{u.bench.keys.factor(f), concentration, f.Uninformative.None()}
	}
	return found, err
}
