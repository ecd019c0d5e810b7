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

// independentFolder holds scripts that are the measurement model of routes in numpy, and what they
// print with 10^7 trials.
const independentFolder = "../../testdata/independent"

// rendered are the scripts, with their preps and how many figures they give.
var rendered = []struct {
	script, prep    string
	trials, figures int
}{
	{"routes", sevenRoutes, 1_000_000, 3 * 7},                             // mean, SD and chance
	{"spirit", "../../testdata/preps/spirit-routes.toml", 300_000, 5 * 7}, // and both ends
}

// The models agree with renderings of them that share no code with them.
func TestIndependentRendering(t *testing.T) {
	skipIfSlow(t)
	for _, r := range rendered {
		figures := independent.Read(t, independentFolder, r.script+".csv")
		assert.Len(t, figures, r.figures, r.script)
		c := agrees(t, r.prep, r.trials, figures)
		if r.prep == sevenRoutes {
			findings(t, c)
		}
	}
}

// The renderings, run again with another seed, agree with the models and with what they
// printed before.
func TestIndependentRenderingAgain(t *testing.T) {
	for _, r := range rendered {
		again := independent.Run(t, independentFolder, r.script+".py", 1_000_000)
		agrees(t, r.prep, r.trials, again)
		before := independent.Read(t, independentFolder, r.script+".csv")
		require.Len(t, again, len(before))
		for i, f := range again {
			require.Equal(t, []string{before[i].Of, before[i].Quantity}, []string{f.Of, f.Quantity})
			near.Absolute(t, f.Of+", "+f.Quantity+", rendered before", before[i].Value, f.Value, f.Within(before[i].Err))
		}
	}
}

func agrees(t *testing.T, prep string, trials int, rendering []independent.Figure) *Comparison {
	t.Helper()
	c, err := Compare(context.Background(), load(t, prep), "", uncertainty.Settings{Seed: 1, Trials: trials, Coverage: 0.95})
	require.NoError(t, err)
	for _, f := range rendering {
		mc := &named(t, c, f.Of).MonteCarlo
		var value, err float64
		switch f.Quantity {
		case "mean":
			value, err = mc.Mean, mc.MeanError
		case "SD":
			value, err = mc.StandardDeviation, mc.DeviationError
		case "lower":
			value, err = mc.Lower, mc.LowerError
		case "upper":
			value, err = mc.Upper, mc.UpperError
		case "inside":
			value = named(t, c, f.Of).Chance()
			err = math.Sqrt(value * (1 - value) / float64(mc.Trials))
		default:
			require.Fail(t, "unknown quantity", f.Quantity)
		}
		near.Absolute(t, f.Of+", "+f.Quantity, f.Value, value, f.Within(err))
	}
	return c
}

// findings of the seven routes beside their figures.
func findings(t *testing.T, c *Comparison) {
	assert.False(t, named(t, c, "0.1 g scale, direct").Possible)
	assert.False(t, named(t, c, "0.01 g scale, direct").Informative)
	three := named(t, c, "three dilutions")
	assert.False(t, three.Enough(c.Prep.Volume))
	assert.Contains(t, note.Texts(three.Notes.Warnings), "three dilutions makes only 14 mL")
}
