package main

import (
	"context"

	"github.com/spf13/pflag"

	"minim/report"
	"minim/report/page"
	"minim/uncertainty/record"
)

// sheetOptions are the options of minim sheet, which is of no batch yet.
type sheetOptions struct{ paperOptions }

func (o *sheetOptions) declare(flags *pflag.FlagSet) {
	o.declareRoute(flags)
	o.declareFile(flags)
}

// run is minim sheet.
func (o *sheetOptions) run(ctx context.Context, files []string, flags *pflag.FlagSet, c console) error {
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
