package uncertainty

import (
	"fmt"
	"math"

	"minim/uncertainty/portable"
)

// Prior is what was known of a quantity before it was measured: a rectangular, triangular or
// normal distribution, moved by Shift, to which an independent normal error with standard
// deviation Blur is added.
type Prior struct {
	Of          Distribution
	Shift, Blur float64
}

// Mean of the prior.
func (p Prior) Mean() float64 { return p.Of.summary().Mean + p.Shift }

// Measured is what readings say of a quantity: it lies about their mean as a Student t with Nu
// degrees of freedom lies about 0, times the scale. Nu may be infinite: it is then normal.
type Measured struct {
	Mean, Scale, Nu float64
	// OfSet: the readings are of a [Set], whose unknown standard deviation makes most of the scale.
	OfSet bool
}

// Given is what is known of the quantity after it was measured: the product of the density of the
// prior and the likelihood of the readings, by quadrature (Bayes' theorem as in JCGM 106, clause
// A.4; where both are normal it is [Normal.Given]). It panics where the two exclude each other,
// which [Prior.Chance] says first.
//
// Where the readings are of a set its u is that of the product for σ = s, as that of a [StudentT] is: the
// degrees of freedom of the set widen the coverage factor.
func (p Prior) Given(m Measured) Distribution {
	d := p.given(m)
	if d.ofSet = m.OfSet; d.ofSet {
		at := p.given(Measured{Mean: m.Mean, Scale: m.Scale, Nu: math.Inf(1)})
		d.about.StandardUncertainty = at.spread
	}
	return d
}

func (p Prior) given(m Measured) Tabulated {
	p.mustBeSound(m)
	x := p.nodes(m)
	probability, position := make([]float64, tableCells), make([]float64, tableCells)
	sum := 0.0
	for i := range probability {
		whole, first := gauss(x[i], x[i+1], func(x float64) float64 { return p.density(x) * m.likelihood(x) })
		sum += whole
		probability[i], position[i] = whole, 0.5
		if whole > 0 {
			position[i] = first / whole
		}
	}
	if !(sum > 0) || !portable.IsFinite(sum) {
		panic(fmt.Sprintf("uncertainty: %v and %v exclude each other", p, m))
	}
	return newTabulated(x, probability, position)
}

// Chance is how likely a mean lies as far from what the prior lets expect as the one that was
// found, or further, to either side: of the predictive distribution of the mean (JCGM 106, A.4.4, of
// which the normal case is the denominator), in which the prior and the error of the mean come
// together. A small one says that one of the two is wrong.
func (p Prior) Chance(m Measured) float64 {
	p.mustBeSound(m)
	x := p.nodes(m)
	all, below, above := 0.0, 0.0, 0.0
	for i := 0; i+chanceStep < len(x); i += chanceStep {
		low, high := x[i], x[i+chanceStep]
		add := func(to *float64, side float64) {
			whole, _ := gauss(low, high, func(x float64) float64 { return p.density(x) * portable.StudentCDF(side*(m.Mean-x)/m.Scale, m.Nu) })
			*to += whole
		}
		whole, _ := gauss(low, high, p.density)
		all += whole
		add(&below, 1)
		add(&above, -1)
	}
	return min(1, 2*min(below, above)/all)
}

// chanceStep cells of a table are one for [Prior.Chance].
const chanceStep = 4

func (p Prior) mustBeSound(m Measured) {
	known := false
	switch p.Of.(type) {
	case Normal, Rectangular, triangular:
		known = p.Of.sound() && p.Blur >= 0 && portable.IsFinite(p.Blur) && portable.IsFinite(p.Shift) && SummaryOf(p.Of).StandardUncertainty+p.Blur > 0
	}
	if !known || !portable.IsFinite(m.Mean) || !(m.Scale > 0) || !portable.IsFinite(m.Scale) || !(m.Nu > 0) {
		panic(fmt.Sprintf("uncertainty: %#v measured as %v", p, m))
	}
}

// likelihood of a value, up to a factor.
func (m Measured) likelihood(x float64) float64 {
	z := (x - m.Mean) / m.Scale
	if math.IsInf(m.Nu, 1) {
		return portable.Exp(-z * z / 2)
	}
	return portable.Exp(-(m.Nu + 1) / 2 * portable.Log1p(z*z/m.Nu))
}

// farTail is how many standard deviations of a normal part are tabulated: what lies beyond is less
// than 1e-18.
const farTail = 9

// span is the range that is tabulated.
func (p Prior) span() (low, high float64) {
	s := p.Of.summary()
	if _, normal := p.Of.(Normal); normal {
		by := float64(farTail * portable.Hypot(s.StandardUncertainty, p.Blur))
		return p.Mean() - by, p.Mean() + by
	}
	return s.Low + p.Shift - float64(farTail*p.Blur), s.High + p.Shift + float64(farTail*p.Blur)
}

// nodes are c + w sinh θ with θ in equal steps: close together where the readings decide, which is
// within w of c, and far apart elsewhere. The node next to the peak of a triangle is moved there.
func (p Prior) nodes(m Measured) []float64 {
	low, high := p.span()
	w := min(m.Scale, high-low)
	c := min(max(m.Mean, low), high)
	from, to := arsinh((low-c)/w), arsinh((high-c)/w)
	x := make([]float64, tableCells+1)
	for i := range x {
		theta := from + float64((to-from)*(float64(i)/tableCells))
		e := portable.Exp(math.Abs(theta))
		x[i] = min(max(c+math.Copysign(float64(w*float64((e-1/e)/2)), theta), low), high)
	}
	x[0], x[tableCells] = low, high
	if _, peaked := p.Of.(triangular); peaked {
		moveNearest(x, p.Mean())
	}
	return x
}

// moveNearest moves the node, but for the ends, that is nearest to a place there.
func moveNearest(x []float64, place float64) {
	nearest := 1
	for i := 1; i+1 < len(x); i++ {
		if math.Abs(x[i]-place) < math.Abs(x[nearest]-place) {
			nearest = i
		}
	}
	x[nearest] = place
}

// arsinh is the inverse of the hyperbolic sine.
func arsinh(y float64) float64 {
	a := math.Abs(y)
	return math.Copysign(portable.Log(a+portable.Hypot(a, 1)), y)
}

// gauss is the integral of f from a to b, and that of f times the position from 0 to 1, by three
// points (Abramowitz and Stegun, 25.4.29, from memory: exact for polynomials of degree 5).
func gauss(a, b float64, f func(x float64) float64) (whole, first float64) {
	h := b - a
	const off = 0.3872983346207417 // √0.6/2
	low, mid, high := f(a+float64((0.5-off)*h)), f(a+float64(0.5*h)), f(a+float64((0.5+off)*h))
	whole = h * (float64(5*low) + float64(8*mid) + float64(5*high)) / 18
	first = h * (float64(5*(0.5-off)*low) + float64(4*mid) + float64(5*(0.5+off)*high)) / 18
	return whole, first
}
