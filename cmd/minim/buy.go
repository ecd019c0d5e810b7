package main

import (
	"context"
	"strconv"

	"github.com/spf13/pflag"

	"minim/report"
	"minim/report/data"
	"minim/report/figure"
	"minim/uncertainty/plan"
	"minim/uncertainty/route"
)

// buyOptions are the options of minim buy.
type buyOptions struct{ searchOptions }

var purchases = renderer[*plan.Purchase]{
	name: "buy", page: report.Purchase, width: screenWidth, data: data.Purchase,
	pictures: []picture[*plan.Purchase]{{"readability", figure.Readability, true}},
}

// buyWork is how many million candidates each of the searches of minim buy may try.
const buyWork = 6

func (o *buyOptions) declare(flags *pflag.FlagSet) {
	o.searchOptions.declare(flags)
	o.work = buyWork
	flags.Lookup("work").DefValue = strconv.Itoa(buyWork)
}

func (o *buyOptions) check(flags *pflag.FlagSet, _ []string) error {
	return o.searchOptions.check(flags)
}

// run is minim buy.
func (o *buyOptions) run(ctx context.Context, files []string, flags *pflag.FlagSet, c console) error {
	if err := purchases.mayKeep(c, &o.destination, files...); err != nil {
		return err
	}
	prep, changed, err := loadBoth(ctx, files, o.kit, o.changes)
	if err != nil {
		return err
	}
	options, err := o.options(flags, changed)
	if err != nil {
		return err
	}
	m := newBusy(c.err, "searching routes")
	options.Progress = m.at
	result, before, err := both(prep, changed, func(p *route.Prep) (*plan.Purchase, error) { return plan.Buy(ctx, p, options) })
	m.done()
	if err != nil {
		return withStops(prep, err)
	}
	return purchases.show(c, &o.destination, next(files, flags), result, before)
}
