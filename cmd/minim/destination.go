package main

import (
	"context"
	"fmt"
	"path/filepath"
	"slices"
	"strings"

	"github.com/spf13/pflag"

	"minim/equipment/quantity"
	"minim/report/answer"
	"minim/uncertainty/bench"
	"minim/uncertainty/route"
)

// destination is where the result of a command goes, and the kit that it is worked out on,
// with what is supposed of it.
type destination struct {
	kit, format, dir string
	force, all       bool
	changes          changes
}

func (o *destination) declareKit(flags *pflag.FlagSet) {
	flags.StringVar(&o.kit, "kit", "", "")
}

func (o *destination) declareBench(flags *pflag.FlagSet) {
	o.declareKit(flags)
	flags.Var(&o.changes, "change", "")
	o.declareAll(flags)
}

func (o *destination) declare(flags *pflag.FlagSet) {
	flags.StringVar(&o.format, "format", "text", "")
	flags.StringVar(&o.dir, "out", "", "")
	flags.BoolVar(&o.force, "force", false, "")
}

// declareAll is for a command whose first screen leaves out what does not fit.
func (o *destination) declareAll(flags *pflag.FlagSet) {
	flags.BoolVar(&o.all, "all", false, "")
}

// check refuses a format that is not known, and --force without a file to write.
func (o *destination) check(c call) error {
	if formats := answer.Formats(); !slices.Contains(formats, o.format) {
		return &usageError{fmt.Sprintf("--format %s is not known", o.format), "the formats are " + quantity.Series(formats, "and")}
	}
	writing := slices.DeleteFunc([]string{"out", "save"}, func(name string) bool { return c.flags.Lookup(name) == nil })
	if o.force && !slices.ContainsFunc(writing, c.flags.Changed) {
		return &usageError{"--force is of use only with --" + strings.Join(writing, " or --"), ""}
	}
	return nil
}

// preps reads the prep on the kit as it is, and as changed: nil without changes.
func (o *destination) preps(ctx context.Context, c call) (prep, changed *route.Prep, err error) {
	if prep, err = c.prep(ctx, o.kit); err != nil || len(o.changes) == 0 {
		return prep, nil, err
	}
	changed, err = bench.Changed(prep, o.changes)
	return prep, changed, blame(err)
}

// show asks a question of a kind, prints the answer in the format that is wanted, as text with
// what to type next, and writes it into a folder, if there is one, with what else is to be written.
func (o *destination) show(ctx context.Context, c call, kind string, question func() (answer.Question, error), more ...stager) error {
	if err := o.mayKeep(c, kind); err != nil {
		return err
	}
	q, err := question()
	if err != nil {
		return err
	}
	q.All = o.all
	a, err := c.ask(ctx, kind, q)
	if err != nil {
		return err
	}
	printed, err := o.printed(c, a)
	if err != nil {
		return err
	}
	return c.deliver(printed, a, append([]stager{o.keep}, more...)...)
}

// printed is the answer in the format that is wanted; text is as wide as the window, and short
// unless all of it is asked for.
func (o *destination) printed(c call, a *answer.Answer) ([]byte, error) {
	if o.format != "text" {
		return a.In(o.format)
	}
	width := c.width()
	short := !o.all && c.flags.Lookup("all") != nil
	if short {
		text, err := a.Glance(width, c.shortNext(a))
		return []byte(text), err
	}
	text, err := a.Screen(width)
	return []byte(text + c.next(a, width)), err
}

// mayKeep refuses a folder in which a file of the answer would replace another, and with
// force as well one that is read, before anything is worked out for it.
func (o *destination) mayKeep(c call, kind string) error {
	if o.dir == "" {
		return nil
	}
	names := answer.FileNames(kind)
	for _, name := range names {
		if err := refuseRead("--out", filepath.Join(o.dir, name), c.files...); err != nil {
			return err
		}
	}
	return c.mayWrite(o.dir, o.force, names...)
}

// keep stages all formats and pictures for a folder; without one there is nothing
// to keep.
func (o *destination) keep(a *answer.Answer) (*staged, error) {
	if o.dir == "" {
		return new(staged), nil
	}
	files, missing, err := a.Files()
	if err != nil {
		return nil, err
	}
	kept, err := stage(o.dir, files, o.force)
	if err == nil {
		kept.missing = missing
	}
	return kept, err
}
