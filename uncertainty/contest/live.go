package contest

import (
	"context"
	"errors"
	"fmt"
	"slices"

	"minim/uncertainty"
	"minim/uncertainty/parallel"
	"minim/uncertainty/route"
)

// Live is a comparison of all routes of a prep that is asked for again and again while something
// changes, as by a page whose sliders move. The models of the routes stay compiled, and the memory
// of their simulations is used again. It serves one goroutine at a time.
type Live struct {
	prep     *route.Prep
	settings uncertainty.Settings
	routes   []*route.Standing
}

// UnknownChangeError reports a change of an influence or a constant that no route has.
type UnknownChangeError struct{ Change uncertainty.Change }

func (e *UnknownChangeError) Error() string {
	return fmt.Sprintf("unknown: %s, %s", e.Change.Code, e.Change.Group.Name)
}

// NewLive compiles all routes of a prep, to be simulated with the same settings each time. The errors
// are those of [Compare].
func NewLive(p *route.Prep, s uncertainty.Settings) (*Live, error) {
	s = s.WithDefaults()
	if err := s.Check(); err != nil {
		return nil, err
	}
	l := &Live{settings: s}
	return l, l.Restate(p)
}

// Restate takes a prep in place of the one that there was, with all that follows from what is stated
// in it and in its kit, such as a mark or a class. Of routes whose models have the same structure what was
// compiled serves on. After an error, which is one of [Compare], nothing is taken.
func (l *Live) Restate(p *route.Prep) error {
	if _, err := p.Chosen(""); err != nil {
		return err
	}
	base := *p
	base.Known = nil
	routes := make([]*route.Standing, len(p.Routes))
	for i, r := range p.Routes {
		var err error
		if routes[i], err = base.Stand(r); err != nil {
			return err
		}
	}
	for i := range min(len(routes), len(l.routes)) {
		routes[i].Follow(l.routes[i])
	}
	l.prep, l.routes = &base, routes
	return nil
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
func (l *Live) Update(ctx context.Context, changes []uncertainty.Change, first func(*route.Comparison)) (*route.Comparison, error) {
	p := *l.prep
	p.Known = slices.Clone(changes)
	if err := l.assess(&p); err != nil {
		return nil, err
	}
	if first != nil {
		c, err := l.each(ctx, &p, func(s *route.Standing) (route.Result, error) { return s.ByLaw(ctx, l.settings.Coverage) })
		if err != nil {
			return nil, err
		}
		first(c)
	}
	c, err := l.each(ctx, &p, func(s *route.Standing) (route.Result, error) { return s.Simulate(ctx, l.settings) })
	if err != nil {
		return nil, err
	}
	strengths := make([]uncertainty.Quantity, len(l.routes))
	for i, s := range l.routes {
		if c.Results[i].Possible {
			strengths[i] = s.Strength()
		}
	}
	if err := complete(ctx, c, strengths); err != nil {
		return nil, err
	}
	return c, nil
}

// assess makes all models those of a prep with what is known otherwise, and propagates them.
func (l *Live) assess(p *route.Prep) error {
	found, faults := make([][]bool, len(l.routes)), make([]error, len(l.routes))
	parallel.Do(len(l.routes), len(l.routes), func(_, i int) {
		found[i], faults[i] = l.routes[i].Assess(p, l.settings.Coverage)
	})
	if err := errors.Join(faults...); err != nil {
		return err
	}
	for k := range p.Known {
		if !slices.ContainsFunc(found, func(of []bool) bool { return of[k] }) {
			return &UnknownChangeError{p.Known[k]}
		}
	}
	return nil
}

// each is the comparison of what is made of each route that can be done.
func (l *Live) each(ctx context.Context, p *route.Prep, of func(*route.Standing) (route.Result, error)) (*route.Comparison, error) {
	c := &route.Comparison{Prep: p, Settings: l.settings, Results: make([]route.Result, len(l.routes))}
	faults := make([]error, len(l.routes))
	parallel.Do(len(l.routes), len(l.routes), func(_, i int) {
		s := l.routes[i]
		if c.Results[i] = s.Result(); c.Results[i].Possible && ctx.Err() == nil {
			c.Results[i], faults[i] = of(s)
		}
	})
	if err := errors.Join(append(faults, ctx.Err())...); err != nil {
		return nil, err
	}
	c.SumUp()
	return c, nil
}
