package sharp

import (
	"math"

	"minim/uncertainty/law"
)

// LinearChance is the chance that own' + r S + y' is smaller in size than own + S + y. It goes
// through the values of the narrower of own and own', as whose function the chance is smoother.
func LinearChance(laws [3]*Linear, y, other, r float64) float64 {
	shared := []law.Node{{At: 0, Weight: 1}}
	if laws[2] != nil {
		shared = laws[2].Law.Nodes(64)
	}
	narrow, wide := laws[0], laws[1]
	turned := narrow.Scale > wide.Scale
	if turned {
		narrow, wide = wide, narrow
	}
	nodes := narrow.Law.Nodes(300)
	sum := 0.0
	for _, s := range shared {
		a, b := s.At+y, other+float64(r*s.At)
		if turned {
			a, b = b, a
		}
		sum += float64(s.Weight * wide.smaller(b, nodes, a))
	}
	if turned {
		return 1 - sum
	}
	return sum
}

// smaller is the chance that this part and b is smaller in size than a value of another and a.
func (l *Linear) smaller(b float64, other []law.Node, a float64) float64 {
	sum := 0.0
	for _, n := range other {
		d := math.Abs(n.At + a)
		sum += float64(n.Weight * (l.Law.Below(d-b) - l.Law.Below(-d-b)))
	}
	return sum
}

// Output works out y + L of each trial.
func (s *Sharpening) Output(b *Block, sum []float64) {
	for k, part := range b.Parts {
		most := s.Linear.Most[k]
		for i := range sum {
			if k == 0 {
				sum[i] = s.Y + part[i]
			} else {
				sum[i] += max(-most, min(part[i], most))
			}
		}
	}
}

// Closer are the chances, given all but x1, that c lies closer to a target in each trial than another
// quantity, of which the values are given, and that L does than the linear part of that.
func (s *Sharpening) Closer(b *Block, r Rests, others, linear []float64, target float64) (ofOutput, ofLinear []float64) {
	n := len(others)
	upper, lower := b.scratch.sum[:n], b.scratch.other[:n]
	upperLinear, lowerLinear := b.scratch.upper[:n], b.scratch.lower[:n]
	for i, c := range others {
		by, byLinear := math.Abs(c-target), math.Abs(linear[i]-target)
		upper[i], lower[i] = target+by, target-by
		upperLinear[i], lowerLinear[i] = target+byLinear-s.Y, target-byLinear-s.Y
	}
	below, belowLinear := s.chances(r, lower, lowerLinear, b.scratch)
	copy(lower, below)
	copy(lowerLinear, belowLinear)
	below, belowLinear = s.chances(r, upper, upperLinear, b.scratch)
	for i := range lower {
		upper[i], upperLinear[i] = below[i]-lower[i], belowLinear[i]-lowerLinear[i]
	}
	return upper, upperLinear
}
