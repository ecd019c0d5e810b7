package main

import (
	"cmp"
	"context"
	"errors"
	"fmt"
	"strconv"
	"strings"
	"time"

	"github.com/spf13/pflag"

	"minim/cmd/minim/demo"
	"minim/equipment/quantity"
	"minim/report/answer"
	"minim/report/words"
	"minim/report/words/clause"
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
	added      bool
}

func (o *madeOptions) declare(flags *pflag.FlagSet) {
	o.declareKit(flags)
	o.declareAll(flags)
	flags.StringArrayVar(&o.add, "add", nil, "")
	flags.StringVar(&o.by, "by", "", "")
	flags.StringVar(&o.at, "at", "", "")
	flags.StringVar(&o.to, "to", "", "")
	o.destination.declare(flags)
	o.simulation.declare(flags)
}

func (o *madeOptions) check(c call) error {
	switch {
	case len(c.files) == 1:
		return &usageError{"minim made takes a prep and the record of a batch", "minim new --record " + quotedFile(c.files[0]) + " --route NAME record.toml writes a record to fill in"}
	case o.kit != "" && len(c.files) == 0:
		return &usageError{"--kit needs a prep and a record as well", ""}
	case len(o.add) > 0 && len(c.files) == 0:
		return &usageError{"--add needs a prep and a record as well", "the demo has a record of its own, which stays as it is"}
	case len(o.add) > 0 && o.by == "":
		return &usageError{"--add needs --by: an entry says who made it", `write --by "AK" with your initials`}
	case len(o.add) == 0 && (o.by != "" || o.at != ""):
		return &usageError{"--by and --at are of use only with --add", ""}
	}
	if _, err := o.when(); err != nil {
		return err
	}
	return cmp.Or(o.destination.check(c), o.simulation.check())
}

// run is minim made. Of an error that comes after entries were added it says that they stay.
func (o *madeOptions) run(ctx context.Context, c call) error {
	err := o.show(ctx, c, "made", func() (q answer.Question, err error) {
		q.Settings = o.settings()
		if q.Record, err = o.load(ctx, c); err == nil && o.to != "" {
			q.Prep, err = o.wanted(q.Record)
		}
		return q, err
	})
	if err != nil && o.added {
		return &keptError{err, c.files[1]}
	}
	return err
}

// load reads the record, after adding to it what is to be added.
func (o *madeOptions) load(ctx context.Context, c call) (*record.Record, error) {
	if len(c.files) == 0 {
		q, err := answer.Read(demo.Files)
		return q.Record, err
	}
	prep, err := bench.LoadPrep(ctx, c.files[0], o.kit)
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
			Waiting: func() { tell(c.err, "waiting for %s, held by another program", c.files[1]) },
		}
		if err := bench.Add(ctx, c.files[1], prep, addition); err != nil {
			return nil, named("--add", err)
		}
		o.added = true
		tell(c.err, "added to %s: %s", c.files[1], strings.Join(o.add, "; "))
	}
	return bench.LoadRecord(ctx, c.files[1], prep)
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
	p, err := rescue.Aimed(p, o.to)
	if err != nil {
		return nil, badValue("to", err)
	}
	return p, nil
}

// stepNumbers lists the steps still to come.
func stepNumbers(r *record.Record) string {
	return quantity.Series(clause.Each(r.OfOrigin(record.ToCome), strconv.Itoa), "and")
}

// addNext says how to record a correction that is recommended, once it is done.
func (c call) addNext(b *words.Batch) string {
	if b == nil || b.Rescue == nil || len(c.files) == 0 {
		return ""
	}
	entries := ""
	steps := b.Rescue.Results[b.Rescue.Verdict.Use].Route.Steps
	for i := b.Rescue.Before; i < len(steps); i++ {
		entries += " \\\n               --add " + quoted(bench.Said(i+1, &steps[i]))
	}
	return fmt.Sprintf("\nOnce done:   minim made %s %s%s --by YOU\n", quotedFile(c.files[0]), quotedFile(c.files[1]), entries)
}
