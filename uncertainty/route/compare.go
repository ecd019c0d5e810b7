package route

import (
	"context"
	"errors"
	"fmt"
	"math"
	"runtime"
	"sync"

	"minim/equipment"
	"minim/uncertainty"
)

// Compare evaluates the routes of a prep, or the one that is named. It returns
// an error when no route of that name exists, when none can be done, or when
// the evaluation of one fails.
func Compare(ctx context.Context, p *Prep, name string, s uncertainty.Settings) (*Comparison, error) {
	s = s.WithDefaults()
	if err := s.Check(); err != nil {
		return nil, err
	}
	routes, err := p.chosen(name)
	if err != nil {
		return nil, err
	}
	c := &Comparison{Prep: p, Settings: s, Results: make([]Result, len(routes))}
	strengths := make([]uncertainty.Quantity, len(routes))
	faults := make([]error, len(routes))
	var wait sync.WaitGroup
	slots := make(chan struct{}, runtime.GOMAXPROCS(0)) // bounds the trials in memory
	for i, r := range routes {
		wait.Add(1)
		slots <- struct{}{}
		go func() {
			defer func() { <-slots; wait.Done() }()
			c.Results[i], strengths[i], faults[i] = p.evaluate(ctx, r, s)
		}()
	}
	wait.Wait()
	if err := errors.Join(faults...); err != nil {
		return nil, err
	}
	c.Verdict = c.judge()
	if err := c.compareCloseness(ctx, strengths); err != nil {
		return nil, err
	}
	if c.Verdict.Use >= 0 { // what concerns the route to use comes first
		c.Notes.Merge(c.Results[c.Verdict.Use].Notes)
	}
	for i := range c.Results {
		c.Notes.Merge(c.Results[i].Notes)
	}
	return c, nil
}

// UnknownRouteError reports a name that no route of a prep has.
type UnknownRouteError struct {
	Name  string
	Names []string
}

func (e *UnknownRouteError) Error() string {
	return fmt.Sprintf("the prep has no route called %q", e.Name)
}

func (p *Prep) chosen(name string) ([]*Route, error) {
	if name == "" {
		return p.Routes, nil
	}
	e := &UnknownRouteError{Name: name}
	for _, r := range p.Routes {
		if r.Name == name {
			return []*Route{r}, nil
		}
		e.Names = append(e.Names, r.Name)
	}
	return nil, e
}

// evaluate compiles one route and evaluates its model both ways. It returns the
// strength as well, for comparing it with that of other routes.
func (p *Prep) evaluate(ctx context.Context, r *Route, s uncertainty.Settings) (result Result, strength uncertainty.Quantity, err error) {
	result = Result{Route: r}
	result.Dilutions, result.Operations = r.count()
	impossible := result
	c, err := p.compile(r)
	var no *equipment.Impossible
	if errors.As(err, &no) {
		impossible.Reason = no.Reason
		return impossible, strength, nil
	}
	if err == nil {
		err = result.propagate(ctx, c, p, s)
	}
	if reason := withoutResult(err); reason != "" {
		impossible.Reason = reason
		return impossible, strength, nil
	}
	if err != nil {
		return result, strength, fmt.Errorf("route %q: %w", r.Name, err)
	}
	result.SoluteGrams, result.MadeML, result.LeftOverML = c.soluteUsed, c.made, c.leftOver
	result.Notes = c.notes
	if !result.Enough(p.Volume) {
		result.Notes.Warn(fmt.Sprintf("%s makes only %s", r.Name, equipment.Millilitres(c.made)))
	}
	return result, uncertainty.Quantity{Model: c.model, Node: c.strength}, nil
}

// withoutResult says why the strength of a route cannot be worked out, which is
// a finding about the route; "" for any other error.
func withoutResult(err error) string {
	var zero *uncertainty.ZeroDivisorError
	switch {
	case errors.As(err, &zero):
		return zero.Divisor + " is so badly known that it could be nothing"
	case errors.Is(err, uncertainty.ErrNotFinite):
		return "its strength is too large or too small to be worked out"
	}
	return ""
}

