package main

import (
	"context"
	"fmt"

	"github.com/spf13/pflag"

	"minim/report/words"
)

// labelOptions are the options of minim label.
type labelOptions struct {
	paperOptions
	label words.Label
}

// mostLabels on a sheet.
const mostLabels = 60

func (o *labelOptions) declare(flags *pflag.FlagSet) {
	o.paperOptions.declare(flags)
	flags.IntVar(&o.label.Count, "count", 8, "")
	flags.StringVar(&o.label.By, "by", "", "")
	flags.StringVar(&o.label.Batch, "batch", "", "")
	flags.StringVar(&o.label.UseBy, "use-by", "", "")
}

func (o *labelOptions) check(c call) error {
	if err := o.paperOptions.check(c); err != nil {
		return err
	}
	if n := o.label.Count; n < 1 || n > mostLabels {
		return &usageError{fmt.Sprintf("--count must lie between 1 and %d, found %d", mostLabels, n), ""}
	}
	return nil
}

// run is minim label.
func (o *labelOptions) run(ctx context.Context, c call) error { return o.write(ctx, c, o.label) }
