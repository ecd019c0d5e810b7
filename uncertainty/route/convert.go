package route

import "minim/uncertainty"

// gramsPerML converts a strength to a mass concentration γ, with the properties
// of the solute at their estimates:
//
//	mol/L: γ = c M    % w/w: γ = w ρ0/(1 - w (1 - φ ρ0))    % v/v: γ = q ρ    U/mL: γ = s/a
//
// Its error names the property that the prep does not state. Where the models carry
// another quantity in place of a mass (see carried.go), γ is that quantity in a mL.
func (p *Prep) gramsPerML(s Strength) (float64, error) {
	x := s.Value / s.Unit.per
	if err := p.canConvert(s); err != nil {
		return 0, err
	}
	switch s.Unit.basis {
	case p.own:
		return x, nil
	case byAmount:
		return x * p.Solute.MolarMass.Value, nil
	case byMass:
		density, phi := p.Solvent.Density.Value, p.phi().Value
		return x * density / (1 - float64(x*(1-float64(phi*density)))), nil
	case byVolume:
		return x * p.Solute.Density.Value, nil
	case byActivity:
		return x / p.Solute.Activity.Value, nil
	default:
		return x, nil
	}
}

// fromGramsPerML is the inverse of gramsPerML.
func (p *Prep) fromGramsPerML(g float64, u Unit) float64 {
	switch u.basis {
	case p.own:
	case byAmount:
		g /= p.Solute.MolarMass.Value
	case byMass:
		density := p.Solvent.Density.Value
		g /= density + float64(g*(1-float64(p.phi().Value*density)))
	case byVolume:
		g /= p.Solute.Density.Value
	case byActivity:
		g *= p.Solute.Activity.Value
	}
	return g * u.per
}

// phi is the apparent specific volume of the solute: stated, or rectangular
// from -0.15 to 0.9 mL/g, which covers common salts and organic solids (from
// memory).
func (p *Prep) phi() Estimate {
	if p.Solute.SpecificVolume.Known {
		return p.Solute.SpecificVolume
	}
	return between(-0.15, 0.9)
}

// toUnit appends the strength of a solution in a unit.
func (c *compiler) toUnit(l *liquid, u Unit) (uncertainty.Node, error) {
	m, solute := c.model, c.prep.Solute
	x := l.concentration
	switch u.basis {
	case c.prep.own:
	case byAmount:
		x = m.Divide(x, c.property(molarMass, "g/mol", solute.MolarMass))
	case byMass:
		w, _, err := c.byMass(l)
		if err != nil {
			return 0, err
		}
		x = w
	case byVolume:
		x = m.Divide(x, c.density())
	case byActivity:
		x = m.Multiply(x, c.property(activity, "U/g", solute.Activity))
	}
	return m.Multiply(x, m.Constant(u.per)), nil
}

// fromUnit is the inverse of toUnit, for a node in a unit, dissolved in a
// medium.
func (c *compiler) fromUnit(x uncertainty.Node, u Unit, l medium) (uncertainty.Node, error) {
	m, solute := c.model, c.prep.Solute
	x = m.Multiply(x, m.Constant(1/u.per))
	switch u.basis {
	case c.prep.own:
	case byAmount:
		x = m.Multiply(x, c.property(molarMass, "g/mol", solute.MolarMass))
	case byMass:
		concentration, _, err := c.byVolume(x, l)
		return concentration, err
	case byVolume:
		x = m.Multiply(x, c.density())
	case byActivity:
		x = m.Divide(x, c.property(activity, "U/g", solute.Activity))
	}
	return x, nil
}

// property appends a property of the substance that the strength counts.
func (c *compiler) property(code uncertainty.Code, unit string, e Estimate) uncertainty.Node {
	return c.propertyOf(c.prep.Solute.Name, code, unit, e)
}

// propertyOf appends a property of the solute in one of its forms.
func (c *compiler) propertyOf(form string, code uncertainty.Code, unit string, e Estimate) uncertainty.Node {
	return c.material(uncertainty.Substance, form, code, string(code)+" of the "+form, unit, e, false)
}

// density appends that of what is weighed or measured.
func (c *compiler) density() uncertainty.Node {
	return c.propertyOf(c.prep.Solute.Weighed(), density, "g/mL", c.prep.Solute.Density)
}

// MassFraction of a solution with a mass concentration γ in g/mL, with the
// properties of the solute at their estimates. The density of the solvent must be
// known.
func (p *Prep) MassFraction(concentration float64) float64 {
	return p.fromGramsPerML(concentration, Unit{basis: byMass, per: 1})
}

// Density in g/mL of a solution with a mass fraction, with the properties of the solute
// at their estimates. The density of the solvent must be known.
func (p *Prep) Density(massFraction float64) float64 {
	if massFraction == 0 {
		return p.Solvent.Density.Value
	}
	g, err := p.gramsPerML(Strength{Value: massFraction, Unit: Unit{basis: byMass, per: 1}})
	if err != nil {
		panic("route: a solvent without a density: " + err.Error())
	}
	return g / massFraction
}

// TargetConcentration is the target in g/mL.
func (p *Prep) TargetConcentration() float64 { return p.ConcentrationOf(p.Target.Value) }

// ConcentrationOf is a strength in the unit of the target as a concentration in g/mL.
func (p *Prep) ConcentrationOf(strength float64) float64 {
	g, err := p.gramsPerML(Strength{Value: strength, Unit: p.Target.Unit})
	if err != nil {
		panic("route: a strength that cannot be converted: " + err.Error())
	}
	return g
}

// StrengthOf is a concentration in g/mL as a strength in the unit of the target.
func (p *Prep) StrengthOf(concentration float64) float64 {
	return p.fromGramsPerML(concentration, p.Target.Unit)
}

// Concentration reads a strength, such as "5 % w/v", in g/mL.
func (p *Prep) Concentration(text string) (float64, error) {
	s, err := p.parseStrength(text)
	if err != nil {
		return 0, err
	}
	return p.gramsPerML(s)
}

// HalfWidth of the first tolerance as a fraction of the target: to the nearer
// limit. It is 0 without a tolerance.
func (p *Prep) HalfWidth() float64 {
	if len(p.Tolerances) == 0 {
		return 0
	}
	l := p.Tolerances[0].Limits
	return max(0, min(l.Upper-p.Target.Value, p.Target.Value-l.Lower)/p.Target.Value)
}
