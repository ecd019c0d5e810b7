package route

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"minim/report/words/influence"
	"minim/report/words/note"
	"minim/uncertainty/near"
)

// EURACHEM/CITAC CG 4, example A2 weighs by difference: linearity of ±0.15 mg,
// rectangular, counts for tare and gross as two independent terms, which is what the law that
// is stated says. The guide has u(m) = 0.13 mg (from memory) from them alone, which is √2 times
// the rounded 0.09; its repeatability is that of the whole experiment. With s = 0.05 mg of each
// reading √(2·0.15²/3 + 2·0.05²) = 0.1414214 mg.
func TestTareAndGrossSeparate(t *testing.T) {
	kit := strings.NewReplacer(`readability = "0.01 g"`, `readability = "0.0001 g"`, `"0.01 g"`, `"0.00005 g"`, `linearity = "0.02 g"`, "linearity = \"0.00015 g\"\nlinearity-law = \"independent\"").Replace(exactKit)
	x := recipe{target: "4 g/L", steps: `{ weigh = "0.3888 g", on = "balance", tare = "separate" }, ` + toMark}
	r := only(t, parse(t, kit, x.text()))
	near.Relative(t, "u(m) / mg", 0.1414214, relativeUncertainty(r)*388.8, 1e-6)
	linear := 0.0
	for _, line := range r.Analytic.Budget {
		if line.Code == "linearity" {
			linear += math.Pow(math.Round(line.StandardUncertainty*1e5)/1e2, 2) // mg, rounded as in the guide
		}
	}
	near.Absolute(t, "as published", 0.13, math.Sqrt(linear), 0.005)

	// On a zeroed boat the scatter counts once: √(2·0.15²/3 + 0.05²).
	x.steps = strings.Replace(x.steps, "separate", "zeroed", 1)
	r = only(t, parse(t, kit, x.text()))
	near.Relative(t, "u(m) / mg, zeroed", 0.1322876, relativeUncertainty(r)*388.8, 1e-6)
}

// Two portions weighed one after the other. The gross reading of the first is
// the tare of the second and drops out of the sum: of s = 0.01 g and a linearity of 0.02 g
// stay, in g², the scatter of two readings and the linearity of two loads, nothing and 10 g,
// of which the curve has nothing in common, 10 g being 5 % of the capacity:
//
//	2 s² + 2·0.02²/3 = 4.6667e-4
//
// On another piece nothing is shared: twice that, since 5 g, 2.5 % of the capacity, is as far
// from nothing. Weighed back, the two are at equal loads and have one error of linearity:
// 4 s² + 4·2·0.02²/3 = 1.46667e-3. On a zeroed boat 2 s² + 4·2·0.02²/3 = 1.26667e-3.
// Closed forms, constructed.
func TestConsecutiveWeighingsShareAReading(t *testing.T) {
	portion := func(options string) string {
		return `{ weigh = "5.00 g", on = "balance"` + options + " }, "
	}
	for _, c := range []struct {
		name, first, second string
		variance            float64
	}{
		{"in a row", `, tare = "separate"`, `, tare = "separate"`, 14e-4 / 3},
		{"piece 1 said and not said", `, tare = "separate", piece = 1`, `, tare = "separate"`, 14e-4 / 3},
		{"another piece", `, tare = "separate"`, `, tare = "separate", piece = 2`, 28e-4 / 3},
		{"weighed back", `, tare = "separate", weighed-back = true`, `, tare = "separate", weighed-back = true`, 44e-4 / 3},
		{"weighed back by itself", `, weighed-back = true`, `, weighed-back = true`, 44e-4 / 3},
		{"zeroed", "", "", 38e-4 / 3},
	} {
		r := recipe{target: "100 g/L", steps: portion(c.first) + portion(c.second) + toMark}.run(t)
		near.Relative(t, c.name, math.Sqrt(c.variance), relativeUncertainty(r)*10, 1e-9)
	}
}

