package route

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"minim/report/words/influence"
	"minim/uncertainty/near"
)

const published = "../../testdata/published/"

// EURACHEM/CITAC Guide CG 4 (QUAM), example A1. Published: 1002.7 mg/L and
// u = 0.9 mg/L, which comes from the rounded table values; the unrounded chain
// gives 0.83520 and the shares below (recomputed).
func TestQUAMExampleA1(t *testing.T) {
	p := load(t, published+"quam-a1/cadmium.toml")
	r := only(t, p)
	near.Absolute(t, "c / (mg/L)", 1002.69972, r.Analytic.Value, 5e-6)
	near.Absolute(t, "u / (mg/L)", 0.83519923, r.Analytic.StandardUncertainty, 5e-9)
	near.Absolute(t, "u as published", 0.9, r.Analytic.StandardUncertainty, 0.07)
	shares := map[string]float64{ // per cent of the variance
		"weighing, balance":                  35.8322,
		"temperature of the bench":           33.8999,
		"bias of the 100 mL flask at 100 mL": 24.0221,
		"repeatability of the 100 mL flask":  5.7653,
		"assay of the cadmium":               0.480537,
	}
	assert.Len(t, r.Analytic.Budget, len(shares))
	for _, line := range r.Analytic.Budget {
		near.Absolute(t, influence.Name(&line.Influence), shares[influence.Name(&line.Influence)], 100*line.Share, 5e-5)
	}
	// Monte Carlo, recomputed with 10^7 trials: 0.83521686, symmetric 95 %
	// [1001.080, 1004.323], each ± 0.0007; here 10^5 trials.
	near.Absolute(t, "MC u", 0.83521686, r.MonteCarlo.StandardDeviation, 0.01)
	near.Absolute(t, "MC lower", 1001.080, r.MonteCarlo.Lower, 0.03)
	near.Absolute(t, "MC upper", 1004.323, r.MonteCarlo.Upper, 0.03)
}

// The glass expands as well, which the guide leaves out: the effect of
// temperature shrinks from 2.1e-4 to 2.1e-4 - 9.9e-6 per degree, 0.08004 mL at
// most. The relative variances are then, in 1e-7,
//
//	mass 2.4860586, assay 0.0333400,
//	volume (0.1²/6 + 0.02² + 0.08004²/3)/100² = 4.2021341
//
// together 6.7215327, and u = 1002.69972 √6.7215327e-7 = 0.822063 mg/L.
func TestQUAMExampleA1WithGlassExpansion(t *testing.T) {
	p, err := LoadPrep(published+"quam-a1/cadmium.toml", published+"quam-a1/bench-borosilicate.toml")
	if assert.NoError(t, err) {
		near.Absolute(t, "u / (mg/L)", 0.822063, only(t, p).Analytic.StandardUncertainty, 5e-7)
	}
}

// Harvey, Analytical Chemistry 2.0, example 4.9: 0.006 and 0.002 published,
// 0.0060074953 and 0.0019849433 recomputed.
func TestHarveyExample49(t *testing.T) {
	c := compareAll(t, load(t, published+"harvey/dilution.toml"))
	for i, want := range []float64{0.0060074953, 0.0019849433} {
		a := c.Results[i].Analytic
		near.Relative(t, c.Results[i].Route.Name, want, a.StandardUncertainty/a.Value, 5e-8)
		near.Relative(t, "strength", 0.0010, a.Value, 1e-12)
	}
	assert.Equal(t, "two steps", c.Results[c.Verdict.Use].Route.Name, "two steps win")
}

// A kit of n pipettes and n flasks with the relative standard uncertainties of
// the closed forms: 1 mL ± 1 % to 10 mL ± 0.5 %.
func closedFormKit(count int) string {
	return fmt.Sprintf(`
[[pipette]]
name = "pipette"
kind = "one-mark"
capacity = "1 mL"
standard-uncertainty = "0.01 mL"
reading = "none"
count = %d

[[flask]]
name = "flask"
capacity = "10 mL"
standard-uncertainty = "0.05 mL"
reading = "none"
count = %d
`, count, count)
}

