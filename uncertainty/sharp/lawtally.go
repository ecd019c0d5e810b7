package sharp

import (
	"context"

	"minim/uncertainty/law"
)

// LawTally answers questions about the order of trials that were not made, of y + L.
type LawTally struct {
	Y   float64
	Law *law.Law // nil where L is always 0
}

// asMany is how finely the ranks of a law are told apart.
const asMany = 1 << 20

func (t *LawTally) Size() int { return asMany }

func (t *LawTally) At(k int) float64 { return t.Quantile((float64(k) + 0.5) / asMany) }

func (t *LawTally) Quantile(p float64) float64 {
	if t.Law == nil {
		return t.Y
	}
	return t.Y + t.Law.At(p)
}

func (t *LawTally) Below(x float64, orEqual bool) float64 {
	switch {
	case t.Law != nil:
		return float64(asMany * t.Law.Below(x-t.Y))
	case t.Y < x || orEqual && t.Y == x:
		return asMany
	}
	return 0
}

func (t *LawTally) Shortest(_ context.Context, q int) (low, high float64, err error) {
	low, high = t.ShortestOf(float64(float64(q) / asMany))
	return low, high, nil
}

// ShortestOf is the shortest interval with a coverage probability.
func (t *LawTally) ShortestOf(coverage float64) (low, high float64) {
	return shortest(t.Quantile, coverage, float64((1-coverage)/2))
}

// shortest looks at intervals from so many equal steps of probability on, and then about the
// best. The first to be looked at begins where best is.
func shortest(quantile func(p float64) float64, coverage, best float64) (low, high float64) {
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
