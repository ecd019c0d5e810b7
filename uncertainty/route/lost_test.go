package route

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"minim/uncertainty/near"
)

// What was measured out in a step and thrown away before the step was done again is used
// up, paid for and left over, whatever the step brings: of a solute its mass, of a solution
// or of solvent its volume, where it was weighed that mass over the density (constructed;
// with φ = 1/ρ0 every solution has the density ρ0 = 0.8 g/mL of the solvent).
func TestWhatAStepHasLost(t *testing.T) {
	skipIfSlow(t)
	const up, dilute = `{ weigh-up-to = "80.00 g", on = "balance", vessel = "50 g" }, `, `{ weigh-aliquot = "8.00 g", on = "balance" }, `
	for name, c := range map[string]struct {
		steps      string
		step       int
		lost       float64
		solute, mL float64
		more       string
	}{
		"weighed solute":   {steps: weighTen + toMark, lost: 2.5, solute: 2.5},
		"packet":           {steps: `{ packet = "sachet" }, ` + toMark, lost: 0.5, solute: 0.5, more: "[[packet]]\nname = \"sachet\"\ncontent = \"10 g\"\n"},
		"part of a stock":  {steps: fromStock + takeTen + toMark, step: 1, lost: 3, solute: 3 * 0.1, mL: 3, more: stockOf("100 g/L")},
		"up to a mark":     {steps: weighTen + toMark, step: 1, lost: 90, mL: 90},
		"up to a total":    {steps: weighTen + up, step: 1, lost: 40, mL: 50},
		"weighed aliquot":  {steps: weighTen + up + dilute + up, step: 2, lost: 16, mL: 0}, // of what is left over anyway
		"weighed stock":    {steps: fromStock + dilute + up, step: 1, lost: 16, solute: 20 * 0.1, mL: 20, more: stockOf("100 g/L")},
		"solvent measured": {steps: weighTen + `{ dissolve-in = "80 mL", with = "cylinder" }, `, step: 1, lost: 60, mL: 60},
		"solvent weighed":  {steps: weighTen + `{ dissolve-in = "80.00 g", on = "balance", vessel = "50 g" }, `, step: 1, lost: 40, mL: 50},
		"solvent added":    {steps: fromStock + takeTen + `{ add = "50 mL", with = "cylinder" }, `, step: 2, lost: 45, mL: 45, more: stockOf("100 g/L")},
		"drops added":      {steps: fromStock + takeTen + `{ add = "40 drops", with = "dropper" }, `, step: 2, lost: 20, mL: 1, more: stockOf("100 g/L")},
	} {
		x := recipe{steps: c.steps, more: c.more, solute: "name = \"urea\"\nspecific-volume = \"1.25 mL/g\"\nprice = \"3 EUR/g\"",
			solvent: "name = \"other\"\ndensity = \"0.8 g/mL\"\nprice = \"0.5 EUR/mL\""}
		if name == "drops added" { // 20 drops are 1 mL of water
			x.solvent = "name = \"water\"\nprice = \"0.5 EUR/mL\""
		}
		p := parse(t, exactKit, x.text())
		plain := only(t, p)
		paid, _ := Cost(p, plain)
		p.Routes[0].Steps[c.step].Lost = c.lost
		spoilt := only(t, p)
		cost, ok := Cost(p, spoilt)
		assert.True(t, ok, name)
		near.Absolute(t, name+": solute / g", c.solute, spoilt.SoluteUsed-plain.SoluteUsed, 1e-9)
		near.Absolute(t, name+": left over / mL", c.mL, spoilt.LeftOverML-plain.LeftOverML, 1e-9)
		near.Absolute(t, name+": price / EUR", 3*c.solute+0.5*c.mL, cost.Amount-paid.Amount, 1e-9)
		near.Relative(t, name+": the strength stays", plain.Intended, spoilt.Intended, 1e-12)
	}
}
