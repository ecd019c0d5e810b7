package plan

import "math"

// cells divides the positive numbers from a power of two on into cells, so many,
// a power of two, for each doubling. They are found by the leading bits of a
// number. The first cell reaches down to 0, the last up to infinity.
type cells struct {
	shift, first, count int
}

// newCells lays cells from 2^from to 2^to, 2^bits of them for each doubling.
func newCells(from, to, bits int) cells {
	shift := 52 - bits
	return cells{shift, int(math.Float64bits(math.Ldexp(1, from)) >> shift), (to - from) << bits}
}

// of is the cell of a number.
func (c *cells) of(x float64) int {
	if !(x > 0) {
		return 0
	}
	return max(0, min(int(math.Float64bits(x)>>c.shift)-c.first, c.count-1))
}

// end is the upper end of a cell.
func (c *cells) end(cell int) float64 {
	if cell == c.count-1 {
		return math.Inf(1)
	}
	return math.Float64frombits(uint64(cell+1+c.first) << c.shift)
}
