package equipment

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"minim/uncertainty"
	"minim/uncertainty/near"
)

// Beakers and conical flasks are right within 5 % of the mark (two sources of
// modest quality), or 10 % where nothing is printed on them; one piece errs alike
// at all marks.
func TestPrintedScales(t *testing.T) {
	for head, share := range map[string]float64{
		"[[beaker]]\nform = \"marked\"\n": 0.05, "[[beaker]]\n": 0.05, "[[conical-flask]]\n": 0.05, "[[beaker]]\nform = \"unmarked\"\n": 0.10,
	} {
		k := one(t, head+"name = \"x\"\ncapacity = \"100 mL\"\ndivision = \"25 mL\"\nclinging = \"0 mL\"\nretained = \"0 mL\"\n")
		u := quiet()
		u.Marks = 2
		for _, mark := range []float64{50, 100} {
			got := contained(t, k, u, mark)
			near.Relative(t, head, share*mark/math.Sqrt(3), got.StandardUncertainty, 1e-12)
			assert.Equal(t, []float64{mark, mark}, []float64{got.Intended, got.Value})
		}
		half, err := k.Contain(u.next("a"), 50)
		require.NoError(t, err)
		near.Relative(t, "one z", 1, correlation(t, u, half, node(t, k, u, "b", 100)), 1e-9)
		u.BenchReading = ordinary
		same(t, contained(t, k, u.next("c"), 50).Analytic, "reading of the x", 0.5*25/math.Sqrt(6))
	}
}

// A student filled a 150 mL beaker ten times to 10 mL: 10.206 mL in the mean
// (https://clubensayos.com/Ciencia/Mediciones/1608798.html). Another found 101.1 mL at the 100 mL
// mark (https://pt.scribd.com/document/535779992/Relatorio-1; one source each).
func TestPrintedScalesAgainstMeasured(t *testing.T) {
	k := one(t, "[[beaker]]\nname = \"x\"\ncapacity = \"150 mL\"\n")
	for mark, volume := range map[float64]float64{10: 10.206, 100: 101.1} {
		got := contained(t, k, quiet(), mark)
		assert.Equal(t, true, math.Abs(volume-mark) < 2*got.StandardUncertainty)
	}
}

func TestNotesOfAPrintedScale(t *testing.T) {
	u := on(alone(), 20, 2, 2.1e-4)
	contained(t, one(t, "[[beaker]]\nname = \"x\"\ncapacity = \"100 mL\"\n"), u, 50)
	assert.Equal(t, said{
		Assumed: []string{"50 mL in the x is right within 2.5 mL (common practice, no standard)"},
		NotCounted: []string{
			"thermal expansion of the x",
			"reading of the x (its division is not stated)",
			"drops clinging above the meniscus in the x",
		},
	}, worded(u.Notes))
	u = quiet()
	contained(t, one(t, "[[beaker]]\nname = \"x\"\ncapacity = \"100 mL\"\ntolerance = \"3 % of reading\"\nclinging = \"0 mL\"\n"), u, 50)
	assert.Equal(t, said{}, worded(u.Notes))
}

// GOST 1770: a 50 mL conical measure is allowed 2.5 mL at any mark. It is adjusted
// to deliver (Ex): poured out it gives its mark, filled it holds what stays besides.
func TestConicalMeasure(t *testing.T) {
	k := one(t, "[[conical-measure]]\nname = \"x\"\ncapacity = \"50 mL\"\ndivision = \"5 mL\"\nclinging = \"0 mL\"\nretained = { mean = \"0.3 mL\", spread = \"0.1 mL\" }\n")
	assert.Equal(t, true, k.Ex)
	poured := delivered(t, k, quiet(), 20)
	near.Relative(t, "poured", 20, poured.Value, 1e-12)
	near.Relative(t, "intended", 20, poured.Intended, 1e-12)
	same(t, poured.Analytic, "bias of the x at 20 mL", 2.5/math.Sqrt(3))
	same(t, poured.Analytic, "retained in the x", 0.1)
	filled := contained(t, k, quiet(), 20)
	near.Relative(t, "filled", 20.3, filled.Value, 1e-12)
	assert.Equal(t, 20.0, filled.Intended)
	near.Relative(t, "u", 2.5/math.Sqrt(3), filled.StandardUncertainty, 1e-12)
	assert.Equal(t, false, one(t, "[[conical-measure]]\nname = \"x\"\ncapacity = \"50 mL\"\nmarked = \"In\"\n").Ex)
}

// A plastic transfer pipette: 0.1 mL of 1 mL at every mark, a judgement from memory,
// read at its quarter marks; its limit holds the reading.
func TestTransferPipette(t *testing.T) {
	const head = "[[pipette]]\nname = \"x\"\nkind = \"transfer\"\n"
	k, u := one(t, head+"capacity = \"1 mL\"\n"), alone()
	got := delivered(t, k, u, 0.5)
	assert.Equal(t, uncertainty.Rectangular{Low: -0.1, High: 0.1}, term(got.Analytic, "bias of the x at 0.5 mL").Distribution)
	assert.Equal(t, 1, len(got.Budget))
	assert.Equal(t, said{
		Assumed:    []string{"0.5 mL in the x is right within 0.1 mL (common practice, no standard)"},
		FromMemory: []string{"the limit of the x, ±0.1 mL (no standard)"},
		NotCounted: []string{"scatter of what stays in the x as it delivers"},
	}, worded(u.Notes))
	impossible(t, "0.1 mL is less than one division of the x: 0.25 mL", k.Reads(0.1))
	own := one(t, head+"capacity = \"3 mL\"\ntolerance = \"15 % of capacity\"\n")
	near.Relative(t, "own", 0.45/math.Sqrt(3), delivered(t, own, alone(), 2).StandardUncertainty, 1e-12)
}
