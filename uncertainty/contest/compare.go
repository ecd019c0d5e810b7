// Package contest compares the routes of a prep: which comes closer to the target, what would bring one there
// that aims elsewhere; once, or again and again while something changes.
package contest

import (
	"context"
	"slices"

	"minim/uncertainty"
	"minim/uncertainty/route"
)

// Compare evaluates the routes of a prep, or the one that is named. It returns
// an error when there is no route, none of that name, or when the evaluation of
// one fails.
func Compare(ctx context.Context, p *route.Prep, name string, s uncertainty.Settings) (*route.Comparison, error) {
	routes, err := p.Chosen(name)
	if err != nil {
		return nil, err
	}
	c, strengths, err := p.EvaluateAll(ctx, routes, s)
	if err != nil {
		return nil, err
	}
	return c, complete(ctx, c, strengths)
}

// complete adds what concerns several routes, or another than the one that is stated.
func complete(ctx context.Context, c *route.Comparison, strengths []uncertainty.Quantity) error {
	if err := Amend(ctx, c); err != nil {
		return err
	}
	return compareCloseness(ctx, c, strengths)
}

// CompareTo is [Compare] of all routes with the one that is named as the route to use,
// whatever the others give.
func CompareTo(ctx context.Context, p *route.Prep, use string, s uncertainty.Settings) (*route.Comparison, error) {
	r, err := p.Route(use)
	if err != nil {
		return nil, err
	}
	c, strengths, err := p.EvaluateAll(ctx, p.Routes, s)
	if err != nil {
		return nil, err
	}
	at := slices.Index(p.Routes, r)
	if !c.Results[at].Possible {
		return nil, &route.CannotError{Name: r.Name, Reason: c.Results[at].Reason, Forbidden: c.Results[at].MayNotBeUsed()}
	}
	c.Verdict.Use, c.Verdict.Meets = at, c.Prep.Meets(&c.Results[at])
	return c, complete(ctx, c, strengths)
}
