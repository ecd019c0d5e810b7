package uncertainty

// sharpTrials keeps the rests of all trials of a sharpened run, and sums over them.
type sharpTrials struct {
	*sharpening
	rests  rests
	n      int  // trials that are summed up
	broken bool // x1 was not as it must be in a trial
	// Of A - w B at each place the sum and the sum of squares: of all trials, and of the blocks
	// that were taken last.
	sums   []squares
	blocks [][]squares
	bad    []bool
	space  *space
}

// squares are a sum and a sum of squares.
type squares struct{ sum, square float64 }

func (s *squares) add(b squares) {
	s.sum += b.sum
	s.square += b.square
}

func newSharpTrials(s *sharpening, in *space) *sharpTrials {
	return &sharpTrials{sharpening: s, sums: in.sums(len(s.q)), space: in}
}

// extend makes space for so many trials more, unless there are too many.
func (s *sharpTrials) extend(trials int) {
	s.broken = s.broken || s.n+trials > mostSharpened
	if s.broken {
		s.rests = rests{}
		return
	}
	all := s.newRests(s.n+trials, s.space)
	for k, old := range s.rests.lists() {
		copy(*all.lists()[k], *old)
	}
	s.rests = all
	s.blocks, s.bad = make([][]squares, blocksFor(trials)), make([]bool, blocksFor(trials))
	for b := range s.blocks {
		s.blocks[b] = s.space.sums(len(s.q))
	}
}

// take sums up the block that a worker has run, number b of those that were made space for.
func (s *sharpTrials) take(w *worker, values []float64, b int) {
	if s.broken {
		return
	}
	from := s.n + b*blockSize
	r := s.rests.from(from, from+len(values))
	if s.bad[b] = !w.record(values, r); s.bad[b] {
		return
	}
	for k, q := range s.q {
		s.blocks[b][k] = s.sumUp(r, w.aside.scratch, q)
	}
}

// sumUp is over A - w B at a place.
func (s *sharpTrials) sumUp(r rests, scratch *scratch, q float64) (sum squares) {
	w := s.weightAt(s.linearBelow(q))
	places := scratch.all(q, len(r.base))
	a, b := s.chances(r, places, places, scratch)
	for i, x := range a {
		d := x - float64(w*b[i])
		sum.sum += d
		sum.square += float64(d * d)
	}
	return sum
}

// addUp adds the sums of the blocks, of so many trials, in their order.
func (s *sharpTrials) addUp(trials int) {
	s.n += trials
	for b, bad := range s.bad {
		if bad {
			s.broken = true
		}
		for k, sum := range s.blocks[b] {
			s.sums[k].add(sum)
		}
	}
}
