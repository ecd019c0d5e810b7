package plan

import (
	"cmp"
	"context"
	"math"
	"slices"

	"minim/equipment"
	"minim/equipment/quantity"
	"minim/report/words/note"
	"minim/uncertainty"
	"minim/uncertainty/contest"
	"minim/uncertainty/route"
	"minim/uncertainty/search"
)

// Plan is what a search has found.
type Plan struct {
	// Comparison holds the best route with each number of measurements, simulated. Its
	// verdict names the one that is recommended. Its prep has these routes in place of
	// those of its file.
	*route.Comparison
	// Front are the routes that no other beats and those with rounder readings, by number of operations and
	// then by left over, that were simulated: of the former all, but with [Options.Shown].
	Front []Member
	// Own are the routes of the prep itself, simulated.
	Own []route.Result
	// Options of the search.
	Options Options
	// NotSearched says what was left out. CutShort: some of it since enough was tried, so
	// that a better route may exist, which leaves over Untried or more, in mL, if it is by volume and none of those found beats it.
	NotSearched []note.Note
	CutShort    bool
	Untried     float64
	// Candidates is the number of routes by volume that the rules allow.
	Candidates float64
	// Helps are changes that would bring a route nearer to the tolerance, the most
	// helpful first. It is empty where one is met.
	Helps []Help
}

// Member is a route of the front.
type Member struct {
	route.Result
	// Group is the place in Plan.Front of the route that stands for it and its
	// near-equals.
	Group int
}

// Search recommends one of the best routes with each number of measurements that a bench allows, by
// the preference of the options: see package policy. It chooses among those that
// [search.Bench.Find] finds and rounder ones around them. Where there is none, its error is a
// [NoRouteError]; where a route is tuned that is not there or cannot be done, that of the prep.
func Search(ctx context.Context, p *route.Prep, o Options) (*Plan, error) {
	if err := p.MayBeMade(); err != nil {
		return nil, err
	}
	o.Tried = cmp.Or(o.Tried, new(int64))
	limits := o.Search()
	p = limits.Limited(p)
	if o.From != "" {
		return searchFrom(ctx, p, o)
	}
	if limits.Strongest(p) < p.ConcentrationOf(p.Target.Value) {
		return nil, noRoute(p, o, nil)
	}
	b, err := search.NewBench(p, limits)
	if err != nil {
		return nil, err
	}
	if !b.Holds(p.Volume) {
		return nil, noRoute(p, o, nil)
	}
	plan := &Plan{Options: o}
	list, err := b.Find(ctx)
	if err != nil {
		return nil, err
	}
	plan.NotSearched, plan.CutShort, plan.Untried, plan.Candidates = b.NotSearched, b.CutShort, b.Untried, b.Candidates()
	if len(list) == 0 {
		return nil, noRoute(p, o, b.NotSearched)
	}
	if err := plan.simulate(ctx, p, list); err != nil {
		return nil, err
	}
	if plan.Own, err = own(ctx, p, o.Settings); err != nil {
		return nil, err
	}
	if len(p.Tolerances) > 0 && !plan.Verdict.Meets {
		plan.Helps, err = helps(ctx, p, o, plan.chosen())
	}
	return plan, err
}

// searchFrom tunes one route of a prep.
func searchFrom(ctx context.Context, p *route.Prep, o Options) (*Plan, error) {
	r, err := p.Route(o.From)
	if err != nil {
		return nil, err
	}
	list, err := withAmended(ctx, p, r, o)
	if err != nil {
		return nil, err
	}
	plan := &Plan{Options: o}
	if err := plan.simulate(ctx, p, list); err != nil {
		return nil, err
	}
	plan.Own, err = own(ctx, p, o.Settings)
	return plan, err
}

// withAmended is a route, and where that is expected elsewhere the one with the reading that brings it to the
// target, if there is one: assessed, since their names and readings are to change.
func withAmended(ctx context.Context, p *route.Prep, r *route.Route, o Options) ([]route.Result, error) {
	own := r.With(0, r.Steps[0].Amount)
	c, err := route.Evaluate(ctx, p, []*route.Route{own}, Fewer(o.Settings))
	if err != nil {
		return nil, err
	}
	if found := &c.Results[0]; !found.Possible {
		return nil, &route.CannotError{Name: r.Name, Reason: found.Reason, Forbidden: found.MayNotBeUsed()}
	}
	routes := []*route.Route{own}
	if err := contest.Amend(ctx, c); err != nil {
		return nil, err
	}
	if e := c.Results[0].Elsewhere; e != nil && e.Step > 0 {
		routes = append(routes, r.With(e.Step-1, e.Amended.Amount))
	}
	var list []route.Result
	for _, r := range routes {
		assessed, err := p.Assess(r, o.Search().Coverage)
		if err != nil {
			return nil, err
		}
		if assessed.Possible {
			list = append(list, assessed)
		}
	}
	return list, nil
}

