package route

import (
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"minim/equipment"
	"minim/equipment/quantity"
	"minim/report/words/note"
	"minim/uncertainty/near"
)

// What a balance of 200 g carries: the net mass and the vessel that it is in (constructed).
// A glass vessel is taken to be as heavy as the water that fills it; stated, plastic and the
// vessel of the kit beat that. What is assumed is said where twice as much would be too much.
func TestBalanceCarriesTheVessel(t *testing.T) {
	const aliquot, glass, tooMuch = `{ weigh-aliquot = "1.00 g", on = "balance" }, `, "glass as heavy as the water that it holds", " is more than the balance carries: 200 g"
	upTo := func(total, more string) string {
		return `{ weigh-up-to = "` + total + ` g", on = "balance"` + more + ` }, `
	}
	const bottle = "[[jar]]\nname = \"bottle\"\nline = \"150 mL\"\ntolerance = \"1 mL\"\n"
	for name, c := range map[string]struct{ steps, kit, no, assumed string }{
		"light enough":             {steps: aliquot + upTo("60.00", "")},
		"perhaps too much":         {steps: aliquot + upTo("90.00", ""), assumed: "weighs 90.2 g (assumed of glass"},
		"too much":                 {steps: aliquot + upTo("120.00", ""), no: "120.00 g in a vessel of 120 g (assumed of glass as heavy as the water that it holds; where it is lighter, state vessel = \"… g\" in the step)" + tooMuch},
		"stated and light":         {steps: aliquot + upTo("120.00", `, vessel = "70 g"`)},
		"stated just so":           {steps: aliquot + upTo("120.00", `, vessel = "80 g"`)},
		"stated and too heavy":     {steps: aliquot + upTo("120.00", `, vessel = "80.01 g"`), no: "120.00 g in a vessel of 80.01 g" + tooMuch},
		"stated with the aliquot":  {steps: strings.Replace(aliquot, ` }`, `, vessel = "70 g" }`, 1) + upTo("120.00", "")},
		"of plastic":               {steps: aliquot + upTo("120.00", ""), kit: bottle + "material = \"polyethylene\"\n"},
		"of plastic, too full":     {steps: aliquot + upTo("175.00", ""), kit: bottle + "material = \"polyethylene\"\n", no: glass},
		"stated in the kit":        {steps: aliquot + upTo("149.00", ""), kit: bottle + "vessel = \"45 g\"\n", assumed: "weighs 45 g (that of the bottle, which is taken for it)"},
		"stated in the kit, heavy": {steps: aliquot + upTo("149.00", ""), kit: bottle + "vessel = \"60 g\"\n", no: "that of the bottle, which is taken for it"},
	} {
		x := recipe{target: "0.1 % w/w", more: stockOf("10 % w/w"), steps: fromStock + c.steps}
		p := parse(t, exactKit+c.kit, x.text())
		r, err := p.Assess(p.Routes[0], 0.95)
		require.NoError(t, err, name)
		assert.Equal(t, c.no == "", r.Possible, "%s: %s", name, r.Reason)
		assert.Contains(t, r.Reason.String(), c.no, name)
		said := strings.Join(note.Texts(r.Notes.Assumed), "; ")
		if c.assumed == "" {
			assert.NotContains(t, said, "what stands on the balance", name)
		} else {
			assert.Contains(t, said, c.assumed, name)
		}
	}
}

