package route

import (
	"context"
	"errors"
	"fmt"
	"slices"

	"minim/equipment"
	"minim/report/words/note"
	"minim/uncertainty"
	"minim/uncertainty/parallel"
)

// Live is a comparison of all routes of a prep that is asked for again and again while something
// changes, as by a page whose sliders move. The models of the routes stay compiled, and the memory
// of their simulations is used again. It serves one goroutine at a time.
type Live struct {
	prep     *Prep
	settings uncertainty.Settings
	routes   []liveRoute
}

// liveRoute is a route whose model stands.
type liveRoute struct {
	*compiler // nil where the route cannot be done, whatever is known
	notes     equipment.Notes
	ready     *uncertainty.Ready
	result    Result // by the law of propagation, or why there is none
}

// UnknownChangeError reports a change of an influence or a constant that no route has.
type UnknownChangeError struct{ Change uncertainty.Change }

func (e *UnknownChangeError) Error() string {
	return fmt.Sprintf("no route has %q of %q", e.Change.Code, e.Change.Group.Name)
}

// Live compiles all routes of a prep, to be simulated with the same settings each time. The errors
// are those of [Compare].
func (p *Prep) Live(s uncertainty.Settings) (*Live, error) {
	s = s.WithDefaults()
	if err := s.Check(); err != nil {
		return nil, err
	}
	if _, err := p.chosen(""); err != nil {
		return nil, err
	}
	l := &Live{settings: s}
	return l, l.Restate(p)
}

// Restate takes a prep in place of the one that there was, with all that follows from what is stated
// in it and in its kit. Of routes whose models have the same structure what was compiled serves on.
// After an error, which is one of [Compare], nothing is taken.
func (l *Live) Restate(p *Prep) error {
	if _, err := p.chosen(""); err != nil {
		return err
	}
	base := *p
	base.Known = nil
	p = &base
	routes := make([]liveRoute, len(p.Routes))
	for i, r := range p.Routes {
		var err error
		if routes[i], err = p.live(r); err != nil {
			return err
		}
	}
	for i := range routes {
		now := &routes[i]
		if now.compiler == nil {
			continue
		}
		if i < len(l.routes) && l.routes[i].ready != nil {
			now.ready = l.routes[i].ready
			now.ready.Take(now.model, now.strength)
		} else {
			now.ready = now.model.Ready(now.strength)
		}
	}
	l.prep, l.routes = p, routes
	return nil
}

// live compiles a route.
func (p *Prep) live(r *Route) (liveRoute, error) {
	c, result, err := p.compiled(r)
	if c == nil {
		return liveRoute{result: result}, err
	}
	return liveRoute{compiler: c, notes: clipped(c.notes)}, nil
}

// clipped are notes to which others may be added without touching these.
func clipped(n equipment.Notes) equipment.Notes {
	for _, list := range []*[]note.Note{&n.Warnings, &n.Assumed, &n.FromMemory, &n.NotCounted} {
		*list = slices.Clip(*list)
	}
	return n
}

// Update returns what [Compare] gives for the prep with these changes in place of those of its own
// ([Prep.Known]), to the last bit; each time all are to be given, and what is not named is as the prep
// states it. Influences that routes share change in all of them.
//
// Where first is not nil it is called at once, before anything is simulated, with a comparison by the laws
// of the linear parts of the models, as each MonteCarlo of a result says
// ([uncertainty.MonteCarlo.ByLaw]). That has neither a second order nor a ladder, no chance of coming
// closer and nothing that is elsewhere. What was returned before stays as it is.
//
// Once the context is done, Update returns its error within some 20 ms, and the next one is not
// concerned. Other errors are a *[uncertainty.StructureError] where a model would have to be made anew (as
// [Live.Restate] does of another prep), an *[UnknownChangeError], and those of [Compare].
func (l *Live) Update(ctx context.Context, changes []uncertainty.Change, first func(*Comparison)) (*Comparison, error) {
	p := *l.prep
	p.Known = slices.Clone(changes)
	if err := l.change(&p); err != nil {
		return nil, err
	}
	if first != nil {
		c, err := l.each(ctx, &p, func(s *liveRoute, r Result) (Result, error) { return s.byLaw(ctx, r, l.settings.Coverage) })
		if err != nil {
			return nil, err
		}
		first(c)
	}
	c, err := l.each(ctx, &p, func(s *liveRoute, r Result) (Result, error) { return s.evaluate(ctx, r, s.ready, l.settings) })
	if err != nil {
		return nil, err
	}
	strengths := make([]uncertainty.Quantity, len(l.routes))
	for i := range l.routes {
		if c.Results[i].Possible {
			strengths[i] = l.routes[i].ready.Quantity()
		}
	}
	if err := c.complete(ctx, strengths); err != nil {
		return nil, err
	}
	return c, nil
}

// change makes all models those of a prep with what is known otherwise, and assesses them.
func (l *Live) change(p *Prep) error {
	any := make([]bool, len(p.Known))
	for i := range l.routes {
		s := &l.routes[i]
		if s.ready == nil {
			continue
		}
		found, err := s.ready.Change(p.Known)
		if err != nil {
			return err
		}
		for k := range found {
			any[k] = any[k] || found[k]
		}
		s.prep, s.compiler.notes = p, s.notes
	}
	if k := slices.Index(any, false); k >= 0 {
		return &UnknownChangeError{p.Known[k]}
	}
	faults := make([]error, len(l.routes))
	parallel.Do(len(l.routes), len(l.routes), func(_, i int) {
		if s := &l.routes[i]; s.ready != nil {
			s.result, _, faults[i] = s.assess(l.settings.Coverage)
		}
	})
	return errors.Join(faults...)
}

// each is the comparison of what is made of each route that can be done.
func (l *Live) each(ctx context.Context, p *Prep, of func(*liveRoute, Result) (Result, error)) (*Comparison, error) {
	c := &Comparison{Prep: p, Settings: l.settings, Results: make([]Result, len(l.routes))}
	faults := make([]error, len(l.routes))
	parallel.Do(len(l.routes), len(l.routes), func(_, i int) {
		s := &l.routes[i]
		r := s.result
		if r.Possible && ctx.Err() == nil {
			r.Notes, r.Inside = clipped(r.Notes), slices.Clone(r.Inside)
			r, faults[i] = of(s, r)
		}
		c.Results[i] = r
	})
	if err := errors.Join(append(faults, ctx.Err())...); err != nil {
		return nil, err
	}
	c.sumUp()
	return c, nil
}

// byLaw is what is known of a route before it is simulated.
func (s *liveRoute) byLaw(ctx context.Context, r Result, coverage float64) (Result, error) {
	s.warnRefused(&r.Notes)
	var err error
	if r.MonteCarlo, err = s.ready.ByLaw(r.Analytic); err == nil {
		err = r.conclude(ctx, s.compiler, coverage)
	}
	if err == nil {
		return r, nil
	}
	r, _, err = orWithout(r, err)
	return r, err
}
