package search

import (
	"minim/equipment"
	"minim/uncertainty/route"
)

// pieceUse is a use of a measure of which there are several pieces alike, with its relative
// contributions to what each piece is wrong by.
type pieceUse struct {
	measure *equipment.Measure
	made    bool
	at      int // in the list of pieces of a chain
	parts   []part
}

// pieceUses are those of a route, from its beginning on.
func (w *walk) pieceUses(s *source) (uses []pieceUse) {
	add := func(m *measurement, made bool, at int, by float64) {
		if m.step.Measure == nil || m.step.Measure.Count <= 1 {
			return
		}
		u := pieceUse{measure: m.step.Measure, made: made, at: at}
		for _, p := range m.shared {
			if w.keys.ofPieces[p.key] {
				u.parts = append(u.parts, part{p.key, p.relative * by})
			}
		}
		uses = append(uses, u)
	}
	if s != nil && s.by != nil {
		add(s.by, false, 2*len(w.ways), 1)
	}
	for i := len(w.ways) - 1; i >= 0; i-- {
		m, by := w.ways[i], 1.0
		switch {
		case m.dissolves():
			by = w.solvent
		case m.measured:
			by = m.made.mean / (m.taken.mean + m.made.mean)
		}
		if m.taken != nil {
			add(m.taken, false, 2*i, by)
		}
		add(m.made, true, 2*i+1, -by)
	}
	return uses
}

// spread gives the uses of pieces alike to them so that the errors of the pieces bring the
// least variance, and says by how much less that is than with one piece of each. No piece is
// taken with and filled as well. Of ways that are as good it takes the first, which uses the
// fewest pieces at the beginning.
func (w *walk) spread(s *source) (less float64, pieces []int) {
	uses := w.pieceUses(s)
	if len(uses) < 2 {
		return 0, nil
	}
	pieces = make([]int, 2*len(w.ways)+1)
	for i := range uses {
		if pieces[uses[i].at] > 0 {
			continue // of a measure that is done
		}
		var own []pieceUse
		for _, u := range uses {
			if u.measure == uses[i].measure {
				own = append(own, u)
			}
		}
		best, of := leastSpread(own)
		less += squareOf(own, make([]int, len(own)), 0) - best
		for k, u := range own {
			pieces[u.at] = of[k] + 1
		}
	}
	return less, pieces
}

// leastSpread tries all ways to give the uses of one measure to its pieces, which are numbered
// as they come up.
func leastSpread(uses []pieceUse) (least float64, best []int) {
	of, found := make([]int, len(uses)), false
	var give func(at, pieces int)
	give = func(at, pieces int) {
		if at == len(uses) {
			sum := 0.0
			for k := range pieces {
				sum += squareOf(uses, of, k)
			}
			if !found || sum < least*(1-slack) {
				found, least, best = true, sum, append(best[:0], of...)
			}
			return
		}
		for k := range min(pieces+1, uses[at].measure.Count) {
			mixed := false
			for i := range at {
				mixed = mixed || of[i] == k && uses[i].made != uses[at].made
			}
			if !mixed {
				of[at] = k
				give(at+1, max(pieces, k+1))
			}
		}
	}
	give(0, 0)
	return least, best
}

// squareOf is the relative variance that one piece brings by all uses that it has.
func squareOf(uses []pieceUse, of []int, piece int) (variance float64) {
	var sums []part
	for i, u := range uses {
		if of[i] == piece {
			sums = append(sums, u.parts...)
		}
	}
	for _, p := range (factor{shared: sums}).tidied().shared {
		variance += float64(p.relative * p.relative)
	}
	return variance
}

// withPieces says which pieces the steps of a way use, where there are several.
func (c *chain) withPieces(way int, steps []route.Step) []route.Step {
	if c.pieces == nil {
		return steps
	}
	for i := range steps {
		if piece := c.pieces[2*way+i+2-len(steps)]; piece > 1 {
			steps[i].Piece = piece
		}
	}
	return steps
}
