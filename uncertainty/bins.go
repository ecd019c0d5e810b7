package uncertainty

import (
	"math"
	"math/bits"
	"sort"
)

// bins is a tally of more values than are kept: counts of those between equally
// spaced edges. Ranks are interpolated within a bin, so that a value is off by
// less than the width of one.
type bins struct {
	low, width float64
	// through[i] is the number of values in bin i and before. The first bin
	// reaches down to the least value, the last up to the greatest.
	through     []int64
	least, most float64
}

const (
	leastBins = 1 << 16
	mostBins  = 1 << 21
	// pilotTrials are kept and sorted to lay the bins.
	pilotTrials = 1 << 18
)

// newBins lays bins over five times the coverage interval of a first sample,
// and as narrow as u/4096, so that a coverage interval is off by less than a
// tenth of the numerical tolerance δ for two digits of u, which is u/198 at the
// least.
func newBins(sample []float64, coverage, u float64) *bins {
	low, high := symmetricInterval(newRanking(sample), coverage)
	span := max(high-low, 1e-300)
	if high == low {
		span = max(math.Abs(low)*1e-9, 1e-300)
	}
	wanted := leastBins
	if n := 5 * span / (u / 4096); n > leastBins {
		wanted = 1 << bits.Len(uint(math.Min(n, mostBins-1)))
	}
	b := &bins{low: low - 2*span, through: make([]int64, wanted), least: math.Inf(1), most: math.Inf(-1)}
	b.width = 5 * span / float64(wanted)
	return b
}

// finite reports whether numbers reach as far as the bins.
func (b *bins) finite() bool {
	return finite(b.low) && finite(b.low+float64(float64(len(b.through))*b.width))
}

// count adds values. It must be followed by finish.
func (b *bins) count(values []float64) {
	last := float64(len(b.through) - 1)
	scale := 1 / b.width
	for _, v := range values {
		at := (v - b.low) * scale
		b.through[int(math.Max(0, math.Min(at, last)))]++
		b.least, b.most = math.Min(b.least, v), math.Max(b.most, v)
	}
}

// finish turns the counts of the bins into running totals.
func (b *bins) finish() {
	for i := range b.through[1:] {
		b.through[i+1] += b.through[i]
	}
}

func (b *bins) size() int { return int(b.through[len(b.through)-1]) }

// edges of a bin, and the number of values before it.
func (b *bins) edges(i int) (low, high float64, before int64) {
	low, high = b.low+float64(float64(i)*b.width), b.low+float64(float64(i+1)*b.width)
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

func (b *bins) at(k int) float64 {
	i := sort.Search(len(b.through), func(i int) bool { return b.through[i] > int64(k) })
	low, high, before := b.edges(i)
	part := (float64(int64(k)-before) + 0.5) / float64(b.through[i]-before)
	return max(b.least, min(low+float64(part*(high-low)), b.most))
}

func (b *bins) below(x float64, orEqual bool) float64 {
	switch {
	case x < b.least || x == b.least && !orEqual:
		return 0
	case x > b.most || x == b.most && orEqual:
		return float64(b.size())
	}
	at := (x - b.low) / b.width
	i := int(math.Max(0, math.Min(at, float64(len(b.through)-1))))
	low, high, before := b.edges(i)
	part := 1.0
	if high > low {
		part = math.Max(0, math.Min((x-low)/(high-low), 1))
	}
	return float64(before) + float64(part*float64(b.through[i]-before))
}

// shortest compares the intervals that start at the first value of each bin.
func (b *bins) shortest(q int) (low, high float64) {
	low, high = b.at(0), b.at(q)
	for _, through := range b.through {
		r := int(through)
		if r+q >= b.size() {
			break
		}
		if l, h := b.at(r), b.at(r+q); h-l < high-low {
			low, high = l, h
		}
	}
	return low, high
}
