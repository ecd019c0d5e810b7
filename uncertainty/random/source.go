package random

// Source is the random stream of one influence in one block of trials. It is
// keyed by (seed, influence, block), so the draws of an influence depend on
// nothing else: not on the model it stands in, nor on the order or the number
// of processors.
//
// The generator is SplitMix64 (Steele, Lea and Flood, Fast splittable
// pseudorandom number generators, OOPSLA 2014).
type Source struct{ State uint64 }

// Key starts the stream of one influence in one block.
func (s *Source) Key(seed, influence uint64, block int) {
	s.State = Mix(Mix(Mix(seed)^influence) ^ uint64(block))
}

// Next returns 64 random bits and the state that follows. Loops keep the state
// in a variable of their own, which stands in a register.
func Next(state uint64) (bits, after uint64) {
	state += 0x9e3779b97f4a7c15
	return Mix(state), state
}

// Mix is the output function of SplitMix64.
func Mix(z uint64) uint64 {
	z = (z ^ z>>30) * 0xbf58476d1ce4e5b9
	z = (z ^ z>>27) * 0x94d049bb133111eb
	return z ^ z>>31
}

// Uniform makes a value in the open interval (0, 1) of random bits.
func Uniform(bits uint64) float64 {
	// 52 bits: with 53 the half would be rounded away, at the top up to 1.
	return (float64(int64(bits>>12)) + 0.5) * 0x1p-52
}
