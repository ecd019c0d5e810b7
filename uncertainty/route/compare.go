package route

import (
	"cmp"
	"context"
	"errors"
	"fmt"
	"math"

	"minim/equipment"
	"minim/report/words/influence"
	"minim/report/words/note"
	"minim/uncertainty"
	"minim/uncertainty/hazards"
	"minim/uncertainty/parallel"
	"minim/uncertainty/policy"
)

// CannotError reports a route that the bench cannot do, or that is Forbidden: see
// [Result.MayNotBeUsed].
type CannotError struct {
	Name      string
	Reason    note.Note
	Forbidden bool
}

func (e *CannotError) Error() string {
	if e.Forbidden {
		return fmt.Sprintf("%q may not be used: %s", e.Name, e.Reason)
	}
	return fmt.Sprintf("the bench cannot do %q: %s", e.Name, e.Reason)
}

// Evaluate evaluates routes that a prep need not have, side by side, and says which is the one to use.
func Evaluate(ctx context.Context, p *Prep, routes []*Route, s uncertainty.Settings) (*Comparison, error) {
	with := *p
	with.Routes = routes
	c, _, err := with.EvaluateAll(ctx, routes, s)
	return c, err
}

// EvaluateAll evaluates routes side by side, and returns their strengths as well.
func (p *Prep) EvaluateAll(ctx context.Context, routes []*Route, s uncertainty.Settings) (*Comparison, []uncertainty.Quantity, error) {
	s = s.WithDefaults()
	if err := s.Check(); err != nil {
		return nil, nil, err
	}
	c := &Comparison{Prep: p, Settings: s, Results: make([]Result, len(routes))}
	strengths := make([]uncertainty.Quantity, len(routes))
	faults := make([]error, len(routes))
	parallel.Do(len(routes), len(routes), func(_, i int) { // few at once bound the trials in memory
		c.Results[i], strengths[i], faults[i] = p.evaluate(ctx, routes[i], s)
	})
	if err := errors.Join(faults...); err != nil {
		return nil, nil, err
	}
	c.SumUp()
	return c, strengths, nil
}

// SumUp chooses the route to use, and puts the notes together.
func (c *Comparison) SumUp() {
	c.Verdict = c.judge()
	if c.Verdict.Use >= 0 { // what concerns the route to use comes first
		c.Notes.Merge(c.Results[c.Verdict.Use].Notes)
	}
	for i := range c.Results {
		c.Notes.Merge(c.Results[i].Notes)
	}
}

// UnknownRouteError reports a name that no route of a prep has, of which there may be none.
type UnknownRouteError struct {
	File, Name string
	Names      []string
}

func (e *UnknownRouteError) Error() string {
	if len(e.Names) == 0 {
		return e.File + ": the prep has no route to compare"
	}
	return fmt.Sprintf("the prep has no route called %q", e.Name)
}

// Chosen are the routes of a prep, or the one that is named.
func (p *Prep) Chosen(name string) ([]*Route, error) {
	if name == "" && len(p.Routes) > 0 {
		return p.Routes, nil
	}
	r, err := p.Route(name)
	return []*Route{r}, err
}

// Route returns the route of a name; its error is an *[UnknownRouteError].
func (p *Prep) Route(name string) (*Route, error) {
	e := &UnknownRouteError{File: p.File, Name: name}
	for _, r := range p.Routes {
		if r.Name == name {
			return r, nil
		}
		e.Names = append(e.Names, r.Name)
	}
	return nil, e
}

// Assess evaluates one route without simulating it: of the result, MonteCarlo,
// CrossCheck, Quoted and what follows from them is empty.
func (p *Prep) Assess(r *Route, coverage float64) (Result, error) {
	result, _, err := p.assess(r, coverage)
	return result, err
}

// assess compiles a route and propagates its strength. The compiler is nil where
// the route cannot be done.
func (p *Prep) assess(r *Route, coverage float64) (Result, *compiler, error) {
	c, result, err := p.compiled(r)
	if c == nil {
		return result, nil, err
	}
	return c.assess(coverage)
}

