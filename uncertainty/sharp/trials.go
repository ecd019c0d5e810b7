package sharp

import (
	"minim/uncertainty/random"
	"minim/uncertainty/statistics"
)

// Trials keeps the rests of all trials of a sharpened run, and sums over them.
type Trials struct {
	*Sharpening
	rests  Rests
	n      int  // trials that are summed up
	broken bool // x1 was not as it must be in a trial
	// Of A - w B at each place the sum and the sum of squares: of all trials, and of the blocks
	// that were taken last.
	sums   []statistics.Squares
	blocks [][]statistics.Squares
	bad    []bool
	space  *Space
}

// MostTrials is the greatest number of trials that are sharpened: with more the order of the
// trials says enough.
const MostTrials = 60_000

// NewTrials has none yet.
func NewTrials(s *Sharpening, in *Space) *Trials {
	return &Trials{Sharpening: s, sums: in.sums(len(s.q)), space: in}
}

// Extend makes space for so many trials more, unless there are too many.
func (s *Trials) Extend(trials int) {
	s.broken = s.broken || s.n+trials > MostTrials
	if s.broken {
		s.rests = Rests{}
		return
	}
	all := s.NewRests(s.n+trials, s.space)
	for k, old := range s.rests.lists() {
		copy(*all.lists()[k], *old)
	}
	s.rests = all
	s.blocks, s.bad = make([][]statistics.Squares, random.Blocks(trials)), make([]bool, random.Blocks(trials))
	for b := range s.blocks {
		s.blocks[b] = s.space.sums(len(s.q))
	}
}

// Take sums up a block, number b of those that were made space for.
func (s *Trials) Take(block *Block, b int) {
	if s.broken {
		return
	}
	from := s.n + b*random.BlockSize
	r := s.rests.From(from, from+len(block.Values))
	if s.bad[b] = !s.Record(block, r); s.bad[b] {
		return
	}
	for k, q := range s.q {
		s.blocks[b][k] = s.sumUp(r, block.scratch, q)
	}
}

// sumUp is over A - w B at a place.
func (s *Trials) sumUp(r Rests, scratch *scratch, q float64) statistics.Squares {
	w := s.weightAt(s.linearBelow(q))
	a, b := s.chancesAt(r, q, scratch)
	total, squares := 0.0, 0.0 // in registers
	for i, x := range a {
		d := x - float64(w*b[i])
		total += d
		squares += float64(d * d)
	}
	return statistics.Squares{Sum: total, Square: squares}
}

// AddUp adds the sums of the blocks, of so many trials, in their order.
func (s *Trials) AddUp(trials int) {
	s.n += trials
	for b, bad := range s.bad {
		if bad {
			s.broken = true
		}
		for k, sum := range s.blocks[b] {
			s.sums[k].Add(sum)
		}
	}
}
