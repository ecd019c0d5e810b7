package route

import (
	"fmt"
	"math"

	"minim/equipment"
	"minim/uncertainty"
	"minim/uncertainty/mixed"
)

// compiled is a route as a measurement model.
type compiled struct {
	model *uncertainty.Model
	// strength of the wanted solution, in the unit of the target.
	strength uncertainty.Node
	// masses are the weighed amounts that solutions are made from, volumes are measured out.
	masses  []weighed
	volumes []measuredOut
	// made is the volume of the wanted solution in mL, leftOver all that was
	// made and is not wanted, soluteUsed the mass in g that is used up.
	made, leftOver, soluteUsed float64
	notes                      equipment.Notes
}

// weighed is the mass of what was weighed for one solution: solute in one or
// more steps, of which step is the last, or an aliquot.
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
	// before is the concentration that each piece last held.
	before map[pieceOf]uncertainty.Node
	// at is the step that is being compiled, making the last one that made a
	// solution, or went on mixing one; both from 0.
	at, making int
	// solutions are those made, by the step that made them; stocks those in use.
	solutions map[int]*liquid
	stocks    map[*Stock]*liquid
	// parts are what the steps bring.
	parts map[int]part
	// solvent of the prep.
	solvent mixed.Liquid
	// exact: materials are what they are estimated to be.
	exact bool
	brew
}

// brew is what stands on the bench. Nodes are masses in g, volumes in mL and
// concentrations in g/mL or g/g.
type brew struct {
	// amount of solute in the solid or the aliquot at hand, when hasAmount; of
	// the solid also the whole mass, with what is not solute in it.
	amount, mass uncertainty.Node
	hasAmount    bool
	// unlifted: the buoyancy of the air is not counted of a solid in it.
	unlifted bool
	// volume of the aliquot, or of the mixture so far, and of a liquid solute,
	// when hasVolume.
	volume    uncertainty.Node
	hasVolume bool
	// medium of the aliquot or the mixture, and of a liquid solute.
	medium mixed.Liquid
	// parent of the aliquot, and the solution that is being made or finished.
	current *liquid
	// part is the mass of the weighed aliquot, of a volume in mL, zeroed in step
	// zeroed.
	part       uncertainty.Node
	partVolume float64
	zeroed     uncertainty.Owner
}

// liquid is a finished solution.
type liquid struct {
	// name of a stock; "" for one that was made.
	name          string
	concentration uncertainty.Node
	// fraction is the mass fraction, for a solution made by weighing.
	fraction    uncertainty.Node
	hasFraction bool
	// density in g/mL of a stock, where it has one of its own.
	density    uncertainty.Node
	hasDensity bool
	// left is the volume not yet taken, in mL, as intended, and volume its node. Of a
	// stock whose volume is not stated left is infinite, and there is no volume.
	left   float64
	volume uncertainty.Node
	// made is the volume that was made, in mL, as intended.
	made float64
	// discarded: what is left of it is counted as left over.
	discarded bool
	// bought: a stock, which is not made here.
	bought bool
	// medium that the solute is dissolved in.
	medium mixed.Liquid
	// evaporated: what evaporates is already counted.
	evaporated bool
}

type pieceOf struct {
	measure *equipment.Measure
	piece   int
}

// compile turns a route into a model. It returns an [equipment.Cannot] error
// when the bench cannot do a step.
func (p *Prep) compile(r *Route) (*compiler, error) {
	c := p.newCompiler(r)
	for i := range r.Steps {
		if err := c.checkedStep(i); err != nil {
			return nil, err
		}
	}
	if err := c.finish(); err != nil {
		return nil, err
	}
	if _, err := c.model.Change(0, p.Known); err != nil {
		return nil, err
	}
	return c, nil
}

