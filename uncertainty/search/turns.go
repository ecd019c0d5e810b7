package search

import (
	"context"
	"iter"
	"math"

	"minim/uncertainty/parallel"
)

// A pass is searched by so many walks, each through a share of its own, whatever the number
// of processors. They take turns of a counted number of candidates, side by side; between
// two turns what they have found is put together in their order, and all go on by that. So
// the same candidates are tried on any machine, however slow or busy, and a search that may
// try no more than so many ends with the same routes.
const shares = 8

// A turn is short at first, when most is still to be found, and then longer.
const (
	firstTurn = 1 << 8
	mostTurn  = 1 << 14
)

// turns are those of one walk, which begins its next when asked to, and says then whether
// there is still something to do.
type turns struct {
	*walk
	next func() (struct{}, bool)
	stop func()
}

func (s *search) newTurns(share int) *turns {
	w := s.newWalk(share)
	next, stop := iter.Pull(func(yield func(struct{}) bool) {
		w.wait = func() bool { return yield(struct{}{}) }
		w.run()
	})
	return &turns{w, next, stop}
}

// runPass searches a pass turn by turn.
func (s *search) runPass(ctx context.Context) error {
	var walks []*turns
	for share := range shares {
		t := s.newTurns(share)
		defer t.stop()
		walks = append(walks, t)
	}
	for length := int64(firstTurn); len(walks) > 0; length = min(2*length, mostTurn) {
		if err := ctx.Err(); err != nil {
			return err
		}
		each := min(length, s.room()/int64(len(walks)))
		if each <= 0 {
			s.unexplored = math.Inf(1)
			for _, w := range walks {
				s.unexplored = min(s.unexplored, w.reached)
			}
			return errEnough
		}
		var err error
		if walks, err = s.oneTurn(walks, each); err != nil {
			return err
		}
	}
	return nil
}

// oneTurn gives each walk so many candidates to try, and returns those that have not ended.
func (s *search) oneTurn(walks []*turns, candidates int64) (left []*turns, err error) {
	goesOn := make([]bool, len(walks))
	parallel.Do(len(walks), len(walks), func(_, i int) {
		w := walks[i]
		w.known, w.new, w.counts, w.until = s.front, nil, counts{}, candidates
		_, goesOn[i] = w.next()
	})
	for i, w := range walks {
		if w.err != nil {
			return nil, w.err
		}
		s.counts.add(w.counts)
		for _, found := range w.new {
			if !s.front.beaten(found.merit) {
				s.front = s.front.add(found)
			}
		}
		if goesOn[i] {
			left = append(left, w)
		}
	}
	return left, nil
}

// room is how many candidates may still be tried.
func (s *search) room() int64 {
	return max(0, s.most-s.counts.work()) // assessing a route is counted when it is done
}
