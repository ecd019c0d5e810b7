package uncertainty

import (
	"cmp"
	"math"
)

// AssumedShare is the part of the variance that rests on assumed influences, or on what is
// assumed of them.
func (a Analytic) AssumedShare() float64 {
	return a.shareOf(func(line *Contribution) bool { return line.Assumed })
}

// MemoryShare is the part of the variance that rests on figures that nobody has seen in print, some of
// which may be assumed as well.
func (a Analytic) MemoryShare() float64 {
	return a.shareOf(func(line *Contribution) bool { return line.Ground.isRecalled() })
}

func (a Analytic) shareOf(counts func(line *Contribution) bool) float64 {
	share := 0.0
	for i := range a.Budget {
		if counts(&a.Budget[i]) {
			share += float64(a.Budget[i].Share * cmp.Or(a.Budget[i].AssumedPart, 1))
		}
	}
	return share
}

// IfRectangular is the expanded uncertainty if each influence of which the shape alone is
// assumed were rectangular between the same limits, or came from such a prior (JCGM 100, 4.3.7 and 4.3.9: a²/3 in
// place of the a²/6 of a triangle). Limits have infinite degrees of freedom, so that the
// effective ones grow as u⁴; a posterior has those of its readings. It is the expanded uncertainty
// itself where there is none.
func (a *Analytic) IfRectangular() float64 {
	more := a.MoreIfRectangular()
	if more == 0 {
		return a.ExpandedUncertainty
	}
	u := a.StandardUncertainty * math.Sqrt(1+more)
	perDegree := 1/a.DegreesOfFreedom + a.fewerIfRectangular()
	return CoverageFactor(a.CoverageProbability, (1+more)*(1+more)/perDegree) * u
}

// fewerIfRectangular is what the sum of Welch and Satterthwaite would grow by, over u⁴.
func (a *Analytic) fewerIfRectangular() (sum float64) {
	for i := range a.Budget {
		line := &a.Budget[i]
		if !line.AssumedShape || !(line.DegreesOfFreedom > 0) || line.Set == (Set{}) || line.StandardUncertainty == 0 {
			continue
		}
		flat, of := line.flat().Summary().StandardUncertainty/line.StandardUncertainty, 0.0
		for k := range a.Budget {
			if a.Budget[k].Set == line.Set {
				of += a.Budget[k].Share
			}
		}
		after := of + float64(line.Share*(float64(flat*flat)-1))
		sum += (float64(after*after) - float64(of*of)) / line.DegreesOfFreedom
	}
	return sum
}

// MoreIfRectangular is by how much of itself the variance would then grow.
func (a *Analytic) MoreIfRectangular() (more float64) {
	for i := range a.Budget {
		line := &a.Budget[i]
		if line.AssumedShape && line.StandardUncertainty > 0 {
			flat := line.flat().Summary().StandardUncertainty / line.StandardUncertainty
			more += float64(line.Share * (float64(flat*flat) - 1))
		}
	}
	return more
}
