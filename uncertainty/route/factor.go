package route

import (
	"math"

	"minim/equipment"
	"minim/report/words/note"
	"minim/uncertainty"
)

// Factor is one quantity by which a route multiplies or divides the strength: a
// mass, an aliquot, a volume. Since a first-order relative uncertainty of a
// product is made of those of its factors, a search can put together the figures
// of a route from the factors of its steps, worked out once each by the same
// model as the whole route.
type Factor struct {
	// Mean is the factor at the means of all influences, Low the least that they allow
	// it to be.
	Mean, Low float64
	// Own is the relative variance from influences that no other step shares. The linearity of a balance is among them, since routes by
	// volume weigh once.
	Own float64
	// Scatter is what of Own comes from sets of readings.
	Scatter []scatterPart
	// Shared are the relative contributions c u/mean, with their signs, of
	// influences that other steps may share.
	Shared []sharedPart
	// Uninformative says why a volume taken could be nothing; see [Result].
	Uninformative note.Note
}

// scatterPart is the relative variance of what was found from a set of readings.
type scatterPart struct {
	Readings
	Variance float64
}

// Readings are a set of them, with its degrees of freedom. The zero value is none.
type Readings struct {
	Set              uncertainty.Set
	DegreesOfFreedom float64
}

// sharedPart is the relative contribution of an influence to a factor, and the readings that
// it was found from.
type sharedPart struct {
	Influence uncertainty.Identity
	Code      uncertainty.Code
	Relative  float64
	Readings  Readings
}

// Coverage probability that the factors are propagated for; it enters none of
// their figures but what is uninformative.
const anyCoverage = 0.95

// TakenFactor is the volume that a step takes or adds, or dissolves in, and what is left of it.
func (p *Prep) TakenFactor(s Step) (Factor, error) {
	c := p.singleStep(s)
	a, err := c.deliver(0, c.solvent, "")
	if err == nil {
		a, err = c.leftOf(0, a, false)
	}
	f, err := c.factor(a, err)
	if err == nil {
		f.Uninformative, err = c.uninformative(anyCoverage, 0)
	}
	return f, err
}

// ContainedFactor is the volume that a step makes up to, and what is left of it.
func (p *Prep) ContainedFactor(s Step) (Factor, error) {
	c := p.singleStep(s)
	v, err := s.Measure.Contain(c.use(0), s.Amount)
	if err == nil {
		v, err = c.leftOf(0, v, false)
	}
	return c.factor(v, err)
}

// EvaporatedFactor is by what a solution that was made grows stronger before it
// is taken from.
func (p *Prep) EvaporatedFactor(s Step) (Factor, error) {
	c := p.singleStep(s)
	one := c.model.Constant(1)
	c.current = &liquid{concentration: one, volume: one}
	c.evaporate(0, c.current)
	return c.factor(c.current.concentration, nil)
}

// SourceFactor is what a route starts with: the amount of solute that is weighed, or that a packet
// holds, or that is taken out of a stock, which may be in another solvent, in g; or the
// concentration of a stock in g/mL. Intended is its intended value. The factor also says why a
// mass or volume that they measure is uninformative; see [Result].
func (p *Prep) SourceFactor(coverage float64, steps ...Step) (f Factor, intended float64, err error) {
	c := p.singleStep(steps...)
	if err := c.all(); err != nil {
		return Factor{}, 0, err
	}
	why, err := c.uninformative(coverage, len(steps)-1)
	if err != nil {
		return Factor{}, 0, err
	}
	node := c.amount
	if !c.hasAmount {
		node = c.current.concentration
	}
	f, err = c.factor(node, nil)
	f.Uninformative = why
	return f, c.model.Intended(node), err
}

// SwellingFactor is how many times its volume 1 mL of solvent takes up once so much is dissolved
// in it of what a step weighs, or of a packet, as holds 1 g of what counts.
func (p *Prep) SwellingFactor(s Step) (Factor, error) {
	c := p.singleStep(s)
	m, grams, units := c.model, c.model.Constant(1), s.Packet != nil && s.Packet.InUnits
	switch {
	case units && !p.CountsMass():
		return c.factor(grams, nil)
	case !units:
		grams = m.Divide(grams, c.purity())
	}
	return c.factor(m.Add(m.Constant(1), m.Multiply(grams, c.phi())), nil)
}