func (r *Result) propagate(ctx context.Context, c *compiler, p *Prep, s uncertainty.Settings) (err error) {
	m, out := c.model, c.strength
	if r.Analytic, err = m.Propagate(out, s.Coverage); err != nil {
		return err
	}
	if r.SecondOrder, err = m.PropagateSecondOrder(out); err != nil {
		return err
	}
	if r.MonteCarlo, err = m.Simulate(ctx, out, s); err != nil {
		return err
	}
	if r.CrossCheck, err = m.CrossCheck(ctx, out, r.Analytic, &r.MonteCarlo); err != nil {
		return err
	}
	r.Possible = true
	r.Intended = m.Intended(out)
	r.Quoted = uncertainty.Quote(r.Analytic, &r.MonteCarlo, r.CrossCheck)
	r.AssumedShare = r.Analytic.AssumedShare()
	r.HoldsWithin = r.MonteCarlo.Within(p.Target.Value, s.Coverage) / p.Target.Value
	for _, t := range p.Tolerances {
		r.Inside = append(r.Inside, Chance{
			Simulated: r.MonteCarlo.ConformanceProbability(t.Limits),
			Normal:    r.Analytic.ConformanceProbability(t.Limits),
		})
	}
	r.MonteCarlo.Thin(drawn)
	if r.Ladder, err = c.rungs(s.Coverage); err != nil {
		return err
	}
	r.Uninformative, err = c.uninformative(s.Coverage)
	r.Informative = r.Uninformative == ""
	return err
}

// uninformative says which weighed mass has a coverage interval that reaches
// zero, so that its reading says almost nothing about the amount.
func (c *compiled) uninformative(coverage float64) (string, error) {
	for _, w := range c.masses {
		a, err := c.model.Propagate(w.mass, coverage)
		if err != nil {
			return "", err
		}
		if a.Lower() <= 0 {
			return fmt.Sprintf("step %d weighs %s, give or take %s: it could be nothing at all", w.step+1,
				equipment.Grams(c.model.Intended(w.mass)), roundedGrams(a.ExpandedUncertainty)), nil
		}
	}
	return "", nil
}

// drawn is the number of values that are kept of a simulation to draw its spread.
const drawn = 2000

func roundedGrams(expanded float64) string {
	_, u := uncertainty.RoundExpanded(0, expanded)
	return u + " g"
}

// count returns the number of dilutions and of measuring operations.
func (r *Route) count() (dilutions, operations int) {
	at := nothing
	for _, s := range r.Steps {
		if s.Verb != Start {
			operations++
		}
		diluting := s.Verb == MakeUpTo || s.Verb == Add || s.Verb == WeighUpTo
		if diluting && (at == aliquot || at == weighedPart) {
			dilutions++
		}
		at = grammars[s.Verb].then
	}
	return dilutions, operations
}

// Verdict names the route to use.
type Verdict struct {
	// Use is the index of the result to use, -1 when none can be done.
	Use int
	// Meets reports whether it reaches the least chance that is asked for. It
	// is false when no tolerance is given.
	Meets bool
}

// judge chooses the route with the least left over among those that make
// enough and whose chance of being inside the first tolerance reaches what is
// asked for, ties by fewer operations; when none reaches it, the one with the
// best chance. Without a tolerance it is the one that holds the target best.
// A route that makes too little or says nothing is chosen last.
func (c *Comparison) judge() Verdict {
	v := Verdict{Use: -1}
	for i := range c.Results {
		r := &c.Results[i]
		if r.Possible && (v.Use < 0 || c.better(r, &c.Results[v.Use])) {
			v.Use = i
		}
	}
	v.Meets = v.Use >= 0 && c.meets(&c.Results[v.Use])
	return v
}

// Chance is the chance of being inside the first tolerance, NaN without one.
func (r *Result) Chance() float64 {
	if len(r.Inside) == 0 {
		return math.NaN()
	}
	return r.Inside[0].Simulated
}

func (c *Comparison) meets(r *Result) bool {
	return r.Chance() >= c.Prep.LeastChance && c.usable(r)
}

// usable: it makes enough, and its strength means something.
func (c *Comparison) usable(r *Result) bool { return r.Informative && r.Enough(c.Prep.Volume) }

// SameVolume compares volumes in mL up to the rounding of floating point.
func SameVolume(a, b float64) bool { return math.Abs(a-b) <= 1e-9*math.Max(1, math.Abs(a)) }

func (c *Comparison) better(a, b *Result) bool {
	switch {
	case c.usable(a) != c.usable(b):
		return c.usable(a)
	case len(c.Prep.Tolerances) == 0:
		return a.HoldsWithin < b.HoldsWithin
	case c.meets(a) != c.meets(b):
		return c.meets(a)
	case !c.meets(a):
		return a.Chance() > b.Chance()
	case !SameVolume(a.LeftOverML, b.LeftOverML):
		return a.LeftOverML < b.LeftOverML
	default:
		return a.Operations < b.Operations
	}
}