// newCompiler returns a compiler that has taken no step yet.
func (p *Prep) newCompiler(r *Route) *compiler {
	c := &compiler{
		prep: p, route: r, marks: p.marksOf(r), before: make(map[pieceOf]uncertainty.Node),
		solutions: make(map[int]*liquid), stocks: make(map[*Stock]*liquid),
		parts: make(map[int]part),
	}
	c.model = &uncertainty.Model{AssumedFactor: p.AssumedFactor}
	c.solvent = mixed.Of(p.Solvent.Name)
	c.number()
	c.medium = c.solvent
	c.day = c.newDay()
	return c
}

// marksOf collects the marks at which a route, and the ladder after it, uses
// each piece.
func (p *Prep) marksOf(r *Route) map[pieceOf]map[float64]bool {
	marks := make(map[pieceOf]map[float64]bool)
	use := func(key pieceOf, mark float64) {
		if marks[key] == nil {
			marks[key] = make(map[float64]bool)
		}
		marks[key][mark] = true
	}
	for _, s := range r.Steps {
		if s.Measure == nil {
			continue
		}
		use(s.piece(), s.Amount)
		if line := s.Measure.Line; line.With != nil {
			use(pieceOf{line.With, 1}, line.Each)
		}
	}
	if p.Ladder != nil {
		for _, s := range p.Ladder.Strengths {
			use(pieceOf{p.Ladder.With, 1}, p.aliquot(s))
			use(pieceOf{p.Ladder.In, 1}, p.Ladder.In.Capacity)
		}
		if line := p.Ladder.In.Line; line.With != nil {
			use(pieceOf{line.With, 1}, line.Each)
		}
	}
	return marks
}

func (c *compiler) use(i int) equipment.Use {
	s := &c.route.Steps[i]
	return equipment.Use{
		Model: c.model, Notes: &c.notes, Day: c.day,
		Step:        c.owner(uncertainty.OneUse, i+1),
		Piece:       s.Piece,
		StepReading: s.Reading, BenchReading: c.prep.Bench.Reading,
		Emptying: s.Emptied(),
		Marks:    len(c.marks[s.piece()]), LineMarks: c.lineMarks(s.Measure),
	}
}

// owner is a step, a rung or the day of the route.
func (c *compiler) owner(kind uncertainty.Kind, step int) uncertainty.Owner {
	return uncertainty.Owner{Kind: kind, Name: c.route.Name, Step: step}
}

// lineMarks is the number of marks of the measure that a pen line was set with.
func (c *compiler) lineMarks(k *equipment.Measure) int {
	if k == nil {
		return 0
	}
	return len(c.marks[pieceOf{k.Line.With, 1}])
}

// newDay appends the temperature of the bench on the day of this route.
func (c *compiler) newDay() equipment.Day {
	b, s := c.prep.Bench, c.prep.Solvent
	day := equipment.Day{
		Solvent:         equipment.Solvent{Name: s.Name, Density: s.Density.Value, Tension: s.Tension},
		MeniscusIgnored: b.MeniscusIgnored,
	}
	switch {
	case !b.Temperature.Known:
		c.notes.LeaveOut("temperature", "")
		return day
	case !s.Expansion.Known:
		c.notes.LeaveOut("expansion-of-solvent", s.Name)
	}
	if !b.Within.Known {
		c.notes.LeaveOut("variation-of-temperature", "")
	}
	middle := b.Temperature.Value - 20
	day.Known = true
	day.Excess = c.model.Influence(uncertainty.Influence{
		Code: temperatureOfDay, Owner: c.owner(uncertainty.Day, 0), Group: uncertainty.Group{Kind: uncertainty.Day}, Unit: "°C",
		Distribution: uncertainty.Rectangular{Low: middle - b.Within.Value, High: middle + b.Within.Value},
	})
	day.LiquidExpansion, day.Expands = s.expansionAt(b.Temperature.Value), s.groundOfExpansion()
	return day
}

// expansionAt is the cubic expansion of the solvent between 20 °C and a
// temperature: stated, or for water by the density formula of Tanaka et al. in
// the middle of the range, or that of its known name.
func (s *Solvent) expansionAt(t float64) float64 {
	if equipment.IsWater(s.Name) && !s.ExpansionStated {
		return equipment.WaterExpansion((20 + t) / 2)
	}
	return s.Expansion.Value
}