// 1 to 2 mg of powder can stay on weighing paper (trade practice: reweigh the
// emptied paper). Up to 2 mg left of 150 mg lowers the strength by 1 mg in 150
// on average, and adds 2 mg/√12.
func TestLeftOnTheBoat(t *testing.T) {
	steps := func(options string) recipe {
		return recipe{target: "1.5 g/L", steps: `{ weigh = "0.15 g", on = "balance"` + options + " }, " + toMark}
	}
	plain := steps("").run(t)
	assert.Contains(t, note.Texts(plain.Notes.NotCounted), "what stays on the weighing boat after it was rinsed into the vessel (taken as nothing)")
	left := steps(`, left-behind = "2 mg"`).run(t)
	near.Relative(t, "intended", plain.Intended, left.Intended, 1e-12)
	near.Relative(t, "expected", 1-1.0/150, left.Analytic.Value/left.Intended, 1e-12)
	near.Relative(t, "u, left on the boat", 0.002/math.Sqrt(12), lineOf(t, left, "left on the boat, balance").StandardUncertainty, 1e-12)
	assert.NotContains(t, strings.Join(note.Texts(left.Notes.NotCounted), "; "), "boat")

	back := steps(", weighed-back = true").run(t)
	assert.Equal(t, plain.Analytic.Value, back.Analytic.Value)
	assert.NotContains(t, strings.Join(note.Texts(back.Notes.NotCounted), "; "), "boat")
}

// A packet used whole: limits of ±0.1 g are 0.1/√3 (EURACHEM/CITAC CG 4, E.1),
// and no balance is needed. Two packets of one name are one content.
func TestPacket(t *testing.T) {
	content := `content = { from = "9.9 g", to = "10.1 g" }`
	x := recipe{target: "100 g/L", more: "[[packet]]\nname = \"sachet\"\n" + content, steps: `{ packet = "sachet" }, ` + toMark}
	r := x.run(t)
	near.Relative(t, "strength", 100, r.Analytic.Value, 1e-12)
	near.Relative(t, "u", 1/math.Sqrt(3), r.Analytic.StandardUncertainty, 1e-12)
	near.Relative(t, "solute used", 10, r.SoluteGrams, 1e-12)
	assert.Equal(t, "content of the sachet", influence.Name(&r.Analytic.Budget[0].Influence))

	x.solute = "name = \"urea\"\nassay = \"50 %\""
	near.Relative(t, "with an assay", 50, x.run(t).Analytic.Value, 1e-12)

	x.more = "[[packet]]\nname = \"sachet\"\ncontent = \"10 g\""
	noted(t, note.Texts(x.run(t).Notes.NotCounted), "content of the sachet")

	x.more = "[[packet]]\nname = \"sachet\"\n" + content
	x.steps = `{ packet = "sachet" }, { weigh = "5.00 g", on = "balance" }, ` + toMark
	near.Relative(t, "and some more", 75, x.run(t).Analytic.Value, 1e-12)
}

// A liquid solute by volume: m = V ρ. Of 1.26 g/mL ± 0.004 (k = 2) and 10 mL with
// u = 0.02 mL, u_rel = √((0.002/1.26)² + (0.02/10)²). Closed form.
func TestMeasuredSolute(t *testing.T) {
	x := recipe{
		target: "126 g/L",
		solute: "name = \"syrup\"\ndensity = { value = \"1.26 g/mL\", expanded = \"0.004 g/mL\", k = 2 }",
		steps:  `{ measure = "10 mL", with = "10 mL pipette" }, ` + toMark,
	}
	r := x.run(t)
	near.Relative(t, "strength", 126, r.Analytic.Value, 1e-12)
	near.Relative(t, "u", math.Hypot(0.002/1.26, 0.002), relativeUncertainty(r), 1e-12)
	near.Relative(t, "solute used", 12.6, r.SoluteGrams, 1e-12)

	// In % v/v the density drops out, once for what is measured and once for
	// the strength.
	x.target = "10 % v/v"
	r = x.run(t)
	near.Relative(t, "strength", 10, r.Analytic.Value, 1e-12)
	near.Relative(t, "u", 0.002, relativeUncertainty(r), 1e-9)
	near.Absolute(t, "the density cancels", 0, lineOf(t, r, "density of the syrup").Contribution, 1e-15)

	x.target, x.solute = "10 g/L", "name = \"syrup\""
	assert.Equal(t, "a solute that is measured by volume needs its density, which the prep does not state", x.refused(t))
}

