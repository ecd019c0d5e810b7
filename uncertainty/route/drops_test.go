package route

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"minim/report/words/influence"
	"minim/uncertainty"
	"minim/uncertainty/near"
)

// Whatever drops are counted of is counted with the doubt about its drops: a liquid
// solute, a stock, a solution made on the way; the solvent itself is known by its tension
// (constructed: the exact kit adds nothing of its own).
func TestWhatDropsAreCountedOf(t *testing.T) {
	solution := `{ weigh = "10.00 g", on = "balance" }, ` + toMark
	for _, c := range []struct {
		name        string
		recipe      recipe
		of          string
		low, high   float64
		shiftedFrom float64
	}{
		{"liquid solute", recipe{target: "10 g/L", solute: "name = \"mycocide\"\ndensity = \"1 g/mL\"", steps: `{ measure = "20 drops", with = "dropper" }, ` + toMark}, "mycocide", 0.4, 1, 10},
		{"liquid solute of the tables", recipe{target: "10 g/L", solute: "name = \"acetone\"\ndensity = \"1 g/mL\"", steps: `{ measure = "20 drops", with = "dropper" }, ` + toMark}, "acetone", 0.350, 0.473, 4.11},
		{"stock", recipe{target: "0.1 g/L", more: stockOf("10 g/L"), steps: fromStock + `{ take = "20 drops", with = "dropper" }, ` + toMark}, "stock", 0.4, 1, 0.1},
		{"made", recipe{target: "1 g/L", steps: solution + `{ take = "20 drops", with = "dropper" }, ` + toMark}, "urea in water", 0.4, 1, 1},
		{"added", recipe{target: "5 g/L", more: stockOf("10 g/L"), steps: fromStock + takeTen + `{ strengthen = "20 drops", with = "dropper", of = "stock" }, ` + `{ add = "10 mL", with = "10 mL pipette" }, `}, "stock", 0.4, 1, 0},
	} {
		r := c.recipe.run(t)
		line := lineOf(t, r, "size of a drop of "+c.of+" beside one of water")
		s := uncertainty.SummaryOf(line.Distribution)
		low, high := s.Low, s.High
		near.Absolute(t, c.name+", low", c.low, low, 0.001)
		near.Absolute(t, c.name+", high", c.high, high, 0.001)
		assert.Equal(t, c.of, line.Owner.Name, c.name)
		assert.True(t, line.Assumed, c.name)
		if c.shiftedFrom > 0 {
			near.Relative(t, c.name+", intended", c.shiftedFrom, r.Intended, 0.002)
			mean := (low + high) / 2
			planned := line.Influence.Nominal
			near.Relative(t, c.name+", expected", c.shiftedFrom*mean/planned, r.Analytic.Value, 0.002)
		}
	}
	// Water added by the drop is water.
	r := recipe{target: "5 g/L", more: stockOf("10 g/L"), steps: fromStock + takeTen + `{ add = "20 drops", with = "dropper" }, `}.run(t)
	for _, line := range r.Analytic.Budget {
		assert.NotContains(t, influence.Name(&line.Influence), "size of a drop")
	}
}
