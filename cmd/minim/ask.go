package main

import (
	"context"

	"github.com/spf13/pflag"

	"minim/cmd/minim/demo"
	"minim/report/answer"
	"minim/report/figure"
	"minim/report/figure/png"
	"minim/uncertainty/bench"
	"minim/uncertainty/route"
)

// call is a command that is carried out: the files that are named, its options, and where it
// writes.
type call struct {
	console
	files []string
	flags *pflag.FlagSet
}

// prep reads the prep that is named, on its own kit or another; without one, that of the demo.
func (c call) prep(ctx context.Context, kit string) (*route.Prep, error) {
	if len(c.files) > 0 {
		return bench.LoadPrep(ctx, c.files[0], kit)
	}
	if kit != "" {
		return nil, &usageError{"--kit needs a prep as well", "the demo has a kit of its own; minim new DIR starts a prep to change"}
	}
	files := demo.Files
	files.Record = answer.File{} // which is not asked about
	q, err := answer.Read(files)
	return q.Prep, err
}

// ask answers a question of a kind, and shows how far it is.
func (c call) ask(ctx context.Context, kind string, q answer.Question) (*answer.Answer, error) {
	if text := told(kind, "busy"); text != "" {
		m := newBusy(c.err, text)
		defer m.done()
		q.Search.Progress = m.at
	} else {
		m := newMeter(c.err, most(kind, &q))
		defer m.clear()
		q.Settings.Progress = m.add
	}
	q.PNG = func(f *figure.Figure) ([]byte, error) { return png.Of(f) }
	a, err := answer.Ask(ctx, kind, q)
	if err == nil && a.Comparison != nil && a.Comparison.Verdict.Use < 0 {
		err = noneLeft(a.Comparison)
	}
	return a, explained(&q, err)
}

// most is how many batches may be simulated in all; a report has the others beside the one.
func most(kind string, q *answer.Question) int {
	most := q.Settings.WithDefaults().Trials
	if q.Prep != nil && (q.Route == "" || kind == "report") {
		most *= len(q.Prep.Routes)
	}
	if q.Changed != nil {
		most *= 2
	}
	return most
}
