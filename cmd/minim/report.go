package main

import (
	"context"
	"fmt"

	"github.com/spf13/pflag"

	"minim/report"
	"minim/report/figure"
	"minim/report/figure/png"
	"minim/report/page"
	"minim/report/words"
	"minim/uncertainty/record"
)

// writeReport is minim report.
func writeReport(ctx context.Context, args []string, c console) error {
	var o paperOptions
	files, flags, err := parsePaper("report", args, c, declareReport(&o), &o)
	if err != nil {
		return unlessHelp(err)
	}
	p, err := o.paper(ctx, files, flags, true, c)
	if err != nil {
		return err
	}
	drawn, err := spreadOf(p)
	if err != nil {
		return err
	}
	if p.Picture, err = png.Of(drawn); err != nil {
		return err
	}
	p.Alt = drawn.Alt()
	document := func(picture string) *page.Page {
		p.PictureFile = picture
		return report.Report(p)
	}
	return o.keep(c, document, p.Picture)
}

func declareReport(o *paperOptions) func(flags *pflag.FlagSet) {
	return func(flags *pflag.FlagSet) { o.declare(flags, true) }
}

// spreadOf draws the spread of all routes, or of the batch.
func spreadOf(p *words.Paper) (*figure.Figure, error) {
	if p.Batch != nil {
		return figure.Batch(p.Batch)
	}
	return figure.Spread(p.Comparison)
}

// writeSheet is minim sheet.
func writeSheet(ctx context.Context, args []string, c console) error {
	var o paperOptions
	files, flags, err := parsePaper("sheet", args, c, declareSheet(&o), &o)
	if err != nil {
		return unlessHelp(err)
	}
	p, err := o.paper(ctx, files, flags, false, c)
	if err != nil {
		return err
	}
	if !flags.Changed("date") {
		p.Date = "" // a box to write in
	}
	use := &p.Results[p.Verdict.Use]
	var room []record.Room
	if p.Prep.GoodEnough(use) { // else a limit beside a planned reading means nothing
		if room, err = record.PlannedRoom(ctx, p.Prep, use, o.settings()); err != nil {
			return err
		}
	}
	return o.keep(c, func(string) *page.Page { return report.Sheet(p, room) }, nil)
}

func declareSheet(o *paperOptions) func(flags *pflag.FlagSet) {
	return func(flags *pflag.FlagSet) {
		o.declare(flags, false)
		flags.Lookup("date").Usage = "`DATE` of the batch, as in 2026-11-28 (default a box to fill in)"
	}
}

// labelOptions are the options of minim label.
type labelOptions struct {
	paperOptions
	label words.Label
}

// mostLabels on a sheet.
const mostLabels = 60

func (o *labelOptions) declare(flags *pflag.FlagSet) {
	o.paperOptions.declare(flags, true)
	flags.Lookup("date").Usage = "`DATE` when it was made, as in 2026-11-28 (default that of the record, or a blank to fill in)"
	flags.IntVar(&o.label.Count, "count", 8, "`N` labels of the solution wanted; each bottle filled on the way to it gets one")
	flags.StringVar(&o.label.By, "by", "", "initials of `WHO` made it; those of the record if there is one")
	flags.StringVar(&o.label.Batch, "batch", "", "what the batch goes by, `TEXT`; that of the record if there is one")
	flags.StringVar(&o.label.UseBy, "use-by", "", "`DATE` until when it may be used, which you know")
}

// writeLabels is minim label.
func writeLabels(ctx context.Context, args []string, c console) error {
	var o labelOptions
	files, flags, err := parsePaper("label", args, c, o.declare, &o.paperOptions)
	if err != nil {
		return unlessHelp(err)
	}
	if n := o.label.Count; n < 1 || n > mostLabels {
		return &usageError{fmt.Sprintf("--count must lie between 1 and %d, found %d", mostLabels, n), ""}
	}
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
