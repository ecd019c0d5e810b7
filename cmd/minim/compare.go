package main

import (
	"cmp"
	"context"
	"fmt"

	"github.com/spf13/pflag"

	"minim/report/answer"
)

// compareOptions are the options of minim compare.
type compareOptions struct {
	simulation
	destination
	route string
}

func (o *compareOptions) declare(flags *pflag.FlagSet) {
	o.declareBench(flags)
	flags.StringVar(&o.route, "route", "", "")
	o.destination.declare(flags)
	o.simulation.declare(flags)
	flags.IntVar(&o.digits, "digits", 0, "")
}

func (o *compareOptions) check(c call) error {
	if c.flags.Changed("digits") && o.digits != 1 && o.digits != 2 {
		return &usageError{fmt.Sprintf("--digits must be 1 or 2, found %d", o.digits), "2 digits is what a give or take is printed with"}
	}
	return cmp.Or(o.destination.check(c), o.simulation.check())
}

// run is minim compare.
func (o *compareOptions) run(ctx context.Context, c call) error {
	return o.show(ctx, c, "compare", func() (q answer.Question, err error) {
		q.Route, q.All, q.Settings = o.route, o.all, o.settings()
		q.Prep, q.Changed, err = o.preps(ctx, c)
		return q, err
	})
}
