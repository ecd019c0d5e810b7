package uncertainty

import (
	"cmp"
	"math"
	"slices"

	"minim/uncertainty/law"
	"minim/uncertainty/portable"
	"minim/uncertainty/sharp"
)

// factor of an output: a power of 1 + bend Z, Z being Σ slope (x - mean) of its influences, with their slopes of the
// logarithm of the output.
type factor struct {
	members []int
	bend    float64
	second  []float64 // derivatives of the logarithm by the first member and each influence
	square  float64   // variance of Z
	reach   float64   // how far Z can be from 0
}

// curves is how far a logarithm is from straight in a factor.
func (f *factor) curves() float64 { return math.Abs(f.bend) * f.square }

// Of the factors those are bent that are so far from straight, in units of the size of the logarithm, at most so many; more
// would take longer than is won.
const (
	leastCurved = 1e-3
	mostBent    = 5
	// mostFactor is how far a factor may be from 1, and farInFactor how many of its standard deviations a part counts at the
	// most.
	mostFactor  = 0.9
	farInFactor = 15
)

// logarithmicPart is the linear part of the logarithm of the output over its value at the means, with the curved factors
// bent; nil where there is none.
func (m *Model) logarithmicPart(out Node, v, gradient []float64, coverage float64) *sharp.Linear {
	if !(v[out] > 0) {
		return nil
	}
	relative, size := slices.Clone(gradient), 0.0
	for i := range relative {
		relative[i] /= v[out]
		size = portable.Hypot(size, relative[i]*m.influences[i].Distribution.Summary().StandardUncertainty)
	}
	return m.withLaw(&sharp.Linear{Slopes: relative, Log: true}, coverage, m.setDegrees, bent(m.factors(out, v, relative, size), size))
}

// bent are the factors that are worth it, and not likely to be 0.
func bent(factors []factor, size float64) []factor {
	factors = slices.DeleteFunc(factors, func(f factor) bool {
		return !(f.curves() >= leastCurved*size) || math.Abs(f.bend)*min(f.reach, 6*math.Sqrt(f.square)) > mostFactor
	})
	slices.SortStableFunc(factors, func(a, b factor) int { return cmp.Compare(b.curves(), a.curves()) })
	return factors[:min(len(factors), mostBent)]
}

// alike is how far, relative to itself, a second derivative may be off that of one factor.
const alike = 0.1

// factors puts the influences that count together whose second derivatives are those of one factor: for ln (1 + bend Z)/bend
// they are -bend times the slopes.
func (m *Model) factors(out Node, v, relative []float64, size float64) (list []factor) {
	w, d := newSweep(out), make([]float64, len(relative))
next:
	for _, i := range m.bySize(relative, size/100) {
		if _, far := m.tailsOf(i, m.setDegrees(i)); far || m.isCorrelated(i) {
			continue
		}
		slope, about := relative[i], m.influences[i].Distribution.Summary()
		u := math.Abs(slope) * about.StandardUncertainty
		reach := float64(math.Abs(slope) * min(max(about.High-about.Mean, about.Mean-about.Low), 9*about.StandardUncertainty))
		for k := range list {
			f := &list[k]
			if want := float64(f.bend * slope * relative[f.members[0]]); math.Abs(f.second[i]+want) <= alike*math.Abs(want) {
				f.members = append(f.members, i)
				f.square += float64(u * u)
				f.reach += reach
				continue next
			}
		}
		d[i] = 1
		second := m.hessianTimes(out, v, d, w)
		d[i] = 0
		for j := range second {
			second[j] = second[j]/v[out] - float64(slope*relative[j])
		}
		list = append(list, factor{[]int{i}, -second[i] / (slope * slope), second, float64(u * u), reach})
	}
	return list
}

// addBent adds a factor, and reports whether its law is known.
func (m *Model) addBent(l *sharp.Linear, sum *law.Sum, f *factor) bool {
	below, scale := m.belowOf(f, l.Slopes)
	if below == nil {
		return false
	}
	bend := sharp.Bend(f.bend)
	most := min(max(math.Abs(bend.Counted(f.reach)), math.Abs(bend.Counted(-f.reach))), farInFactor*scale)
	sum.Bounded(func(x float64) float64 { return below(bend.Part(x)) }, float64(scale*scale), most)
	k := l.Add(most, bend)
	for _, i := range f.members {
		l.Part[i] = k
	}
	return true
}

// belowOf is the distribution function of Z, and its standard deviation; nil where it is not known.
func (m *Model) belowOf(f *factor, slopes []float64) (below func(x float64) float64, scale float64) {
	var inner law.Sum
	for _, i := range f.members {
		if !addTo(&inner, m.influences[i].Distribution, slopes[i]) {
			return nil, 0
		}
	}
	if len(f.members) == 1 {
		i := f.members[0]
		if of := belowOne(m.influences[i].Distribution); of != nil {
			mean, slope := m.influences[i].Distribution.Summary().Mean, slopes[i]
			return func(x float64) float64 {
				if slope < 0 {
					return 1 - of(mean+x/slope)
				}
				return of(mean + x/slope)
			}, inner.Scale()
		}
	}
	sum := inner.Law()
	if sum == nil {
		return nil, 0
	}
	return sum.Below, inner.Scale()
}

// belowOne is a distribution function that takes little time; nil for others.
func belowOne(d Distribution) func(x float64) float64 {
	switch d := d.(type) {
	case Normal:
		return func(x float64) float64 { return portable.NormalCDF((x - d.Mu) / d.Sigma) }
	case Rectangular:
		return func(x float64) float64 { return max(0, min((x-d.Low)/(d.High-d.Low), 1)) }
	case Tabulated:
		return d.Below()
	}
	return nil
}
