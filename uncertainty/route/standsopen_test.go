package route

import (
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"minim/equipment"
	"minim/report/words/note"
	"minim/uncertainty"
	"minim/uncertainty/near"
)

const openKit = exactKit + `
[[beaker]]
name = "beaker"
capacity = "50 mL"
division = "25 mL"
tolerance = "0 mL"
reading = "none"
[[cylinder]]
name = "narrow"
capacity = "10 mL"
division = "1 mL"
tolerance = "0 mL"
reading = "none"
clinging = "0 mL"
retained = "0 mL"
bore = "13 mm"
`

// opened is a result on a kit with open vessels, and its influences of evaporation.
func opened(t *testing.T, x recipe) (r *Result, lines []uncertainty.Contribution) {
	t.Helper()
	r = only(t, parse(t, openKit, x.text()))
	for _, line := range r.Analytic.Budget {
		if line.Code == evaporated {
			lines = append(lines, line)
		}
	}
	return r, lines
}

// What is weighed in the open, or made up in what has no stopper, loses nothing to E of its solvent: E is
// the flux of the formula times the opening times the minutes, over the mass; worked out by hand at 20 °C.
// The strength rises by half of that and has it as a rectangular influence, assumed. What closes, or is
// said to be closed, loses nothing, and what the prep states comes first.
func TestWhatStandsOpenEvaporates(t *testing.T) {
	ethanol, acetone := `name = "ethanol"`, `name = "acetone"`
	const closing = `, open = "0 min" }, `
	weighed := func(more string) string {
		return weighTen + `{ weigh-up-to = "40.00 g", on = "balance"` + more + ` }, `
	}
	volume := 40 / 0.7893 // mL, as if it were solvent alone
	wide := 4 * math.Cbrt(volume/25)
	length := func(w, mL float64) float64 { return 1.5*w - mL/(math.Pi/4*w*w) + 0.5 }
	inBeaker := func(flux, minutes, grams, mL float64) float64 {
		w := 4 * math.Cbrt(mL/25)
		return flux * math.Pi / 4 * w * w / length(w, mL) * minutes / 1000 / grams
	}
	for name, c := range map[string]struct {
		x    recipe
		most float64
	}{
		"weighed in ethanol":   {recipe{target: "25 % w/w", solvent: ethanol, steps: weighed("")}, 0.792 * 0.85 * math.Pi / 4 * wide * wide / length(wide, volume) * 10 / 1000 / 40},
		"a quarter of an hour": {recipe{target: "25 % w/w", solvent: ethanol, steps: weighed(`, open = "15 min"`)}, 1.5 * inBeaker(0.792*0.85, 10, 40, volume)},
		"through a neck":       {recipe{target: "25 % w/w", solvent: ethanol, steps: weighed(`, open = "600 min", mouth = "12 mm"`)}, 0.792 * math.Pi / 4 * 1.44 / (length(wide, volume) - 0.5 + 0.15*math.Pi) * 600 / 1000 / 40},
		"weighed in water":     {recipe{target: "40 % w/w", steps: weighTen + `{ weigh-up-to = "25.00 g", on = "balance" }, `}, inBeaker(0.132, 10, 25, 25/0.99821)},
		"dissolved":            {recipe{target: "100 g/L", solvent: acetone, solute: "name = \"dye\"\nspecific-volume = \"0 mL/g\"", steps: `{ weigh = "2.50 g", on = "balance" }, { dissolve-in = "25 mL", with = "cylinder" }, `}, inBeaker(5.02*0.6, 15, 25*0.7905, 25)},
		"in a beaker":          {recipe{target: "400 g/L", solvent: ethanol, steps: weighTen + `{ make-up-to = "25 mL", in = "beaker" }, `}, 0.792 * 0.85 * math.Pi * 4 / (6.5 - 25/(math.Pi*4)) * 5 / 1000 / (25 * 0.7893)},
		"in a cylinder":        {recipe{target: "500 g/L", solvent: ethanol, steps: `{ weigh = "5.00 g", on = "balance" }, { make-up-to = "10 mL", in = "narrow" }, `}, 0.300 * 5 / 1000 / 7.893},
		"in a flask":           {recipe{target: "100 g/L", solvent: ethanol, steps: weighTen + toMark}, 0},
		"a flask left open":    {recipe{target: "100 g/L", solvent: acetone, steps: weighTen + `{ make-up-to = "100 mL", in = "flask", open = "300 min", mouth = "9 mm" }, `}, 5.02 * math.Pi / 4 * 0.81 / (6*math.Cbrt(2) - 100/(math.Pi*4*math.Cbrt(4)) + 0.1125*math.Pi) * 300 / 1000 / 79.05},
		"a little water":       {recipe{target: "500 g/L", steps: `{ weigh = "5.00 g", on = "balance" }, { make-up-to = "10 mL", in = "narrow" }, `}, 0},
		"closed":               {recipe{target: "25 % w/w", solvent: acetone, steps: weighTen + `{ weigh-up-to = "40.00 g", on = "balance"` + closing}, 0},
		"all closed":           {recipe{head: closed, target: "25 % w/w", solvent: acetone, steps: weighed("")}, 0},
		"closed but this":      {recipe{head: closed, target: "25 % w/w", solvent: ethanol, steps: weighed(`, open = "10 min"`)}, inBeaker(0.792*0.85, 10, 40, volume)},
		"stated":               {recipe{target: "25 % w/w", solvent: acetone + "\nevaporation = \"0 % of volume\"", steps: weighed("")}, 0},
		"mixed by volume":      {recipe{target: "5 g/L", solvent: ethanol, more: stockOf("10 g/L") + "opened = 0\n", steps: fromStock + fifty + add("50 mL", "")}, 0},
		"mixed and left":       {recipe{target: "5 g/L", solvent: ethanol, more: stockOf("10 g/L") + "opened = 0\n", steps: fromStock + fifty + add("50 mL", `, open = "30 min"`)}, inBeaker(0.792*0.85, 30, 78.93, 100)},
		"ammonia":              {recipe{target: "1 % w/w", solute: `name = "ammonia"`, solvent: ethanol, steps: weighed("")}, 0},
	} {
		r, lines := opened(t, c.x)
		dry := c.x
		dry.head = closed
		dry.steps = strings.NewReplacer(`open = "15 min"`, `open = "0 min"`, `open = "600 min"`, `open = "0 min"`, `open = "300 min"`, `open = "0 min"`, `open = "30 min"`, `open = "0 min"`, `open = "10 min"`, `open = "0 min"`).Replace(dry.steps)
		without, none := opened(t, dry)
		assert.Empty(t, none, name)
		near.Relative(t, name+", intended", without.Intended, r.Intended, 1e-12)
		if c.most == 0 {
			assert.Empty(t, lines, name)
			near.Relative(t, name, without.Analytic.Value, r.Analytic.Value, 1e-12)
			continue
		}
		if !assert.Len(t, lines, 1, name) {
			continue
		}
		about := uncertainty.SummaryOf(lines[0].Distribution)
		near.Relative(t, name+", at most", -c.most, about.Low, 2e-3)
		near.Absolute(t, name+", at least", 0, about.High, 0)
		near.Relative(t, name+", stronger by half", without.Analytic.Value/(1-c.most/2), r.Analytic.Value, 1e-6)
		near.Relative(t, name+", u", r.Analytic.Value*c.most/math.Sqrt(12), math.Abs(lines[0].Contribution), 5e-3)
		assert.True(t, lines[0].Assumed, name)
		noted(t, note.Texts(r.Notes.Assumed), "evaporates, as ", "within a factor of 2")
	}
}

