package main

import (
	"context"
	"path/filepath"
	"slices"

	"github.com/spf13/pflag"

	"minim/equipment/quantity"
	"minim/report/answer"
	"minim/uncertainty/bench"
	"minim/uncertainty/route"
)

// planOptions are the options of minim plan.
type planOptions struct {
	searchOptions
	prefer, save, from string
	bothWays           bool
}

// planWork is how many million candidates minim plan tries in all when not told otherwise.
const planWork = 500

func (o *planOptions) declare(flags *pflag.FlagSet) {
	o.searchOptions.declare(flags, planWork)
	flags.StringVar(&o.prefer, "prefer", route.Usual, "")
	flags.StringVar(&o.save, "save", "", "")
	flags.BoolVar(&o.bothWays, "both-ways", false, "")
	flags.StringVar(&o.from, "from", "", "")
}

func (o *planOptions) check(c call) error {
	if err := o.searchOptions.check(c); err != nil {
		return err
	}
	switch {
	case !slices.Contains(bench.Preferences(), o.prefer):
		return &usageError{"--prefer " + o.prefer + " is not known", "the policies are " + quantity.Series(bench.Preferences(), "and")}
	case o.save != "" && len(c.files) == 0:
		return &usageError{"--save needs a prep as well", "the demo has a kit of its own; minim new DIR starts a prep to change"}
	case o.save != "" && len(o.changes) > 0:
		return &usageError{"--save and --change do not go together: the kit stays as it is", "write the change into the kit, and plan again"}
	}
	return nil
}

// run is minim plan.
func (o *planOptions) run(ctx context.Context, c call) error {
	return o.show(ctx, c, "plan", func() (answer.Question, error) { return o.question(ctx, c) }, o.saved)
}

// question is that of the search with the preference: that of the prep, unless the command
// line gives another. It refuses to save over what is read, or without --force over another
// file.
func (o *planOptions) question(ctx context.Context, c call) (answer.Question, error) {
	q, err := o.searchOptions.question(ctx, c)
	if err != nil {
		return q, err
	}
	p := q.Prep
	q.Search.All, q.Search.Listed, q.Search.From = o.bothWays, o.all, o.from
	q.Search.Shown = !o.all && o.dir == "" && slices.Contains([]string{"text", "markdown"}, o.format)
	if c.flags.Changed("prefer") {
		q.Search.Prefer = o.prefer
	}
	if q.Search.Prefer == route.Cheapest && !p.Solute.Price.Stated() && !p.Solvent.Price.Stated() {
		return q, &usageError{"--prefer cheapest needs a price", "state price in the table [solute] or [solvent] of " + p.File}
	}
	if o.save == "" {
		return q, nil
	}
	return q, c.mayReplace("--save", o.save, o.force, p.File, p.Kit.File)
}

// saved stages the prep with the routes that were found in place of its own.
func (o *planOptions) saved(a *answer.Answer) (*staged, error) {
	if o.save == "" {
		return new(staged), nil
	}
	dir, name := filepath.Split(o.save)
	p := a.Comparison.Prep
	kit, err := filepath.Rel(filepath.Clean(dir), p.Kit.File)
	if err != nil {
		kit = p.Kit.File
	}
	data, err := bench.SaveRoutes(p.Source, kit, p.Routes)
	if err != nil {
		return nil, err
	}
	return stage(filepath.Clean(dir), []file{{Name: name, Data: data}}, o.force)
}
