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
	"minim/uncertainty/strengths"
)

// tenth dilutes the stock to a tenth, exactly.
const tenth = fromStock + `{ take = "10 mL", with = "cylinder" }, ` + toMark

// A stock by limits, by certificate, and with a loss by age: u = a/√3 (EURACHEM/
// CITAC CG 4, E.1), U/k, and a mean of half the loss below what is stated.
func TestStock(t *testing.T) {
	for _, c := range []struct {
		strength, more string
		expected, u    float64 // of the tenth
	}{
		{"10 g/L", "", 1, 0},
		{`{ from = "9 g/L", to = "11 g/L" }`, "", 1, 0.1 / math.Sqrt(3)},
		{`{ value = "10 g/L", expanded = "0.4 g/L", k = 2 }`, "", 1, 0.02},
		{"10 g/L", `loss = "5 % of strength"`, 0.975, 0.05 / math.Sqrt(12)},
		{`{ value = "10 g/L", expanded = "0.4 g/L", k = 2 }`, `loss = "5 % of strength"`, 0.975, math.Hypot(0.02*0.975, 0.05/math.Sqrt(12))},
	} {
		r := recipe{target: "1 g/L", more: stockOf(c.strength, c.more), steps: tenth}.run(t)
		near.Relative(t, c.strength+c.more+", intended", 1, r.Intended, 1e-12)
		near.Relative(t, c.strength+c.more+", expected", c.expected, r.Analytic.Value, 1e-12)
		near.Equal(t, c.strength+c.more+", u", c.u, r.Analytic.StandardUncertainty, 1e-15, 1e-9)
		if c.u == 0 {
			assert.Contains(t, note.Texts(r.Notes.NotCounted), "uncertainty of the strength of stock (not stated)")
		}
		near.Relative(t, "solute used / g", 0.1, r.SoluteGrams, 1e-12)
	}
}

// What evaporates makes a solution stronger, by E/2 on average to first order,
// 1/(1 - E/2) here; once for each solution, however often it is taken from, and
// not for the last, nor for a bought stock.
func TestEvaporation(t *testing.T) {
	x := recipe{target: "10 g/L", solvent: "name = \"acetone\"\nevaporation = \"2 % of volume\""}
	for _, c := range []struct {
		name, steps string
		solutions   float64
	}{
		{"not taken from", weighTen + toMark, 0},
		{"taken from", weighTen + toMark + takeTen + toMark, 1},
		{"twice from one", weighTen + toMark + takeTen + takeTen + toMark, 1},
		{"two in a row", weighTen + toMark + takeTen + toMark + takeTen + toMark, 2},
		{"weighed from", weighTen + toMark + `{ weigh-aliquot = "10.00 g", on = "balance" }, { weigh-up-to = "100.00 g", on = "balance", vessel = "50 g" }, `, 1},
	} {
		x.steps = c.steps
		r := x.run(t)
		dry := x
		dry.solvent, dry.head = `name = "acetone"`, closed
		digit := 1e-9
		if strings.HasPrefix(c.name, "weighed") { // by mass a little less than by volume
			digit = 1e-3
		}
		near.Relative(t, c.name, math.Pow(1/0.99, c.solutions), r.Analytic.Value/dry.run(t).Analytic.Value, digit)
		near.Absolute(t, c.name+", influences", c.solutions, float64(count(r, "evaporation of acetone")), 0)
	}
	x.steps, x.more, x.target = tenth, stockOf("10 g/L"), "1 g/L"
	near.Relative(t, "bought", 1, x.run(t).Analytic.Value, 1e-12)

	// u of a loss of 0 to 2 % is 0.02/√12.
	x.steps, x.more, x.target = weighTen+toMark+takeTen+toMark, "", "10 g/L"
	near.Relative(t, "u", 0.02/math.Sqrt(12), lineOf(t, x.run(t), "evaporation of acetone").StandardUncertainty, 1e-12)
}

func count(r *Result, name string) (n int) {
	for _, line := range r.Analytic.Budget {
		if influence.Name(&line.Influence) == name {
			n++
		}
	}
	return n
}

