// Package rescue finds how a batch that is not as it should be can be corrected: see
// [Find]. It lists what all that can be read or set allows, works out by the one model what could be
// chosen, and lets package search find two dilutions of a part, and the policy choose.
package rescue

import (
	"context"
	"math"
	"slices"

	"minim/report/words/note"
	"minim/uncertainty"
	"minim/uncertainty/plan"
	"minim/uncertainty/policy"
	"minim/uncertainty/route"
)

// Rescue is what can be done with a solution at hand that is not as it should be.
type Rescue struct {
	// Comparison holds a way of each kind, the best of it, simulated with all that is
	// uncertain of the batch itself; its verdict names the one that is recommended.
	*route.Comparison
	// Kinds of the results, in their order; a code is "fill_up", "dilute_part" and the like.
	Kinds []note.Note
	// Batch is the solution as it is.
	Batch route.Result
	// Before is the number of steps by which the batch was made; those of a way follow.
	Before int
	// Tried is the number of corrections that were worked out, and NotTried says what was
	// left out.
	Tried    int
	NotTried []note.Note
	// Largest is the greatest volume that a vessel of the kit holds, in mL.
	Largest float64
}

// SetAside is the volume in mL of the batch that a way does not use.
func (r *Rescue) SetAside(way int) float64 {
	left, steps := r.Batch.MadeML, r.Results[way].Route.Steps[r.Before:]
	if slices.ContainsFunc(steps, func(s route.Step) bool { return s.Verb == route.TakeAll }) {
		return 0
	}
	for _, s := range steps {
		switch s.Verb {
		case route.Take, route.Pour:
			left -= s.Amount
		case route.WeighAliquot:
			left -= s.Amount / r.Prep.Density(r.Prep.ConcentrationOf(r.Batch.Analytic.Value))
		default:
			return left
		}
	}
	return left
}

// NoWayError reports a batch for which no correction was found.
type NoWayError struct {
	// Reason is what is missing, and Cure what would help, if anything.
	Reason, Cure note.Note
}

func (e *NoWayError) Error() string { return note.Of("no-way", "", e.Reason).String() }

// Find finds how a batch can be brought to the target of a prep. The batch is the
// solution that a route ends with, or a stock of which the volume is stated. Every volume that can
// be read or set counts. Of each kind of way it keeps the one that the policy chooses, and recommends
// the one that it chooses of these: see package policy. What was read when the batch was made is no more
// judged. Without a tolerance a way is good enough that holds
// the target at most twice as widely as the tightest.
func Find(ctx context.Context, p *route.Prep, batch *route.Route, s uncertainty.Settings) (*Rescue, error) {
	alone := *p
	alone.Ladder = nil
	r := &rescuer{ctx: ctx, prep: &alone, batch: batch, coverage: s.WithDefaults().Coverage, ask: alone.Ask(), bought: len(batch.Steps) == 1}
	r.clear()
	var err error
	if r.now, err = r.prep.Assess(batch, r.coverage); err != nil {
		return nil, err
	}
	if !r.now.Possible {
		return nil, &NoWayError{Reason: r.now.Reason}
	}
	if !r.now.Informative {
		return nil, &NoWayError{note.Of("content-not-known", "", r.now.Uninformative), note.Of("batch-that-says-more", "")}
	}
	if is, wanted := r.concentrations(); math.Abs(is/wanted-1) < slack {
		return nil, &NoWayError{Reason: note.Of("right-already", "")}
	}
	for _, k := range r.vessels() {
		r.largest = max(r.largest, k.Capacity)
	}
	found, err := r.find(s)
	if err == nil && r.stopped && !r.isSure(&found.Results[found.Verdict.Use]) {
		// What seemed sure enough to stop at is not.
		r.thorough = true // again, and stop at nothing
		r.clear()
		found, err = r.find(s)
	}
	if err != nil {
		return nil, err
	}
	return r.worthIt(found, s)
}

// isSure reports whether a way has the half of the risk that it was stopped at for.
func (r *rescuer) isSure(a *route.Result) bool { return a.Chance() >= r.ask.Halved() }

// clear begins anew.
func (r *rescuer) clear() {
	r.considered, r.spare, r.found = make(map[way][]*candidate), make(map[way][]*candidate), make(map[way][]route.Result)
	r.left, r.first = make(map[way]int), nil
	r.tried, r.cut, r.notSearched, r.stopped, r.passed, r.tightest = 0, nil, nil, false, false, math.Inf(1)
}

