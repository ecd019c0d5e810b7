package main

import (
	"context"

	"github.com/spf13/pflag"

	"minim/report/answer"
)

// buyOptions are the options of minim buy.
type buyOptions struct{ searchOptions }

// buyWork is how many million candidates the searches of minim buy may try together.
const buyWork = 120

func (o *buyOptions) declare(flags *pflag.FlagSet) { o.searchOptions.declare(flags, buyWork) }

// run is minim buy.
func (o *buyOptions) run(ctx context.Context, c call) error {
	return o.show(ctx, c, "buy", func() (answer.Question, error) { return o.question(ctx, c) })
}