// Conversions and identities of strengths.
//
//	1 % w/v = 10 g/L = 10 mg/mL = 10 000 mg/L = 10 000 µg/mL (exact)
//	9 g/L of sodium chloride, 58.44 g/mol: 0.15400411 mol/L (recomputed)
//	37 % w/w at 1.18 g/mL: 436.6 g/L (recomputed); φ so that the density is 1.18
//	40 % vol of ethanol at 0.7892391 g/mL: 315.6957 g/L (OIML R 22)
//	an enzyme of 30 U/mg: 1 mg/mL has 30 U/mL (exact)
func TestConversions(t *testing.T) {
	const w, density, water = 0.37, 1.18, 0.99821
	phi := (1 - (1-water/density)/w) / water // of ρ = ρ0/(1 - w (1 - φ ρ0))
	solute := fmt.Sprintf("name = \"x\"\nspecific-volume = \"%.15g mL/g\"\n", phi)
	for _, c := range []struct{ solute, from, to string }{
		{"", "1 % w/v", "10 g/L"},
		{"", "1 % w/v", "10 mg/mL"},
		{"", "1 % w/v", "10000 mg/L"},
		{"", "1 % w/v", "10000 µg/mL"},
		{"", "0.9 % w/v", "9 mg/mL"},
		{"", "0.05 % w/v", "500 µg/mL"},
		{`molar-mass = "58.44 g/mol"`, "9 g/L", "0.154004107 mol/L"},
		{`molar-mass = "58.44 g/mol"`, "9 g/L", "154.004107 mmol/L"},
		{solute, "37 % w/w", "436.6 g/L"},
		{solute, "37 % w/w", "43.66 % w/v"},
		{`density = "0.7892391233 g/mL"`, "40 % v/v", "315.695649 g/L"},
		{`activity = "30 U/mg"`, "1 mg/mL", "30 U/mL"},
	} {
		for _, way := range [][2]string{{c.from, c.to}, {c.to, c.from}} {
			x := recipe{target: way[1], solute: c.solute, more: stockOf(way[0]), steps: fromStock + `{ take = "100 mL", with = "cylinder" }, { make-up-to = "200 mL", in = "vessel" }, `}
			if !strings.HasPrefix(c.solute, "name") {
				x.solute = "name = \"x\"\n" + c.solute
			}
			kit := exactKit + "[[flask]]\nname = \"vessel\"\ncapacity = \"200 mL\"\ntolerance = \"0 mL\"\n"
			p := parse(t, kit, x.text())
			r := only(t, p)
			got := r.Intended / p.Target.Value
			if p.Target.Unit.Basis == strengths.ByMass { // half the strength is not half of it by mass
				g := p.fromGramsPerML(436.6e-3/2, p.Target.Unit)
				near.Relative(t, way[0]+" to "+way[1], g, r.Intended, 1e-12)
				continue
			}
			near.Relative(t, way[0]+" to "+way[1], 0.5, got, 1e-8)
		}
	}
}

// A stock and a target in one unit: the property that both rest on cancels,
// however badly it is known. It stands in the budget once, as shared, and
// contributes nothing.
func TestPropertyCancelsInOneUnit(t *testing.T) {
	solute := `name = "x"
molar-mass = { value = "58 g/mol", expanded = "10 g/mol", k = 2 }
density = { from = "1 g/mL", to = "2 g/mL" }
activity = { value = "30 U/mg", expanded = "10 U/mg", k = 2 }`
	for unit, property := range map[string]string{
		"mol/L": "molar mass of the x", "mmol/L": "molar mass of the x", "% v/v": "density of the x", "U/mL": "activity of the x",
	} {
		r := recipe{target: "1 " + unit, solute: solute, more: stockOf("10 " + unit), steps: tenth}.run(t)
		near.Relative(t, unit, 1, r.Analytic.Value, 1e-12)
		near.Absolute(t, unit+", u", 0, r.Analytic.StandardUncertainty, 1e-12)
		line := lineOf(t, r, property)
		assert.True(t, line.Uses > 1, unit)
		assert.Equal(t, 1, count(r, property), unit)
		near.Absolute(t, unit+", spread of the trials", 0, r.MonteCarlo.ShortestUpper-r.MonteCarlo.ShortestLower, 1e-12)
	}
	// % w/w of a stock weighed out and weighed up: φ cancels.
	r := recipe{target: "1 % w/w", more: stockOf("10 % w/w"),
		steps: fromStock + `{ weigh-aliquot = "10.00 g", on = "balance" }, { weigh-up-to = "100.00 g", on = "balance", vessel = "50 g" }, `}.run(t)
	near.Relative(t, "% w/w", 1, r.Analytic.Value, 1e-12)
	near.Absolute(t, "φ", 0, lineOf(t, r, "specific volume of the urea").Contribution, 1e-12)
}

