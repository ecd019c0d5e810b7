package sharp

import "minim/uncertainty/statistics"

// Space is memory that is used again: what was handed out is free when it is cleared. The zero
// value is empty; of none at all everything is new.
type Space struct {
	floats  supply[float64]
	squares supply[statistics.Squares]
}

// supply is memory in lists, of which the first at are in use but for the rest of the last.
type supply[T any] struct {
	list [][]T
	at   int
	free []T
}

// leastSupply is a number of values.
const leastSupply = 1 << 13

// take returns n values, which are zero.
func (c *supply[T]) take(n int) []T {
	for n > len(c.free) {
		if c.at == len(c.list) {
			c.list = append(c.list, make([]T, max(n, leastSupply)))
		}
		c.free = c.list[c.at]
		c.at++
	}
	taken := c.free[:n:n]
	c.free = c.free[n:]
	clear(taken)
	return taken
}

func (c *supply[T]) clear() { c.at, c.free = 0, nil }

// Numbers are n values, which are zero.
func (s *Space) Numbers(n int) []float64 {
	if s == nil {
		return make([]float64, n)
	}
	return s.floats.take(n)
}

// sums are likewise.
func (s *Space) sums(n int) []statistics.Squares {
	if s == nil {
		return make([]statistics.Squares, n)
	}
	return s.squares.take(n)
}

// Clear takes back all that was handed out.
func (s *Space) Clear() {
	s.floats.clear()
	s.squares.clear()
}
