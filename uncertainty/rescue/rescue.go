// Package rescue finds how a batch that is not as it should be can be corrected: see
// [Find]. It tries the ways to fill up, dilute and strengthen it, and lets package search
// find the dilutions of a part.
package rescue

import (
	"context"
	"math"
	"slices"

	"minim/report/words/note"
	"minim/report/words/verb"
	"minim/uncertainty"
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
	left := r.Batch.MadeML
	for _, s := range r.Results[way].Route.Steps[r.Before:] {
		switch s.Verb {
		case route.TakeAll:
			return 0
		case route.Take, route.Pour:
			left -= s.Amount
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
// solution that a route ends with, or a stock of which the volume is stated. Of each
// kind of way it keeps the best, and recommends the best of all: one that is inside the
// first tolerance with the chance asked for; of those one that aims at the target itself;
// then one that makes enough; then with the least left over, of which what is set aside is
// a part, in halves of the volume wanted; then with the fewest measurements, the best
// chance, and nearest to the target. Without a tolerance a way is good enough that holds
// the target at most twice as widely as the tightest.
func Find(ctx context.Context, p *route.Prep, batch *route.Route, s uncertainty.Settings) (*Rescue, error) {
	alone := *p
	alone.Ladder = nil
	r := &rescuer{ctx: ctx, prep: &alone, batch: batch, coverage: s.WithDefaults().Coverage, tightest: math.Inf(1), triedOf: make(map[way]int)}
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
	if err == nil && r.stopped && !r.good(&found.Results[found.Verdict.Use]) {
		// What seemed good enough to stop at is not.
		r.thorough, r.tried, r.triedOf = true, 0, make(map[way]int) // again, and stop at nothing
		r.found, r.cut, r.notSearched = nil, nil, nil
		found, err = r.find(s)
	}
	if err != nil {
		return nil, err
	}
	return r.worthIt(found, s)
}

// find tries the ways, and simulates the best of each kind.
func (r *rescuer) find(s uncertainty.Settings) (*Rescue, error) {
	if is, wanted := r.concentrations(); is > wanted {
		r.weaken(is / wanted)
	} else {
		r.strengthen(is, wanted)
	}
	if r.err != nil {
		return nil, r.err
	}
	kinds, routes, err := r.best(s)
	if err != nil {
		return nil, err
	}
	if len(routes) == 0 {
		return nil, r.noWay()
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
	before := len(r.batch.Steps)
	for i := range c.Results {
		if c.Results[i].Possible && r.better(&c.Results[i], &c.Results[c.Verdict.Use]) {
			c.Verdict.Use = i
		}
		named := *c.Results[i].Route
		named.Name = verb.Name(named.Steps[before:])
		c.Results[i].Route = &named
	}
	c.Verdict.Meets = c.Prep.Meets(&c.Results[c.Verdict.Use])
	return &Rescue{Comparison: c, Kinds: kinds, Before: before, Largest: r.largest, Tried: r.tried}, nil
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
	now      route.Result
	largest  float64
	found    []correction
	// tried is the number of ways that were worked out, triedOf that of each kind; cut are the kinds of which not all
	// were, and notSearched is what a search left out.
	tried       int
	triedOf     map[way]int
	cut         []way
	notSearched []note.Note
	// stronger are the solutions that are stronger than wanted.
	stronger []strong
	// tightest is the least that a way holds the target within.
	tightest float64
	// stopped: not all was tried, since a way seemed to be good enough; thorough: that is
	// no reason to stop.
	stopped, thorough bool
	// err is the first of the work; nothing is tried after it.
	err error
}

// correction is a way with what it gives, not simulated.
type correction struct {
	kind   way
	result route.Result
}

// concentrations of the batch as it is expected to be, and as it should be, in g/mL.
func (r *rescuer) concentrations() (is, wanted float64) {
	return r.prep.ConcentrationOf(r.now.Analytic.Value), r.prep.ConcentrationOf(r.prep.Target.Value)
}

// slack is how far two figures may differ in the last digits of floating point and still
// count as equal.
const slack = 1e-9

// mostTried is how many corrections of a kind are worked out, about a second's worth.
const mostTried = 3000

// full reports whether as many corrections of a kind were tried as may be, and remembers
// that some were not.
func (r *rescuer) full(kind way) bool {
	if r.triedOf[kind] < mostTried {
		return false
	}
	if !slices.Contains(r.cut, kind) {
		r.cut = append(r.cut, kind)
	}
	return true
}

// isOver reports whether no more corrections of a kind are to be tried.
func (r *rescuer) isOver(kind way) bool { return r.err != nil || r.full(kind) }

// try evaluates a way by its model as a whole, unless too many were.
func (r *rescuer) try(kind way, steps ...route.Step) {
	if r.err == nil {
		r.err = r.ctx.Err()
	}
	if r.isOver(kind) {
		return
	}
	r.tried++
	r.triedOf[kind]++
	whole := &route.Route{Name: r.batch.Name, Steps: slices.Concat(r.batch.Steps, steps), Made: len(r.batch.Steps)}
	result, err := r.prep.Assess(whole, r.coverage)
	if r.err = err; err == nil && result.Possible {
		for i := range result.Inside {
			result.Inside[i].Simulated = result.Inside[i].Normal
		}
		target := r.prep.Target.Value
		result.HoldsWithin = (math.Abs(result.Analytic.Value-target) + result.Analytic.ExpandedUncertainty) / target
		r.tightest = min(r.tightest, result.HoldsWithin)
		r.found = append(r.found, correction{kind, result})
	}
}
