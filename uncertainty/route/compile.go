package route

import (
	"fmt"
	"math"

	"minim/equipment"
	"minim/uncertainty"
)

// compiled is a route as a measurement model.
type compiled struct {
	model *uncertainty.Model
	// strength of the wanted solution, in the unit of the target.
	strength uncertainty.Node
	// masses are the weighed amounts of solute, by step.
	masses []weighed
	// made is the volume of the wanted solution in mL, leftOver all that was
	// made and is not wanted, soluteUsed the mass in g that is used up.
	made, leftOver, soluteUsed float64
	notes                      equipment.Notes
}

// weighed is one weighing of solute.
type weighed struct {
	step int
	mass uncertainty.Node
}

// compiler walks along the steps of one route and appends to its model.
type compiler struct {
	compiled
	prep  *Prep
	route *Route
	day   equipment.Day
	marks map[pieceOf]map[float64]bool
	brew
}

// brew is what stands on the bench. Nodes are masses in g, volumes in mL and
// concentrations in g/mL or g/g.
type brew struct {
	// amount of solute in the solid or the aliquot at hand, when hasAmount.
	amount    uncertainty.Node
	hasAmount bool
	// volume of the aliquot, or of the mixture so far.
	volume uncertainty.Node
	// parent of the aliquot, and the solution that is being made or finished.
	current *liquid
	// part is the mass of the weighed aliquot, zeroed in step zeroed.
	part   uncertainty.Node
	zeroed string
}

// liquid is a finished solution.
type liquid struct {
	concentration uncertainty.Node
	// fraction is the mass fraction, for a solution made by weighing.
	fraction    uncertainty.Node
	hasFraction bool
	// left is the volume not yet taken, in mL; infinite for a stock.
	left float64
	// bought: a stock, which is not made here.
	bought bool
}

type pieceOf struct {
	measure *equipment.Measure
	piece   int
}

// compile turns a route into a model. It returns an *equipment.Impossible error
// when the bench cannot do a step.
func (p *Prep) compile(r *Route) (*compiled, error) {
	c := &compiler{prep: p, route: r, marks: marksOf(r)}
	c.model = new(uncertainty.Model)
	c.noteMaterials()
	c.day = c.newDay()
	for i := range r.Steps {
		if err := c.step(i); err != nil {
			return nil, err
		}
	}
	c.finish()
	return &c.compiled, nil
}

// marksOf collects the marks at which a route uses each piece.
func marksOf(r *Route) map[pieceOf]map[float64]bool {
	marks := make(map[pieceOf]map[float64]bool)
	for _, s := range r.Steps {
		if s.Measure == nil {
			continue
		}
		key := pieceOf{s.Measure, max(s.Piece, 1)}
		if marks[key] == nil {
			marks[key] = make(map[float64]bool)
		}
		marks[key][s.Amount] = true
	}
	return marks
}

func (c *compiler) use(i int) equipment.Use {
	s := &c.route.Steps[i]
	return equipment.Use{
		Model: c.model, Notes: &c.notes, Day: c.day,
		Step:        fmt.Sprintf("step %d of %s", i+1, c.route.Name),
		Piece:       s.Piece,
		StepReading: s.Reading, BenchReading: c.prep.Bench.Reading,
		Marks: len(c.marks[pieceOf{s.Measure, max(s.Piece, 1)}]),
	}
}

// newDay appends the temperature of the bench on the day of this route.
func (c *compiler) newDay() equipment.Day {
	b, s := c.prep.Bench, c.prep.Solvent
	switch {
	case !b.Temperature.Known:
		c.notes.LeaveOut("temperature of the bench (not stated)")
		return equipment.Day{}
	case !s.Expansion.Known:
		c.notes.LeaveOut("thermal expansion of " + s.Name + " (not stated)")
	}
	if !b.Within.Known {
		c.notes.LeaveOut("variation of the bench temperature (not stated)")
	}
	middle := b.Temperature.Value - 20
	excess := c.model.Influence(uncertainty.Influence{
		Name: "temperature of the bench", Owner: "day of " + c.route.Name, Group: "temperature", Unit: "°C",
		Distribution: uncertainty.Rectangular{Low: middle - b.Within.Value, High: middle + b.Within.Value},
	})
	return equipment.Day{Known: true, Excess: excess, LiquidExpansion: s.Expansion.Value}
}

