package uncertainty

import (
	"context"
	"runtime"
	"sync/atomic"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"minim/uncertainty/random"
)

// patience is a context that counts the looks at it, and is done after so many.
type patience struct {
	context.Context
	looks atomic.Int64
	most  int64
}

func (p *patience) Err() error {
	if p.looks.Add(1) > p.most {
		return context.Canceled
	}
	return nil
}

// TestStoppedAnywhere: at whatever look a run of sorted trials is stopped, on one processor, it ends there:
// while it draws, while it groups and sorts, while it looks for the shortest interval.
func TestStoppedAnywhere(t *testing.T) {
	skipUnderRace(t)
	defer runtime.GOMAXPROCS(runtime.GOMAXPROCS(1))
	m, y := dilutionModel()
	for _, s := range []Settings{{Trials: 200_000, Plain: true}, {Trials: KeptTrials, Digits: 2, Validating: true, Plain: true}} {
		whole := &patience{Context: t.Context(), most: 1 << 40}
		if s.Digits > 0 {
			whole.most = 500 // which is enough of them
		}
		_, err := m.Simulate(whole, y, s)
		if s.Digits == 0 {
			require.NoError(t, err)
			assert.Greater(t, whole.looks.Load(), int64(random.Blocks(s.Trials)+s.Trials/100_000), "a look at each block, and more while they are put in order")
		}
		all := min(whole.looks.Load(), whole.most)
		for k := range int64(25) {
			stopped := &patience{Context: t.Context(), most: (all - 1) * k / 24}
			_, err := m.Simulate(stopped, y, s)
			require.ErrorIs(t, err, context.Canceled, "after %d looks of %d", stopped.most, all)
			assert.LessOrEqual(t, stopped.looks.Load(), stopped.most+4, "looks after it was stopped")
		}
	}
}
