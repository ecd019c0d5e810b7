package route

import (
	"math"

	"minim/equipment"
	"minim/uncertainty"
	"minim/uncertainty/mixed"
	"minim/uncertainty/strengths"
)

// call names a quantity of the step at hand, so that a report can write it down. Models that only
// convert strengths have no route, and no names.
func (c *compiler) call(n uncertainty.Node, code uncertainty.Code, of, unit string) uncertainty.Node {
	if c.route == nil {
		return n
	}
	return c.model.Name(n, uncertainty.Influence{Code: code, Group: uncertainty.Group{Name: of}, Owner: c.owner(uncertainty.OneUse, c.at+1), Unit: unit})
}

// fixed appends an exactly known figure of a material.
func (c *compiler) fixed(x float64, code uncertainty.Code, of, unit string, g uncertainty.Ground) uncertainty.Node {
	n := c.model.Constant(x)
	if c.route == nil {
		return n
	}
	return c.model.Name(n, uncertainty.Influence{Code: code, Group: uncertainty.Group{Kind: uncertainty.Substance, Name: of}, Unit: unit, Ground: g})
}

// converted appends the factor from what the models carry to a unit, or back.
func (c *compiler) converted(u strengths.Unit, back bool) uncertainty.Node {
	by, unit, carried := u.Per, u.Name, c.inOne()
	if u.Basis.Traits().InMass {
		carried = "g/g"
	}
	from := carried
	if back {
		by, unit, from = 1/by, from, unit
	}
	if by == 1 {
		return c.model.Constant(1)
	}
	return c.fixed(by, conversion, u.Name, unit+" / ("+from+")", uncertainty.Ground{By: uncertainty.Definition})
}

// inOne is the unit of what the models carry in 1 mL.
func (c *compiler) inOne() string { return c.prep.SoluteUnit() + "/mL" }

// Model is the measurement model of a route that the bench can do, and its strength.
func (p *Prep) Model(r *Route) (m *uncertainty.Model, strength uncertainty.Node, err error) {
	c, err := p.compile(r)
	if err != nil {
		return nil, 0, err
	}
	return c.model, c.strength, nil
}

// groundOfDensity is what the density of a liquid rests on.
func (c *compiler) groundOfDensity(l mixed.Liquid, density float64) uncertainty.Ground {
	known, found := equipment.FindLiquid(l.Name)
	switch {
	case found && known.Density == density:
		return equipment.GroundOfLiquid(l.Name)
	case !found && !math.IsNaN(l.Ethanol):
		return uncertainty.Ground{By: equipment.ByAlcohol}
	}
	return uncertainty.Ground{}
}

// groundOfExpansion is what the expansion of the solvent rests on.
func (s *Solvent) groundOfExpansion() uncertainty.Ground {
	switch {
	case s.ExpansionStated || !s.Expansion.Known:
		return uncertainty.Ground{}
	case equipment.IsWater(s.Name):
		return uncertainty.Ground{By: equipment.ByWater}
	}
	return equipment.GroundOfLiquid(s.Name)
}

// What the figures of materials rest on: the table of stocks, the density of a stock, of
// buoyancy the density in g/mL of what is weighed, and what diffuses out of what stands open.
const (
	byStocks   uncertainty.By = "table of stocks"
	byDensity  uncertainty.By = "density of a stock"
	byBuoyancy uncertainty.By = "buoyancy"
	byVapour   uncertainty.By = "diffusion of vapour"
)
