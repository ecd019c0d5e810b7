package main

import (
	"context"
	"fmt"

	"github.com/spf13/pflag"

	"minim/report"
	"minim/report/page"
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

func (o *labelOptions) check(flags *pflag.FlagSet, files []string) error {
	if err := o.paperOptions.check(flags, files); err != nil {
		return err
	}
	if n := o.label.Count; n < 1 || n > mostLabels {
		return &usageError{fmt.Sprintf("--count must lie between 1 and %d, found %d", mostLabels, n), ""}
	}
	return nil
}

// run is minim label.
func (o *labelOptions) run(ctx context.Context, files []string, flags *pflag.FlagSet, c console) error {
	p, err := o.paper(ctx, files, flags, false, c)
	if err != nil {
		return err
	}
	label := o.label
	if p.Batch != nil {
		if len(p.Batch.Differences) > 0 {
			tell(c.err, "the plan in %s and the prep with its kit as they are now differ; the label says what holds by the plan", p.Batch.File)
		}
		label = label.Of(p.Batch, flags.Changed("by"), flags.Changed("batch"))
	}
	if !flags.Changed("date") {
		p.Date = "" // as the record says, or a blank to write in
	}
	return o.keep(c, func(string) *page.Page { return report.Labels(p, label) }, nil)
}
