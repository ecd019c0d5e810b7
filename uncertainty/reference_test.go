package uncertainty

import (
	"math"

	"gonum.org/v1/gonum/integrate/quad"
	"gonum.org/v1/gonum/stat/distuv"
)

// stretched is a distribution on [0, 1] laid over [low, low + width].
type stretched struct {
	r          reference
	low, width float64
}

func (s stretched) CDF(x float64) float64 { return s.r.CDF((x - s.low) / s.width) }

// cutTriangle is the trapezoid that remains of a triangle with the same flanks
// when the triangle above the top is cut off.
type cutTriangle Trapezoidal

func (c cutTriangle) CDF(x float64) float64 {
	middle, half := (c.Low+c.High)/2, (c.High-c.Low)/2
	// The flanks go on to the middle: the base of the top is Beta wide, and so
	// the whole triangle is (High - Low) wide, the one above Beta times that.
	whole := distuv.NewTriangle(c.Low, c.High, middle, nil).CDF(x)
	if !(middle-c.Beta*half < middle && middle < middle+c.Beta*half) {
		return whole // nothing is cut off
	}
	above := distuv.NewTriangle(middle-c.Beta*half, middle+c.Beta*half, middle, nil).CDF(x)
	return (whole - c.Beta*c.Beta*above) / (1 - c.Beta*c.Beta)
}

// inexact averages the rectangular distribution over its limits (JCGM 101,
// 6.4.3), by quadrature.
type inexact InexactRectangular

func (r inexact) CDF(x float64) float64 {
	middle, half := (r.Low+r.High)/2, (r.High-r.Low)/2
	rectangle := func(limit float64) float64 {
		return distuv.Uniform{Min: middle - limit, Max: middle + limit}.CDF(x)
	}
	from, to := half-r.D, half+r.D
	kink := max(from, min(to, math.Abs(x-middle)))
	sum := quad.Fixed(rectangle, from, kink, 16, nil, 0) + quad.Fixed(rectangle, kink, to, 16, nil, 0)
	return sum / (to - from)
}

// productOfUniforms is the symmetric distribution of scale times the product of
// two uniform values, P(z) = z(1 - ln z).
type productOfUniforms struct{ scale float64 }

func (p productOfUniforms) CDF(x float64) float64 {
	z := math.Abs(x) / p.scale
	if z == 0 {
		return 0.5
	}
	return 0.5 + math.Copysign(min(1, z*(1-math.Log(z)))/2, x)
}
