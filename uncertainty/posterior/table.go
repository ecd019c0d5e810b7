package posterior

import (
	"math"
	"slices"

	"minim/uncertainty/portable"
)

// Cells is the number of cells of a table.
const Cells = 512

// Table is a distribution that is known by its nodes, the distribution function there, and the density
// at the left end of each cell over its mean in the cell, from 0 to 2.
type Table struct {
	x, p [Cells + 1]float64
	left [Cells]float64
}

// NewTable is of the nodes and, for each cell, of its probability and the
// mean position in it from 0 to 1. The probabilities need not add to 1.
func NewTable(x, probability, position []float64) *Table {
	t := new(Table)
	copy(t.x[:], x)
	sum := 0.0
	for i, p := range probability {
		sum += p
		t.p[i+1] = sum
		// the mean position is 2/3 - left/6
		t.left[i] = min(max(4-float64(6*position[i]), 0), 2)
	}
	for i := range t.p {
		t.p[i] = min(t.p[i]/sum, 1)
	}
	t.p[Cells] = 1
	return t
}

// Range is from the first node to the last.
func (t *Table) Range() (low, high float64) { return t.x[0], t.x[Cells] }

// Moments are those of the straight pieces: mean, standard deviation, skewness and kurtosis.
func (t *Table) Moments() (mean, deviation, skewness, kurtosis float64) {
	center := portable.Middle(t.Range())
	m := t.moments(center)
	mean = center + m[0]
	m = t.moments(mean)
	mean += m[0]
	variance := max(m[1], 0)
	deviation, kurtosis = math.Sqrt(variance), 3
	if variance > 0 {
		skewness, kurtosis = m[2]/(variance*deviation), m[3]/(variance*variance)
	}
	return mean, deviation, skewness, kurtosis
}

// moments are the first four about a center.
func (t *Table) moments(center float64) (m [4]float64) {
	for i, l := range t.left {
		p, a, h := t.p[i+1]-t.p[i], t.x[i]-center, t.x[i+1]-t.x[i]
		// Of the position v from 0 to 1, with the density l + 2 (1 - l) v.
		v1, v2, v3, v4 := 2.0/3-l/6, 0.5-l/6, 0.4-float64(0.15*l), 1.0/3-float64(l*2)/15
		m[0] += float64(p * (a + float64(h*v1)))
		m[1] += float64(p * (float64(a*a) + float64(2*a*h*v1) + float64(h*h*v2)))
		m[2] += float64(p * (float64(a*a*a) + float64(3*a*a*h*v1) + float64(3*a*h*h*v2) + float64(h*h*h*v3)))
		m[3] += float64(p * (float64(a*a*a*a) + float64(4*a*a*a*h*v1) + float64(6*a*a*h*h*v2) + float64(4*a*h*h*h*v3) + float64(h*h*h*h*v4)))
	}
	return m
}

// Stretched is the table with all nodes so many times as far from a place.
func (t *Table) Stretched(about, factor float64) *Table {
	s := *t
	for i, x := range t.x {
		s.x[i] = about + float64(factor*(x-about))
	}
	return &s
}

// Quantile is the inverse of the distribution function at 0 < p < 1: in a cell it solves
// l v + (1 - l) v² = q for the position v.
func (t *Table) Quantile(p float64) float64 {
	i, _ := slices.BinarySearch(t.p[1:Cells], p)
	q := (p - t.p[i]) / (t.p[i+1] - t.p[i])
	if !(q > 0) {
		return t.x[i]
	}
	l := t.left[i]
	v := 2 * q / (l + math.Sqrt(float64(l*l)+float64(4*(1-l)*q)))
	return t.x[i] + float64(min(v, 1)*(t.x[i+1]-t.x[i]))
}

// Below is the distribution function.
func (t *Table) Below(x float64) float64 {
	switch {
	case x <= t.x[0]:
		return 0
	case x >= t.x[Cells]:
		return 1
	}
	i, found := slices.BinarySearch(t.x[:], x)
	if !found {
		i--
	}
	v, l := (x-t.x[i])/(t.x[i+1]-t.x[i]), t.left[i]
	return t.p[i] + float64((t.p[i+1]-t.p[i])*v*(l+float64((1-l)*v)))
}
