package uncertainty

import (
	"math"

	"minim/uncertainty/distribution"
	"minim/uncertainty/law"
	"minim/uncertainty/portable"
	"minim/uncertainty/sharp"
)

// drawnPart is L by which trials are sharpened, with its law. In it stands for a posterior that is drawn with
// the scale of its set the Student's t that it is made of, times its u: so it is one with the uses of the
// set, which are not independent of it. Nil where there is no law.
func (m *Model) drawnPart(slopes []float64, coverage float64) *sharp.Linear {
	return m.withLaw(&sharp.Linear{Slopes: slopes}, coverage, m.setDegrees, nil)
}

// linearPart works out the law of L, in which a posterior counts as independent of the scale of its
// set; nil where there is none.
func (m *Model) linearPart(slopes []float64, coverage float64) *sharp.Linear {
	return m.withLaw(&sharp.Linear{Slopes: slopes}, coverage, m.drawnDegrees, nil)
}

// setDegrees are those of the Student's t that an influence is made of, +Inf where it is made of none.
func (m *Model) setDegrees(influence int) float64 {
	if m.isTold(influence) {
		return m.scales[m.scaleOf[influence]].nu
	}
	return m.drawnDegrees(influence)
}

// withLaw works out the law of L, of which some influences have degrees of freedom, and some factors are bent.
func (m *Model) withLaw(l *sharp.Linear, coverage float64, degrees func(influence int) float64, bent []factor) *sharp.Linear {
	l.Part = make([]int, len(l.Slopes))
	l.Add(0, 0) // all that is neither cut off nor bent
	sum, scales := new(law.Sum), make(map[oneScale]float64)
	for k := range bent {
		if !m.addBent(l, sum, &bent[k]) {
			return nil
		}
	}
	for i, slope := range l.Slopes {
		if slope == 0 || l.Part[i] > 0 {
			continue
		}
		if of, far := m.tailsOf(i, degrees(i)); far {
			by := slope * m.influences[i].Distribution.Summary().StandardUncertainty
			if of.group < 0 {
				scales[of] = portable.Hypot(scales[of], by)
			}
		} else if g, _ := m.groupOf(i); g < 0 && !addTo(sum, m.influences[i].Distribution, slope) {
			return nil
		}
	}
	m.addGroups(sum, l.Slopes, scales)
	if !m.cutOff(l, sum, scales, (1-coverage)/2, degrees) {
		return nil
	}
	l.Scale = sum.Scale()
	if l.Law = sum.Law(); l.Law == nil {
		return nil
	}
	return l
}

// oneScale is what is drawn with one chi-square value: the influences of a set of readings, those
// of a correlated group, or one alone. The numbers of the others are -1.
type oneScale struct{ set, group, influence int }

// tailsOf tells which tails an influence with degrees of freedom has; far is false where it has none.
func (m *Model) tailsOf(influence int, degrees float64) (of oneScale, far bool) {
	of = oneScale{-1, -1, -1}
	if math.IsInf(degrees, 1) {
		return of, false
	}
	switch g, _ := m.groupOf(influence); {
	case g >= 0:
		of.group = g
	case m.scaleOf[influence] >= 0:
		of.set = m.scaleOf[influence]
	default:
		of.influence = influence
	}
	return of, true
}

// addGroups adds up what is correlated.
func (m *Model) addGroups(sum *law.Sum, slopes []float64, scales map[oneScale]float64) {
	for k, g := range m.groups {
		c := make([]float64, len(slopes))
		for _, i := range g.members {
			c[i] = slopes[i] * m.influences[i].Distribution.Summary().StandardUncertainty
		}
		u := combine(c, m.correlate(c))
		if g.nu > 0 {
			scales[oneScale{-1, k, -1}] = u
		} else {
			sum.Normal(u)
		}
	}
}

// cutOff adds each part with tails, in the order of the influences, and reports whether all are
// of a size that can be.
func (m *Model) cutOff(l *sharp.Linear, sum *law.Sum, scales map[oneScale]float64, tail float64, degrees func(influence int) float64) bool {
	number := make(map[oneScale]int)
	for i, slope := range l.Slopes {
		of, far := m.tailsOf(i, degrees(i))
		if !far || slope == 0 || scales[of] == 0 {
			continue
		}
		if number[of] == 0 {
			u, nu := scales[of], degrees(i)
			most := float64(u * max(10, -3*portable.StudentQuantile(tail, nu)))
			if !portable.IsFinite(most) {
				return false
			}
			number[of] = l.Add(most, 0)
			sum.CutOff(func(x float64) float64 { return portable.StudentBelow(x/u, nu) }, u, most)
		}
		l.Part[i] = number[of]
	}
	return true
}

// addTo adds slope (x - mean), and reports whether the law of x is known.
func addTo(sum *law.Sum, d Distribution, slope float64) bool {
	about := d.Summary()
	if about.StandardUncertainty == 0 {
		return true
	}
	switch d := d.(type) {
	case Normal:
		sum.Normal(slope * d.Sigma)
	case Rectangular:
		sum.Flat(slope * (d.High - d.Low) / 2)
	case distribution.Triangular:
		quarter := slope * (d.High - d.Low) / 4
		sum.Flat(quarter)
		sum.Flat(quarter)
	case Gamma:
		if d.Shape() > 1e12 { // of a skewness that is not seen
			sum.Normal(slope * d.Sigma)
		} else {
			sum.Gamma(d.Shape(), slope*d.Mu/d.Shape())
		}
	case cumulative:
		most := float64(math.Abs(slope) * max(about.Mean-about.Low, about.High-about.Mean))
		u, below := slope*about.StandardUncertainty, d.Below()
		if !portable.IsFinite(most) {
			return false
		}
		sum.Bounded(func(x float64) float64 {
			if slope < 0 {
				return 1 - below(about.Mean+x/slope)
			}
			return below(about.Mean + x/slope)
		}, float64(u*u), most)
	default:
		return false
	}
	return true
}

// cumulative is a bounded distribution whose distribution function is known.
type cumulative interface {
	Below() func(x float64) float64
}
