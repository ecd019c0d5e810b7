package figure

import (
	"context"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"minim/report/words"
	"minim/uncertainty"
	read "minim/uncertainty/bench"
	"minim/uncertainty/record"
	"minim/uncertainty/rescue"
)

var fewTrials = uncertainty.Settings{Trials: 10_000, Seed: 1}

// batchOf is a batch by the two dilutions of the demo, with the entries of a record.
func batchOf(t *testing.T, entries string) *words.Batch {
	t.Helper()
	p, err := read.LoadPrep(context.Background(), "../../cmd/minim/demo/dye.toml", "")
	require.NoError(t, err)
	r, err := read.ParseRecord("r", []byte("route = \"two dilutions\"\n[entries]\n"+entries), p)
	require.NoError(t, err)
	m, err := record.Evaluate(context.Background(), r, fewTrials)
	require.NoError(t, err)
	return &words.Batch{Made: m}
}

// The figure of a batch shows the plan, the batch, and what becomes of it, in that order.
func TestBatch(t *testing.T) {
	b := batchOf(t, "1 = { step = 1, weigh = \"1.20 g\", by = \"AK\" }\n2 = { step = 6, by = \"AK\" }\n")
	var err error
	b.Rescue, err = rescue.Find(context.Background(), b.Prep, b.Record.Made, fewTrials)
	require.NoError(t, err)
	f, err := Batch(b)
	require.NoError(t, err)
	assert.Regexp(t, `^How the strength of a batch spreads, wanted 15 mL of .*: a row of a hundred dots for each\. `+
		`as planned, 99\.. in 100 inside; as made, (under )?0\.. in 100 inside; corrected, (over )?99\.. in 100 inside\.$`, f.Alt)
	svg, err := f.SVG()
	require.NoError(t, err)
	for _, words := range []string{"THIS BATCH: OUTSIDE", "As made: under 0.1 in 100 inside", "batch, and the strength", "The batch as made goes by what was really read, with all that is uncertain of that."} {
		assert.Contains(t, string(svg), words)
	}
	assert.NotContains(t, string(svg), "All this is predicted")
}

// Of a batch that is not finished the figure says that the rest is the plan's.
func TestBatchNotFinished(t *testing.T) {
	f, err := Batch(batchOf(t, "1 = { step = 1, weigh = \"1.02 g\", by = \"AK\" }\n"))
	require.NoError(t, err)
	svg, err := f.SVG()
	require.NoError(t, err)
	assert.Contains(t, string(svg), "The batch goes by what has been read so far, and for what is still to come by the plan.")
}

// A way that is not good enough is not one to follow.
func TestWays(t *testing.T) {
	b := batchOf(t, "1 = { step = 1, weigh = \"1.20 g\", by = \"AK\" }\n2 = { step = 6, by = \"AK\" }\n")
	r, err := rescue.Find(context.Background(), b.Prep, b.Record.Made, fewTrials)
	require.NoError(t, err)
	for meets, word := range map[bool]string{true: "DO THIS", false: "BEST, NOT ENOUGH"} {
		r.Verdict.Meets = meets
		f, err := Ways(r)
		require.NoError(t, err)
		svg, err := f.SVG()
		require.NoError(t, err)
		assert.Contains(t, string(svg), word)
		assert.Regexp(t, `^How the strength spreads by each way to correct a solution, wanted 15 mL of `, f.Alt)
	}
}
