package uncertainty

import "math"

// rests are what a sharpened run keeps of each trial: of c as base + gain t/(1 + bend t), t being
// x1 less its mean in units of its size, and of L without the part of x1: rest, and besides it
// what is cut off together with that part. Where c is not exactly so, it is drawn, and quotient
// what would be in its place.
type rests struct{ base, gain, bend, rest, beside, scale, drawn, quotient []float64 }

// aside is what a worker sets aside of a block.
type aside struct {
	parts     [][]float64 // of L, without x1
	uncut     []float64
	x1, scale []float64
	scratch   *scratch
}

// scratch is space for the places and the chances of a block.
type scratch struct{ q, a, b, sum, other []float64 }

func newScratch(in *space) *scratch {
	block := func() []float64 { return in.numbers(blockSize) }
	return &scratch{block(), block(), block(), block(), block()}
}

// all is one place for each of so many trials.
func (s *scratch) all(q float64, n int) []float64 {
	fill(s.q[:n], q)
	return s.q[:n]
}

func (s *sharpening) newAside(in *space) *aside {
	block := func() []float64 { return in.numbers(blockSize) }
	a := &aside{uncut: block(), x1: block(), scale: block(), scratch: newScratch(in)}
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

// newRests has space for so many, of what a run needs.
func (s *sharpening) newRests(n int, in *space) rests {
	some := func(needed bool) []float64 {
		if !needed {
			return nil
		}
		return in.numbers(n)
	}
	return rests{some(true), some(true), some(!s.straight), some(true), some(s.own() > 0), some(s.scaled), some(!s.exact), some(!s.exact)}
}

func (r *rests) lists() [8]*[]float64 {
	return [8]*[]float64{&r.base, &r.gain, &r.bend, &r.rest, &r.beside, &r.scale, &r.drawn, &r.quotient}
}

// from are those from one to before another.
func (r *rests) from(low, high int) (some rests) {
	for k, list := range r.lists() {
		if *list != nil {
			*some.lists()[k] = (*list)[low:high]
		}
	}
	return some
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
	if s.scaled {
		copy(to.scale, w.aside.scale)
	}
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
	w.recordDrawn(values, to)
	return sound
}

// recordDrawn writes down c where x1 is as it was drawn, and by how much the quotient is more.
func (w *worker) recordDrawn(values []float64, to rests) {
	s := w.sharp
	if s.exact {
		return
	}
	copy(to.drawn, values)
	for i := range to.base {
		t := (w.aside.x1[i] - s.mean) / s.size
		by := to.gain[i] * t
		if !s.straight {
			by /= 1 + float64(to.bend[i]*t)
		}
		to.quotient[i] = to.base[i] + by
	}
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

// chances are those that c is not more than q in each trial, and that L is not more than linear,
// given all but x1. Where c is but nearly a quotient, what is drawn tells by how much that is wrong.
func (s *sharpening) chances(r rests, q, linear []float64, scratch *scratch) (ofOutput, ofLinear []float64) {
	a, b := scratch.a[:len(r.base)], scratch.b[:len(r.base)]
	var scale []float64
	if s.scaled {
		scale = r.scale
	}
	s.placesOfOutput(r, q, a)
	perSize, beside := 1/s.slope(), s.own() > 0
	for i, rest := range r.rest {
		b[i] = (linear[i] - s.y - rest) * perSize
	}
	if beside {
		for i, more := range r.beside {
			b[i] -= float64(more * perSize)
		}
	}
	s.kernel.BelowCut(a, scale)
	s.kernel.Below(b, scale)
	for i, gain := range r.gain {
		if gain < 0 {
			a[i] = 1 - a[i]
		}
	}
	if perSize < 0 {
		for i := range b {
			b[i] = 1 - b[i]
		}
	}
	if beside {
		most := s.linear.most[s.own()]
		for i, rest := range r.rest {
			if z := linear[i] - s.y - rest; z >= most {
				b[i] = 1
			} else if z < -most {
				b[i] = 0
			}
		}
	}
	if !s.exact {
		for i, c := range r.drawn {
			a[i] += one(c <= q[i]) - one(r.quotient[i] <= q[i])
		}
	}
	return a, b
}

// placesOfOutput are the x1 at which c is q.
func (s *sharpening) placesOfOutput(r rests, q, a []float64) {
	if s.straight {
		for i, base := range r.base {
			a[i] = (q[i] - base) / r.gain[i]
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

func one(is bool) float64 {
	if is {
		return 1
	}
	return 0
}