func dilutions(n int, fresh bool) string {
	var steps strings.Builder
	for i := range n {
		piece := 1
		if fresh {
			piece = i + 1
		}
		fmt.Fprintf(&steps, "{ take = \"1 mL\", with = \"pipette\", piece = %d },\n", piece)
		fmt.Fprintf(&steps, "{ make-up-to = \"10 mL\", in = \"flask\", piece = %d },\n", piece)
	}
	return stockPrep(steps.String())
}

func stockPrep(steps string) string {
	return `
target = "1 g/L"
volume = "1 mL"
[solute]
name = "solute"
[solvent]
name = "water"
[[stock]]
name = "stock"
strength = "10 g/L"
[[route]]
name = "route"
steps = [
{ start = "stock" },
` + steps + "]\n"
}

// Closed forms, constructed: n steps to the mark, u_v = 1 %, u_V = 0.5 %.
// Fresh pieces: √n √(u_v² + u_V²); the same pieces each time: n √(u_v² + u_V²).
func TestStepsToTheMark(t *testing.T) {
	for _, c := range []struct {
		n           int
		fresh, same float64
	}{
		{1, 0.011180340, 0.011180340},
		{2, 0.015811388, 0.022360680},
		{4, 0.022360680, 0.044721360},
	} {
		for fresh, want := range map[bool]float64{true: c.fresh, false: c.same} {
			a := only(t, parse(t, closedFormKit(4), dilutions(c.n, fresh))).Analytic
			near.Absolute(t, fmt.Sprintf("%d steps, fresh pieces %v", c.n, fresh), want, a.StandardUncertainty/a.Value, 5e-10)
		}
	}
}

// Closed form, constructed: nine fills of a pipette onto one fill of the same
// pipette are one part in ten whatever its bias is.
func TestBiasOfOnePipetteCancels(t *testing.T) {
	steps := `{ take = "1 mL", with = "pipette" },` + strings.Repeat("\n"+`{ add = "1 mL", with = "pipette" },`, 9)
	r := only(t, parse(t, closedFormKit(1), stockPrep(steps)))
	near.Absolute(t, "u", 0, r.Analytic.StandardUncertainty, 1e-15)
	near.Relative(t, "strength", 1, r.Analytic.Value, 1e-14)
	near.Absolute(t, "spread of the trials", 0, r.MonteCarlo.ShortestUpper-r.MonteCarlo.ShortestLower, 1e-13)

	// Nine of another pipette of the same kind: they do not cancel, but
	// give (1 - 1/10) √(0.01² + 0.01²) (closed form, add measured diluent).
	steps = `{ take = "1 mL", with = "pipette" },` + strings.Repeat("\n"+`{ add = "1 mL", with = "pipette", piece = 2 },`, 9)
	r = only(t, parse(t, closedFormKit(2), stockPrep(steps)))
	near.Relative(t, "another pipette", 0.9*0.01*1.4142135624, r.Analytic.StandardUncertainty, 1e-9)
}

// 1 mL and 9 mL from one graduated pipette: the biases at two marks are only
// half correlated, so the ratio keeps
//
//	(1 - 1/10) √(r_a² + r_b² - 2·½·r_a·r_b),  r_a = u/1 mL, r_b = u/9 mL
//
// u = 0.1 mL/√6 = 0.0408248 mL: r_a = 0.0408248, r_b = 0.0045361.
// 0.0408248² + 0.0045361² - 0.0408248·0.0045361 = 0.00150205; its root is
// 0.0387563; times 0.9 is 0.0348807.
func TestTwoMarksOfOnePipetteDoNotCancel(t *testing.T) {
	kit := `
[[pipette]]
name = "pipette"
kind = "graduated"
capacity = "10 mL"
division = "0.1 mL"
tolerance = "0.1 mL"
reading = "none"
`
	steps := `{ take = "1 mL", with = "pipette" }, { add = "9 mL", with = "pipette" },`
	r := only(t, parse(t, kit, stockPrep(steps)))
	near.Absolute(t, "u", 0.0348807, r.Analytic.StandardUncertainty, 5e-7)
	independent := strings.Replace(kit, "reading", "between-marks = 0\nreading", 1)
	r = only(t, parse(t, independent, stockPrep(steps)))
	// 0.9 √(0.0408248² + 0.0045361²) = 0.0369685
	near.Absolute(t, "u, own biases", 0.0369685, r.Analytic.StandardUncertainty, 5e-7)
	common := strings.Replace(kit, "reading", "between-marks = 1\nreading", 1)
	r = only(t, parse(t, common, stockPrep(steps)))
	// 0.9 (0.0408248 - 0.0045361) = 0.0326598
	near.Absolute(t, "u, common bias", 0.0326598, r.Analytic.StandardUncertainty, 5e-7)
}

