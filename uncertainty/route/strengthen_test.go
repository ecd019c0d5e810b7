package route

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"minim/uncertainty/near"
)

// correctionKit has a flask with u = 0.2 mL and a pipette with u = 0.05 mL, whatever they
// measure, and a cylinder and a balance that are exact.
const correctionKit = `
[[balance]]
name = "balance"
capacity = "200 g"
readability = "0.01 g"
weighing-uncertainty = "0.001 g"
[[flask]]
name = "flask"
capacity = "100 mL"
standard-uncertainty = "0.2 mL"
reading = "none"
[[pipette]]
name = "pipette"
kind = "graduated"
capacity = "10 mL"
division = "0.1 mL"
standard-uncertainty = "0.05 mL"
between-marks = 1
reading = "none"
retained = "0 mL"
[[cylinder]]
name = "cylinder"
capacity = "200 mL"
division = "1 mL"
tolerance = "0 mL"
reading = "none"
clinging = "0 mL"
retained = "0 mL"
`

func correctionPrep(steps string) string {
	return `
target = "1 g/L"
volume = "10 mL"
[solute]
name = "urea"
specific-volume = "0.5 mL/g"
[solvent]
name = "water"
[[stock]]
name = "strong"
strength = { value = "50 g/L", expanded = "1 g/L", k = 2 }
[[stock]]
name = "bottle"
strength = "50 g/L"
volume = { value = "20 mL", expanded = "0.4 mL", k = 2 }
[[route]]
name = "route"
steps = [
` + steps + "]\n"
}

const onePerCent = `
{ weigh = "1.00 g", on = "balance" },
{ make-up-to = "100 mL", in = "flask" },
`

// Closed forms, constructed. What goes on whole keeps its solute, so that the volume it
// was made up to cancels in part or altogether; what is added is as uncertain as it is
// measured.
func TestCorrections(t *testing.T) {
	for _, test := range []struct {
		name, steps              string
		value, u, made, leftOver float64
	}{
		// c = m/(V + b): 1000/150, u² = (1/150)² + (6.667 0.2/150)²
		{"solvent added to all", onePerCent + `{ take = "all" }, { add = "50 mL", with = "cylinder" },`,
			6.6666667, 0.011111111, 150, 140},
		// c = m/V', the flask does not come in: u = 1/150
		{"all made up to a mark", onePerCent + `{ take = "all" }, { make-up-to = "150 mL", in = "cylinder" },`,
			6.6666667, 0.0066666667, 150, 140},
		// c = m a/V/V': 1000 10/100/150; what is added in between does not come in:
		// u² = c² (0.001² + 0.002² + 0.005²)
		{"a mixture made up to a mark", onePerCent + `{ take = "10 mL", with = "pipette" }, { add = "1 mL", with = "cylinder" },
			{ take = "all" }, { make-up-to = "150 mL", in = "cylinder" },`,
			0.66666667, 0.0036514837, 150, 230},
		// c = (m + c_s b)/(V + b) = (1000 + 500)/110, c_s b with u(c_s) = 0.5, u(b) = 0.05:
		// u² = (1/110)² + (13.636 0.2/110)² + (10 0.5/110)² + ((50 - 13.636) 0.05/110)²
		{"strengthened with a stock", onePerCent + `{ take = "all" }, { strengthen = "10 mL", of = "strong", with = "pipette" },`,
			13.636364, 0.055106060, 110, 100},
		// c = (m + c_s b²/25)/(V + b) = (1000 + 200)/110, with x = b = 10 of one pipette at one mark:
		// u² = (1/110)² + (10.909 0.2/110)² + (0.5 100/25/110)² + ((2 50 10/25 - 10.909) 0.05/110)²;
		// left over are 15 mL of what was diluted
		{"strengthened with a stock that is diluted first", onePerCent + `{ take = "10 mL", of = "strong", with = "pipette" }, { make-up-to = "25 mL", in = "cylinder" },
			{ take = "all", of = "step 2" }, { strengthen = "10 mL", of = "step 4", with = "pipette" },`,
			10.9090909, 0.0313287462, 110, 115},
		// c = (m + m' )/(V + m' φ) = 1500/100.25: u² = (1/100.25)² + (1/100.25)² (1 - 14.963/1000 0.5)² + (14.963 0.2/100.25)²
		{"solute added", onePerCent + `{ take = "all" }, { add-solute = "0.50 g", on = "balance" },`,
			14.962594, 0.032993582, 100.25, 90.25},
		// A bottle that goes on whole: c = c_b V/(V + 80) = 10, u = 10 (1/20 - 1/100) 0.2
		{"all of a bottle", `{ start = "bottle" }, { take = "all" }, { add = "80 mL", with = "cylinder" },`,
			10, 0.08, 100, 90},
	} {
		r := only(t, parse(t, correctionKit, correctionPrep(test.steps)))
		near.Relative(t, test.name, test.value, r.Analytic.Value, 1e-7)
		near.Relative(t, test.name+", u", test.u, r.Analytic.StandardUncertainty, 1e-7)
		near.Relative(t, test.name+", made", test.made, r.MadeML, 1e-9)
		near.Relative(t, test.name+", left over", test.leftOver, r.LeftOverML, 1e-9)
	}
}

