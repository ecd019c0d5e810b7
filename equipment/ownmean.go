package equipment

import (
	"math"

	"minim/uncertainty"
	"minim/uncertainty/portable"
)

// usualMark is where readings were taken when that is not said: at the only mark; of several, at
// the capacity if their mean is within a tenth of it, which is assumed; else it is 0.
func (k *Measure) usualMark(mean float64) (mark float64, assumed bool) {
	is := k.Kind.Traits()
	several := k.Division > 0 || is.Scale || is.Set && !is.Counts
	switch {
	case !several:
		return k.Capacity, false
	case math.Abs(mean-k.Capacity) <= k.Capacity/10:
		return k.Capacity, true
	}
	return 0, false
}

// compare works out what the mean says of the error of the piece.
func (k *Measure) compare(j *Judged) {
	prior, others, known := k.expected(j)
	j.Expected = j.Mark + (others + prior.Mean())
	m := j.measured(j.scatter, j.Common)
	m.Mean -= j.Mark + others
	m.Scale = max(m.Scale, 1e-9*k.Capacity)
	known = known && j.Liquid == ""
	if known {
		j.Chance = prior.Chance(m)
	}
	switch {
	case j.scatter.DegreesOfFreedom < leastNu:
		j.Standing = Few
	case !known || j.isTooFar():
		j.Standing = Alone
		j.error, j.degreesOfFreedom = byReadingsAlone(m)
	default:
		j.Standing = Combined
		m, j.degreesOfFreedom = j.ofSet(m, &j.scatter)
		j.error = prior.Given(m)
		if k.Bias.assumesTriangle() && !k.lineAlone() {
			flat := prior
			flat.Of = rectangle.within(k.Limit(j.Mark))
			j.flat, j.assumedPart = flat.Given(m), partOf(prior, j.error)
		}
	}
}

// ofSet is what readings say of a mean as one of their set, with its degrees of freedom, where they
// were judged by their own scatter and that makes half of its variance or more; else as it is, and 0.
func (s *Spread) ofSet(m uncertainty.Measured, by *Spread) (uncertainty.Measured, float64) {
	if by.DegreesOfFreedom != s.DegreesOfFreedom {
		return m, 0
	}
	own := by.S / math.Sqrt(s.Readings())
	if m.OfSet = float64(2*own*own) >= float64(m.Scale*m.Scale); !m.OfSet {
		return m, 0
	}
	return m, s.DegreesOfFreedom
}

// partOf is the part that a prior has in a posterior: that of its information, which is one over
// the variance. It is so for normal distributions (JCGM 106, A.14: 1/u² = 1/u0² + 1/um²), and taken
// to be so for others.
func partOf(prior uncertainty.Prior, posterior uncertainty.Distribution) float64 {
	before := portable.Hypot(uncertainty.SummaryOf(prior.Of).StandardUncertainty, prior.Blur)
	after := uncertainty.SummaryOf(posterior).StandardUncertainty
	return min(1, after*after/(before*before))
}

// lineAlone: how good the piece is, follows from the measure that its line was set with.
func (k *Measure) lineAlone() bool { return k.Line.With != nil && k.Bias.Limit == 0 }

// byReadingsAlone is what readings say where nothing else is known.
func byReadingsAlone(m uncertainty.Measured) (d uncertainty.Distribution, degreesOfFreedom float64) {
	if math.IsInf(m.Nu, 1) {
		return uncertainty.Normal{Mu: m.Mean, Sigma: m.Scale}, 0
	}
	return uncertainty.StudentT{Mu: m.Mean, Sigma: m.Scale, Nu: m.Nu}, m.Nu
}

// expected is what is known of the error of the piece beside its readings: the limit, which is that
// of the piece alone. others is what else is known to come to it, on average. Readings of what
// comes out of an instrument that was not adjusted to deliver are of the limit and of what stays
// and clings together; known is false where nothing is known of that.
func (k *Measure) expected(j *Judged) (prior uncertainty.Prior, others float64, known bool) {
	clinging := 0.0
	if k.Kind.Traits().Receives {
		clinging = k.Clinging.Value / 2
	}
	prior = k.ofPiece(j.Mark)
	switch {
	case j.Of == Delivered && !k.Ex:
		j.whole = true
		stays, _ := k.retained(alone())
		about := uncertainty.SummaryOf(stays.distribution())
		prior.Shift = clinging - about.Mean
		prior.Blur = portable.Hypot(about.StandardUncertainty, clinging/math.Sqrt(3))
		return prior, 0, stays.Known
	case j.Of == Contained && k.Ex && k.Retained.Known:
		return prior, clinging + k.Retained.Mean, true
	}
	return prior, clinging, true
}

// ofPiece is what the kit says of the error of the piece itself at a mark. One that is said to have
// none has hardly any.
func (k *Measure) ofPiece(mark float64) uncertainty.Prior {
	if k.lineAlone() {
		u := alone()
		nodes, err := k.setLine(u)
		line := propagated(u, u.Model.Add(u.Model.Constant(0), nodes...), err)
		return uncertainty.Prior{Of: uncertainty.Normal{Mu: line.Value, Sigma: max(line.StandardUncertainty, 1e-9*k.Capacity)}}
	}
	limit := max(k.Limit(mark), 1e-9*k.Capacity)
	return uncertainty.Prior{Of: k.Bias.Shape.within(limit), Shift: k.Bias.Correction}
}
