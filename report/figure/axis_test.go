package figure

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"minim/uncertainty"
	read "minim/uncertainty/bench"
)

// No axis has a mark for less than nothing in a solution, also where its window begins below: for a batch
// that is ten times too strong it does.
func TestNoStrengthIsLessThanNothing(t *testing.T) {
	skipIfSlow(t)
	kit, err := read.ParseKit("bench.toml", []byte(bench))
	require.NoError(t, err)
	p, err := read.ParsePrep("prep.toml", []byte(recipe("target = \"0.4 g/L\"\nnot-above = \"0.42 g/L\"", way{"fine, diluted", fine})), kit)
	require.NoError(t, err)
	f, err := Batch(offBy(t, p, uncertainty.Settings{Trials: 10_000, Seed: 1, Coverage: 0.95}, 10))
	require.NoError(t, err)
	raw, err := f.SVG()
	require.NoError(t, err)
	words := texts(t, raw)
	for _, text := range words {
		assert.False(t, strings.HasPrefix(text, "−") && text != "−100", text)
	}
	assert.Contains(t, words, "1000")
	assert.Equal(t, []tick{{-100, "−100"}, {0, "0"}}, from(-100, []tick{{-200, "−200"}, {-100, "−100"}, {0, "0"}}))
}
