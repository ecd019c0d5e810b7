package route

import (
	"math"
	"slices"

	"minim/equipment"
	"minim/equipment/quantity"
	"minim/uncertainty"
	"minim/uncertainty/strengths"
)

// medium is the liquid that a solute is dissolved in, or a liquid solute.
type medium struct {
	// name of the liquid, or of what has been mixed.
	name string
	// last is the name of the liquid that was mixed in last, "" where none
	// was.
	last string
	// ethanol is the volume fraction of ethanol in ethanol and water, NaN in
	// anything else.
	ethanol float64
	// solute: it is, or holds, the liquid solute itself.
	solute bool
	// parts of a mixture; nil of what was not mixed here.
	parts []equipment.Part
}

// parted lists the parts of the liquid, which of one that was not mixed is itself.
func (l medium) parted() []equipment.Part {
	if l.parts == nil {
		return []equipment.Part{{Name: l.name, Share: 1}}
	}
	return l.parts
}

// partsWith are the parts of a volume v of the liquid and a volume of another.
func (l medium) partsWith(v float64, other medium, added float64) (parts []equipment.Part) {
	if !(v+added > 0) {
		return l.parted()
	}
	for _, p := range l.parted() {
		parts = append(parts, equipment.Part{Name: p.Name, Share: p.Share * v / (v + added)})
	}
	for _, p := range other.parted() {
		share := float64(p.Share * added / (v + added))
		at := slices.IndexFunc(parts, func(q equipment.Part) bool { return q.Name == p.Name })
		if at < 0 {
			parts = append(parts, equipment.Part{Name: p.Name})
			at = len(parts) - 1
		}
		parts[at].Share += share
	}
	return parts
}

// mediumOf is the liquid of a name or an alias.
func mediumOf(name string) medium {
	if liquid, found := equipment.FindLiquid(name); found {
		return medium{name: liquid.Name, ethanol: liquid.Alcohol}
	}
	return medium{name: name, ethanol: math.NaN()}
}

// alcoholic reports whether two liquids are both ethanol and water, so that
// OIML R 22 says how they mix.
func alcoholic(a, b medium) bool { return !math.IsNaN(a.ethanol) && !math.IsNaN(b.ethanol) }

// with is what becomes of a volume v of a liquid, in mL, to which a volume is
// added of another.
func (l medium) with(v float64, other medium, added float64) medium {
	if l.name == other.name {
		return l
	}
	mixed := medium{name: l.name, last: other.name, ethanol: math.NaN(), solute: l.solute, parts: l.partsWith(v, other, added)}
	if l.last != other.name {
		mixed.name += " and " + other.name
	}
	if alcoholic(l, other) {
		_, mixed.ethanol = equipment.MixAlcohol(v, l.ethanol, added, other.ethanol)
	}
	return mixed
}

// upTo is what becomes of a volume v that is made up to a mark with another
// liquid. Of ethanol and water more goes in than mark - v, since they contract.
func (l medium) upTo(v float64, other medium, mark float64) medium {
	added := mark - v
	if l.name != other.name && alcoholic(l, other) {
		for range 20 { // each round leaves a tenth of the error
			volume, _ := equipment.MixAlcohol(v, l.ethanol, added, other.ethanol)
			added = math.Max(0, added+mark-volume)
		}
	}
	return l.with(v, other, added)
}

// contracted appends the volume (a + b)(1 - ε) of a liquid mixed with a volume b
// of another. ε is 0 for one and the same liquid, what the step states, or
// for ethanol and water that of OIML R 22 at the intended volumes.
func (c *compiler) contracted(i int, a, b uncertainty.Node, liquid, other medium) uncertainty.Node {
	m := c.model
	sum := m.Add(a, b)
	epsilon := c.route.Steps[i].Contraction.Value
	switch {
	case c.route.Steps[i].Contraction.Known || liquid.name == other.name:
	case alcoholic(liquid, other):
		v, added := m.Intended(a), m.Intended(b)
		volume, _ := equipment.MixAlcohol(v, liquid.ethanol, added, other.ethanol)
		epsilon = 1 - volume/(v+added)
		c.notes.Assume("contraction", liquid.name, other.name, 100*epsilon)
	default:
		c.notes.LeaveOut("contraction-not-stated", liquid.name, other.name)
	}
	if epsilon == 0 {
		return sum
	}
	return m.Multiply(sum, c.fixed(1-epsilon, contraction, liquid.name, "", c.groundOfContraction(i)))
}

