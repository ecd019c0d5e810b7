package main

import (
	"cmp"
	"context"
	"errors"
	"fmt"
	"math"
	"slices"

	"github.com/spf13/pflag"

	"minim/equipment/quantity"
	"minim/report/answer"
	"minim/uncertainty/bench"
	"minim/uncertainty/plan"
	"minim/uncertainty/route"
)

// searchOptions are those that minim plan and minim buy have in common.
type searchOptions struct {
	simulation
	destination
	steps                               int
	leftOver, volume, solute, strongest string
	without                             []string
	fine                                bool
	work                                float64
}

// Millions of candidates, between which a limit must lie.
const (
	leastWork = 0.001
	mostWork  = 1_000_000
)

func (o *searchOptions) declare(flags *pflag.FlagSet, work float64) {
	o.declareBench(flags)
	flags.IntVar(&o.steps, "steps", route.DefaultSteps, "")
	flags.StringVar(&o.leftOver, "left-over", "", "")
	flags.StringVar(&o.volume, "volume", "", "")
	flags.StringVar(&o.solute, "solute", "", "")
	flags.StringVar(&o.strongest, "strongest", "", "")
	flags.StringArrayVar(&o.without, "without", nil, "")
	flags.BoolVar(&o.fine, "fine", false, "")
	flags.Float64Var(&o.work, "work", work, "")
	o.destination.declare(flags)
	o.simulation.declare(flags)
}

func (o *searchOptions) check(c call) error {
	switch {
	case o.steps < 0 || o.steps > bench.MostSteps:
		return &usageError{fmt.Sprintf("--steps must lie between 0 and %d, found %d", bench.MostSteps, o.steps), "more dilutions than that only add to the error"}
	case !(o.work >= leastWork && o.work <= mostWork):
		return &usageError{fmt.Sprintf("--work must lie between %v and %v million candidates, found %v", leastWork, mostWork, o.work), "a processor tries a few million in a second"}
	}
	return cmp.Or(o.destination.check(c), o.simulation.check())
}

// question is that of a search.
func (o *searchOptions) question(ctx context.Context, c call) (q answer.Question, err error) {
	q.Settings = o.settings()
	if q.Prep, q.Changed, err = o.preps(ctx, c); err != nil {
		return q, err
	}
	q.Search, err = o.options(c.flags, cmp.Or(q.Changed, q.Prep))
	return q, err
}

// options of the search: the limits of the prep, and in their place those that the
// command line gives.
func (o *searchOptions) options(flags *pflag.FlagSet, p *route.Prep) (plan.Options, error) {
	options := plan.Options{Limits: p.Limits, Fine: o.fine, Work: int64(math.Round(o.work * 1e6))}
	if flags.Changed("steps") {
		options.Steps = o.steps
	}
	options.Without = append(options.Without, o.without...)
	for _, name := range o.without {
		if err := checkName(p, name); err != nil {
			return options, err
		}
	}
	for _, l := range []struct {
		flag, text string
		to         *float64
		parse      func(text string) (float64, error)
	}{
		{"left-over", o.leftOver, &options.LeftOver, parseAs(quantity.Volume)},
		{"volume", o.volume, &options.Volume, parseAs(quantity.Volume)},
		{"solute", o.solute, &options.Solute, parseAs(quantity.Mass)},
		{"strongest", o.strongest, &options.Strongest, p.Concentration},
	} {
		if l.text == "" {
			continue
		}
		value, err := greaterThanZero(l.flag, l.text, l.parse)
		if err != nil {
			return options, err
		}
		*l.to = value
	}
	if options.Volume > 0 && options.Volume < p.Volume {
		return options, &usageError{fmt.Sprintf("--volume is less than the %s wanted", quantity.Millilitres(p.Volume)), ""}
	}
	return options, nil
}

func parseAs(kind quantity.Kind) func(text string) (float64, error) {
	return func(text string) (float64, error) { return quantity.Parse(kind, text) }
}

// greaterThanZero reads a quantity in an option.
func greaterThanZero(flag, text string, parse func(text string) (float64, error)) (float64, error) {
	value, err := parse(text)
	if err == nil && value <= 0 {
		err = errors.New("must be greater than zero, found " + text)
	}
	if err != nil {
		return 0, badValue(flag, err)
	}
	return value, nil
}

// badValue is the error for a quantity in an option.
func badValue(flag string, err error) error {
	hint := ""
	var bad *quantity.Error
	if errors.As(err, &bad) {
		hint = bad.Hint
	}
	return &usageError{"--" + flag + ": " + err.Error(), hint}
}

// checkName refuses the name of an instrument that does not stand on the bench.
func checkName(p *route.Prep, name string) error {
	names := p.Kit.Names()
	if slices.Contains(names, name) {
		return nil
	}
	return unknown(fmt.Sprintf("--without: %s has no instrument called %q", p.Kit.File, name), name, names, "%q", "its instruments are "+quantity.Series(names, "and"))
}
