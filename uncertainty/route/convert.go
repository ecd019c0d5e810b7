package route

import (
	"fmt"

	"minim/equipment/quantity"
	"minim/uncertainty"
	"minim/uncertainty/mixed"
	"minim/uncertainty/strengths"
)

// gramsPerML converts a strength to a mass concentration γ, with the properties
// of the solute at their estimates, by the model of fromBasis:
//
//	mol/L: γ = c M    % w/w: γ = w ρ0/(1 - w (1 - φ ρ0))    % v/v: γ = q ρ    U/mL: γ = s/a
//
// Its error names the property that the prep does not state. Where the models carry
// another quantity in place of a mass (see carried.go), γ is that quantity in a mL.
func (p *Prep) gramsPerML(s strengths.Strength) (float64, error) {
	if err := p.canConvert(s); err != nil {
		return 0, err
	}
	c := p.atEstimates()
	x, err := c.fromBasis(c.model.Constant(s.Value/s.Unit.Per), s.Unit.Basis, c.solvent)
	if err != nil {
		return 0, err
	}
	return c.model.Intended(x), nil
}

// fromGramsPerML is the inverse of gramsPerML. What it converts to must be convertible.
func (p *Prep) fromGramsPerML(g float64, u strengths.Unit) float64 {
	c := p.atEstimates()
	return c.model.Intended(must(c.toUnit(c.liquidOf(g), u)))
}

// atEstimates is a compiler of a model in which all properties are exactly their estimates.
func (p *Prep) atEstimates() *compiler {
	c := &compiler{prep: p, exact: true, solvent: mixed.Liquid{Name: p.Solvent.Name}}
	c.model = new(uncertainty.Model)
	return c
}

// liquidOf is a solution of a concentration in g/mL in the solvent.
func (c *compiler) liquidOf(concentration float64) *liquid {
	return &liquid{concentration: c.model.Constant(concentration), medium: c.solvent}
}

// toUnit appends the strength of a solution in a unit.
func (c *compiler) toUnit(l *liquid, u strengths.Unit) (uncertainty.Node, error) {
	m, x, needs := c.model, l.concentration, &u.Basis.Traits().Needs
	switch {
	case u.Basis == c.prep.carries() || needs.Key == "":
	case u.Basis.Traits().InMass:
		w, _, err := c.byMass(l)
		if err != nil {
			return 0, err
		}
		x = w
	case needs.InGram:
		x = m.Multiply(x, c.property(needs))
	default:
		x = m.Divide(x, c.property(needs))
	}
	return m.Multiply(x, c.converted(u, false)), nil
}

// fromUnit is the inverse of toUnit, for a node in a unit, dissolved in a
// medium.
func (c *compiler) fromUnit(x uncertainty.Node, u strengths.Unit, l mixed.Liquid) (uncertainty.Node, error) {
	return c.fromBasis(c.model.Multiply(x, c.converted(u, true)), u.Basis, l)
}

// fromBasis appends the mass concentration of what is counted in 1 mL, or in 1 g.
func (c *compiler) fromBasis(x uncertainty.Node, b strengths.Basis, l mixed.Liquid) (uncertainty.Node, error) {
	m, needs := c.model, &b.Traits().Needs
	switch {
	case b == c.prep.carries() || needs.Key == "":
		return x, nil
	case b.Traits().InMass:
		concentration, _, err := c.byVolume(x, l)
		return concentration, err
	case needs.InGram:
		return m.Divide(x, c.property(needs)), nil
	}
	return m.Multiply(x, c.property(needs)), nil
}

// stated is a property as the prep states it; none is needed for a mass in a volume.
func (p *Prep) stated(n *strengths.Property) Estimate {
	switch {
	case n.Key == "":
		return Estimate{Value: 1, Known: true}
	case n.Parse != nil:
		return p.Solute.Properties[n.Key]
	case n.Table == "solvent":
		return Estimate{Value: p.Solvent.Density.Value, Known: p.Solvent.Density.Known}
	case n.Weighed:
		return p.Solute.Density
	}
	return p.Solute.MolarMass
}