// dayOf is the day with the liquid that is measured, where that is not the
// solvent of the prep.
func (c *compiler) dayOf(l medium) equipment.Day {
	day := c.day
	if l.name == c.solvent.name {
		return day
	}
	liquid, found := equipment.FindLiquid(l.name)
	day.Solvent = equipment.Solvent{Name: l.name, Density: liquid.Density, Tension: liquid.SurfaceTension, Parts: l.parts}
	if !found && !math.IsNaN(l.ethanol) {
		strength := equipment.AlcoholByMass(l.ethanol)
		day.Solvent.Density, day.Solvent.Tension = equipment.AlcoholDensity(strength), equipment.AlcoholTension(strength)
	}
	if day.Known {
		c.expand(&day, l)
	}
	return day
}

// expand finds by how much a liquid expands that is not the solvent of the prep: by the tables,
// of ethanol and water by their strength, of another mixture between its parts.
func (c *compiler) expand(day *equipment.Day, l medium) {
	own, found := c.expansionOf(l.name)
	low, high, bounded := equipment.ExpansionBounds(l.parts, c.expansionOf)
	switch {
	case found:
		day.LiquidExpansion, day.Expands = own, equipment.GroundOfLiquid(l.name)
	case !math.IsNaN(l.ethanol):
		day.LiquidExpansion, day.Expands = equipment.AlcoholExpansion(equipment.AlcoholByMass(l.ethanol), c.prep.Bench.Temperature.Value), uncertainty.Ground{By: equipment.ByAlcohol}
		c.notes.Assume("expands-by-strength", l.name, quantity.Percent(l.ethanol)+" v/v", day.LiquidExpansion)
	case bounded:
		day.LiquidExpansion, day.ExpansionSpan, day.ExpandsAssumed = low, high-low, true
		c.notes.Assume("expands-between", l.name, low, high)
	case day.LiquidExpansion > 0:
		day.ExpandsAssumed = true
		c.notes.Assume("expands-as", l.name, c.solvent.name)
	}
}

// expansionOf is the cubic expansion of a pure liquid at the temperature of the bench.
func (c *compiler) expansionOf(name string) (perDegree float64, known bool) {
	liquid, found := equipment.FindLiquid(name)
	switch {
	case name == c.solvent.name:
		return c.day.LiquidExpansion, c.prep.Solvent.Expansion.Known
	case found && equipment.IsWater(name):
		return equipment.WaterExpansion((20 + c.prep.Bench.Temperature.Value) / 2), true
	}
	return liquid.Expansion, found
}

// densityOf is the density in g/mL at 20 °C of what a solute is dissolved in.
func (c *compiler) densityOf(l medium) (float64, error) {
	solvent := c.prep.Solvent
	liquid, found := equipment.FindLiquid(l.name)
	switch {
	case l.solute || l.name == c.solvent.name:
		if solvent.Density.Known {
			return solvent.Density.Value, nil
		}
		return 0, equipment.Cannot("solvent-without-density", solvent.Name)
	case found:
		return liquid.Density, nil
	case !math.IsNaN(l.ethanol):
		return equipment.AlcoholDensity(equipment.AlcoholByMass(l.ethanol)), nil
	case c.prep.Target.Unit.Basis == strengths.ByMass && l.last == c.solvent.name:
		c.notes.LeaveOut("density-of-mixture", l.name, c.solvent.name)
		return solvent.Density.Value, nil
	}
	return 0, equipment.Cannot("liquid-without-density", l.name)
}
