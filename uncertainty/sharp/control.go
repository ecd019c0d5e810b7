package sharp

import (
	"math"

	"minim/uncertainty/portable"
	"minim/uncertainty/statistics"
)

// Control lowers the scatter of simulated moments. The linear part L of a model,
// Σ slope (x - mean), has moments that are known exactly, so that polynomials in
// L serve as control variates: for a deviation a of the output from center,
//
//	E[a] = E[p(L)] + E[a - p(L)],  E[a²] = E[q(L)] + E[a² - q(L)]
//
// where the last terms scatter little when the model is nearly linear, p and q
// being fitted to a and a² in a pilot. Here a is in units of 1/scale and
// L in units of 1/linearScale, its standard deviation.
type Control struct {
	center, scale, linearScale float64
	p, q                       polynomial
}

// polynomial c[0] x + c[1] x² + c[2] x³ with its expectation.
type polynomial struct {
	c           [3]float64
	expectation float64
}

func (p *polynomial) at(x float64) float64 {
	return float64(x * (p.c[0] + float64(x*(p.c[1]+float64(x*p.c[2])))))
}

// NewControl fits the polynomials in a pilot, of which it uses up the values, for an output that is y at
// the means of the influences. The linear part has the standard deviation u, and the moments E[L], E[L²]
// and so on in units of u.
func NewControl(values, linear []float64, y, u float64, moments []float64) Control {
	c := Control{center: y + statistics.MeanFrom(values, y), scale: 1}
	for _, size := range []float64{sizeOf(values, c.center), u} {
		if c.scale == 1 && size > 0 && portable.IsFinite(size) && portable.IsFinite(1/size) {
			c.scale = 1 / size
		}
	}
	if u == 0 || !portable.IsFinite(u) || !portable.IsFinite(1/u) {
		return c
	}
	c.linearScale = 1 / u
	squares := make([]float64, len(values))
	for i := range values {
		values[i] = (values[i] - c.center) * c.scale
		squares[i] = float64(values[i] * values[i])
		linear[i] *= c.linearScale
	}
	c.p = fit(linear, values, moments, 1, u*c.scale)
	c.q = fit(linear, squares, moments, 2, u*u*c.scale*c.scale)
	return c
}

// sizeOf is the mean distance from the center.
func sizeOf(values []float64, center float64) float64 {
	sum := 0.0
	for _, v := range values {
		sum += math.Abs(v - center)
	}
	return sum / float64(len(values))
}

// fit returns the polynomial in x that comes closest to y, up to a constant, by
// least squares, with a term for each moment of x. Where x does not vary it is a
// power of x, by so much. It is zero where it would raise the scatter.
func fit(x, y, moments []float64, power int, by float64) polynomial {
	n := len(moments) + 1
	normal, right := make([][]float64, n), make([]float64, n)
	for k := range normal {
		normal[k] = make([]float64, n)
	}
	powers := make([]float64, n)
	for i := range x {
		powers[0] = 1
		for k := 1; k < n; k++ {
			powers[k] = powers[k-1] * x[i]
		}
		for j := range n {
			right[j] += float64(powers[j] * y[i])
			for k := range j + 1 {
				normal[j][k] += float64(powers[j] * powers[k])
			}
		}
	}
	solution, ok := solve(normal, right)
	if !ok {
		solution = make([]float64, n)
		solution[power] = by
	}
	var p polynomial
	for k, moment := range moments {
		p.c[k] = solution[k+1]
		p.expectation += float64(p.c[k] * moment)
	}
	rest := make([]float64, len(y))
	for i := range y {
		rest[i] = y[i] - p.at(x[i])
	}
	_, left := statistics.MeanAndVariance(rest)
	_, all := statistics.MeanAndVariance(y)
	if !portable.IsFinite(p.expectation) || !(left <= all) {
		return polynomial{}
	}
	return p
}
