package uncertainty

import (
	"encoding/binary"
	"hash/fnv"
	"math"
	"math/bits"

	"minim/uncertainty/random"
)

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
	return bits.RotateLeft64(random.Mix(h.Sum64()), 17)
}

// apart is a stream that has nothing in common with the one of the key.
func apart(key uint64) uint64 { return random.Mix(key + 1) }
