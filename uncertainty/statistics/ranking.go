package statistics

import (
	"cmp"
	"context"
	"runtime"
	"slices"

	"minim/uncertainty/parallel"
	"minim/uncertainty/portable"
)

// Tally answers questions about the trials in order of size.
type Tally interface {
	// Size is the number of trials.
	Size() int
	// At is the value of rank k, from 0 for the least.
	At(k int) float64
	// Below is the number of trials less than x, or at most x when it counts
	// equal ones as well. It need not be whole.
	Below(x float64, orEqual bool) float64
	// Shortest is the shortest interval that spans q ranks. The error is that of the context.
	Shortest(ctx context.Context, q int) (low, high float64, err error)
}

// Ranking is a Tally of all values, without sorting them all: they are grouped
// into buckets of rising size, and only what lies in a bucket is sorted when its
// ranks are asked for.
type Ranking struct {
	values     []float64 // grouped by bucket
	start      []int     // where each bucket starts, and the end
	sorted     []bool    // which buckets are sorted
	low, scale float64   // a value v belongs to bucket (v - low) scale
}

// perBucket is the number of values that a bucket holds, roughly.
const perBucket = 256

// partSize is the greatest number of values that are grouped without a look at the context.
const partSize = 1 << 16

// NewRanking groups a copy of the values: on each processor a part of them is
// counted by bucket, and then put where those of the parts before leave off. The error is that of the
// context.
func NewRanking(ctx context.Context, values []float64) (*Ranking, error) {
	r := &Ranking{start: make([]int, max(1, len(values)/perBucket)+1), values: make([]float64, len(values))}
	r.sorted = make([]bool, len(r.start)-1)
	r.setScale(values)
	processors := runtime.GOMAXPROCS(0)
	parts := chunks(values, processors)
	next := make([][]int, len(parts))
	if err := parallel.Until(ctx, len(parts), processors, func(_, i int) {
		next[i] = make([]int, len(r.start)-1)
		for _, v := range parts[i] {
			next[i][r.bucket(v)]++
		}
	}); err != nil {
		return nil, err
	}
	at := 0
	for b := range len(r.start) - 1 {
		r.start[b] = at
		for i := range next {
			at, next[i][b] = at+next[i][b], at
		}
	}
	r.start[len(r.start)-1] = at
	return r, parallel.Until(ctx, len(parts), processors, func(_, i int) {
		for _, v := range parts[i] {
			b := r.bucket(v)
			r.values[next[i][b]] = v
			next[i][b]++
		}
	})
}

// chunks cuts the values into n parts at the least, none of them small, and none too large.
func chunks(values []float64, n int) [][]float64 {
	return slices.Collect(slices.Chunk(values, min(max(4096, (len(values)+n-1)/n), partSize)))
}

// setScale lays the buckets over the range of the first values; what lies
// outside goes to the first and the last bucket.
func (r *Ranking) setScale(values []float64) {
	first := values[:min(len(values), 4*perBucket)]
	r.low = slices.Min(first)
	r.scale = float64(len(r.start)-1) / (slices.Max(first) - r.low)
	if !portable.IsFinite(r.scale) { // all the same, or far apart
		r.scale = 0
	}
}

func (r *Ranking) bucket(v float64) int {
	b := (v - r.low) * r.scale
	switch last := len(r.start) - 2; {
	case !(b > 0): // or NaN, for 0 · ∞
		return 0
	case b >= float64(last):
		return last
	default:
		return int(b)
	}
}

func (r *Ranking) Size() int { return len(r.values) }

// holding returns the sorted values of the bucket that rank k falls into, and
// the rank of its first.
func (r *Ranking) holding(k int) (values []float64, first int) {
	b, _ := slices.BinarySearch(r.start, k+1)
	first = r.start[b-1]
	values = r.values[first:r.start[b]]
	if !r.sorted[b-1] {
		values = slices.Clone(values)
		slices.Sort(values)
	}
	return values, first
}

func (r *Ranking) At(k int) float64 {
	values, first := r.holding(k)
	return values[k-first]
}

func (r *Ranking) Below(x float64, orEqual bool) float64 {
	b := r.bucket(x)
	count := r.start[b]
	for _, v := range r.values[count:r.start[b+1]] {
		if v < x || orEqual && v == x {
			count++
		}
	}
	return float64(count)
}

// Prepare sorts all values where so many ranks will be asked for that it takes less time than to sort
// the bucket of each. The error is that of the context.
func (r *Ranking) Prepare(ctx context.Context, ranks int) error {
	if ranks <= len(r.sorted) || len(r.values) == 0 {
		return nil
	}
	return r.sort(ctx, 0, len(r.values))
}

// Shortest compares y(r+q) - y(r) for all r (JCGM 101, 7.7.2).
func (r *Ranking) Shortest(ctx context.Context, q int) (low, high float64, err error) {
	n := len(r.values) - q
	if err := cmp.Or(r.sort(ctx, 0, n), r.sort(ctx, q, n+q)); err != nil {
		return 0, 0, err
	}
	best := 0
	for i := range n {
		if r.values[i+q]-r.values[i] < r.values[best+q]-r.values[best] {
			best = i
		}
	}
	return r.values[best], r.values[best+q], nil
}

// sort puts the values of the ranks from and up to, but not including, to into
// their places.
func (r *Ranking) sort(ctx context.Context, from, to int) error {
	first, _ := slices.BinarySearch(r.start, from+1)
	last, _ := slices.BinarySearch(r.start, to)
	return parallel.Until(ctx, last-first+1, runtime.GOMAXPROCS(0), func(_, i int) {
		b := first - 1 + i
		slices.Sort(r.values[r.start[b]:r.start[b+1]])
		r.sorted[b] = true
	})
}
