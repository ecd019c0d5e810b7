package route

import (
	"context"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"minim/report/words/note"
	"minim/uncertainty"
	"minim/uncertainty/independent"
	"minim/uncertainty/near"
)

// independentFolder holds routes.py, the measurement model of seven routes in numpy, and
// routes.csv, what it prints with 10^7 trials.
const independentFolder = "../../testdata/independent"

// The model of seven routes agrees with a rendering of it that shares no code with it.
func TestIndependentRendering(t *testing.T) {
	skipIfSlow(t)
	agrees(t, independent.Read(t, independentFolder, "routes.csv"))
}

// The rendering, run again with another seed, agrees with the model and with what it
// printed before.
func TestIndependentRenderingAgain(t *testing.T) {
	again := independent.Run(t, independentFolder, "routes.py", 1_000_000)
	agrees(t, again)
	before := independent.Read(t, independentFolder, "routes.csv")
	require.Len(t, again, len(before))
	for i, f := range again {
		require.Equal(t, []string{before[i].Of, before[i].Quantity}, []string{f.Of, f.Quantity})
		near.Absolute(t, f.Of+", "+f.Quantity+", rendered before", before[i].Value, f.Value, f.Within(before[i].Err))
	}
}

func agrees(t *testing.T, rendering []independent.Figure) {
	t.Helper()
	p := load(t, sevenRoutes)
	c, err := Compare(context.Background(), p, "", uncertainty.Settings{Seed: 1, Trials: 1_000_000, Coverage: 0.95})
	require.NoError(t, err)
	for _, f := range rendering {
		mc := &named(t, c, f.Of).MonteCarlo
		var value, err float64
		switch f.Quantity {
		case "mean":
			value, err = mc.Mean, mc.MeanError
		case "SD":
			value, err = mc.StandardDeviation, mc.DeviationError
		case "inside":
			value = named(t, c, f.Of).Chance()
			err = math.Sqrt(value * (1 - value) / float64(mc.Trials))
		default:
			require.Fail(t, "unknown quantity", f.Quantity)
		}
		near.Absolute(t, f.Of+", "+f.Quantity, f.Value, value, f.Within(err))
	}
	assert.Len(t, rendering, 3*7, "mean, SD and chance of seven routes")
	assert.False(t, named(t, c, "0.1 g scale, direct").Possible)
	assert.False(t, named(t, c, "0.01 g scale, direct").Informative)
	three := named(t, c, "three dilutions")
	assert.False(t, three.Enough(p.Volume))
	assert.Contains(t, note.Texts(three.Notes.Warnings), "three dilutions makes only 14 mL")
}
