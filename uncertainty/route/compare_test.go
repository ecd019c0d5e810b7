package route

import (
	"context"
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"minim/report/words/influence"
	"minim/uncertainty"
	"minim/uncertainty/near"
)

const smallKit = `
shape = "triangular"
[[balance]]
name = "scale"
capacity = "200 g"
readability = "0.01 g"
repeatability = "0.01 g"
linearity = "0.02 g"
[[flask]]
name = "flask"
capacity = "25 mL"
class = "A"
standard = "ISO"
count = 2
material = "borosilicate"
[[cylinder]]
name = "cylinder"
capacity = "10 mL"
class = "B"
standard = "ISO"
clinging = "0.2 mL"
material = "borosilicate"
[[pipette]]
name = "pipette"
kind = "graduated"
capacity = "1 mL"
class = "B"
standard = "ISO"
material = "borosilicate"
`

// smallPrep is a prep with one route on the small kit; head takes further keys
// of the file.
func smallPrep(head, steps string) string {
	return head + `
volume = "10 mL"
bench = { temperature = "20 °C", within = "3 °C", reading = "careful" }
[solute]
name = "urea"
assay = { from = "97 %", to = "100 %" }
[solvent]
name = "water"
[[route]]
name = "route"
steps = [
` + steps + "\n]\n"
}

const direct = `{ weigh = "1.00 g", on = "scale" }, { make-up-to = "10 mL", in = "cylinder" },`

// The intended strength has every error at zero; the expected one has them at
// their means: drops of 0.1 mL in 10 mL take one per cent away.
func TestIntendedAndExpected(t *testing.T) {
	r := only(t, parse(t, smallKit, smallPrep(`target = "100 g/L"`, direct)))
	near.Relative(t, "intended", 98.5, r.Intended, 1e-12)
	near.Relative(t, "expected", 98.5/1.01, r.Analytic.Value, 1e-12)

	// At 25 °C the plan is the same, but the volume at 20 °C is smaller by
	// 5 · (2.3254e-4 - 9.9e-6): water by Tanaka, (998.2067/997.0470 - 1)/5 over the
	// range but for 5e-8 (Metrologia 38 (2001) 301), and 3 × 3.3e-6 for the glass.
	warm := strings.Replace(smallPrep(`target = "100 g/L"`, direct), `"20 °C"`, `"25 °C"`, 1)
	r = only(t, parse(t, smallKit, warm))
	near.Relative(t, "intended at 25 °C", 98.5, r.Intended, 1e-12)
	near.Relative(t, "expected at 25 °C", 98.5/1.01/(1-5*(2.3254e-4-9.9e-6)), r.Analytic.Value, 1e-6)
}

// Air buoyancy is a known correction: it moves the expected strength, not the
// intended one. For a solid of 1.33 g/mL, (1 - 0.0012/8)/(1 - 0.0012/1.33) is
// 1.00075 (Harris, Quantitative Chemical Analysis, tris: 100.08 g for 100.00 g,
// from memory).
func TestBuoyancy(t *testing.T) {
	heavy := strings.Replace(smallPrep(`target = "100 g/L"`, direct), `name = "urea"`, "name = \"urea\"\ndensity = \"1.33 g/mL\"", 1)
	r := only(t, parse(t, smallKit, heavy))
	near.Relative(t, "intended", 98.5, r.Intended, 1e-12)
	near.Relative(t, "expected", 98.5/1.01*1.0007529, r.Analytic.Value, 1e-7)
}

// A weighing of one digit could be nothing: its lower coverage limit is below
// zero. One of four digits is not: u = 0.01528, 1.96 u = 0.0299.
func TestUninformative(t *testing.T) {
	for reading, informative := range map[string]bool{"0.01 g": false, "0.02 g": false, "0.03 g": true, "1.00 g": true} {
		r := only(t, parse(t, smallKit, smallPrep(`target = "1 g/L"`, strings.Replace(direct, "1.00 g", reading, 1))))
		assert.Equal(t, informative, r.Informative, reading)
		assert.Equal(t, informative, r.Uninformative.None(), reading)
	}
}

// A single rectangular influence of 97 to 100 % dominates nothing here; one of
// 10 to 100 % makes an interval that is not value ± U, and the simulated one is
// quoted, with the cause named.
func TestQuotedAndCause(t *testing.T) {
	r := only(t, parse(t, smallKit, smallPrep(`target = "100 g/L"`, direct)))
	assert.False(t, r.Quoted.Simulated)
	near.Relative(t, "lower", r.Analytic.Lower(), r.Quoted.Lower, 1e-15)

	vague := strings.Replace(smallPrep(`target = "100 g/L"`, direct), `"97 %"`, `"10 %"`, 1)
	r = only(t, parse(t, smallKit, vague))
	assert.True(t, r.Quoted.Simulated)
	near.Relative(t, "lower", r.MonteCarlo.Lower, r.Quoted.Lower, 1e-15)
	assert.False(t, r.CrossCheck.Agrees)
	assert.Equal(t, uncertainty.Cause("shape"), r.CrossCheck.Cause)
	assert.Equal(t, "assay of the urea", influence.Name(r.CrossCheck.Influence))
	assert.Greater(t, r.CrossCheck.OfExpanded, 0.05)
}

