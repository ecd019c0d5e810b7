package route

import (
	"context"
	"slices"

	"minim/equipment"
	"minim/report/words/note"
	"minim/uncertainty"
)

// Standing is a route whose model stands, to be evaluated again and again while what is known of its influences
// changes.
type Standing struct {
	c      *compiler // nil where the route cannot be done, whatever is known
	notes  equipment.Notes
	ready  *uncertainty.Ready
	result Result // by the law of propagation, or why there is none
}

// Stand compiles a route.
func (p *Prep) Stand(r *Route) (*Standing, error) {
	c, result, err := p.compiled(r)
	if c == nil {
		return &Standing{result: result}, err
	}
	return &Standing{c: c, notes: clipped(c.notes), ready: c.model.Ready(c.strength)}, nil
}

// Follow takes the place of another one, of which what was compiled serves on where the model has the same
// structure; that one is of no use any more.
func (s *Standing) Follow(before *Standing) {
	if s.c != nil && before.c != nil {
		s.ready = before.ready
		s.ready.Take(s.c.model, s.c.strength)
	}
}

// clipped are notes to which others may be added without touching these.
func clipped(n equipment.Notes) equipment.Notes {
	for _, list := range []*[]note.Note{&n.Warnings, &n.Assumed, &n.FromMemory, &n.NotCounted} {
		*list = slices.Clip(*list)
	}
	return n
}

// Assess makes the model that of the same prep with what is known otherwise ([Prep.Known]), and propagates it.
// It reports what of that the route has anything of.
func (s *Standing) Assess(p *Prep, coverage float64) (found []bool, err error) {
	if s.c == nil {
		return make([]bool, len(p.Known)), nil
	}
	if found, err = s.ready.Change(p.Known); err != nil {
		return nil, err
	}
	before := s.result
	s.c.prep, s.c.notes = p, s.notes
	if s.result, _, err = s.c.assess(coverage); err == nil && s.result.Possible {
		if s.result.Intended == before.Intended { // so that nothing changed of what misreading goes by
			s.result.IfMisread = before.IfMisread
		}
		err = p.Misread(&s.result) // once for both of what follows
	}
	return found, err
}

// Result of the assessment, to be added to.
func (s *Standing) Result() Result {
	r := s.result
	r.Notes, r.Inside = clipped(r.Notes), slices.Clone(r.Inside)
	return r
}

// Simulate evaluates a route that was assessed as possible.
func (s *Standing) Simulate(ctx context.Context, settings uncertainty.Settings) (Result, error) {
	return s.c.evaluate(ctx, s.Result(), s.ready, settings)
}

// ByLaw is what is known of it before it is simulated: see [uncertainty.Ready.ByLaw].
func (s *Standing) ByLaw(ctx context.Context, coverage float64) (Result, error) {
	r := s.Result()
	s.c.warnRefused(&r.Notes)
	var err error
	if r.MonteCarlo, err = s.ready.ByLaw(r.Analytic); err == nil {
		err = r.conclude(ctx, s.c, coverage)
	}
	if err != nil {
		r, _, err = orWithout(r, err)
	}
	return r, err
}

// Strength is that of the wanted solution.
func (s *Standing) Strength() uncertainty.Quantity { return s.ready.Quantity() }
