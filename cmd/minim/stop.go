package main

import (
	"context"
	"errors"
	"fmt"

	"minim/report"
	"minim/uncertainty/route"
)

// withStops puts what may not meet above the finding that nothing can be proposed for a prep.
func withStops(p *route.Prep, err error) error {
	var usage *usageError
	if err == nil || errors.As(err, &usage) || errors.Is(err, context.Canceled) {
		return err
	}
	lines := report.Stops(p)
	if len(lines) == 0 {
		return err
	}
	return &hinted{&listed{lines, err},
		fmt.Sprintf("where a name or a hazard word in %s means something else than it was taken for, write it differently there", p.File)}
}
