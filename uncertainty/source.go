package uncertainty

import (
	"hash/fnv"
	"math/bits"
)

// source is the random stream of one influence in one block of trials. It is
// keyed by (seed, influence, block), so the draws of an influence depend on
// nothing else: not on the model it stands in, nor on the order or the number
// of processors.
//
// The generator is SplitMix64 (Steele, Lea and Flood, Fast splittable
// pseudorandom number generators, OOPSLA 2014).
type source struct{ state uint64 }

// newSource returns a source that is of no use before it is keyed.
func newSource() *source { return new(source) }

// key starts the stream of one influence in one block.
func (s *source) key(seed, influence uint64, block int) {
	s.state = mix(mix(mix(seed)^influence) ^ uint64(block))
}

// next returns 64 random bits and the state that follows. Loops keep the state
// in a variable of their own, which stands in a register.
func next(state uint64) (bits, after uint64) {
	state += 0x9e3779b97f4a7c15
	return mix(state), state
}

// mix is the output function of SplitMix64.
func mix(z uint64) uint64 {
	z = (z ^ z>>30) * 0xbf58476d1ce4e5b9
	z = (z ^ z>>27) * 0x94d049bb133111eb
	return z ^ z>>31
}

// uniform makes a value in the open interval (0, 1) of random bits.
func uniform(bits uint64) float64 {
	// 52 bits: with 53 the half would be rounded away, at the top up to 1.
	return (float64(int64(bits>>12)) + 0.5) * 0x1p-52
}

// halves makes two independent values in the open interval (0, 1), each of
// half of the bits: their resolution is 2^-32.
func halves(bits uint64) (u, v float64) {
	return (float64(int64(bits>>32)) + 0.5) * 0x1p-32, (float64(uint32(bits)) + 0.5) * 0x1p-32
}

// streamKey folds the owner and the name of an influence into 64 bits.
func (in *Influence) streamKey() uint64 {
	h := fnv.New64a()
	h.Write([]byte(in.Owner))
	h.Write([]byte{0})
	h.Write([]byte(in.Name))
	return bits.RotateLeft64(mix(h.Sum64()), 17)
}