// A liquid solute expands as it does itself, not as the solvent: at 25 °C, 10 mL of
// ethanol are less by 5·1.09e-3 (table of liquids). What is made up with water is of 10 %
// vol, 0.98471 g/mL at 20 and 0.98337 at 25 °C (OIML R 22; no glass expansion stated).
func TestMeasuredSoluteExpandsByItself(t *testing.T) {
	r := recipe{
		target: "79 g/L",
		head:   `bench = { temperature = "25 °C", within = "0 °C" }`,
		solute: "name = \"ethanol\"\ndensity = \"0.7893 g/mL\"",
		steps:  `{ measure = "10 mL", with = "10 mL pipette" }, ` + toMark,
	}.run(t)
	near.Relative(t, "expected", (1-5*1.09e-3)/(0.98337/0.98471), r.Analytic.Value/r.Intended, 1e-5)
}

// 10 g in 100 mL added is not 10 % w/v: V = V_s + m φ. Closed form; φ assumed
// from -0.15 to 0.9 mL/g when not stated, mean 0.375 and u = 1.05/√12.
func TestDissolvedInAMeasuredVolume(t *testing.T) {
	x := recipe{target: "10 % w/v", steps: weighTen + `{ dissolve-in = "100 mL", with = "cylinder" }, `}
	r := x.run(t)
	near.Relative(t, "φ assumed", 100*10/(100+10*0.375), r.Analytic.Value, 1e-12)
	assert.Contains(t, note.Texts(r.Notes.Assumed), "1 g of urea takes up between -0.15 and 0.9 mL in solution")
	phi := lineOf(t, r, "specific volume of the urea")
	assert.True(t, phi.Assumed)
	near.Relative(t, "u of φ", 1.05/math.Sqrt(12), phi.StandardUncertainty, 1e-12)
	near.Relative(t, "its contribution", 10*phi.StandardUncertainty/(100+10*0.375), math.Abs(phi.Contribution)/r.Analytic.Value, 1e-12)
	near.Relative(t, "made", 103.75, r.MadeML, 1e-12)

	// The volume is that of the whole mass that is dissolved, not of the part
	// of it that the strength counts.
	x.solute = "name = \"urea\"\nspecific-volume = \"0.3 mL/g\"\nassay = \"90 %\""
	r = x.run(t)
	near.Relative(t, "φ stated", 100*9/103.0, r.Analytic.Value, 1e-12)
	assert.Empty(t, withWord(note.Texts(r.Notes.Assumed), "takes up"))

	x.solute = "name = \"urea\"\nspecific-volume = { value = \"0 mL/g\", expanded = \"0.1 mL/g\", k = 2 }"
	r = x.run(t)
	near.Relative(t, "φ of zero", 10, r.Analytic.Value, 1e-12)
	near.Relative(t, "u of φ", 0.05, lineOf(t, r, "specific volume of the urea").StandardUncertainty, 1e-12)
}

// 10 g and 100 mL of water are about 9.1 % w/w: 10/110, whatever the solid takes up
// (constructed). The solvent is taken as 1 g/mL.
func TestTenGramsIntoAHundred(t *testing.T) {
	for name, step := range map[string]string{
		"measured": `{ dissolve-in = "100 mL", with = "cylinder" }, `,
		"weighed":  `{ dissolve-in = "100.00 g", on = "balance" }, `,
		"up to":    `{ weigh-up-to = "110.00 g", on = "balance", vessel = "50 g" }, `,
	} {
		x := recipe{target: "9.1 % w/w", solvent: "name = \"water\"\ndensity = \"1 g/mL\"", steps: weighTen + step}
		r := x.run(t)
		near.Relative(t, name, 100*10/110.0, r.Analytic.Value, 1e-12)
		for _, line := range r.Analytic.Budget {
			if influence.Name(&line.Influence) == "specific volume of the urea" {
				near.Absolute(t, name+", φ drops out", 0, line.Contribution, 1e-12)
			}
		}
		assert.Greater(t, 10*(1-0.05), r.Analytic.Value, "not 10 %% by %s", name)

		// What is not the substance itself is in the solution as well: of a
		// urea of 90 %, 9 g in 110 g.
		x.solute = "name = \"urea\"\nassay = \"90 %\"\nspecific-volume = \"0.3 mL/g\""
		if name != "measured" { // there w/w rests on the density model
			near.Relative(t, name+", 90 %", 100*9/110.0, x.run(t).Analytic.Value, 1e-12)
		}
	}
}