// Pharmacopoeial standard solutions (pharmaguideline.com, preparation of standard
// solutions): all must come out at the label's strength; recomputed strengths
// to the digits that the molar masses used there allow. Abridged atomic weights
// from memory.
func TestPharmacopoeialDilutions(t *testing.T) {
	const h, n, o, al, s, cl, k, ca, na, cd, ba = 1.008, 14.007, 15.999, 26.982, 32.06, 35.45, 39.098, 40.078, 22.990, 112.41, 137.33
	const water = 2*h + o
	for _, c := range []struct {
		name       string
		grams, mL  float64 // of salt, made up to
		take, into float64
		factor     float64 // of the element in the salt
		label      float64 // mg/L
		recomputed float64
	}{
		{"Al 2 ppm", 0.176, 100, 2, 100, al / (k + al + 2*(s+4*o) + 12*water), 2, 2.0020272},
		{"Al 10 ppm", 1.39, 100, 1, 100, al / (al + 3*(n+3*o) + 9*water), 10, 9.9975617},
		{"Ba 10 ppm", 0.178, 100, 1, 100, ba / (ba + 2*cl + 2*water), 10, 10.007425},
		{"Ca 10 ppm", 0.624, 250, 1, 100, ca / (ca + 12.011 + 3*o), 10, 9.9947933},
		{"Ca 100 ppm", 2.50, 1000, 1, 10, ca / (ca + 12.011 + 3*o), 100, 100.10811},
		{"Cd 10 ppm", 0.228, 100, 2, 200, cd / (cd + s + 4*o + 8.0/3*water), 10, 9.9915752},
		{"Cl 5 ppm", 0.0824, 100, 1, 100, cl / (na + cl), 5, 4.9985287},
	} {
		kit := `
[[balance]]
name = "balance"
capacity = "200 g"
readability = "0.0001 g"
`
		prep := fmt.Sprintf(`
target = "%g mg/L"
volume = "10 mL"
[solute]
name = "salt"
form-factor = %.12g
[solvent]
name = "water"
[[route]]
name = "%s"
steps = [
{ weigh = "%g g", on = "balance" },
{ make-up-to = "%g mL", in = "f%[5]g" },
{ take = "%g mL", with = "p%[6]g" },
{ make-up-to = "%g mL", in = "f%[7]g" },
]
`, c.label, c.factor, c.name, c.grams, c.mL, c.take, c.into)
		kit += oneMark("flask", "f", c.mL, c.into) + oneMark("pipette", "p", c.take)
		r := only(t, parse(t, kit, prep))
		near.Relative(t, c.name, c.recomputed, r.Intended, 1e-4)
		near.Relative(t, c.name+" as labelled", c.label, r.Intended, 2e-3)
	}
}

func oneMark(table, prefix string, sizes ...float64) string {
	var b strings.Builder
	for i, mL := range sizes {
		if i > 0 && mL == sizes[0] {
			continue
		}
		kind := ""
		if table == "pipette" {
			kind = "kind = \"one-mark\"\n"
		}
		fmt.Fprintf(&b, "[[%s]]\nname = \"%s%g\"\ncapacity = \"%[3]g mL\"\n%stolerance = \"0.01 mL\"\n", table, prefix, mL, kind)
	}
	return b.String()
}