// compiled is a route as a model. Where it cannot be done there is none, and the result says why.
func (p *Prep) compiled(r *Route) (*compiler, Result, error) {
	result := newResult(r)
	if result.Clashes = p.Clashes(r); len(result.Clashes) > 0 {
		result.Reason = hazards.Forbidden(result.Clashes)
		return nil, result, nil
	}
	c, err := p.compile(r)
	if err != nil {
		result, _, err = orWithout(result, err)
		return nil, result, err
	}
	return c, result, nil
}

// newResult is that of a route of which nothing is known yet.
func newResult(r *Route) Result {
	result := Result{Route: r, Closer: math.NaN()}
	result.Dilutions, result.Operations = r.count()
	return result
}

// orWithout is an error about a route, or where that is a finding the result that says so.
func orWithout(r Result, err error) (Result, *compiler, error) {
	reason, no := equipment.WhyNot(err)
	if !no {
		reason = withoutResult(err)
	}
	if !reason.None() {
		r = newResult(r.Route)
		r.Reason = reason
		return r, nil, nil
	}
	return r, nil, fmt.Errorf("route %q: %w", r.Route.Name, err)
}

// assess propagates the strength of a route that is compiled.
func (c *compiler) assess(coverage float64) (Result, *compiler, error) {
	result, p := newResult(c.route), c.prep
	if err := result.propagate(c, p, coverage); err != nil {
		return orWithout(result, err)
	}
	if reason := c.refused(c.route.Made); !reason.None() {
		result = newResult(c.route)
		result.Reason, result.Refused = reason, true
		return result, nil, nil
	}
	result.SoluteUsed, result.MadeML, result.LeftOverML = c.soluteUsed, c.made, unlessRounding(c.leftOver)
	if p.CountsMass() {
		result.SoluteGrams = c.soluteUsed
	}
	result.Notes = c.notes
	c.noteReadings(&result)
	if !result.Enough(p.Volume) {
		result.Notes.Warn("makes-only", c.route.Name, c.made)
	}
	return result, c, nil
}

// evaluate assesses one route and simulates it. It returns the strength as well,
// for comparing it with that of other routes.
func (p *Prep) evaluate(ctx context.Context, r *Route, s uncertainty.Settings) (Result, uncertainty.Quantity, error) {
	result, c, err := p.assess(r, s.Coverage)
	if err != nil || c == nil {
		return result, uncertainty.Quantity{}, err
	}
	result, err = c.evaluate(ctx, result, c.model.Ready(c.strength), s)
	return result, c.quantity(), err
}

func (c *compiler) quantity() uncertainty.Quantity {
	return uncertainty.Quantity{Model: c.model, Node: c.strength}
}

// evaluate simulates a route that is assessed.
func (c *compiler) evaluate(ctx context.Context, result Result, ready *uncertainty.Ready, s uncertainty.Settings) (Result, error) {
	c.warnRefused(&result.Notes)
	if err := result.simulate(ctx, c, ready, s); err != nil {
		without, _, err := orWithout(result, err)
		if err == nil {
			without.Closer = 0
		}
		return without, err
	}
	return result, nil
}

// withoutResult says why the strength of a route cannot be worked out, which is
// a finding about the route; nothing for any other error.
func withoutResult(err error) note.Note {
	var zero *uncertainty.ZeroDivisorError
	switch {
	case errors.As(err, &zero):
		return note.Of("could-be-nothing", influence.Name(zero.Divisor))
	case errors.Is(err, uncertainty.ErrNotFinite):
		return note.Of("not-finite", "")
	}
	return note.Note{}
}

// propagate works out what the analytic evaluation gives.
func (r *Result) propagate(c *compiler, p *Prep, coverage float64) (err error) {
	if r.Analytic, err = c.model.Propagate(c.strength, coverage); err != nil {
		return err
	}
	r.Possible = true
	r.Intended = c.model.Intended(c.strength)
	r.AssumedShare = r.Analytic.AssumedShare()
	mixture := r.Analytic.Mixture()
	for _, t := range p.Tolerances {
		// The limits that come with an error permit nothing.
		acceptance, _ := t.Limits.AcceptanceLimits(p.LeastChance, r.Analytic.StandardUncertainty, r.Analytic.DegreesOfFreedom)
		r.Inside = append(r.Inside, Chance{Normal: mixture.Inside(r.Analytic.Value, t.Limits.Lower, t.Limits.Upper), Acceptance: acceptance})
	}
	r.Uninformative, err = c.uninformative(coverage, len(r.Route.Steps))
	r.Informative = r.Uninformative.None()
	return err
}

