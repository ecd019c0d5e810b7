package uncertainty

import "math"

// rests are what a sharpened run keeps of each trial: of c as base + gain t/(1 + bend t), t being
// x1 less its mean in units of its size, and of L without the part of x1: rest, and besides it
// what is cut off together with that part. Without a smooth influence base is c itself.
type rests struct{ base, gain, bend, rest, beside, scale []float64 }

// aside is what a worker sets aside of a block.
type aside struct {
	parts     [][]float64 // of L, without x1
	uncut     []float64
	x1, scale []float64
	chances   [2][]float64 // scratch space
}

func (s *sharpening) newAside() *aside {
	block := func() []float64 { return make([]float64, blockSize) }
	a := &aside{uncut: block(), x1: block(), scale: block(), chances: [2][]float64{block(), block()}}
	for range s.linear.most {
		a.parts = append(a.parts, block())
	}
	return a
}

func (a *aside) clear() {
	for _, p := range a.parts {
		clear(p)
	}
}

// setAside adds the draws of an influence to its part of L, as they are before anything is cut.
func (w *worker) setAside(st *step, dst []float64) {
	s, i := w.sharp, st.influence
	switch {
	case i < 0:
	case i == s.influence:
		copy(w.aside.x1, dst)
		if s.scaled {
			copy(w.aside.scale, w.slot[st.draw.scale])
		}
	case s.linear.slopes[i] != 0:
		if st.draw.cut > 0 {
			dst = w.aside.uncut
		}
		addScaled(w.aside.parts[s.linear.part[i]], dst, st.mean, s.linear.slopes[i])
	}
}

// newRests has space for so many.
func newRests(n int) rests {
	space := func() []float64 { return make([]float64, n) }
	return rests{space(), space(), space(), space(), space(), space()}
}

func (t *rests) lists() [6]*[]float64 {
	return [6]*[]float64{&t.base, &t.gain, &t.bend, &t.rest, &t.beside, &t.scale}
}

// from are those from one to before another.
func (t *rests) from(low, high int) rests {
	return rests{t.base[low:high], t.gain[low:high], t.bend[low:high], t.rest[low:high], t.beside[low:high], t.scale[low:high]}
}

// record writes down what was set aside of the last block, and reports whether it is as it must
// be: where c is not straight in x1 it rises or falls all the way that this can go.
func (w *worker) record(values []float64, to rests) bool {
	s := w.sharp
	n := len(to.base)
	copy(to.rest, w.aside.parts[0])
	for k := 1; k < len(w.aside.parts); k++ {
		part, most := w.aside.parts[k][:n], s.linear.most[k]
		if k == s.own() {
			copy(to.beside, part)
			continue
		}
		for i, x := range part {
			to.rest[i] += max(-most, min(x, most))
		}
	}
	if s.influence < 0 {
		copy(to.base, values)
		return true
	}
	copy(to.scale, w.aside.scale)
	low, mid, high := w.valuesAt(0), w.valuesAt(1), w.valuesAt(2)
	sound := true
	for i := range to.base {
		below, above := mid(i)-low(i), high(i)-mid(i)
		sum := below + above
		to.base[i], to.gain[i] = mid(i), float64(sum/2)
		if !s.straight {
			to.bend[i] = (below - above) / sum
			to.gain[i] = 2 * (below / sum) * above
			sound = sound && below*s.sign > 0 && above*s.sign > 0 && math.Abs(to.bend[i])*s.kernel.Reach < 1
		}
	}
	return sound
}

// valuesAt is the output of each trial of the last block with x1 at a point.
func (w *worker) valuesAt(point int) func(i int) float64 {
	o := w.outAt[point]
	if o.isConstant() {
		return func(int) float64 { return o.constant }
	}
	slot := w.slot[o.slot]
	return func(i int) float64 { return slot[i] }
}

// chances are those that c, and that L, is not more than q, given all but x1.
func (s *sharpening) chances(t rests, q float64, scratch [2][]float64) (ofOutput, ofLinear []float64) {
	a, b := scratch[0][:len(t.base)], scratch[1][:len(t.base)]
	if s.influence < 0 {
		for i, c := range t.base {
			a[i], b[i] = one(c <= q), one(s.y+t.rest[i] <= q)
		}
		return a, b
	}
	var scale []float64
	if s.scaled {
		scale = t.scale
	}
	slope := s.slope()
	for i, base := range t.base {
		v := q - base
		a[i] = v / (t.gain[i] - float64(t.bend[i]*v))
		if !(a[i]*v*t.gain[i] >= 0) { // beyond where the quotient is infinite
			a[i] = math.Copysign(math.Inf(1), v*t.gain[i])
		}
		b[i] = (q - s.y - t.rest[i] - t.beside[i]) / slope
	}
	s.kernel.BelowCut(a, scale)
	s.kernel.Below(b, scale)
	for i, gain := range t.gain {
		if gain < 0 {
			a[i] = 1 - a[i]
		}
		if slope < 0 {
			b[i] = 1 - b[i]
		}
	}
	if own := s.own(); own > 0 {
		most := s.linear.most[own]
		for i, rest := range t.rest {
			if z := q - s.y - rest; z >= most {
				b[i] = 1
			} else if z < -most {
				b[i] = 0
			}
		}
	}
	return a, b
}

func one(is bool) float64 {
	if is {
		return 1
	}
	return 0
}
