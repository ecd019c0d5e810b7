package uncertainty

import (
	"math"

	"gonum.org/v1/gonum/mat"
)

// control lowers the scatter of simulated moments. The linear part L of a model,
// Σ slope (x - mean), has moments that are known exactly, so that polynomials in
// L serve as control variates: for a deviation a of the output from center,
//
//	E[a] = E[p(L)] + E[a - p(L)],  E[a²] = E[q(L)] + E[a² - q(L)]
//
// where the last terms scatter little when the model is nearly linear, p and q
// being fitted to a and a² in the first blocks. All is in units of 1/scale.
type control struct {
	center, scale float64
	p, q          polynomial
}

// polynomial c[0] x + c[1] x² + c[2] x³ with its expectation.
type polynomial struct {
	c           [3]float64
	expectation float64
}

func (p *polynomial) at(x float64) float64 {
	return float64(x * (p.c[0] + float64(x*(p.c[1]+float64(x*p.c[2])))))
}

// pilotBlocks are drawn to fit the polynomials.
const pilotBlocks = 4

// newControl fits the polynomials in the first blocks, for an output that is y at
// the means of the influences.
func (m *Model) newControl(w *worker, y float64, slopes []float64) control {
	var values, linear []float64
	for b := range pilotBlocks {
		v, l := w.run(b)
		values, linear = append(values, v...), append(linear, l...)
	}
	c := control{center: y + averageOf(values, y), scale: 1}
	if size := sizeOf(values, c.center); size > 0 && finite(1/size) {
		c.scale = 1 / size
	}
	squares := make([]float64, len(values))
	for i := range values {
		values[i] = (values[i] - c.center) * c.scale
		squares[i] = float64(values[i] * values[i])
		linear[i] *= c.scale
	}
	moments := m.linearMoments(slopes, c.scale)
	c.p = fit(linear, values, moments, 1)
	c.q = fit(linear, squares, moments, 2)
	return c
}

func averageOf(values []float64, around float64) float64 {
	sum := 0.0
	for _, v := range values {
		sum += v - around
	}
	return sum / float64(len(values))
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
// least squares. It has a term for each moment. Where x does not vary it is
// the given power of x.
func fit(x, y, moments []float64, power int) polynomial {
	degree := len(moments)
	if degree == 0 {
		return polynomial{}
	}
	design := mat.NewDense(len(x), degree+1, nil)
	for i := range x {
		for k := range degree + 1 {
			design.Set(i, k, math.Pow(x[i], float64(k)))
		}
	}
	var solution mat.Dense
	if err := solution.Solve(design, mat.NewDense(len(y), 1, y)); err != nil {
		solution.CloneFrom(mat.NewDense(degree+1, 1, nil))
		solution.Set(power, 0, 1)
	}
	var p polynomial
	for k, moment := range moments {
		p.c[k] = solution.At(k+1, 0)
		p.expectation += float64(p.c[k] * moment)
	}
	if !finite(p.expectation) {
		return polynomial{}
	}
	return p
}

// linearMoments returns E[L], E[L²] and E[L³] for L = Σ slope (x - mean), in
// units of 1/scale. Only the first two are given when an influence has heavy
// tails, since L³ would scatter too much, and none when one has no variance.
func (m *Model) linearMoments(slopes []float64, scale float64) []float64 {
	c := make([]float64, len(slopes))
	third, heavy := 0.0, false
	for i, slope := range slopes {
		if slope == 0 {
			continue
		}
		d := m.influences[i].Distribution
		c[i] = slope * standardDeviation(d) * scale
		if t, student := d.(StudentT); student {
			heavy = heavy || t.Nu <= 6
			continue
		}
		third += c[i] * c[i] * c[i] * d.Skewness()
	}
	u := combine(c, m.correlate(c))
	switch {
	case !finite(u):
		return nil
	case heavy:
		return []float64{0, u * u}
	}
	return []float64{0, u * u, third}
}

// standardDeviation of a distribution, which for a Student t is not its u; +Inf
// where it has none.
func standardDeviation(d Distribution) float64 {
	t, student := d.(StudentT)
	switch {
	case !student:
		return d.StandardUncertainty()
	case t.Nu <= 2:
		return math.Inf(1)
	}
	return t.Sigma * math.Sqrt(t.Nu/(t.Nu-2))
}
