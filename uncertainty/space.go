package uncertainty

// space is memory that is used again: what was handed out is free when it is cleared. The zero
// value is empty; of none at all everything is new.
type space struct {
	floats  supply[float64]
	squares supply[squares]
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

// numbers are n values, which are zero.
func (s *space) numbers(n int) []float64 {
	if s == nil {
		return make([]float64, n)
	}
	return s.floats.take(n)
}

// sums are likewise.
func (s *space) sums(n int) []squares {
	if s == nil {
		return make([]squares, n)
	}
	return s.squares.take(n)
}

// clear takes back all that was handed out.
func (s *space) clear() {
	s.floats.clear()
	s.squares.clear()
}