// material appends a property of the solute, of a stock or of a packet, as it is stated.
func (c *compiler) material(kind uncertainty.Kind, of string, code uncertainty.Code, unit string, e Estimate) uncertainty.Node {
	return c.materialBy(kind, of, code, unit, e, uncertainty.Ground{}, false)
}

// materialBy is material for what may rest on another ground, or be assumed.
func (c *compiler) materialBy(kind uncertainty.Kind, of string, code uncertainty.Code, unit string, e Estimate, g uncertainty.Ground, assumed bool) uncertainty.Node {
	in := uncertainty.Influence{
		Code: code, Owner: uncertainty.Owner{Kind: kind, Name: of}, Group: uncertainty.Group{Kind: kind, Name: of}, Unit: unit, Ground: g, Assumed: assumed,
	}
	switch {
	case c.exact:
		return c.model.Constant(e.Value)
	case e.Distribution == nil:
		return c.model.Name(c.model.Constant(e.Value), in)
	}
	in.Distribution, in.Nominal = e.Distribution, uncertainty.SummaryOf(e.Distribution).Mean
	return c.model.Influence(in)
}

// checkedStep is step on a balance that carries what it weighs.
func (c *compiler) checkedStep(i int) error {
	if err := c.mustCarry(i); err != nil {
		return err
	}
	return c.step(i)
}

func (c *compiler) step(i int) error {
	s := &c.route.Steps[i]
	if err := c.prep.Lacks(s); err != nil {
		return equipment.Cannot("property-lacking", "", err.Error())
	}
	if why := c.prep.NotPure(); s.Verb.Traits().BringsSolute && why.Code == "is-gas" {
		return equipment.Cannot(why.Code, why.Subject)
	}
	c.at = i
	if then := s.Verb.Traits().then; then == solution || then == mixture {
		c.making = i
	}
	switch s.Verb {
	case Weigh:
		return c.weigh(i)
	case UsePacket:
		c.packet(s)
		return nil
	case Measured:
		return c.measure(i)
	case Start:
		return c.start(s.Stock)
	case DissolveIn:
		return c.dissolve(i)
	case MakeUpTo:
		return c.makeUpTo(i)
	case Take, Pour:
		return c.take(i)
	case TakeAll:
		return c.takeAll(i)
	case Add:
		return c.add(i)
	case Strengthen:
		return c.strengthen(i)
	case AddSolute:
		return c.addSoluteTo(i)
	case WeighAliquot:
		return c.weighAliquot(i)
	case WeighUpTo:
		return c.weighUpTo(i)
	default:
		panic(fmt.Sprintf("route: unknown verb %q", s.Verb))
	}
}

// finish converts the strength to the unit of the target and adds up volumes.
func (c *compiler) finish() (err error) {
	c.settle()
	if c.strength, err = c.toUnit(c.current, c.prep.Target.Unit); err != nil {
		return err
	}
	c.call(c.strength, strengthInUnit, "", c.prep.Target.Unit.Name)
	c.made = c.current.left
	c.leftOver += math.Max(0, c.made-c.prep.Volume)
	return nil
}

// settle ends a dilution with measured diluent: what is mixed is a solution.
func (c *compiler) settle() {
	if c.current == nil {
		c.become(c.model.Divide(c.amount, c.volume), c.volume)
	}
}

// become makes a finished solution of what is at hand, and warns when more is
// in it than dissolves.
func (c *compiler) become(concentration, volume uncertainty.Node) {
	c.call(concentration, inSolution, "", c.inOne())
	c.current = &liquid{concentration: concentration, left: c.model.Intended(volume), volume: volume, medium: c.medium}
	c.current.made = c.current.left
	c.solutions[c.making] = c.current
	c.hasAmount, c.hasVolume, c.unlifted = false, false, false
	c.warnOfStrength(c.model.Intended(concentration))
	c.noteTraces(concentration)
}
