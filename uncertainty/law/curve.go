package law

import (
	"math"
	"sort"
)

// Curve goes through given points by cubics with the slopes of the parabolas through each three
// neighbours, but where these would lead beyond the points (Fritsch and Carlson, Monotone piecewise
// cubic interpolation, SIAM J. Numer. Anal. 17, 1980).
type Curve struct{ x, y, slope []float64 }

// NewCurve goes through points whose places rise, at least three.
func NewCurve(x, y []float64) Curve {
	c := Curve{x, y, make([]float64, len(x))}
	steep := func(i int) float64 { return (y[i+1] - y[i]) / (x[i+1] - x[i]) }
	last := len(x) - 1
	for i := 1; i < last; i++ {
		before, after := x[i]-x[i-1], x[i+1]-x[i]
		slope := (float64(after*steep(i-1)) + float64(before*steep(i))) / (before + after)
		c.slope[i] = between(slope, steep(i-1), steep(i))
	}
	c.slope[0] = between(2*steep(0)-c.slope[1], steep(0), steep(0))
	c.slope[last] = between(2*steep(last-1)-c.slope[last-1], steep(last-1), steep(last-1))
	return c
}

// between is a slope that is no more than three times those on either side, and 0 where they
// point apart.
func between(slope, left, right float64) float64 {
	if left*right <= 0 || slope*left <= 0 {
		return 0
	}
	return math.Copysign(min(math.Abs(slope), 3*math.Abs(left), 3*math.Abs(right)), slope)
}

// At is the value at a place between the first and the last point, and theirs beyond.
func (c *Curve) At(x float64) float64 {
	last := len(c.x) - 1
	switch {
	case !(x > c.x[0]):
		return c.y[0]
	case x >= c.x[last]:
		return c.y[last]
	}
	i := sort.SearchFloat64s(c.x, x) - 1
	h := c.x[i+1] - c.x[i]
	v, rise := (x-c.x[i])/h, c.y[i+1]-c.y[i]
	first, second := float64(h*c.slope[i]), float64(h*c.slope[i+1])
	cubic := float64(v * (first + second - float64(2*rise)))
	return c.y[i] + float64(v*(first+float64(v*(float64(3*rise)-float64(2*first)-second+cubic))))
}
