package main

import (
	"context"
	"errors"
	"fmt"
	"slices"

	"minim/report/words"
	"minim/uncertainty/route"
)

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