// A stock in a volatile solvent has been opened often, unless the prep says how often; in water that
// comes to nothing.
func TestStocksAreOpened(t *testing.T) {
	const air = 0.1105 / 2 / 789.3
	for more, times := range map[string]float64{"": 5, "opened = 0\n": 0, "opened = 40\n": 40} {
		r, lines := opened(t, recipe{target: "1 g/L", solvent: `name = "ethanol"`, more: stockOf("10 g/L") + more, steps: tenth})
		near.Relative(t, more, 1/(1-times*air/2), r.Analytic.Value, 1e-9)
		assert.Len(t, lines, min(1, int(times)))
		if times > 0 {
			assert.Equal(t, uncertainty.Stock, lines[0].Owner.Kind)
			assert.Equal(t, "ethanol", lines[0].Group.Name)
		}
	}
	_, lines := opened(t, recipe{target: "1 g/L", more: stockOf("10 g/L"), steps: tenth})
	assert.Empty(t, lines, "water")
	_, lines = opened(t, recipe{head: closed, target: "1 g/L", solvent: `name = "acetone"`, more: stockOf("10 g/L"), steps: tenth})
	assert.Empty(t, lines, "all closed")
	_, lines = opened(t, recipe{target: "1 g/L", more: stockOf("10 g/L") + "solvent = \"ethanol\"\n", steps: tenth})
	if assert.Len(t, lines, 1) {
		assert.Equal(t, "ethanol", lines[0].Group.Name, "what leaves the bottle, not the solvent of the prep")
	}
}

