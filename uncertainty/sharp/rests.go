package sharp

// Rests are what a sharpened run keeps of each trial: of c as base + gain t/(1 + bend t), t being
// x1 less its mean in units of its size, and of L without the part of x1: rest, and besides it
// what is cut off together with that part. Where c is not exactly so, it is drawn, and quotient
// what would be in its place.
type Rests struct{ base, gain, bend, rest, beside, scale, drawn, quotient []float64 }

// NewRests has space for so many, of what a run needs.
func (s *Sharpening) NewRests(n int, in *Space) Rests {
	space := func(needed bool) []float64 {
		if !needed {
			return nil
		}
		return in.Numbers(n)
	}
	return Rests{space(true), space(true), space(!s.Straight), space(true), space(s.own() > 0), space(s.Scaled), space(!s.Exact), space(!s.Exact)}
}

func (r *Rests) lists() [8]*[]float64 {
	return [8]*[]float64{&r.base, &r.gain, &r.bend, &r.rest, &r.beside, &r.scale, &r.drawn, &r.quotient}
}

// From are those from one to before another.
func (r *Rests) From(low, high int) (some Rests) {
	for k, list := range r.lists() {
		if *list != nil {
			*some.lists()[k] = (*list)[low:high]
		}
	}
	return some
}