// find tries the ways, and simulates the best of each kind.
func (r *rescuer) find(s uncertainty.Settings) (*Rescue, error) {
	is, wanted := r.concentrations()
	if r.stronger, r.err = r.strongerThan(wanted); r.err != nil {
		return nil, r.err
	}
	if is > wanted {
		r.weaken(is / wanted)
	} else {
		r.strengthen(is, wanted)
	}
	if r.err != nil {
		return nil, r.err
	}
	var kinds []note.Note
	var lists [][]route.Result
	for _, kind := range ways {
		if list := r.found[kind]; len(list) > 0 {
			kinds, lists = append(kinds, note.Of(string(kind), "")), append(lists, list)
		}
	}
	if len(lists) == 0 {
		return nil, r.noWay()
	}
	best, err := plan.OfEach(r.ctx, r.prep, lists, plan.Fewer(s))
	if err != nil {
		return nil, err
	}
	var routes []*route.Route
	for i := range best {
		routes = append(routes, best[i].Route)
	}
	return r.simulate(kinds, routes, s)
}

// worthIt simulates the batch as it is too, and reports ways that are in vain.
func (r *rescuer) worthIt(found *Rescue, s uncertainty.Settings) (*Rescue, error) {
	c, err := route.Evaluate(r.ctx, r.prep, []*route.Route{r.batch}, s)
	if err != nil {
		return nil, err
	}
	if r.now = c.Results[0]; !r.now.Possible {
		return nil, &NoWayError{Reason: r.now.Reason}
	}
	best := &found.Results[found.Verdict.Use]
	if r.isInVain(best) {
		return nil, r.inVain(best)
	}
	found.Batch, found.NotTried = r.now, r.notTried(r.good(best))
	return found, nil
}

// simulate evaluates the best ways with all that is uncertain of the batch, and recommends
// one.
func (r *rescuer) simulate(kinds []note.Note, routes []*route.Route, s uncertainty.Settings) (*Rescue, error) {
	c, err := route.Evaluate(r.ctx, r.prep, routes, s)
	if err != nil {
		return nil, err
	}
	if c.Verdict.Use < 0 {
		return nil, r.noWay()
	}
	return &Rescue{Comparison: c, Kinds: kinds, Before: len(r.batch.Steps), Largest: r.largest, Tried: r.tried}, nil
}

// isInVain reports whether the best way is not good enough and hardly better than to leave
// a batch as it is that may well be inside already.
func (r *rescuer) isInVain(best *route.Result) bool {
	if len(r.prep.Tolerances) == 0 || r.good(best) {
		return false
	}
	now := r.now.Chance()
	return now > 0.05 && best.Chance() < now+0.02
}

// rescuer looks for ways to correct a batch.
type rescuer struct {
	ctx      context.Context
	prep     *route.Prep
	batch    *route.Route
	coverage float64
	ask      policy.Question
	now      route.Result
	largest  float64
	// bought: the batch is a stock, of which what is not used stays in its bottle.
	bought bool
	// considered are the corrections that may be worked out, spare those that are where there are none, found those that were and can be done, not simulated.
	considered, spare map[way][]*candidate
	found             map[way][]route.Result
	// left is how many more of each kind may be worked out; first is the one that costs least of those that are sure enough.
	left  map[way]int
	first *candidate
	// tried is the number of corrections that were worked out; cut are the kinds of which not all
	// were, and notSearched is what a search left out.
	tried       int
	cut         []way
	notSearched []note.Note
	// stronger are the solutions that are stronger than wanted.
	stronger []strong
	// tightest is the least that a way holds the target within.
	tightest float64
	// passed: one was sure enough. stopped: not all was tried therefore; thorough: that is
	// no reason to stop.
	passed, stopped, thorough bool
	// err is the first of the work; nothing is tried after it.
	err error
}

// concentrations of the batch as it is expected to be, and as it should be, in g/mL.
func (r *rescuer) concentrations() (is, wanted float64) {
	return r.prep.ConcentrationOf(r.now.Analytic.Value), r.prep.ConcentrationOf(r.prep.Target.Value)
}

// slack is how far two figures may differ in the last digits of floating point and still
// count as equal.
const slack = 1e-9
