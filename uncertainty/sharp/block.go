package sharp

import (
	"math"

	"minim/uncertainty/portable"
	"minim/uncertainty/random"
)

// Block is what a sharpened run needs of a block of trials. Whoever draws it fills it in.
type Block struct {
	// Values of the output, and At those with x1 at its points.
	Values []float64
	At     [Points][]float64
	// Parts of L without x1: see [Linear]. They are added up.
	Parts [][]float64
	// X1 and Scale as they were drawn.
	X1, Scale []float64
	scratch   *scratch
}

// NewBlock has space for the parts, for x1 and its scale.
func (s *Sharpening) NewBlock(in *Space) *Block {
	space := func() []float64 { return in.Numbers(random.BlockSize) }
	b := &Block{X1: space(), Scale: space(), scratch: newScratch(in)}
	for range s.Linear.Most {
		b.Parts = append(b.Parts, space())
	}
	return b
}

// Clear empties the parts.
func (b *Block) Clear() {
	for _, p := range b.Parts {
		clear(p)
	}
}

// Record writes down what counts of a block, and reports whether it is as it must be: where c is
// not straight in x1 it rises or falls all the way that this can go.
func (s *Sharpening) Record(block *Block, to Rests) bool {
	n := len(to.base)
	copy(to.rest, block.Parts[0])
	for k := 1; k < len(block.Parts); k++ {
		part := block.Parts[k][:n]
		if k == s.own() {
			copy(to.beside, part)
			continue
		}
		for i, x := range part {
			to.rest[i] += s.Linear.counted(k, x)
		}
	}
	if s.Scaled {
		copy(to.scale, block.Scale)
	}
	if b := s.bend(); b != 0 { // what takes as long for each place is done once
		for i, x := range to.rest {
			to.rest[i] = portable.Exp(-b * x)
		}
	}
	low, mid, high := s.points(block)
	sign := math.Copysign(1, s.Linear.Slopes[s.Smooth])
	sound := true
	for i := range to.base {
		below, above := mid[i]-low[i], high[i]-mid[i]
		sum := below + above
		to.base[i], to.gain[i] = mid[i], float64(sum/2)
		sound = sound && !math.IsNaN(sum)
		if !s.Straight {
			to.bend[i] = (below - above) / sum
			to.gain[i] = 2 * (below / sum) * above
			sound = sound && below*sign > 0 && above*sign > 0 && math.Abs(to.bend[i])*s.Kernel.Reach < 1
		}
	}
	s.recordDrawn(block, to)
	return sound
}

// points are the outputs with x1 at its points, raised to the power.
func (s *Sharpening) points(block *Block) (low, mid, high []float64) {
	n := len(block.Values)
	if s.power() == 0 {
		return block.At[0][:n], block.At[1][:n], block.At[2][:n]
	}
	low, mid, high = block.scratch.a[:n], block.scratch.b[:n], block.scratch.sum[:n]
	for k, raised := range [Points][]float64{low, mid, high} {
		s.raise(raised, block.At[k][:n])
	}
	return low, mid, high
}

// recordDrawn writes down c where x1 is as it was drawn, and by how much the quotient is more.
func (s *Sharpening) recordDrawn(block *Block, to Rests) {
	if s.Exact {
		return
	}
	if copy(to.drawn, block.Values); s.power() != 0 {
		s.raise(to.drawn, block.Values[:len(to.drawn)])
	}
	for i := range to.base {
		t := (block.X1[i] - s.Mean) / s.Size
		by := to.gain[i] * t
		if !s.Straight {
			by /= 1 + float64(to.bend[i]*t)
		}
		to.quotient[i] = to.base[i] + by
	}
}

// Off is how far, in units of the size of L or of how far x1 moves it, an output may be from
// what it is taken for; not a number where the output is none.
func (s *Sharpening) Off(r Rests) (off float64) {
	least := s.size()
	if power := s.power(); power != 0 {
		least = math.Abs(power) * s.Linear.Scale
	}
	for i, c := range r.drawn {
		size := max(least, math.Abs(c-r.base[i]))
		off = max(off, math.Abs(r.quotient[i]-c)/size) // NaN stays
	}
	return off
}
