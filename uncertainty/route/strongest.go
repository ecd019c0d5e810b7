package route

import (
	"math"

	"minim/equipment/quantity"
	"minim/report/words/note"
	"minim/uncertainty/strengths"
)

// strongest is the concentration, in what the models carry, that no solution of the solute
// can pass, and why:
//
//	γ <= ρ_solute   since it is no denser than the solute itself
//	γ <= 1/φ        since with the apparent specific volume φ it is then all solute, 100 % w/w
//
// and where neither is stated the greatest strength of any solution that is read.
func (p *Prep) strongest() (most float64, why note.Note) {
	most = math.Inf(1)
	limit := func(x float64, reason string) {
		if x > 0 && x < most {
			most, why = x, note.Of(reason, "")
		}
	}
	if has := p.carries().Traits(); has.Strongest != "" {
		limit(has.Limit.Most, has.Strongest)
	}
	if s := &p.Solute; p.CountsMass() {
		limit(s.Density.Value, "own-density")
		limit(1/s.SpecificVolume.Value, "all-by-mass")
	}
	return most, why
}

// Soluble is how much of the solute dissolves in 1 mL at the coldest temperature that is stated, in
// what the models carry; 0 where nothing is stated.
func (p *Prep) Soluble() (most float64, known bool) {
	cold, warm := p.Bench.Temperature, p.Bench.Temperature
	cold.Value -= p.Bench.Within.Value
	warm.Value += p.Bench.Within.Value
	return strengths.Soluble(p.Solute.Solubility, cold, warm)
}

// warnOfStrength warns of a solution of the route that is stronger than can be, or than the
// solubility at the coldest temperature that is stated, or so nearly that it hardly dissolves. Where it is not
// known so cold, that is said of a solution of more than half of it.
func (c *compiler) warnOfStrength(has float64) {
	unit := c.prep.SoluteUnit() + "/L"
	limit, known := c.prep.Soluble()
	most, why := c.prep.strongest()
	switch {
	case has > most*(1+aLittle):
		c.notes.Warn("stronger-than-can-be", c.route.Name, quantity.Decimal(1000*has, 3), unit, c.prep.Solute.Name, quantity.Decimal(1000*most, 3), why)
	case limit > 0 && has > limit:
		c.notes.Warn("stronger-than-solubility", c.route.Name, 1000*has, unit, c.prep.Solute.Name, 1000*limit)
	case limit > 0 && has > strengths.EasilyDissolved*limit*(1+1e-6):
		c.notes.Warn("nearly-saturated", c.route.Name, c.making+1, 100*has/limit, c.prep.Solute.Name, 1000*limit, unit)
	case limit > 0 && !known && has > limit/2:
		c.notes.LeaveOut("solubility-in-cold", c.prep.Solute.Name, quantity.Number(c.prep.Bench.Temperature.Value-c.prep.Bench.Within.Value))
	}
}

// aLittle is what a pure liquid may seem to hold more of itself, by rounding.
const aLittle = 1e-3