// noteMaterials notes what is not counted whatever the steps are.
func (c *compiler) noteMaterials() {
	if c.prep.Solvent.Name != "water" {
		c.notes.LeaveOut("height of the meniscus of " + c.prep.Solvent.Name + " in glass that is adjusted with water")
	}
}

// material appends a property of the solute, the solvent or a stock.
func (c *compiler) material(owner, name, unit string, e Estimate, assumed bool) uncertainty.Node {
	if e.Distribution == nil {
		return c.model.Constant(e.Value)
	}
	return c.model.Influence(uncertainty.Influence{
		Name: name, Owner: owner, Group: owner, Unit: unit,
		Distribution: e.Distribution, Nominal: e.Distribution.Mean(), Assumed: assumed,
	})
}

func (c *compiler) step(i int) error {
	s := &c.route.Steps[i]
	switch s.Verb {
	case Weigh:
		return c.weigh(i)
	case Start:
		c.start(s.Stock)
		return nil
	case MakeUpTo:
		return c.makeUpTo(i)
	case Take:
		return c.take(i)
	case Add:
		return c.add(i)
	case WeighAliquot:
		return c.weighAliquot(i)
	case WeighUpTo:
		return c.weighUpTo(i)
	default:
		panic(fmt.Sprintf("route: unknown verb %q", s.Verb))
	}
}

// weigh adds solute = m b assay form.
func (c *compiler) weigh(i int) error {
	s, solute := &c.route.Steps[i], &c.prep.Solute
	mass, err := s.Balance.Weigh(c.use(i), s.Amount)
	if err != nil {
		return err
	}
	mass = c.buoyancy(mass)
	c.masses = append(c.masses, weighed{i, mass})
	c.soluteUsed += s.Amount
	c.notes.LeaveOut("what stays on the weighing boat")
	assay := solute.Assay
	if !assay.Known {
		c.notes.LeaveOut("impurity of the " + solute.Name + " (assay not stated)")
		assay.Value = 1
	}
	amount := c.model.Multiply(mass, c.material(solute.Name, "assay of the "+solute.Name, "", assay, false))
	if solute.FormFactor != 1 {
		amount = c.model.Multiply(amount, c.model.Constant(solute.FormFactor))
	}
	c.addSolute(amount)
	return nil
}

// buoyancy multiplies a mass by (1 - ρa/8000)/(1 - ρa/ρ) with ρa = 1.2 kg/m³
// (the conventional reference of JCGM 101, 9.3.1.2), when ρ is stated.
func (c *compiler) buoyancy(mass uncertainty.Node) uncertainty.Node {
	density := c.prep.Solute.Density
	if density == 0 {
		c.notes.LeaveOut("buoyancy of the air in weighing " + c.prep.Solute.Name + " (density not stated)")
		return mass
	}
	b := (1 - 0.0012/8.0) / (1 - 0.0012/density)
	return c.model.Multiply(mass, c.model.Influence(uncertainty.Influence{
		Name: "buoyancy of the air", Owner: c.prep.Solute.Name, Group: c.prep.Solute.Name,
		Distribution: uncertainty.Rectangular{Low: b, High: b}, Nominal: 1,
	}))
}

func (c *compiler) addSolute(amount uncertainty.Node) {
	if c.hasAmount {
		amount = c.model.Add(c.amount, amount)
	}
	c.amount, c.hasAmount = amount, true
}

func (c *compiler) start(s *Stock) {
	if s.Strength.Distribution == nil {
		c.notes.LeaveOut("uncertainty of the strength of " + s.Name + " (not stated)")
	}
	c.current = &liquid{
		concentration: c.material(s.Name, "strength of "+s.Name, "g/mL", s.Strength, false),
		left:          math.Inf(1), bought: true,
	}
}

// finish converts the strength to the unit of the target and adds up volumes.
func (c *compiler) finish() {
	c.settle()
	factor := c.prep.Target.Unit.perGramPerML(c.prep.Solute.MolarMass)
	c.strength = c.model.Multiply(c.current.concentration, c.model.Constant(factor))
	c.made = c.current.left
	c.leftOver += math.Max(0, c.made-c.prep.Volume)
}

// settle ends a dilution with measured diluent: what is mixed is a solution.
func (c *compiler) settle() {
	if c.current == nil {
		c.become(c.model.Divide(c.amount, c.volume), c.model.Intended(c.volume))
	}
}

// become makes a finished solution of what is at hand.
func (c *compiler) become(concentration uncertainty.Node, volume float64) {
	c.current = &liquid{concentration: concentration, left: volume}
	c.hasAmount = false
}
