package main

import (
	"context"

	"github.com/spf13/pflag"

	"minim/cmd/minim/demo"
	"minim/report/answer"
	"minim/report/words/clause"
	"minim/uncertainty/bench"
)

// kitOptions are the options of minim kit.
type kitOptions struct {
	destination
	classes bool
}

func (o *kitOptions) declare(flags *pflag.FlagSet) {
	flags.BoolVar(&o.classes, "classes", false, "")
	o.destination.declare(flags)
}

func (o *kitOptions) check(c call) error {
	if err := o.destination.check(c); err != nil {
		return err
	}
	if o.classes && len(c.files) > 0 {
		return &usageError{"--classes lists what minim knows and takes no kit", ""}
	}
	return nil
}

// run is minim kit.
func (o *kitOptions) run(ctx context.Context, c call) error {
	kind := clause.Either(o.classes, "classes", "kit")
	return o.show(ctx, c, kind, func() (q answer.Question, err error) {
		if len(c.files) == 0 {
			return answer.Read(demo.Files)
		}
		q.Kit, err = bench.LoadKit(ctx, c.files[0])
		return q, err
	})
}
