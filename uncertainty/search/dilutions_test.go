package search

import (
	"context"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"minim/report/words/note"
	"minim/uncertainty/route"
	"minim/uncertainty/smallbench"
)

// A search of limited work is the same each time, however many processors there are, and
// says what it has left out.
func TestLimitedWorkIsTheSameAndSaid(t *testing.T) {
	p := smallbench.On(t, "target = \"1 g/L\"\nvolume = \"20 mL\"\ntolerance = \"5 % of target\"\n[solute]\nname = \"exemplate\"\n[solvent]\nname = \"water\"\n[[stock]]\nname = \"strong\"\nstrength = \"50 g/L\"\n", smallbench.Kit)
	search := func(work int64) (names, notSearched []string) {
		list, left, err := Dilutions(context.Background(), p, Options{Limits: route.Limits{Steps: 2}, Work: work})
		require.NoError(t, err)
		for _, r := range list {
			names = append(names, smallbench.Words(r))
		}
		return names, note.Texts(left)
	}
	all, left := search(1 << 40)
	assert.Empty(t, left)
	some, left := search(20_000)
	require.NotEmpty(t, left)
	assert.Contains(t, left[0], "(no more than 20000 candidates are tried")
	assert.NotEqual(t, all, some)
	for range 3 {
		again, _ := search(20_000)
		assert.Equal(t, some, again)
	}
}
