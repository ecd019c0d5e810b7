package rescue

import (
	"context"
	"math"
	"slices"

	"minim/equipment"
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
	// Kinds of the results, in their order; a code is "leave", "fill_up", "dilute_part" and the like.
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
	if len(steps) == 0 || slices.ContainsFunc(steps, func(s route.Step) bool { return s.Verb == route.TakeAll }) {
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

// LeavesIt reports whether the batch is best left as it is.
func (r *Rescue) LeavesIt() bool { return r.Kinds[r.Verdict.Use].Code == string(leave) }

// Inherits reports whether most of what is uncertain of a way is uncertain of the batch itself: of the variance, half or
// more. What is taken of the batch, or diluted, keeps what it is off by as a part of its strength; what is added to
// does not have more of it than the batch.
func (r *Rescue) Inherits(way int) bool {
	is, made := &r.Batch.Analytic, &r.Results[way].Analytic
	from := float64(is.StandardUncertainty * min(1, made.Value/is.Value))
	return from > 0 && 2*from*from >= made.StandardUncertainty*made.StandardUncertainty
}

// NoWayError reports a batch for which no correction was found.
type NoWayError struct {
	// Reason is what is missing, and Cure what would help, if anything.
	Reason, Cure note.Note
}

func (e *NoWayError) Error() string { return note.Of("no-way", "", e.Reason).String() }

// Find finds how a batch can be brought to the target of a prep, or that it is best left as it is: see the
// package. The batch is the solution that a route ends with, or a stock of which the volume is stated.
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
	for _, k := range r.vessels() {
		r.largest = max(r.largest, k.Capacity)
	}
	asItIs, err := r.simulate(nil, nil, s)
	if err != nil {
		return nil, err
	}
	if r.now = asItIs.Results[0]; !r.now.Possible {
		return nil, &NoWayError{Reason: r.now.Reason}
	}
	asItIs.Batch = r.now
	is, wanted := r.concentrations()
	if right := math.Abs(is/wanted-1) < slack; right || r.passes(&r.now) {
		if right && !r.good(&r.now) {
			return nil, &NoWayError{Reason: note.Of("right-already", "")}
		}
		return asItIs, nil // whatever else is done leaves no less over, and takes measurements
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
	return r.worthIt(found)
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
		if list := r.atTarget(r.found[kind]); len(list) > 0 {
			kinds, lists = append(kinds, note.Of(string(kind), "")), append(lists, list)
		}
	}
	if len(lists) == 0 {
		return r.simulate(nil, nil, s)
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

// simulate evaluates the best ways with all that is uncertain of the batch, and the batch as it is where there are none
// or that may do, and recommends one.
func (r *rescuer) simulate(kinds []note.Note, routes []*route.Route, s uncertainty.Settings) (*Rescue, error) {
	stays := len(routes) == 0 || r.mayStay()
	if stays {
		kinds = append([]note.Note{note.Of(string(leave), "")}, kinds...)
		routes = append([]*route.Route{{Name: "as it is", Steps: r.batch.Steps, Made: len(r.batch.Steps)}}, routes...)
	}
	c, err := route.Evaluate(r.ctx, r.prep, routes, s)
	if err != nil {
		return nil, err
	}
	if asItIs := &c.Results[0]; stays && r.bought && asItIs.LeftOverML > 0 { // which stays in the bottle
		asItIs.LeftOverML, c.Notes = 0, equipment.Notes{}
		c.SumUp()
	}
	return &Rescue{Comparison: c, Kinds: kinds, Batch: r.now, Before: len(r.batch.Steps), Largest: r.largest, Tried: r.tried}, nil
}

// mayStay reports whether it is worth a word to leave the batch as it is.
func (r *rescuer) mayStay() bool { return r.good(&r.now) || r.now.Chance() >= leastSaid }

// leastSaid is the least chance of a batch as it is that is worth a word.
const leastSaid = 0.05

// worthIt leaves a batch as it is that is inside, though it be too little, where nothing that makes enough is, and
// reports ways that are in vain.
func (r *rescuer) worthIt(found *Rescue) (*Rescue, error) {
	best := &found.Results[found.Verdict.Use]
	if !r.good(best) && r.good(&r.now) {
		found.Verdict.Use, found.Verdict.Meets = 0, false
		best = &found.Results[0]
	}
	switch {
	case len(found.Results) == 1 && found.LeavesIt() && (len(r.prep.Tolerances) == 0 || !r.good(best)):
		return nil, r.noWay()
	case len(r.prep.Tolerances) == 0 || r.good(best):
	case r.isInVain(best, found.LeavesIt()):
		return nil, r.inVain(found)
	}
	found.NotTried = r.notTried(r.good(best))
	return found, nil
}

// isInVain reports whether the best way, which is not good enough, is hardly better than to leave a batch
// as it is that may well be inside already.
func (r *rescuer) isInVain(best *route.Result, leaves bool) bool {
	now := r.now.Chance()
	return leaves || now > leastSaid && best.Chance() < now+0.02
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
