package main

import (
	"context"
	"errors"
	"fmt"
	"slices"
	"strings"

	"github.com/spf13/pflag"

	"minim/cmd/minim/demo"
	"minim/equipment/benchfile"
	"minim/report"
	"minim/report/data"
	"minim/report/figure"
	"minim/uncertainty"
	"minim/uncertainty/bench"
	"minim/uncertainty/route"
)

// compareOptions are the options of minim compare.
type compareOptions struct {
	simulation
	destination
	route   string
	changes changes
}

var comparisons = renderer[*route.Comparison]{
	name: "compare", page: report.Compare, width: screenWidth, data: data.Comparison,
	pictures: []picture[*route.Comparison]{{"spread", figure.Spread, false}, {"budget", figure.Budget, false}},
}

func (o *compareOptions) declare(flags *pflag.FlagSet) {
	o.declareKit(flags)
	o.changes.declare(flags)
	flags.StringVar(&o.route, "route", "", "")
	o.destination.declare(flags)
	o.simulation.declare(flags)
	flags.IntVar(&o.digits, "digits", 0, "")
}

func (o *compareOptions) check(flags *pflag.FlagSet, _ []string) error {
	if flags.Changed("digits") && o.digits != 1 && o.digits != 2 {
		return &usageError{fmt.Sprintf("--digits must be 1 or 2, found %d", o.digits), "2 digits is what a give or take is printed with"}
	}
	if o.digits > 0 && !flags.Changed("trials") {
		o.trials = uncertainty.KeptTrials
	}
	if err := o.destination.check(flags); err != nil {
		return err
	}
	return o.simulation.check()
}

// most is how many batches may be simulated in all.
func (o *compareOptions) most(p *route.Prep) int {
	most := o.trials
	if o.route == "" {
		most *= len(p.Routes)
	}
	if len(o.changes) > 0 {
		most *= 2
	}
	return most
}

// run is minim compare.
func (o *compareOptions) run(ctx context.Context, files []string, flags *pflag.FlagSet, c console) error {
	if err := comparisons.mayKeep(c, &o.destination, files...); err != nil {
		return err
	}
	comparison, before, err := o.evaluate(ctx, files, c)
	if err != nil {
		return err
	}
	return comparisons.show(c, &o.destination, next(files, flags), comparison, before)
}

// evaluate compares the routes, with the changes; before is the comparison on the
// kit as it is, nil without changes.
func (o *compareOptions) evaluate(ctx context.Context, files []string, c console) (after, before *route.Comparison, err error) {
	prep, changed, err := loadBoth(ctx, files, o.kit, o.changes)
	if err != nil {
		return nil, nil, err
	}
	settings := o.settings()
	meter := newMeter(c.err, o.most(prep))
	defer meter.clear()
	settings.Progress = meter.add
	if changed != prep {
		if before, err = route.Compare(ctx, prep, o.route, settings); err != nil {
			return nil, nil, withStops(prep, withRouteHint(prep, err))
		}
	}
	if after, err = route.Compare(ctx, changed, o.route, settings); err != nil {
		return nil, nil, withStops(changed, withRouteHint(changed, err))
	}
	if after.Verdict.Use < 0 {
		return nil, nil, withStops(changed, noneLeft(after))
	}
	return after, before, nil
}

// loadBoth reads the prep on the kit as it is, and as changed: the same without
// changes.
func loadBoth(ctx context.Context, files []string, kit string, c changes) (prep, changed *route.Prep, err error) {
	if prep, err = loadPrep(ctx, files, kit); err != nil || len(c) == 0 {
		return prep, prep, err
	}
	changed, err = bench.Changed(prep, c)
	return prep, changed, blame(err)
}

func loadPrep(ctx context.Context, files []string, kit string) (*route.Prep, error) {
	if len(files) > 0 {
		return bench.LoadPrep(ctx, files[0], kit)
	}
	if kit != "" {
		return nil, &usageError{"--kit needs a prep as well", "the demo has a kit of its own; minim new DIR starts a prep to change"}
	}
	return demo.Load()
}

// withRouteHint says which routes there are when one is asked for that is not
// there.
func withRouteHint(p *route.Prep, err error) error {
	var unknown *route.UnknownRouteError
	switch {
	case !errors.As(err, &unknown):
		return err
	case len(unknown.Names) == 0:
		return &hinted{err, "minim plan " + quotedFile(p.File) + " searches the routes that the kit allows"}
	}
	hint := "its routes are " + strings.Join(unknown.Names, "; ")
	if near := benchfile.Nearest(unknown.Name, unknown.Names); near != "" {
		hint = fmt.Sprintf("perhaps %q is meant", near)
	}
	return &usageError{fmt.Sprintf("%s has no route called %q", p.File, unknown.Name), hint}
}

// forbidden reports whether one of the routes may not be used.
func forbidden(c *route.Comparison) bool {
	return slices.ContainsFunc(c.Results, func(r route.Result) bool { return r.MayNotBeUsed() })
}

// noneLeft is the error when the bench can do no route at all.
func noneLeft(c *route.Comparison) error {
	reasons := make([]string, len(c.Results))
	for i := range c.Results {
		reasons[i] = fmt.Sprintf("  %s: %s", c.Results[i].Route.Name, c.Results[i].Reason)
	}
	if forbidden(c) {
		return refusedHint(&listed{append([]string{"none of the routes may be used"}, reasons...), nil}, c.Results...)
	}
	what, hint := "this bench", fmt.Sprintf("change the steps in %s, or add an instrument to %s", c.Prep.File, c.Prep.Kit.File)
	if len(c.Prep.Changes) > 0 {
		what, hint = "this bench, changed as --change says,", "leave --change out to see what the bench can do as it is"
	}
	return &hinted{&listed{append([]string{what + " can do none of the routes"}, reasons...), nil}, hint}
}