// In another unit the property counts: 5 % of an activity, U/k = 5/30 of one with
// U = 10 and k = 2, and U/k of a molar mass.
func TestPropertyCountsInAnotherUnit(t *testing.T) {
	for _, c := range []struct {
		solute, stock, target, name string
		u                           float64
	}{
		{`activity = { value = "30 U/mg", expanded = "3 U/mg", k = 2 }`, "10 mg/mL", "30 U/mL", "activity of the x", 0.05},
		{`activity = { from = "27 U/mg", to = "33 U/mg" }`, "300 U/mL", "1 mg/mL", "activity of the x", 0.1 / math.Sqrt(3)},
		{`molar-mass = { value = "58.44 g/mol", expanded = "0.0064 g/mol", k = 2 }`, "9 g/L", "15 mmol/L", "molar mass of the x", 0.0032 / 58.44},
		{`density = { value = "1.26 g/mL", expanded = "0.01 g/mL", k = 2 }`, "10 % v/v", "1 g/L", "density of the x", 0.005 / 1.26},
	} {
		r := recipe{target: c.target, solute: "name = \"x\"\n" + c.solute, more: stockOf(c.stock), steps: tenth}.run(t)
		near.Relative(t, c.solute, c.u, math.Abs(lineOf(t, r, c.name).Contribution)/r.Analytic.Value, 2e-3) // 1/x of a rectangle has its mean beside
		assert.Equal(t, 1, count(r, c.name), c.name)
	}
}

// Limits in another unit than the target. By volume they are in proportion; by
// mass they are not: 20 % w/w of a solute with φ = 0 in a solvent of 1 g/mL is
// γ = w/(1 - w) = 0.25 g/mL, and ±50 g/L are 0.2/1.2 and 0.3/1.3.
func TestTolerancesInOtherUnits(t *testing.T) {
	urea := "name = \"urea\"\nmolar-mass = \"60.06 g/mol\"\nspecific-volume = \"0 mL/g\""
	x := recipe{target: "9 g/L", solute: urea, solvent: "name = \"water\"\ndensity = \"1 g/mL\"", steps: weighTen + toMark}
	for _, c := range []struct {
		target, head string
		lower, upper float64
	}{
		{"9 g/L", `tolerance = "0.01 mol/L"`, 9 - 0.6006, 9 + 0.6006},
		{"9 g/L", `tolerance = "0.1 % w/v"`, 8, 10},
		{"20 % w/w", `tolerance = "50 g/L"`, 100 * 0.2 / 1.2, 100 * 0.3 / 1.3},
		{"20 % w/w", `tolerance = "1 % w/w"`, 19, 21},
		{"9 g/L", `not-above = "0.2 mol/L"`, math.Inf(-1), 12.012},
		{"9 g/L", `not-below = "0.1 mol/L"`, 6.006, math.Inf(1)},
		{"0.2 mol/L", `not-above = "12.012 g/L"`, math.Inf(-1), 0.2}, // the target itself, but for rounding
		{"0.7 % w/v", `not-below = "7 g/L"`, 0.7, math.Inf(1)},
		{"0.9 % w/v", `not-above = "9 g/L"`, math.Inf(-1), 0.9},
	} {
		x.target, x.head = c.target, c.head
		limits := parse(t, exactKit, x.text()).Tolerances[0].Limits
		near.Absolute(t, c.head+", lower", 0, differ(c.lower, limits.Lower), 1e-12)
		near.Absolute(t, c.head+", upper", 0, differ(c.upper, limits.Upper), 1e-12)
	}
}
