package main

import (
	"context"
	"errors"
	"fmt"
	"strings"
	"time"

	"github.com/spf13/pflag"

	"minim/cmd/minim/demo"
	"minim/equipment/quantity"
	"minim/report"
	"minim/report/data"
	"minim/report/figure"
	"minim/report/words"
	"minim/uncertainty/bench"
	"minim/uncertainty/record"
	"minim/uncertainty/rescue"
	"minim/uncertainty/route"
)

// madeOptions are the options of minim made.
type madeOptions struct {
	simulation
	destination
	to, by, at string
	add        []string
}

var batches = renderer[*words.Batch]{
	name: "made", page: alone(report.Made), width: screenWidth, data: aloneData(data.Made),
	pictures: []picture[*words.Batch]{{"made", figure.Batch, false}},
}

func (o *madeOptions) declare(flags *pflag.FlagSet) {
	o.declareKit(flags)
	flags.StringArrayVar(&o.add, "add", nil, "")
	flags.StringVar(&o.by, "by", "", "")
	flags.StringVar(&o.at, "at", "", "")
	flags.StringVar(&o.to, "to", "", "")
	o.destination.declare(flags)
	o.simulation.declare(flags)
}

func (o *madeOptions) check(flags *pflag.FlagSet, files []string) error {
	switch {
	case len(files) == 1:
		return &usageError{"minim made takes a prep and the record of a batch", "minim new --record " + quotedFile(files[0]) + " --route NAME record.toml writes a record to fill in"}
	case o.kit != "" && len(files) == 0:
		return &usageError{"--kit needs a prep and a record as well", ""}
	case len(o.add) > 0 && len(files) == 0:
		return &usageError{"--add needs a prep and a record as well", "the demo has a record of its own, which stays as it is"}
	case len(o.add) > 0 && o.by == "":
		return &usageError{"--add needs --by: an entry says who made it", `write --by "AK" with your initials`}
	case len(o.add) == 0 && (o.by != "" || o.at != ""):
		return &usageError{"--by and --at are of use only with --add", ""}
	}
	if _, err := o.when(); err != nil {
		return err
	}
	if err := o.destination.check(flags); err != nil {
		return err
	}
	return o.simulation.check()
}

// run is minim made.
func (o *madeOptions) run(ctx context.Context, files []string, flags *pflag.FlagSet, c console) error {
	if err := batches.mayKeep(c, &o.destination, files...); err != nil {
		return err
	}
	r, err := o.load(ctx, files, c)
	if err != nil {
		return err
	}
	m := newBusy(c.err, "working the batch out")
	batch, err := o.evaluate(ctx, r)
	m.done()
	if err != nil {
		return o.kept(withStops(r.Prep, err), files)
	}
	err = batches.show(c, &o.destination, addNext(files, batch)+next(files, flags), batch, nil)
	return o.kept(err, files)
}

// kept says of an error that comes after entries were added that they stay.
func (o *madeOptions) kept(err error, files []string) error {
	if err == nil || len(o.add) == 0 {
		return err
	}
	return &keptError{err, files[1]}
}

// load reads the record, after adding to it what is to be added.
func (o *madeOptions) load(ctx context.Context, files []string, c console) (*record.Record, error) {
	if len(files) == 0 {
		return demo.LoadRecord()
	}
	prep, err := bench.LoadPrep(ctx, files[0], o.kit)
	if err != nil {
		return nil, err
	}
	if len(o.add) > 0 {
		at, err := o.when()
		if err != nil {
			return nil, err
		}
		addition := bench.Addition{
			By: o.by, At: at, Lines: o.add,
			Check:   func(r *record.Record) error { _, err := o.wanted(r); return err },
			Waiting: func() { tell(c.err, "waiting for %s, held by another program", files[1]) },
		}
		if err := bench.Add(ctx, files[1], prep, addition); err != nil {
			return nil, named("--add", err)
		}
		tell(c.err, "added to %s: %s", files[1], strings.Join(o.add, "; "))
	}
	r, err := bench.LoadRecord(ctx, files[1], prep)
	if err != nil {
		return nil, o.kept(err, files)
	}
	return r, nil
}

// clock is what time it is; a test puts one that stands still in its place.
var clock = time.Now

// when the entries are made.
func (o *madeOptions) when() (string, error) {
	at, err := bench.EntryTime(o.at, clock())
	return at, named("--at", err)
}

// named says of which option something is wrong.
func named(option string, err error) error {
	if wrong := (*quantity.Error)(nil); errors.As(err, &wrong) {
		return &usageError{option + ": " + wrong.Message, wrong.Hint}
	}
	return err
}

// evaluate works out what was made, and how to correct it where it is not as it should be.
func (o *madeOptions) evaluate(ctx context.Context, r *record.Record) (*words.Batch, error) {
	wanted, err := o.wanted(r)
	if err != nil {
		return nil, err
	}
	m, err := record.Evaluate(ctx, r, o.settings())
	if err != nil {
		return nil, err
	}
	batch := &words.Batch{Made: m}
	if o.to == "" && (m.Meets() || !r.Finished()) {
		return batch, nil
	}
	batch.Rescue, err = rescue.Find(ctx, wanted, r.Made, o.settings())
	if errors.As(err, &batch.NoWay) {
		return batch, nil
	}
	return batch, err
}

// wanted is what the batch is to be: what was planned or, once it is finished, what --to
// says, on the bench as it is now.
func (o *madeOptions) wanted(r *record.Record) (*route.Prep, error) {
	p := r.OnTheBench()
	switch {
	case o.to == "":
		return p, nil
	case !r.Finished():
		return nil, &usageError{"--to: the batch is not finished, so that there is nothing to correct yet",
			fmt.Sprintf("record the steps still to come, %s; --add \"step %d: done\" says that one was done as planned", stepNumbers(r), r.OfOrigin(record.ToCome)[0])}
	}
	p, err := p.Aimed(o.to)
	if err != nil {
		return nil, badValue("to", err)
	}
	return p, nil
}

// stepNumbers lists the steps still to come.
func stepNumbers(r *record.Record) string {
	var words []string
	for _, n := range r.OfOrigin(record.ToCome) {
		words = append(words, fmt.Sprint(n))
	}
	return quantity.Series(words, "and")
}

// addNext says how to record a correction that is recommended, once it is done.
func addNext(files []string, b *words.Batch) string {
	if b.Rescue == nil || len(files) == 0 {
		return ""
	}
	words := []string{"minim made", quotedFile(files[0]), quotedFile(files[1])}
	steps := b.Rescue.Results[b.Rescue.Verdict.Use].Route.Steps
	for i := b.Rescue.Before; i < len(steps); i++ {
		words = append(words, "\\\n               --add "+quoted(bench.Said(i+1, &steps[i])))
	}
	return "\nOnce done:   " + strings.Join(words, " ") + " --by YOU\n"
}