// A chance of being inside is the fraction of trials; limits may be one-sided.
func TestTolerances(t *testing.T) {
	skipIfSlow(t)
	for _, c := range []struct {
		head         string
		lower, upper float64
		text         string
	}{
		{`tolerance = "8 % of target"`, 92, 108, "8 % of target"},
		{`tolerance = "2 g/L"`, 98, 102, "2 g/L"},
		{`tolerance = "0.2 % w/v"`, 98, 102, "0.2 % w/v"},
		{`not-above = "110 g/L"`, math.Inf(-1), 110, "not above 110 g/L"},
		{`not-below = "9 % w/v"`, 90, math.Inf(1), "not below 9 % w/v"},
		{"not-below = \"90 g/L\"\nnot-above = \"101 g/L\"", 90, 101, "not below 90 g/L, not above 101 g/L"},
	} {
		p := parse(t, smallKit, smallPrep("target = \"100 g/L\"\n"+c.head, direct))
		require.Len(t, p.Tolerances, 1, c.head)
		assert.Equal(t, c.text, p.Tolerances[0].Text)
		near.Equal(t, c.head+", lower", 0, differ(c.lower, p.Tolerances[0].Limits.Lower), 1e-12, 0)
		near.Equal(t, c.head+", upper", 0, differ(c.upper, p.Tolerances[0].Limits.Upper), 1e-12, 0)
		r := only(t, p)
		near.Absolute(t, c.head+", normal", r.Inside[0].Normal, r.Inside[0].Simulated, 0.02)
	}
	p := parse(t, smallKit, smallPrep(`target = "100 g/L"`+"\n"+`tolerance = ["5 % of target", "1 % of target"]`, direct))
	r := only(t, p)
	require.Len(t, r.Inside, 2)
	assert.Greater(t, r.Inside[0].Simulated, r.Inside[1].Simulated)
}

func differ(a, b float64) float64 {
	if a == b {
		return 0
	}
	return a - b
}

// Half the trials of a symmetric spread lie within its quartiles: the relative
// half-width that holds 95 of 100 is 1.96 u when the target is the mean.
func TestHoldsWithin(t *testing.T) {
	skipIfSlow(t)
	steps := `{ weigh = "1.00 g", on = "scale" }, { make-up-to = "25 mL", in = "flask" },`
	p := parse(t, smallKit, smallPrep(`target = "39.4 g/L"`, steps))
	assert.Empty(t, p.Tolerances)
	many := quick
	many.Trials = 1_000_000 // the quartiles are not those of a normal distribution by 1.65 %
	c, err := Compare(context.Background(), p, "", many)
	require.NoError(t, err)
	r := &c.Results[0]
	near.Relative(t, "holds within", 1.96*r.Analytic.StandardUncertainty/r.Analytic.Value, r.HoldsWithin, 0.02)
	assert.True(t, math.IsNaN(r.Chance()))
}

// A figure of a route is the same whether it is asked alone or among others,
// and does not depend on the order of the routes.
func TestRouteAloneAndAmongOthers(t *testing.T) {
	skipIfSlow(t)
	p := load(t, demoPrep)
	all := compareAll(t, p)
	for i := range all.Results {
		if !all.Results[i].Possible {
			continue
		}
		name := all.Results[i].Route.Name
		alone, err := Compare(context.Background(), p, name, quick)
		require.NoError(t, err)
		require.Len(t, alone.Results, 1)
		assert.Equal(t, 0.5, alone.Results[0].Closer, name)
		alone.Results[0].Closer = all.Results[i].Closer // than which depends on the company
		assert.Equal(t, all.Results[i], alone.Results[0], name)
	}
	_, err := Compare(context.Background(), p, "no such route", quick)
	assert.EqualError(t, err, `the prep has no route called "no such route"`)
}

// Two uses of one flask share its bias, two pieces do not: the budget says so.
func TestSharedInTheBudget(t *testing.T) {
	steps := func(piece string) string {
		return `{ weigh = "2.50 g", on = "scale" }, { make-up-to = "25 mL", in = "flask" },
{ take = "1 mL", with = "pipette" }, { make-up-to = "25 mL", in = "flask"` + piece + ` },`
	}
	shared := func(r *Result) (names []string) {
		for i := range r.Analytic.Budget {
			if line := &r.Analytic.Budget[i]; line.Uses > 1 {
				names = append(names, influence.Name(&line.Influence))
			}
		}
		return names
	}
	r := only(t, parse(t, smallKit, smallPrep(`target = "4 g/L"`, steps(""))))
	assert.Equal(t, []string{"bias of the flask, piece 1 at 25 mL", "temperature of the bench"}, shared(r))
	r = only(t, parse(t, smallKit, smallPrep(`target = "4 g/L"`, steps(", piece = 2"))))
	assert.Equal(t, []string{"temperature of the bench"}, shared(r))
}
