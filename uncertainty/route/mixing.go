package route

import (
	"math"

	"minim/equipment"
	"minim/equipment/quantity"
	"minim/uncertainty"
	"minim/uncertainty/mixed"
	"minim/uncertainty/strengths"
)

// contracted appends the volume (a + b)(1 - ε) of a liquid mixed with a volume b
// of another, which holds so many g of solute. ε is what the step states, what the table of stocks has
// for one and the same liquid, or for ethanol and water that of OIML R 22 at the intended volumes.
func (c *compiler) contracted(i int, a, b uncertainty.Node, liquid, other mixed.Liquid, grams float64) uncertainty.Node {
	m := c.model
	sum := m.Add(a, b)
	epsilon, ground := c.route.Steps[i].Contraction.Value, uncertainty.Ground{}
	switch {
	case c.route.Steps[i].Contraction.Known:
	case liquid.Name == other.Name:
		return c.shrunk(i, sum, mixed.Dissolved{Grams: m.Intended(c.amount), ML: m.Intended(a)}, mixed.Dissolved{Grams: grams, ML: m.Intended(b)})
	case mixed.Alcoholic(liquid, other):
		epsilon, ground.By = liquid.Contracts(m.Intended(a), other, m.Intended(b)), equipment.ByAlcohol
		c.notes.Assume("contraction", liquid.Name, other.Name, 100*epsilon)
	default:
		c.notes.LeaveOut("contraction-not-stated", liquid.Name, other.Name)
	}
	if epsilon == 0 {
		return sum
	}
	return m.Multiply(sum, c.fixed(1-epsilon, contraction, liquid.Name, "", ground))
}

// concentrated in g/mL, or in mL of solute in one, is from where on the volumes of a solution and
// of what dilutes it may not add up (judgement: of most in the table of stocks it is 0.1 % then).
const concentrated = 0.05

// shrunk takes from the volume of two solutions what they take up less together, by the table of stocks,
// rectangular within what its limits leave: a shift, which is not intended.
func (c *compiler) shrunk(i int, sum uncertainty.Node, a, b mixed.Dissolved) uncertainty.Node {
	if c.prep.Solute.Unnamed && max(a.Grams-float64(concentrated*a.ML), b.Grams-float64(concentrated*b.ML)) >= 0 {
		c.notes.LeaveOut("shrinks-unknown", "")
	}
	t, _ := c.prep.tabledSolute()
	s, solute := mixed.Shrinks(t, c.prep.Solute.As, a, b), c.prep.Solute.Name
	if s.Share == 0 || !equipment.IsWater(c.medium.Name) {
		return sum
	}
	code := map[bool]string{false: "shrinks-diluted", true: "grows-diluted"}[s.Share < 0]
	c.notes.Assume(code, solute, 100*math.Abs(s.Share), 100*s.Within, t.Name, s.Trust)
	return c.model.Multiply(sum, c.model.Subtract(c.model.Constant(1), c.model.Influence(uncertainty.Influence{
		Code: shrinking, Owner: c.owner(uncertainty.OneUse, i+1), Group: uncertainty.Group{Kind: Mixing, Name: solute}, Assumed: true,
		Distribution: uncertainty.Rectangular{Low: s.Share - s.Within, High: s.Share + s.Within}, Ground: uncertainty.Ground{By: byStocks, Of: t.Name, Trust: s.Trust},
	})))
}

// dayOf is the day with the liquid that is measured, where that is not the
// solvent of the prep.
func (c *compiler) dayOf(l mixed.Liquid) equipment.Day {
	day := c.day
	if l.Name == c.solvent.Name {
		return day
	}
	day.Solvent = equipment.Solvent{Name: l.Name, Parts: l.Parts}
	day.Solvent.Density, day.Solvent.Tension = l.DensityAndTension()
	if day.Known {
		c.expand(&day, l)
	}
	return day
}

// expand finds by how much a liquid expands that is not the solvent of the prep: by the tables,
// of ethanol and water by their strength, of another mixture between its parts.
func (c *compiler) expand(day *equipment.Day, l mixed.Liquid) {
	own, found := c.expansionOf(l.Name)
	low, high, bounded := equipment.ExpansionBounds(l.Parts, c.expansionOf)
	switch {
	case found:
		day.LiquidExpansion, day.Expands = own, equipment.GroundOfLiquid(l.Name)
	case !math.IsNaN(l.Ethanol):
		day.LiquidExpansion, day.Expands = equipment.AlcoholExpansion(equipment.AlcoholByMass(l.Ethanol), c.prep.Bench.Temperature.Value), uncertainty.Ground{By: equipment.ByAlcohol}
		c.notes.Assume("expands-by-strength", l.Name, quantity.Percent(l.Ethanol)+" v/v", day.LiquidExpansion)
	case bounded:
		day.LiquidExpansion, day.ExpansionSpan, day.ExpandsAssumed = low, high-low, true
		c.notes.Assume("expands-between", l.Name, low, high)
	case day.LiquidExpansion > 0:
		day.ExpandsAssumed = true
		c.notes.Assume("expands-as", l.Name, c.solvent.Name)
	}
}

// expansionOf is the cubic expansion of a pure liquid at the temperature of the bench.
func (c *compiler) expansionOf(name string) (perDegree float64, known bool) {
	liquid, found := equipment.FindLiquid(name)
	switch {
	case name == c.solvent.Name:
		return c.day.LiquidExpansion, c.prep.Solvent.Expansion.Known
	case found && equipment.IsWater(name):
		return equipment.WaterExpansion((20 + c.prep.Bench.Temperature.Value) / 2), true
	}
	return liquid.Expansion, found
}

// densityOf is the density in g/mL at 20 °C of what a solute is dissolved in.
func (c *compiler) densityOf(l mixed.Liquid) (float64, error) {
	solvent := c.prep.Solvent
	density, _ := l.DensityAndTension()
	switch {
	case l.Solute || l.Name == c.solvent.Name:
		if solvent.Density.Known {
			return solvent.Density.Value, nil
		}
		return 0, equipment.Cannot("solvent-without-density", solvent.Name)
	case density > 0:
		return density, nil
	case c.prep.Target.Unit.Basis == strengths.ByMass && l.Last == c.solvent.Name:
		c.notes.LeaveOut("density-of-mixture", l.Name, c.solvent.Name)
		return solvent.Density.Value, nil
	}
	return 0, equipment.Cannot("liquid-without-density", l.Name)
}
