package main

import (
	"context"
	"errors"
	"fmt"
	"slices"
	"strings"

	"minim/equipment/benchfile"
	"minim/report/answer"
	"minim/report/words"
	"minim/report/words/clause"
	"minim/uncertainty/plan"
	"minim/uncertainty/rescue"
	"minim/uncertainty/route"
)

// explained puts to the error of a question what helps, and what may not meet above it.
func explained(q *answer.Question, err error) error {
	p := q.Prep
	if p == nil && q.Record != nil {
		p = q.Record.Prep
	}
	if err == nil || p == nil {
		return err
	}
	var (
		cannot  *route.CannotError
		nothing *plan.NoRouteError
		noWay   *rescue.NoWayError
	)
	switch {
	case errors.As(err, &cannot):
		err = &hinted{err, "minim compare says what the others give"}
	case errors.As(err, &noWay):
		err = &hinted{fmt.Errorf("no way to correct what is in the bottle was found: %s", noWay.Reason), noWay.Cure.String()}
	case errors.As(err, &nothing) && !p.CountsMass() && len(p.Stocks) == 0:
		err = &hinted{err, "state it in the table [solute] of " + p.File + ", or a [[stock]] in the unit of the target"}
	case errors.As(err, &nothing) && nothing.Reason.Code == "is-gas":
		err = &hinted{err, "state in " + p.File + ` what is had of it: a [[stock]] with strength = "6 % w/v", or what its label says`}
	case errors.As(err, &nothing):
		err = &hinted{err, "take limits away, allow more dilutions with --steps or every graduation with --fine, or add an instrument to " + p.Kit.File}
	}
	return withStops(p, withRouteHint(p, err))
}

// withRouteHint says which routes there are when one is asked for that is not
// there.
func withRouteHint(p *route.Prep, err error) error {
	var wrong *route.UnknownRouteError
	switch {
	case !errors.As(err, &wrong):
		return err
	case len(wrong.Names) == 0:
		return &hinted{err, "minim plan " + quotedFile(p.File) + " searches the routes that the kit allows"}
	}
	return unknown(fmt.Sprintf("%s has no route called %q", p.File, wrong.Name), wrong.Name, wrong.Names, "%q", "its routes are "+strings.Join(wrong.Names, "; "))
}

// unknown is a name that is none of those there are: the hint is which of them, written like
// that, may be meant, or else another.
func unknown(message, name string, names []string, like, otherwise string) error {
	if near := benchfile.Nearest(name, names); near != "" {
		return &usageError{message, "perhaps " + fmt.Sprintf(like, near) + " is meant"}
	}
	return &usageError{message, otherwise}
}

// noneLeft is the error when the bench can do no route at all.
func noneLeft(c *route.Comparison) error {
	reasons := clause.Each(c.Results, func(r route.Result) string { return fmt.Sprintf("  %s: %s", r.Route.Name, r.Reason) })
	switch {
	case slices.ContainsFunc(c.Results, func(r route.Result) bool { return r.MayNotBeUsed() }):
		return refusedHint(&listed{append([]string{"none of the routes may be used"}, reasons...), nil}, c.Results...)
	case len(c.Prep.Changes) > 0:
		all := &listed{append([]string{"this bench, changed as --change says, can do none of the routes"}, reasons...), nil}
		return &hinted{all, "leave --change out to see what the bench can do as it is"}
	}
	all := &listed{append([]string{"this bench can do none of the routes"}, reasons...), nil}
	return &hinted{all, fmt.Sprintf("change the steps in %s, or add an instrument to %s", c.Prep.File, c.Prep.Kit.File)}
}

// refusedHint says what to do where solvent cannot go first in a route.
func refusedHint(err error, results ...route.Result) error {
	if !slices.ContainsFunc(results, func(r route.Result) bool { return r.Refused }) {
		return err
	}
	return &hinted{err, "measure by volume, or weigh less into more solvent; where a hazard is only not stated, state what the safety data sheet says"}
}

// withStops puts what may not meet above the finding that nothing can be proposed for a prep.
func withStops(p *route.Prep, err error) error {
	var usage *usageError
	if err == nil || errors.As(err, &usage) || errors.Is(err, context.Canceled) {
		return err
	}
	lines := words.Stops(p)
	if len(lines) == 0 {
		return err
	}
	return &hinted{&listed{lines, err},
		fmt.Sprintf("where a name or a hazard word in %s means something else than it was taken for, write it differently there", p.File)}
}