// A batch strengthened with the solution that it was made from: c = (c₁ a + c₁ b)/(V + b)
// with a and b from one pipette, and c₁ = m/V₁ (constructed):
// 10 g/L (2 + 3)/(50 + 3) = 0.94339623; what is wrong with the pipette pulls both ways.
func TestStrengthenWithAParent(t *testing.T) {
	p := parse(t, correctionKit, correctionPrep(onePerCent+`
{ take = "2 mL", with = "pipette" },
{ make-up-to = "50 mL", in = "cylinder" },
{ take = "all" },
{ strengthen = "3 mL", of = "step 2", with = "pipette" },
`))
	r := only(t, p)
	near.Relative(t, "c", 0.94339623, r.Analytic.Value, 1e-7)
	u := math.Sqrt(0.001*0.001 + 0.002*0.002 + math.Pow(0.05*(2.0/5-1.0/53), 2)) // m, V₁, pipette
	near.Relative(t, "u", 0.94339623*u, r.Analytic.StandardUncertainty, 1e-6)
	near.Relative(t, "left over: 95 of the first, 43 of the last", 95+43, r.LeftOverML, 1e-9)
	solutions, err := p.Solutions(p.Routes[0])
	require.NoError(t, err)
	require.Len(t, solutions, 3)
	assert.Equal(t, []int{2, 4, 6}, []int{solutions[0].Step, solutions[1].Step, solutions[2].Step})
	near.Relative(t, "left of the first", 95, solutions[0].LeftML, 1e-9)
	near.Relative(t, "concentration of the first", 0.01, solutions[0].Concentration, 1e-9)
}

func TestCorrectionsThatCannotBe(t *testing.T) {
	for steps, reason := range map[string]string{
		`{ start = "strong" }, { take = "all" }, { add = "80 mL", with = "cylinder" },`:                                                  "all of a stock can be taken only when its volume is stated",
		`{ start = "bottle" }, { take = "150 mL", with = "cylinder" }, { make-up-to = "180 mL", in = "cylinder" },`:                      "150 mL cannot be taken from the 20 mL that are left",
		onePerCent + `{ take = "all" }, { make-up-to = "90 mL", in = "cylinder" },`:                                                      "100 mL are already more than up to the mark at 90 mL",
		onePerCent + `{ take = "all" }, { strengthen = "10 mL", of = "step 1", with = "pipette" },`:                                      "step 1 has not made a solution",
		onePerCent + `{ take = "all" }, { strengthen = "1 mL", of = "step 4", with = "pipette" },`:                                       "step 4 has not made a solution",
		onePerCent + `{ take = "all" }, { add = "10 mL", with = "cylinder" }, { strengthen = "1 mL", of = "step 2", with = "pipette" },`: "1 mL cannot be taken from the 0 mL that are left",
	} {
		c := compareAll(t, parse(t, correctionKit, correctionPrep(steps)))
		assert.False(t, c.Results[0].Possible, steps)
		assert.Equal(t, reason, c.Results[0].Reason.String())
	}
}

// What evaporates from a solution before all of it goes on leaves the solute in it.
func TestEvaporationOfAll(t *testing.T) {
	prep := correctionPrep(onePerCent + `{ take = "all" }, { add = "50 mL", with = "cylinder" },`)
	p := parse(t, correctionKit, prep)
	p.Solvent.Evaporation = 0.1
	// c = m/(V (1 - e) + b) with E[e] = 0.05: 1000/145
	near.Relative(t, "c", 6.8965517, only(t, p).Analytic.Value, 1e-7)
}
