package statistics

import (
	"context"
	"math/rand/v2"
	"runtime"
	"sync/atomic"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
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

func waiting(most int64) *patience { return &patience{Context: context.Background(), most: most} }

// TestStoppedWhileSorting: on one processor, as in a browser, between two looks no more than some
// thousand values are grouped and no more than one bucket is sorted; what was stopped stops at once.
func TestStoppedWhileSorting(t *testing.T) {
	defer runtime.GOMAXPROCS(runtime.GOMAXPROCS(1))
	const n = 300_000
	values := make([]float64, n)
	source := rand.New(rand.NewPCG(1, 2))
	for i := range values {
		values[i] = source.NormFloat64()
	}
	grouping := waiting(1 << 40)
	r, err := NewRanking(grouping, values)
	require.NoError(t, err)
	assert.GreaterOrEqual(t, grouping.looks.Load(), int64(2*n/partSize), "looks while values are grouped, twice")
	for _, most := range []int64{0, 1, n/partSize + 3} {
		stopped := waiting(most)
		_, err := NewRanking(stopped, values)
		require.ErrorIs(t, err, context.Canceled)
		assert.LessOrEqual(t, stopped.looks.Load(), most+2, "looks after it was stopped")
	}

	isSorted := func() (count int) {
		for _, is := range r.sorted {
			if is {
				count++
			}
		}
		return count
	}
	for _, most := range []int64{0, 10, 100} {
		before, stopped := isSorted(), waiting(most)
		_, _, err := r.Shortest(stopped, n*95/100)
		require.ErrorIs(t, err, context.Canceled)
		assert.LessOrEqual(t, isSorted()-before, int(most), "buckets that were sorted")
	}
	low, high, err := r.Shortest(t.Context(), n*95/100) // what was begun can be ended
	require.NoError(t, err)
	wantLow, wantHigh, err := ranked(t, values).Shortest(t.Context(), n*95/100)
	require.NoError(t, err)
	assert.Equal(t, []float64{wantLow, wantHigh}, []float64{low, high})

	b := binned(t, values, 1)
	comparing := waiting(3)
	_, _, err = b.Shortest(comparing, n*95/100)
	require.ErrorIs(t, err, context.Canceled)
	assert.LessOrEqual(t, comparing.looks.Load(), int64(5))
}
