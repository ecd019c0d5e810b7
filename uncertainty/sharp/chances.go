package sharp

import (
	"math"
	"sync"

	"minim/uncertainty/portable"
	"minim/uncertainty/random"
)

// chancesAt are those that c is not more than q in each trial, and that L is not, given all but x1.
func (s *Sharpening) chancesAt(r Rests, q float64, scratch *scratch) (ofOutput, ofLinear []float64) {
	linear := scratch.other[:len(r.base)]
	for i, of := 0, s.linearOf(q); i < len(linear); i++ {
		linear[i] = of
	}
	if power := s.power(); power != 0 {
		q = s.raised(q, power)
	}
	return s.chances(r, scratch.all(q, len(r.base)), linear, scratch)
}

// chances are those that c is not more than q in each trial, and that L is not more than linear,
// given all but x1. Where c is but nearly a quotient, what is drawn tells by how much that is wrong.
func (s *Sharpening) chances(r Rests, q, linear []float64, scratch *scratch) (ofOutput, ofLinear []float64) {
	a, b := scratch.a[:len(r.base)], scratch.b[:len(r.base)]
	var scale []float64
	if s.Scaled {
		scale = r.scale
	}
	s.placesOfOutput(r, q, a)
	s.placesOfLinear(r, linear, b)
	s.Kernel.BelowCut(a, scale)
	s.Kernel.Below(b, scale)
	for i, gain := range r.gain {
		if gain < 0 {
			a[i] = 1 - a[i]
		}
	}
	if s.slope() < 0 {
		for i := range b {
			b[i] = 1 - b[i]
		}
	}
	if !s.Exact {
		for i, c := range r.drawn {
			a[i] += one(c <= q[i]) - one(r.quotient[i] <= q[i])
		}
	}
	return a, b
}

// placesOfOutput are the x1 at which c is q.
func (s *Sharpening) placesOfOutput(r Rests, q, a []float64) {
	if s.Straight {
		for i, base := range r.base {
			a[i] = (q[i] - base) / r.gain[i]
			if r.gain[i] == 0 {
				a[i] = math.Copysign(math.Inf(1), q[i]-base)
			}
		}
		return
	}
	for i, base := range r.base {
		v := q[i] - base
		a[i] = v / (r.gain[i] - float64(r.bend[i]*v))
		if !(a[i]*v*r.gain[i] >= 0) { // beyond where the quotient is infinite
			a[i] = math.Copysign(math.Inf(1), v*r.gain[i])
		}
	}
}

// placesOfLinear are the x1 at which L is linear; infinite where the part that x1 belongs to would have to be more
// than most.
func (s *Sharpening) placesOfLinear(r Rests, linear, b []float64) {
	perSize, bend, grown := 1/s.slope(), s.bend(), 0.0
	for i, rest := range r.rest {
		if bend == 0 {
			b[i] = linear[i] - rest
			continue
		}
		if i == 0 || linear[i] != linear[i-1] {
			grown = portable.Exp(bend * linear[i])
		}
		b[i] = (float64(grown*rest) - 1) / bend
	}
	if s.own() > 0 {
		most := s.Linear.Most[s.own()]
		high, low := Bend(bend).Part(most), Bend(bend).Part(-most)
		for i, more := range r.beside {
			switch {
			case b[i] >= high:
				b[i] = math.Inf(1)
			case b[i] < low:
				b[i] = math.Inf(-1)
			default:
				b[i] -= more
			}
		}
	}
	for i := range b {
		b[i] *= perSize
	}
}

func one(is bool) float64 {
	if is {
		return 1
	}
	return 0
}

// scratch is space for the places and the chances of a block.
type scratch struct{ q, a, b, sum, other, upper, lower []float64 }

// scratches are used again.
var scratches = sync.Pool{New: func() any { return newScratch(nil) }}

func newScratch(in *Space) *scratch {
	block := func() []float64 { return in.Numbers(random.BlockSize) }
	return &scratch{block(), block(), block(), block(), block(), block(), block()}
}

// all is one place for each of so many trials.
func (s *scratch) all(q float64, n int) []float64 {
	places := s.q[:n]
	for i := range places {
		places[i] = q
	}
	return places
}
