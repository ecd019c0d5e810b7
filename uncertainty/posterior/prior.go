package posterior

import (
	"math"

	"minim/uncertainty/portable"
)

// Shape of what was known before.
type Shape int

// The shapes that a prior may have.
const (
	Flat   Shape = iota // rectangular
	Peaked              // triangular
	Normal
)

// Prior is what was known of a quantity before it was measured: of a shape between two ends, or about
// Mean with a standard deviation, moved by Shift, to which an independent normal error with standard
// deviation Blur is added.
type Prior struct {
	Shape                      Shape
	Low, High, Mean, Deviation float64
	Shift, Blur                float64
}

// Measured is what readings say of a quantity: it lies about their mean as a Student t with Nu
// degrees of freedom lies about 0, times the scale. Nu may be infinite: it is then normal.
type Measured struct {
	Mean, Scale, Nu float64
	// OfSet: the readings are of a set, whose unknown standard deviation makes most of the scale.
	OfSet bool
}

// Given is the product of the density of the prior and the likelihood of the readings, by quadrature
// (Bayes' theorem as in JCGM 106, clause A.4); false where the two exclude each other.
func (p Prior) Given(m Measured) (t *Table, ok bool) {
	x := p.nodes(m)
	probability, position := make([]float64, Cells), make([]float64, Cells)
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
		return nil, false
	}
	return NewTable(x, probability, position), true
}

// Chance is how likely a mean lies as far from what the prior lets expect as the one that was
// found, or further, to either side: of the predictive distribution of the mean (JCGM 106, A.4.4, of
// which the normal case is the denominator), in which the prior and the error of the mean come
// together. A small one says that one of the two is wrong.
func (p Prior) Chance(m Measured) float64 {
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
	if p.Shape == Normal {
		by := float64(farTail * portable.Hypot(p.Deviation, p.Blur))
		return p.Mean + p.Shift - by, p.Mean + p.Shift + by
	}
	return p.Low + p.Shift - float64(farTail*p.Blur), p.High + p.Shift + float64(farTail*p.Blur)
}

// nodes are c + w sinh θ with θ in equal steps: close together where the readings decide, which is
// within w of c, and far apart elsewhere. The node next to the peak of a triangle is moved there.
func (p Prior) nodes(m Measured) []float64 {
	low, high := p.span()
	w := min(m.Scale, high-low)
	c := min(max(m.Mean, low), high)
	from, to := arsinh((low-c)/w), arsinh((high-c)/w)
	x := make([]float64, Cells+1)
	for i := range x {
		theta := from + float64((to-from)*(float64(i)/Cells))
		e := portable.Exp(math.Abs(theta))
		x[i] = min(max(c+math.Copysign(float64(w*float64((e-1/e)/2)), theta), low), high)
	}
	x[0], x[Cells] = low, high
	if p.Shape == Peaked {
		moveNearest(x, p.Mean+p.Shift)
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
