package purchase

import (
	"context"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"minim/report/words/note"
	"minim/uncertainty/smallbench"
)

// The benches that are compared for a purchase are the same on any machine, where the
// limit is hit.
func TestPurchaseIsTheSameOnAnyMachine(t *testing.T) {
	smallbench.SkipIfSlow(t)
	p := smallbench.On(t, smallbench.Prep, smallbench.Kit)
	o := quick(2)
	o.Work = 2_000
	buy := func() any {
		found, err := Buy(context.Background(), p, o)
		require.NoError(t, err)
		assert.NotEmpty(t, found.NotSearched)
		words := note.Texts(found.NotSearched)
		for i := range found.Choices {
			if c := &found.Choices[i]; c.Found {
				words = append(words, smallbench.Words(c.Best.Route))
			}
		}
		return []any{words, found.BreakEven, found.Curves, found.Verdict}
	}
	assert.Equal(t, smallbench.OnProcessors(1, buy), smallbench.OnProcessors(8, buy))
}
