package main

import (
	"context"
	"errors"
	"path/filepath"
	"slices"

	"github.com/spf13/pflag"

	"minim/equipment/quantity"
	"minim/report"
	"minim/report/data"
	"minim/report/figure"
	"minim/uncertainty/bench"
	"minim/uncertainty/plan"
	"minim/uncertainty/route"
)

// planOptions are the options of minim plan.
type planOptions struct {
	searchOptions
	prefer, save string
}

var plans = renderer[*plan.Plan]{
	name: "plan", page: report.Plan, width: screenWidth, data: data.Plan,
	pictures: []picture[*plan.Plan]{
		{"routes", figure.Trade, true},
		{"spread", func(p *plan.Plan) (*figure.Figure, error) { return figure.Spread(p.Comparison) }, false},
	},
}

func (o *planOptions) declare(flags *pflag.FlagSet) {
	o.searchOptions.declare(flags)
	flags.StringVar(&o.prefer, "prefer", route.LeastLeftOver, "")
	flags.StringVar(&o.save, "save", "", "")
}

func (o *planOptions) check(flags *pflag.FlagSet, files []string) error {
	if err := o.searchOptions.check(flags, "save"); err != nil {
		return err
	}
	switch {
	case !slices.Contains(route.Preferences(), o.prefer):
		return &usageError{"--prefer " + o.prefer + " is not known", "the policies are " + quantity.Series(route.Preferences(), "and")}
	case o.save != "" && len(files) == 0:
		return &usageError{"--save needs a prep as well", "the demo has a kit of its own; minim new DIR starts a prep to change"}
	case o.save != "" && len(o.changes) > 0:
		return &usageError{"--save and --change do not go together: the kit stays as it is", "write the change into the kit, and plan again"}
	}
	return nil
}

// run is minim plan.
func (o *planOptions) run(ctx context.Context, files []string, flags *pflag.FlagSet, c console) error {
	if err := plans.mayKeep(c, &o.destination, files...); err != nil {
		return err
	}
	prep, changed, err := loadBoth(ctx, files, o.kit, o.changes)
	if err != nil {
		return err
	}
	if err := o.maySave(c, prep); err != nil {
		return err
	}
	options, err := o.planOptions(flags, changed)
	if err != nil {
		return err
	}
	result, before, err := both(prep, changed, func(p *route.Prep) (*plan.Plan, error) { return o.search(ctx, p, options, c) })
	if err != nil {
		return withStops(prep, err)
	}
	save := func() (*staged, error) { return o.saved(result) }
	return plans.show(c, &o.destination, next(files, flags), result, before, save)
}

// planOptions are the options of the search with the preference: that of the prep,
// unless the command line gives another.
func (o *planOptions) planOptions(flags *pflag.FlagSet, p *route.Prep) (plan.Options, error) {
	options, err := o.options(flags, p)
	if flags.Changed("prefer") {
		options.Prefer = o.prefer
	}
	if err == nil && options.Prefer == route.Cheapest && !p.Solute.Price.Stated() && !p.Solvent.Price.Stated() {
		err = &usageError{"--prefer cheapest needs a price", "state price in the table [solute] or [solvent] of " + p.File}
	}
	return options, err
}

// both works something out for a prep on its kit as it is, where that differs, and
// on the changed kit.
func both[R any](prep, changed *route.Prep, work func(p *route.Prep) (R, error)) (result, before R, err error) {
	if changed != prep {
		if before, err = work(prep); err != nil {
			return result, before, err
		}
	}
	result, err = work(changed)
	return result, before, err
}

// search finds the routes, and shows how far it is.
func (o *planOptions) search(ctx context.Context, p *route.Prep, options plan.Options, c console) (*plan.Plan, error) {
	m := newBusy(c.err, "searching routes")
	defer m.done()
	options.Progress = m.at
	found, err := plan.Search(ctx, p, options)
	var none *plan.NoRouteError
	if errors.As(err, &none) && !p.CountsMass() && len(p.Stocks) == 0 {
		return nil, &hinted{err, "state it in the table [solute] of " + p.File + ", or a [[stock]] in the unit of the target"}
	}
	if errors.As(err, &none) {
		return nil, &hinted{err, "take limits away, allow more dilutions with --steps or every graduation with --fine, or add an instrument to " + p.Kit.File}
	}
	return found, err
}

// maySave refuses to save over what is read, or without --force over another file.
func (o *planOptions) maySave(c console, p *route.Prep) error {
	if o.save == "" {
		return nil
	}
	if err := refuseRead("--save", o.save, p.File, p.Kit.File); err != nil {
		return err
	}
	dir, name := filepath.Split(o.save)
	return c.mayWrite(dir, []file{{name: name}}, o.force)
}

// saved stages the prep with the routes that were found in place of its own.
func (o *planOptions) saved(p *plan.Plan) (*staged, error) {
	if o.save == "" {
		return new(staged), nil
	}
	dir, name := filepath.Split(o.save)
	kit, err := filepath.Rel(filepath.Clean(dir), p.Prep.Kit.File)
	if err != nil {
		kit = p.Prep.Kit.File
	}
	data, err := bench.SaveRoutes(p.Prep.Source, kit, p.Prep.Routes)
	if err != nil {
		return nil, err
	}
	return stage(filepath.Clean(dir), []file{{name, data}}, o.force)
}
