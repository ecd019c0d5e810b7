package uncertainty

import (
	"math"

	"minim/uncertainty/distribution"
	"minim/uncertainty/law"
	"minim/uncertainty/sharp"
)

// smoothInfluence describes an influence as the smooth one; false where it cannot be.
func (m *Model) smoothInfluence(s *sharp.Sharpening, i int, cut float64) bool {
	about := m.influences[i].Distribution.Summary()
	s.Smooth = i
	s.Mean, s.Size = about.Mean, about.StandardUncertainty
	switch d := m.influences[i].Distribution.(type) {
	case Normal:
		s.Kernel = law.Bell()
	case StudentT:
		if m.scaleOf[i] < 0 && cut == 0 {
			return false // it is not drawn as one that is scaled
		}
		s.Kernel, s.Scaled = law.Bell(), true
		s.Kernel.Cut, s.Kernel.Reach = cut/d.Sigma, 1e9
		if cut > 0 {
			s.Kernel.Reach = s.Kernel.Cut
		}
	case Rectangular:
		s.Size = float64((d.High - d.Low) / 2)
		s.Kernel = law.Flat()
	case distribution.Triangular:
		s.Size = float64((d.High - d.Low) / 2)
		s.Kernel = law.Peaked()
	case Tabulated:
		s.Kernel, s.Scaled = m.kernelOf(d, i), m.isTold(i)
	case Gamma:
		if d.Shape() > distribution.Narrow || d.Shape() < leastShape {
			return false
		}
		far := d.Mu + float64(d.Sigma*max(12, 40*d.Sigma/d.Mu))
		s.Kernel = law.Tabled(s.Mean, s.Size, far, steepness(d), func(x float64) float64 { return 1 - d.Above(x) })
	case distribution.CutGamma:
		if d.Shape() < leastShape {
			return false
		}
		s.Kernel = law.Tabled(s.Mean, s.Size, d.Most, steepness(d.Gamma), d.Below())
	default:
		return false
	}
	return s.Size > 0 && !m.isCorrelated(i)
}

// leastShape is that of a gamma distribution which can still be tabulated.
const leastShape = 0.3

// steepness is the power that takes out how the distribution function begins at 0, and more.
func steepness(d Gamma) int { return max(3, int(math.Ceil(3/d.Shape()))) }

// kernelOf is that of an influence which is a table; of one that is drawn with the scale of its set,
// where that is given.
func (m *Model) kernelOf(d Tabulated, i int) law.Kernel {
	mean, size := d.Summary().Mean, d.Summary().StandardUncertainty
	reach := max(mean-d.Summary().Low, d.Summary().High-mean) / size
	if !m.isTold(i) {
		below := d.Below()
		return law.Known(reach, func(t float64) float64 { return below(mean + float64(size*t)) })
	}
	told, k := distribution.ToldOf(d, m.scales[m.scaleOf[i]].nu), law.Bell()
	k.Reach = reach
	k.Turn = func(t float64) float64 { return told.Student(mean + float64(size*t)) }
	return k
}

// isTold reports a posterior that is drawn with the scale of its set.
func (m *Model) isTold(influence int) bool {
	d, posterior := m.influences[influence].Distribution.(Tabulated)
	return posterior && d.OfSet() && m.scaleOf[influence] >= 0
}
