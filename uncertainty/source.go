package uncertainty

import (
	"encoding/binary"
	"hash/fnv"
	"math"
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

// streamKey folds what tells an influence from others of the model into 64 bits: of
// an owner with a kind the number of its name, so that no draw depends on a name.
func (m *Model) streamKey(in *Influence) uint64 {
	id, h := in.Identity(), fnv.New64a()
	o := id.owner
	if o.Kind == "" {
		h.Write([]byte(o.Name))
	}
	h.Write([]byte{0})
	h.Write([]byte(id.code))
	if o.Kind != "" || id.at != 0 {
		h.Write(append([]byte{0}, o.Kind...))
		for _, n := range []uint64{m.number(o.Kind, o.Name), uint64(o.Step), uint64(o.Piece), m.number(Instrument, o.With), math.Float64bits(id.at)} {
			h.Write(binary.BigEndian.AppendUint64(nil, n))
		}
	}
	return bits.RotateLeft64(mix(h.Sum64()), 17)
}

// apart is a stream that has nothing in common with the one of the key.
func apart(key uint64) uint64 { return mix(key + 1) }