// property appends what turns strengths of a basis into mass concentrations.
func (c *compiler) property(n *strengths.Property) uncertainty.Node {
	form := c.prep.Solute.Name
	if n.Weighed {
		form = c.prep.Solute.Weighed()
	}
	return c.propertyOf(form, n.Code(), n.Unit, c.prep.stated(n))
}

// propertyOf appends a property of the solute in one of its forms.
func (c *compiler) propertyOf(form string, code uncertainty.Code, unit string, e Estimate) uncertainty.Node {
	return c.material(uncertainty.Substance, form, code, unit, e)
}

// density appends that of what is weighed or measured.
func (c *compiler) density() uncertainty.Node { return c.property(&strengths.ByVolume.Traits().Needs) }

// MassFraction of a solution with a mass concentration γ in g/mL, with the
// properties of the solute at their estimates. The density of the solvent must be
// known.
func (p *Prep) MassFraction(concentration float64) float64 {
	c := p.atEstimates()
	w, _, err := c.byMass(c.liquidOf(concentration))
	return c.model.Intended(must(w, err))
}

// Density in g/mL of a solution with a mass fraction, with the properties of the solute
// at their estimates. The density of the solvent must be known.
func (p *Prep) Density(massFraction float64) float64 {
	c := p.atEstimates()
	_, density, err := c.byVolume(c.model.Constant(massFraction), c.solvent)
	return c.model.Intended(must(density, err))
}

// must is what a prep has that was made sure to state what it needs.
func must[T any](x T, err error) T {
	if err != nil {
		panic("route: what is asked for was not made sure of: " + err.Error())
	}
	return x
}

// ConcentrationOf is a strength in the unit of the target as a concentration in g/mL.
func (p *Prep) ConcentrationOf(strength float64) float64 {
	return must(p.gramsPerML(strengths.Strength{Value: strength, Unit: p.Target.Unit}))
}

// StrengthOf is a concentration in g/mL as a strength in the unit of the target.
func (p *Prep) StrengthOf(concentration float64) float64 {
	return p.fromGramsPerML(concentration, p.Target.Unit)
}

// Concentration reads a strength, such as "5 % w/v", in g/mL.
func (p *Prep) Concentration(text string) (float64, error) {
	s, err := p.ParseStrength(text)
	if err != nil {
		return 0, err
	}
	return p.gramsPerML(s)
}

// ParseStrength reads a strength that the solute can have.
func (p *Prep) ParseStrength(text string) (strengths.Strength, error) {
	s, err := strengths.Parse(text)
	if err == nil {
		err = p.errVolumes(s)
	}
	if err != nil {
		return strengths.Strength{}, err
	}
	grams, err := p.gramsPerML(s)
	switch {
	case err != nil:
		return strengths.Strength{}, err
	case s.Unit.Basis.Traits().Part && s.Value > s.Unit.Per:
		return strengths.Strength{}, &quantity.Error{Found: text, Message: fmt.Sprintf("%q is more than 100 %%", text)}
	case !p.carries().Traits().Limit.Holds(grams):
		return strengths.Strength{}, &quantity.Error{Found: text, Message: fmt.Sprintf("no solution has a strength of %q", text), Hint: p.carries().Traits().Outside.Hint}
	}
	return s, nil
}

// CanCompare reports whether a strength can be put beside the target: neither could not
// be read, and no mistake elsewhere stands between their units.
func (p *Prep) CanCompare(s strengths.Strength) bool {
	if s.Value == 0 || p.Target.Value == 0 {
		return false
	}
	return s.Unit == p.Target.Unit || p.canConvert(s) == nil && p.canConvert(p.Target) == nil
}

// InTargetUnit is the value of a strength in the unit of the target.
func (p *Prep) InTargetUnit(s strengths.Strength) float64 { return p.In(p.Target.Unit, s) }

// In is the value of a strength in another unit; of two equal units it is the
// very same number.
func (p *Prep) In(u strengths.Unit, s strengths.Strength) float64 {
	if s.Unit == u || s.Value == 0 {
		return s.Value
	}
	grams, err := p.gramsPerML(s)
	if err != nil {
		return 0
	}
	return p.fromGramsPerML(grams, u)
}
