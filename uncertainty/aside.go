package uncertainty

import (
	"minim/uncertainty/random"
	"minim/uncertainty/sharp"
)

// aside is what a worker sets aside of a block for a sharpened run.
type aside struct {
	block *sharp.Block
	uncut []float64
}

func newAside(s *sharp.Sharpening, in *sharp.Space) *aside {
	return &aside{s.NewBlock(in), in.Numbers(random.BlockSize)}
}

// setAside adds the draws of an influence to its part of L, as they are before anything is cut, or turned
// into a posterior.
func (w *worker) setAside(st *step, dst []float64) {
	s, i := w.sharp, st.influence
	switch {
	case i < 0:
	case i == s.Smooth:
		copy(w.aside.block.X1, dst)
		if s.Scaled {
			copy(w.aside.block.Scale, w.slot[st.draw.scale])
		}
	case s.Linear.Slopes[i] != 0:
		if st.draw.cut > 0 || st.draw.told != nil {
			dst = w.aside.uncut
		}
		addScaled(w.aside.block.Parts[s.Linear.Part[i]], dst, st.mean, s.Linear.Slopes[i])
	}
}

// asideOf is what was set aside of the last block, of which the values of the output are given.
func (w *worker) asideOf(values []float64) *sharp.Block {
	b := w.aside.block
	b.Values = values
	for k, o := range w.outAt {
		switch {
		case !o.isConstant():
			b.At[k] = w.slot[o.slot]
		case b.At[k] == nil:
			b.At[k] = make([]float64, random.BlockSize)
			fill(b.At[k], o.constant)
		}
	}
	return b
}
