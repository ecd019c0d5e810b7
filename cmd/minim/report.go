package main

import (
	"context"

	"github.com/spf13/pflag"

	"minim/report"
	"minim/report/figure"
	"minim/report/figure/png"
	"minim/report/page"
	"minim/report/words"
)

// reportOptions are the options of minim report.
type reportOptions struct{ paperOptions }

// run is minim report.
func (o *reportOptions) run(ctx context.Context, files []string, flags *pflag.FlagSet, c console) error {
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

// spreadOf draws the spread of all routes, or of the batch.
func spreadOf(p *words.Paper) (*figure.Figure, error) {
	if p.Batch != nil {
		return figure.Batch(p.Batch)
	}
	return figure.Spread(p.Comparison)
}