// Mass ratios of anhydrous salt to hydrate that are a bigger slip than any
// glassware (arithmetic from molar masses, trade collection): the form factor
// turns a mass of hydrate into the substance meant. mol/L comes out as by the
// molar mass of the hydrate itself.
func TestHydrates(t *testing.T) {
	for _, c := range []struct {
		name              string
		anhydrous, waters float64 // g/mol (abridged atomic weights, from memory)
		ratio             float64
	}{
		{"disodium EDTA dihydrate", 336.206, 2, 0.903},
		{"citric acid monohydrate", 192.123, 1, 0.914},
		{"copper sulfate pentahydrate", 159.60, 5, 0.639},
		{"sodium thiosulfate pentahydrate", 158.10, 5, 0.637},
		{"magnesium sulfate heptahydrate", 120.36, 7, 0.488},
	} {
		hydrate := c.anhydrous + c.waters*18.015
		solute := fmt.Sprintf("name = %q\nform-factor = %.15g\nmolar-mass = \"%g g/mol\"", c.name, c.anhydrous/hydrate, c.anhydrous)
		r := recipe{target: "50 g/L", solute: solute, steps: weighTen + toMark}.run(t)
		near.Absolute(t, c.name, c.ratio, r.Intended/100, 5e-4)
		r = recipe{target: "0.3 mol/L", solute: solute, steps: weighTen + toMark}.run(t)
		near.Relative(t, c.name+" / (mol/L)", 10/hydrate/0.1, r.Intended, 1e-12)
	}
}

// A solution of 36 g in 100 mL passes a solubility of 359 g/L, one of 35 g does not, but has more than nine tenths
// of it, and one of 32 g has not (constructed).
func TestSolubility(t *testing.T) {
	x := recipe{target: "1 g/L", solute: "name = \"urea\"\nsolubility = \"359 g/L\""}
	x.steps = `{ weigh = "36.00 g", on = "balance" }, ` + toMark + takeTen + toMark
	assert.Contains(t, note.Texts(x.run(t).Notes.Warnings), "route: a solution of 360 g/L is stronger than the solubility of the urea, 359 g/L")
	x.steps = strings.Replace(x.steps, "36.00", "35.00", 1)
	if texts := note.Texts(x.run(t).Notes.Warnings); assert.Len(t, texts, 1) {
		assert.Contains(t, texts[0], "route: the solution of step 2 holds 97.5 % of the urea that dissolves as stated (359 g/L)")
	}
	x.steps = strings.Replace(x.steps, "35.00", "32.00", 1)
	assert.Empty(t, note.Texts(x.run(t).Notes.Warnings))
	x.solute = `name = "dye"`
	assert.Empty(t, parse(t, exactKit, x.text()).Solute.Solubility)
}

// A weighed aliquot or solvent that could be nothing makes a route say nothing
// as well: one digit of a scale with u = 0.01528 g.
func TestUninformativeAliquot(t *testing.T) {
	solvent := "name = \"water\"\ndensity = \"1 g/mL\""
	for mass, informative := range map[string]bool{"0.02 g": false, "1.00 g": true} {
		r := recipe{target: "0.1 g/L", solvent: solvent, more: stockOf("10 g/L"),
			steps: fromStock + `{ weigh-aliquot = "` + mass + `", on = "balance" }, { weigh-up-to = "100.00 g", on = "balance", vessel = "50 g" }, `}.run(t)
		assert.Equal(t, informative, r.Informative, mass)
	}
}