// own evaluates the routes of the prep itself.
func own(ctx context.Context, p *route.Prep, s uncertainty.Settings) ([]route.Result, error) {
	c, err := route.Evaluate(ctx, p, p.Routes, s)
	if err != nil {
		return nil, err
	}
	return c.Results, contest.Amend(ctx, c)
}

// simulate chooses of the routes that were found, rounds their readings, and groups them.
func (p *Plan) simulate(ctx context.Context, prep *route.Prep, list []route.Result) error {
	l, err := newPool(ctx, prep, list, p.Options)
	if err != nil {
		return err
	}
	return p.chosenOf(ctx, l)
}

// chosenOf takes what is chosen of a pool.
func (p *Plan) chosenOf(ctx context.Context, l *pool) error {
	places, use, err := l.settle(ctx)
	if err != nil {
		return err
	}
	if use < 0 {
		return &NoRouteError{Reason: note.Of("all-could-be-nothing", "")}
	}
	if !p.Options.Shown {
		if err := l.simulateFound(ctx); err != nil {
			return err
		}
	}
	places = l.worthShowing(places, use)
	p.Comparison = l.comparison(places, use)
	if err := contest.Amend(ctx, p.Comparison); err != nil {
		return err
	}
	for at, place := range places {
		l.results[place] = p.Results[at]
	}
	p.setFront(l, places[use])
	return nil
}

// comparison of some routes, which uses one of them.
func (l *pool) comparison(places []int, use int) *route.Comparison {
	prep := *l.prep
	prep.Routes = nil
	c := &route.Comparison{Prep: &prep, Settings: l.options.Settings.WithDefaults()}
	for _, at := range places {
		prep.Routes = append(prep.Routes, l.results[at].Route)
		c.Results = append(c.Results, l.results[at])
	}
	c.Verdict = route.Verdict{Use: use, Meets: prep.Meets(&c.Results[use]), Choice: prep.Choose(c.Results)}
	c.Notes.Merge(c.Results[use].Notes)
	return c
}

// setFront lists all routes that were simulated, by number of operations and then by left over, in
// groups.
func (p *Plan) setFront(l *pool, use int) {
	all := &route.Comparison{Prep: l.prep}
	for i := range l.results {
		if l.simulated[i] && l.results[i].Possible {
			all.Results = append(all.Results, l.results[i])
		}
	}
	used := l.results[use].Route
	slices.SortStableFunc(all.Results, func(a, b route.Result) int {
		return cmp.Or(cmp.Compare(a.Operations, b.Operations), cmp.Compare(a.LeftOverML, b.LeftOverML))
	})
	groups, leaders := grouped(all, slices.IndexFunc(all.Results, func(r route.Result) bool { return r.Route == used }))
	for i := range all.Results {
		p.Front = append(p.Front, Member{all.Results[i], leaders[groups[i]]})
	}
}

// Saves says what a route by volume could save that was not searched, where enough was tried and left over counts.
func (p *Plan) Saves() []note.Note {
	if !p.CutShort || math.IsInf(p.Untried, 1) || !p.Verdict.Meets || !slices.Contains([]string{route.Usual, route.LeastLeftOver}, p.Options.Prefer) {
		return nil
	}
	up := math.Ceil((p.chosen().LeftOverML-p.Untried)*100) / 100
	if up <= 0 {
		return []note.Note{note.Of("untried-saves-nothing", "")}
	}
	return []note.Note{note.Of("untried-saves", "", equipment.ML(up))}
}

// Class says of which routes by volume the search was, and what others could save at the most;
// nothing where there are none.
func (p *Plan) Class() []note.Note {
	switch {
	case p.Candidates == 0 || p.Options.Steps == 0:
		return nil
	case p.Options.All:
		return []note.Note{note.Of("one-piece-both-ways", "")}
	case !p.Verdict.Meets:
		return []note.Note{note.Of("no-piece-both-ways", "")}
	}
	return []note.Note{note.Of("no-piece-both-ways-saves", "", equipment.ML(quantity.Round(p.chosen().LeftOverML, 3)))}
}

// chosen is the route that is recommended.
func (p *Plan) chosen() *route.Result { return &p.Results[p.Verdict.Use] }