// What a search multiplies by is what the model of the route has: a cylinder that stands open.
func TestContainedFactorEvaporates(t *testing.T) {
	p := parse(t, openKit, recipe{target: "500 g/L", head: `bench = { meniscus = "ignored" }`, solvent: `name = "ethanol"`, steps: `{ weigh = "5.00 g", on = "balance" }, { make-up-to = "10 mL", in = "narrow" }, `}.text())
	f, err := p.ContainedFactor(p.Routes[0].Steps[1])
	assert.NoError(t, err)
	most := 0.300 * 5 / 1000 / 7.893
	near.Relative(t, "mean", 10*(1-most/2), f.Mean, 1e-6)
	near.Relative(t, "own", most*most/12, f.Own, 5e-3)
}

// More than half of a solution cannot evaporate, and of what no table has nothing is known.
func TestWhatCannotStandOpen(t *testing.T) {
	x := recipe{target: "25 % w/w", solvent: `name = "acetone"`, steps: weighTen + `{ weigh-up-to = "40.00 g", on = "balance", open = "10000 min" }, `}
	p := parse(t, openKit, x.text())
	_, err := p.compile(p.Routes[0])
	why, no := equipment.WhyNot(err)
	assert.True(t, no)
	assert.Equal(t, "evaporates-away", why.Code)
	assert.Contains(t, why.String(), "of 40 g in a beaker 50.")
	assert.Contains(t, why.String(), "open for 10000 min, ")

	r, lines := opened(t, recipe{target: "400 g/L", solvent: "name = \"turpentine\"", steps: weighTen + `{ make-up-to = "25 mL", in = "beaker" }, `})
	assert.Empty(t, lines)
	noted(t, note.Texts(r.Notes.NotCounted), "evaporation of turpentine from vessels that stand open")
	r, _ = opened(t, recipe{target: "1 % w/w", solute: `name = "formaldehyde"`, solvent: `name = "ethanol"`, steps: weighTen + `{ weigh-up-to = "40.00 g", on = "balance" }, `})
	noted(t, note.Texts(r.Notes.NotCounted), "what of formaldehyde itself evaporates from vessels that stand open, with its solvent")
}

// Rungs of a ladder stand open as what is made up to a mark does.
func TestRungsStandOpen(t *testing.T) {
	x := recipe{target: "100 g/L", head: "ladder = [\"50 g/L\", \"20 g/L\"]\nladder-with = \"cylinder\"\nladder-in = \"narrow\"\nbench = { meniscus = \"ignored\" }", solvent: `name = "ethanol"`, steps: weighTen + toMark}
	r, _ := opened(t, x)
	most := 0.300 * 5 / 1000 / 7.893
	for i, want := range []float64{50, 20} {
		near.Relative(t, "rung", want/(1-most/2), r.Ladder[i].Analytic.Value, 1e-6)
	}
}
