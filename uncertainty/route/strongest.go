package route

import (
	"fmt"
	"math"
	"minim/equipment/quantity"
)

// strongest is the concentration, in what the models carry, that no solution of the solute
// can pass, and why:
//
//	γ <= ρ_solute   since it is no denser than the solute itself
//	γ <= 1/φ        since with the apparent specific volume φ it is then all solute, 100 % w/w
//
// and where neither is stated the greatest strength of any solution that is read.
func (p *Prep) strongest() (most float64, why string) {
	most, why = math.Inf(1), ""
	note := func(x float64, reason string) {
		if x > 0 && x < most {
			most, why = x, reason
		}
	}
	if has := &bases[p.own]; has.strongest != "" {
		note(has.limit.Most, has.strongest)
	}
	if p.CountsMass() && p.Solute.Density.Known {
		note(p.Solute.Density.Value, "its density")
	}
	if p.CountsMass() && p.Solute.SpecificVolume.Known {
		note(1/p.Solute.SpecificVolume.Value, "100 % w/w")
	}
	return most, why
}

// warnOfStrength warns of a solution of the route that is stronger than can be, or than the
// solubility.
func (c *compiler) warnOfStrength(has float64) {
	limit, unit := c.prep.Solute.Solubility, c.prep.SoluteUnit()+"/L"
	most, why := c.prep.strongest()
	switch {
	case has > most*(1+aLittle):
		c.notes.Warn(fmt.Sprintf("%s: a solution of %s %s cannot be: of %s it holds at most %s %s (%s); look at the amounts",
			c.route.Name, threeDigits(1000*has), unit, c.prep.Solute.Name, threeDigits(1000*most), unit, why))
	case limit > 0 && has > limit:
		c.notes.Warn(fmt.Sprintf("%s: a solution of %s %s is stronger than the solubility of the %s, %s %s",
			c.route.Name, short(1000*has), unit, c.prep.Solute.Name, short(1000*limit), unit))
	}
}

// aLittle is what a pure liquid may seem to hold more of itself, by rounding.
const aLittle = 1e-3

// threeDigits prints three digits without an exponent.
func threeDigits(x float64) string {
	return quantity.Decimal(x, 3)
}
