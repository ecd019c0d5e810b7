package statistics

import (
	"context"
	"math"
	"math/bits"
	"sort"

	"minim/uncertainty/parallel"
	"minim/uncertainty/portable"
)

// Bins is a Tally of more values than are kept: counts of those between equally
// spaced edges. Ranks are interpolated within a bin, so that a value is off by
// less than the width of one.
type Bins struct {
	low float64
	// Width of a bin.
	Width float64
	// through[i] is the number of values in bin i and before. The first bin
	// reaches down to the least value, the last up to the greatest.
	through     []int64
	least, most float64
}

const (
	leastBins = 1 << 16
	mostBins  = 1 << 21
	// FirstSample are kept and sorted to lay the bins.
	FirstSample = 1 << 18
)

// NewBins lays bins over five times the coverage interval of a first sample,
// and as narrow as u/4096, so that a coverage interval is off by less than a
// tenth of the numerical tolerance δ for two digits of u, which is u/198 at the
// least. The error is that of the context.
func NewBins(ctx context.Context, sample []float64, coverage, u float64) (*Bins, error) {
	r, err := NewRanking(ctx, sample)
	if err != nil {
		return nil, err
	}
	low, high := SymmetricInterval(r, coverage)
	span := max(high-low, 1e-300)
	if high == low {
		span = max(math.Abs(low)*1e-9, 1e-300)
	}
	wanted := leastBins
	if n := 5 * span / (u / 4096); n > leastBins {
		wanted = 1 << bits.Len(uint(math.Min(n, mostBins-1)))
	}
	b := &Bins{low: low - 2*span, through: make([]int64, wanted), least: math.Inf(1), most: math.Inf(-1)}
	b.Width = 5 * span / float64(wanted)
	return b, nil
}

// IsFinite reports whether numbers reach as far as the bins.
func (b *Bins) IsFinite() bool {
	return portable.IsFinite(b.low) && portable.IsFinite(b.low+float64(float64(len(b.through))*b.Width))
}

// Count adds values. It must be followed by Finish.
func (b *Bins) Count(values []float64) {
	last := float64(len(b.through) - 1)
	scale := 1 / b.Width
	for _, v := range values {
		at := (v - b.low) * scale
		b.through[int(math.Max(0, math.Min(at, last)))]++
		b.least, b.most = math.Min(b.least, v), math.Max(b.most, v)
	}
}

// Finish turns the counts of the bins into running totals.
func (b *Bins) Finish() {
	for i := range b.through[1:] {
		b.through[i+1] += b.through[i]
	}
}

func (b *Bins) Size() int { return int(b.through[len(b.through)-1]) }

// edges of a bin, and the number of values before it.
func (b *Bins) edges(i int) (low, high float64, before int64) {
	low, high = b.low+float64(float64(i)*b.Width), b.low+float64(float64(i+1)*b.Width)
	if i == 0 {
		low = math.Min(b.least, high)
	} else {
		before = b.through[i-1]
	}
	if i == len(b.through)-1 {
		high = math.Max(b.most, low)
	}
	return low, high, before
}

func (b *Bins) At(k int) float64 {
	i := sort.Search(len(b.through), func(i int) bool { return b.through[i] > int64(k) })
	low, high, before := b.edges(i)
	part := (float64(int64(k)-before) + 0.5) / float64(b.through[i]-before)
	return max(b.least, min(low+float64(part*(high-low)), b.most))
}

func (b *Bins) Below(x float64, orEqual bool) float64 {
	switch {
	case x < b.least || x == b.least && !orEqual:
		return 0
	case x > b.most || x == b.most && orEqual:
		return float64(b.Size())
	}
	at := (x - b.low) / b.Width
	i := int(math.Max(0, math.Min(at, float64(len(b.through)-1))))
	low, high, before := b.edges(i)
	part := 1.0
	if high > low {
		part = math.Max(0, math.Min((x-low)/(high-low), 1))
	}
	return float64(before) + float64(part*float64(b.through[i]-before))
}

// binsAtOnce are compared without a look at the context.
const binsAtOnce = 1 << 12

// Shortest compares the intervals that start at the first value of each bin.
func (b *Bins) Shortest(ctx context.Context, q int) (low, high float64, err error) {
	low, high = b.At(0), b.At(q)
	err = parallel.Until(ctx, (len(b.through)+binsAtOnce-1)/binsAtOnce, 1, func(_, i int) {
		for _, through := range b.through[i*binsAtOnce : min((i+1)*binsAtOnce, len(b.through))] {
			r := int(through)
			if r+q >= b.Size() {
				break
			}
			if l, h := b.At(r), b.At(r+q); h-l < high-low {
				low, high = l, h
			}
		}
	})
	return low, high, err
}
