package uncertainty

import (
	"math"
	"slices"
	"unique"

	"minim/uncertainty/portable"
	"minim/uncertainty/random"
)

// Tabulated is a distribution that is known by a table of its distribution function: between two
// nodes of the table the density is straight. It is a comparable value as the others are: two of
// the same table are equal. [Prior.Given] makes one.
type Tabulated struct {
	about Summary
	// spread is its standard deviation, which is not its u where it is one of a set of readings.
	spread float64
	// ofSet: it is drawn with the scale of the set of its readings.
	ofSet bool
	table unique.Handle[table]
}

// tableCells is the number of cells of a table.
const tableCells = 512

// table has the nodes, the distribution function there, and the density at the left end of each
// cell over its mean in the cell, from 0 to 2.
type table struct {
	x, p [tableCells + 1]float64
	left [tableCells]float64
}

// newTabulated makes a distribution of the nodes and, for each cell, of its probability and the
// mean position in it from 0 to 1. The probabilities need not add to 1.
func newTabulated(x, probability, position []float64) Tabulated {
	var t table
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
	t.p[tableCells] = 1
	return tabulated(&t)
}

func tabulated(t *table) Tabulated {
	about := t.summary()
	return Tabulated{about: about, spread: about.StandardUncertainty, table: unique.Make(*t)}
}

func (d Tabulated) summary() Summary { return d.about }

// summary has the moments of the straight pieces.
func (t *table) summary() Summary {
	s := Summary{Low: t.x[0], High: t.x[tableCells]}
	center := portable.Middle(s.Low, s.High)
	m := t.moments(center)
	s.Mean = center + m[0]
	m = t.moments(s.Mean)
	s.Mean += m[0]
	variance := max(m[1], 0)
	s.StandardUncertainty = math.Sqrt(variance)
	s.Kurtosis = 3
	if variance > 0 {
		s.Skewness, s.Kurtosis = m[2]/(variance*s.StandardUncertainty), m[3]/(variance*variance)
	}
	return s
}

// moments are the first four about a center.
func (t *table) moments(center float64) (m [4]float64) {
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

func (d Tabulated) widened(factor float64) Distribution {
	t := d.table.Value()
	for i, x := range t.x {
		t.x[i] = d.about.Mean + float64(factor*(x-d.about.Mean))
	}
	w := tabulated(&t)
	w.about.StandardUncertainty = float64(factor * d.about.StandardUncertainty)
	w.ofSet = d.ofSet
	return w
}

func (d Tabulated) sound() bool {
	return d != Tabulated{} && bounds(d.about.Low, d.about.High) && portable.IsFinite(d.about.Mean) && portable.IsFinite(d.about.StandardUncertainty)
}

func (d Tabulated) fill(dst []float64, s *random.Source) {
	t := d.table.Value()
	state := s.State
	for i := range dst {
		var bits uint64
		bits, state = random.Next(state)
		dst[i] = t.quantile(random.Uniform(bits))
	}
	s.State = state
}

// quantile is the inverse of the distribution function at 0 < p < 1: in a cell it solves
// l v + (1 - l) v² = q for the position v.
func (t *table) quantile(p float64) float64 {
	i, _ := slices.BinarySearch(t.p[1:tableCells], p)
	q := (p - t.p[i]) / (t.p[i+1] - t.p[i])
	if !(q > 0) {
		return t.x[i]
	}
	l := t.left[i]
	v := 2 * q / (l + math.Sqrt(float64(l*l)+float64(4*(1-l)*q)))
	return t.x[i] + float64(min(v, 1)*(t.x[i+1]-t.x[i]))
}

// below is the distribution function.
func (d Tabulated) below() func(x float64) float64 {
	t := d.table.Value()
	return t.below
}

func (t *table) below(x float64) float64 {
	switch {
	case x <= t.x[0]:
		return 0
	case x >= t.x[tableCells]:
		return 1
	}
	i, found := slices.BinarySearch(t.x[:], x)
	if !found {
		i--
	}
	v, l := (x-t.x[i])/(t.x[i+1]-t.x[i]), t.left[i]
	return t.p[i] + float64((t.p[i+1]-t.p[i])*v*(l+float64((1-l)*v)))
}
