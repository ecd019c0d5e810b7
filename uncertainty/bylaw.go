package uncertainty

import (
	"math"

	"minim/uncertainty/law"
	"minim/uncertainty/portable"
	"minim/uncertainty/sharp"
)

// ByLaw is what a simulation would give if the model were its linear part, whose law is known: at
// once, with nothing drawn and [MonteCarlo.ByLaw] set. Mean and StandardDeviation are those of
// the linear part, ends and chances those of its law about the value; what is not known is
// taken as normal. It needs the result of [Model.Propagate] for the model as it is, and holds for
// good. The error is [ErrNotFinite].
func (r *Ready) ByLaw(a Analytic) (MonteCarlo, error) {
	m := r.model
	v := m.values(r.out, mean)
	gradient := m.gradient(r.out, v)
	t := &sharp.LawTally{Y: v[r.out]}
	if linear := r.wholePart(gradient, a.CoverageProbability); linear != nil {
		t.Law = linear.Law
	} else if a.StandardUncertainty > 0 {
		normal := new(law.Sum)
		normal.Normal(a.StandardUncertainty)
		t.Law = normal.Law()
	}
	u, _ := m.linearMoments(gradient)
	mc := MonteCarlo{ByLaw: true, CoverageProbability: a.CoverageProbability, Mean: t.Y, StandardDeviation: u, Sharper: 1, tally: t}
	switch least := m.leastDegrees(r.needed); {
	case least <= 1:
		mc.Mean = math.NaN()
		fallthrough
	case least <= 2:
		mc.StandardDeviation, mc.MeanError, mc.DeviationError = math.NaN(), math.NaN(), math.NaN()
	}
	tail := float64((1 - a.CoverageProbability) / 2)
	mc.Lower, mc.Upper = t.Quantile(tail), t.Quantile(1-tail)
	mc.ShortestLower, mc.ShortestUpper = t.ShortestOf(a.CoverageProbability)
	if !portable.IsFinite(mc.Lower) || !portable.IsFinite(mc.Upper) {
		return MonteCarlo{}, ErrNotFinite
	}
	return mc, nil
}