// Solute stands on a boat, solvent in a vessel.
func TestBalanceCarriesBoatAndSolvent(t *testing.T) {
	for steps, no := range map[string]string{
		`{ weigh = "160.00 g", on = "balance" }, ` + toMark:                                                            "",
		`{ weigh = "170.00 g", on = "balance" }, ` + toMark:                                                            "170.00 g in a vessel of 34 g (assumed of a boat of plastic that just holds it",
		`{ weigh = "170.00 g", on = "balance", vessel = "4 g" }, ` + toMark:                                            "",
		weighTen + `{ dissolve-in = "90.00 g", on = "balance" }, `:                                                     "",
		weighTen + `{ dissolve-in = "120.00 g", on = "balance" }, `:                                                    "120.00 g in a vessel of 120 g",
		weighTen + `{ dissolve-in = "120.00 g", on = "balance", vessel = "50 g" }, `:                                   "",
		weighTen + toMark + takeTen + `{ add-solute = "190.00 g", on = "balance" }, `:                                  "190.00 g in a vessel of 38 g",
		weighTen + toMark + takeTen + `{ add-solute = "1.00 g", on = "balance", vessel = "3 g", tare = "separate" }, `: "",
	} {
		p := parse(t, exactKit, recipe{steps: steps, solute: "name = \"salt\"\nhazards = [\"none known\"]"}.text())
		r, err := p.Assess(p.Routes[0], 0.95)
		require.NoError(t, err, steps)
		assert.Equal(t, no == "", r.Possible, "%s: %s", steps, r.Reason)
		assert.Contains(t, r.Reason.String(), no, steps)
	}
}

// The mass of a vessel is written and read again.
func TestVesselIsSaved(t *testing.T) {
	p := parse(t, exactKit, recipe{steps: weighTen + `{ weigh-up-to = "50.00 g", on = "balance", vessel = "31.5 g" }, `}.text())
	s := p.Routes[0].Steps[1]
	assert.Equal(t, equipment.Stated{Value: 31.5, Known: true}, s.Vessel)
	assert.Contains(t, Written(&s), `vessel = "31.5 g"`)
}

// Evaporation before an aliquot is weighed out, by hand (constructed). 1 g and 19 g of
// acetone of 0.7893 g/mL, with φ = 0.6 mL/g, are 19/0.7893 + 0.6 mL. Of these a share of 0
// to 10 % goes, 5 % in the middle, as acetone: the rest weighs 20 g less 0.7893 times
// that. 2 g of it in 20 g are a tenth. A share of 10 % by volume makes 5 % of the strength
// at most, and its spread is 0.1/√12 times the slope at the middle.
func TestEvaporationByWeighing(t *testing.T) {
	const density = 0.7893
	steps := `{ weigh = "1.00 g", on = "balance" }, { weigh-up-to = "20.00 g", on = "balance" }, ` +
		`{ weigh-aliquot = "2.00 g", on = "balance" }, { weigh-up-to = "20.00 g", on = "balance" }, `
	x := recipe{target: "0.5 % w/w", solute: "name = \"urea\"\nspecific-volume = \"0.6 mL/g\"", steps: steps,
		solvent: "name = \"other\"\ndensity = \"0.7893 g/mL\"\nevaporation = \"10 % of volume\""}
	volume := 19/density + 0.6
	after := func(share float64) float64 { return 100 * 1 / (20 - density*share*volume) * 2 / 20 }
	r := x.run(t)
	near.Relative(t, "intended", 0.5, r.Intended, 1e-12)
	near.Relative(t, "expected", after(0.05), r.Analytic.Value, 1e-9)
	slope := (after(0.05+1e-6) - after(0.05-1e-6)) / 2e-6
	line := lineOf(t, r, "evaporation of other")
	near.Relative(t, "contribution", slope*0.1/math.Sqrt(12), math.Abs(line.Contribution), 1e-6)
	near.Relative(t, "5 % at stake", 1.0526, r.Analytic.Value/r.Intended, 5e-3)
}

// What is refused by a hair shows by which (constructed: 100 g of water at 0.99821 g/mL fill
// 100.18 mL).
func TestBurdenShowsThatItIsTooMuch(t *testing.T) {
	for want, l := range map[string]burden{"100.2 g": {net: 100, vessel: 100 / 0.99821}, "30.1 g": {net: 170, vessel: 30.054}, "150 g": {net: 170, vessel: 150}} {
		assert.Equal(t, want, quantity.GramsBeyond(l.vessel, 200-l.net))
	}
}