// simulate works out the rest.
func (r *Result) simulate(ctx context.Context, c *compiler, ready *uncertainty.Ready, s uncertainty.Settings) (err error) {
	if r.SecondOrder, err = c.model.PropagateSecondOrder(c.strength); err != nil {
		return err
	}
	if r.MonteCarlo, err = ready.Simulate(ctx, c.prep.printed(s)); err != nil {
		return err
	}
	if err := r.conclude(ctx, c, s.Coverage); err != nil {
		return err
	}
	r.Ladder, err = c.prep.rungsOf(c.route, s.Coverage)
	return err
}

// conclude works out what follows from a simulation, or from what stands in its place.
func (r *Result) conclude(ctx context.Context, c *compiler, coverage float64) (err error) {
	p := c.prep
	if r.CrossCheck, err = c.model.CrossCheck(c.strength, r.Analytic, &r.MonteCarlo); err != nil {
		return err
	}
	r.Quoted = uncertainty.Quote(r.Analytic, &r.MonteCarlo, r.CrossCheck)
	r.Uninformative = note.Or(r.Uninformative, couldBeNothing(r.Quoted.Lower, r.Quoted.Upper, p.Target.Unit))
	r.Informative = r.Uninformative.None()
	r.HoldsWithin = r.MonteCarlo.Within(p.Target.Value, coverage) / p.Target.Value
	for i, t := range p.Tolerances {
		r.Inside[i].Simulated, r.Inside[i].Error = r.MonteCarlo.Chance(t.Limits)
	}
	return cmp.Or(c.prep.Misread(r), r.MonteCarlo.Thin(ctx, drawn))
}

// drawn is the number of values that are kept of a simulation to draw its spread.
const drawn = 2000

// count returns the number of dilutions and of measuring operations.
func (r *Route) count() (dilutions, operations int) {
	at := nothing
	for _, s := range r.Steps {
		if s.Verb != Start && s.Verb != TakeAll {
			operations++
		}
		diluting := s.Verb.brings(solvent)
		if diluting && (at == aliquot || at == weighedPart) {
			dilutions++
		}
		at = s.Verb.Traits().then
	}
	return dilutions, operations
}

// Verdict names the route to use.
type Verdict struct {
	// Use is the index of the result to use, -1 when none can be done.
	Use int
	// Choice is what the policy says, which may be another where a route is asked for by name.
	Choice policy.Choice
	// Meets reports whether it reaches the least chance that is asked for. It
	// is false when no tolerance is given.
	Meets bool
}

// judge chooses by the policy: see [Prep.Choose].
func (c *Comparison) judge() Verdict {
	v := Verdict{Choice: c.Prep.Choose(c.Results)}
	v.Use = v.Choice.Use
	v.Meets = v.Use >= 0 && c.Prep.Meets(&c.Results[v.Use])
	return v
}

// Chance is the chance of being inside the first tolerance, NaN without one.
func (r *Result) Chance() float64 {
	if len(r.Inside) == 0 {
		return math.NaN()
	}
	return r.Inside[0].Simulated
}

// GoodEnough reports whether a result is inside the first tolerance with the chance that
// is asked for, and means something. All that is said of a route or a batch goes by it.
func (p *Prep) GoodEnough(r *Result) bool { return r.Informative && r.Chance() >= p.LeastChance }

// Meets reports whether a route that makes enough is inside the first tolerance with
// the chance that is asked for.
func (p *Prep) Meets(r *Result) bool { return p.GoodEnough(r) && p.usable(r) }

// usable: it makes enough, and its strength means something.
func (p *Prep) usable(r *Result) bool { return r.Informative && r.Enough(p.Volume) }

// unlessRounding is a difference of volumes, 0 where it is no more than the rounding of
// floating point.
func unlessRounding(mL float64) float64 {
	if SameVolume(mL, 0) {
		return 0
	}
	return mL
}

// SameVolume compares volumes in mL up to the rounding of floating point.
func SameVolume(a, b float64) bool { return math.Abs(a-b) <= 1e-9*math.Max(1, math.Abs(a)) }