// WeighedFactor is the mass fraction that a weighed part and the total that it is made up to
// make: of solute or of a packet, or of a solution of the fraction 1. What evaporates of that is
// left out, and what is wrong with the linearity, which weighings share, is among the shared.
func (p *Prep) WeighedFactor(part, total Step) (Factor, error) {
	c := p.newCompiler(&Route{Steps: []Step{part, total}})
	if part.Verb == WeighAliquot {
		one := c.model.Constant(1)
		c.current = &liquid{concentration: one, fraction: one, density: one, volume: one, left: math.Inf(1),
			hasFraction: true, hasDensity: true, bought: true, evaporated: true, medium: c.solvent}
	}
	for i := range 2 {
		if err := c.step(i); err != nil {
			return Factor{}, err
		}
	}
	return c.apart(c.current.fraction, true)
}

// UnitFactor is the strength of a solution in the unit of the target over its
// concentration in g/mL. It is not a constant for mass fractions, where the
// density changes with the strength; ok is then false.
func (p *Prep) UnitFactor() (f Factor, ok bool, err error) {
	if p.Target.Unit.Basis.Traits().InMass {
		return Factor{}, false, nil
	}
	c := p.singleStep(Step{})
	strength, err := c.toUnit(&liquid{concentration: c.model.Constant(1), medium: c.solvent}, p.Target.Unit)
	f, err = c.factor(strength, err)
	return f, true, err
}

// singleStep returns a compiler for a step of some longer route, which uses its
// instruments at other marks as well. That splits the bias of a piece into its
// parts, which at one mark add up to the same.
func (p *Prep) singleStep(steps ...Step) *compiler {
	c := p.newCompiler(&Route{Steps: steps})
	for _, marks := range c.marks {
		marks[-1] = true
	}
	return c
}

// factor propagates a node and sorts the influences into own and shared ones.
func (c *compiler) factor(node uncertainty.Node, err error) (Factor, error) {
	if err != nil {
		return Factor{}, err
	}
	return c.apart(node, false)
}

// apart is factor, which counts the linearity of a balance as shared or not.
func (c *compiler) apart(node uncertainty.Node, sharesLinearity bool) (Factor, error) {
	a, err := c.model.Propagate(node, anyCoverage)
	if err != nil {
		return Factor{}, err
	}
	f := Factor{Mean: a.Value}
	f.Low, _ = c.model.Range(node)
	for i := range a.Budget {
		line := &a.Budget[i]
		r := line.Contribution / a.Value
		switch {
		case r == 0:
		case equipment.IsLinearity(line.Code) && !sharesLinearity || line.Owner.Kind == uncertainty.OneUse || line.Owner.Kind == uncertainty.Tare:
			f.addOwn(line, r)
		default:
			f.Shared = append(f.Shared, sharedPart{line.Identity(), line.Code, r, readingsOf(line)})
		}
	}
	return f, nil
}

// addOwn takes in the relative contribution of an influence that belongs to one step.
func (f *Factor) addOwn(line *uncertainty.Contribution, r float64) {
	f.Own += float64(r * r)
	if of := readingsOf(line); of != (Readings{}) {
		f.Scatter = append(f.Scatter, scatterPart{of, r * r})
	}
}

// readingsOf are those that an influence is known from. One that is known so and belongs to no
// set stands for a set of its own, apart from all that readings are taken at.
func readingsOf(line *uncertainty.Contribution) Readings {
	switch {
	case !(line.DegreesOfFreedom > 0):
		return Readings{}
	case line.Set == (uncertainty.Set{}):
		return Readings{uncertainty.Set{Owner: line.Owner, At: -1 - line.At}, line.DegreesOfFreedom}
	}
	return Readings{line.Set, line.DegreesOfFreedom}
}
