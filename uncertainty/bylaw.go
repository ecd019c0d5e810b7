package uncertainty

import (
	"math"

	"minim/uncertainty/law"
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
	t := &lawTally{y: v[r.out]}
	if linear := r.linearPart(gradient, a.CoverageProbability); linear != nil {
		t.law = linear.law
	} else if a.StandardUncertainty > 0 {
		normal := new(law.Sum)
		normal.Normal(a.StandardUncertainty)
		t.law = normal.Law()
	}
	u, _ := m.linearMoments(gradient)
	mc := MonteCarlo{ByLaw: true, CoverageProbability: a.CoverageProbability, Mean: t.y, StandardDeviation: u, Sharper: 1, tally: t}
	switch least := m.leastDegrees(r.needed); {
	case least <= 1:
		mc.Mean = math.NaN()
		fallthrough
	case least <= 2:
		mc.StandardDeviation, mc.MeanError, mc.DeviationError = math.NaN(), math.NaN(), math.NaN()
	}
	tail := float64((1 - a.CoverageProbability) / 2)
	mc.Lower, mc.Upper = t.quantile(tail), t.quantile(1-tail)
	mc.ShortestLower, mc.ShortestUpper = shortestBetween(t.quantile, a.CoverageProbability, tail)
	if !finite(mc.Lower) || !finite(mc.Upper) {
		return MonteCarlo{}, ErrNotFinite
	}
	return mc, nil
}

// lawTally answers questions about the order of trials that were not made, of y + L.
type lawTally struct {
	y   float64
	law *law.Law // nil where L is always 0
}

// asMany is how finely the ranks of a law are told apart.
const asMany = 1 << 20

func (t *lawTally) size() int { return asMany }

func (t *lawTally) at(k int) float64 { return t.quantile((float64(k) + 0.5) / asMany) }

func (t *lawTally) quantile(p float64) float64 {
	if t.law == nil {
		return t.y
	}
	return t.y + t.law.At(p)
}

func (t *lawTally) below(x float64, orEqual bool) float64 {
	switch {
	case t.law != nil:
		return float64(asMany * t.law.Below(x-t.y))
	case t.y < x || orEqual && t.y == x:
		return asMany
	}
	return 0
}

func (t *lawTally) shortest(q int) (low, high float64) {
	return shortestBetween(t.quantile, float64(q)/asMany, (1-float64(q)/asMany)/2)
}

// shortestBetween looks at intervals from so many equal steps of probability on, and then about the
// best. The first to be looked at begins where best is.
func shortestBetween(quantile func(p float64) float64, coverage, best float64) (low, high float64) {
	length := func(p float64) float64 { return quantile(p+coverage) - quantile(p) }
	const steps = 400
	step, least := (1-coverage)/steps, length(best)
	try := func(p float64) {
		if p > 0 && p < 1-coverage {
			if l := length(p); l < least {
				best, least = p, l
			}
		}
	}
	for k := range steps - 1 {
		try(float64(float64(k+1) * step))
	}
	for range 3 {
		step = float64(step / 4)
		from := best
		for k := -3.0; k <= 3; k++ {
			try(from + float64(k*step))
		}
	}
	return quantile(best), quantile(best + coverage)
}
