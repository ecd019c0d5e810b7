package uncertainty

import (
	"math"
)

// control lowers the scatter of simulated moments. The linear part L of a model,
// Σ slope (x - mean), has moments that are known exactly, so that polynomials in
// L serve as control variates: for a deviation a of the output from center,
//
//	E[a] = E[p(L)] + E[a - p(L)],  E[a²] = E[q(L)] + E[a² - q(L)]
//
// where the last terms scatter little when the model is nearly linear, p and q
// being fitted to a and a² in a pilot. Here a is in units of 1/scale and
// L in units of 1/linearScale, its standard deviation.
type control struct {
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

// pilotBlocks are drawn to fit the polynomials. They are blocks of their own, with
// numbers below 0, so that what is fitted does not know the trials it is used on.
const pilotBlocks = 4

// newControl fits the polynomials in the pilot blocks, for an output that is y at
// the means of the influences.
func (m *Model) newControl(w *worker, y float64, slopes []float64) control {
	var values, linear []float64
	for b := range pilotBlocks {
		v, l := w.run(-1 - b)
		values, linear = append(values, v...), append(linear, l...)
	}
	u, moments := m.linearMoments(slopes)
	c := control{center: y + averageOf(values, y), scale: 1}
	for _, size := range []float64{sizeOf(values, c.center), u} {
		if c.scale == 1 && size > 0 && finite(size) && finite(1/size) {
			c.scale = 1 / size
		}
	}
	if u == 0 || !finite(u) || !finite(1/u) {
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
	_, left := meanAndVariance(rest)
	_, all := meanAndVariance(y)
	if !finite(p.expectation) || !(left <= all) {
		return polynomial{}
	}
	return p
}

// linearMoments returns the standard deviation u of L = Σ slope (x - mean), and
// E[L], E[L²] and E[L³] in units of u. Only the first two are given when an
// influence has heavy tails, since L³ would scatter too much; u is infinite when
// one has no variance.
func (m *Model) linearMoments(slopes []float64) (u float64, moments []float64) {
	c := make([]float64, len(slopes))
	for i, slope := range slopes {
		if slope != 0 {
			c[i] = slope * m.standardDeviation(i)
		}
	}
	u = combine(c, m.correlate(c))
	third := 0.0
	for i := range c {
		nu := m.drawnDegrees(i)
		switch r := c[i] / u; {
		case (nu <= 6 || m.isTold(i)) && c[i] != 0: // or by one scale with others
			return u, []float64{0, 1}
		case math.IsInf(nu, 1):
			third += float64(r * r * r * m.influences[i].Distribution.summary().Skewness)
		}
	}
	return u, []float64{0, 1, third}
}

// standardDeviation that an influence is drawn with; +Inf where it has none.
func (m *Model) standardDeviation(influence int) float64 {
	d := m.influences[influence].Distribution
	if nu := m.drawnDegrees(influence); !math.IsInf(nu, 1) {
		d = StudentT{Sigma: d.summary().StandardUncertainty, Nu: nu}
	}
	return standardDeviation(d)
}

// standardDeviation of a distribution, which for a Student t is not its u; +Inf
// where it has none.
func standardDeviation(d Distribution) float64 {
	t, student := d.(StudentT)
	table, posterior := d.(Tabulated)
	switch {
	case posterior:
		return table.spread
	case !student:
		return d.summary().StandardUncertainty
	case t.Nu <= 2:
		return math.Inf(1)
	}
	return t.Sigma * math.Sqrt(t.Nu/(t.Nu-2))
}
