package main

import (
	"context"
	"errors"
	"fmt"
	"path/filepath"
	"strings"
	"time"

	"github.com/spf13/pflag"

	"minim/equipment/quantity"
	"minim/report/page"
	"minim/report/words"
	"minim/uncertainty/bench"
	"minim/uncertainty/record"
	"minim/uncertainty/route"
)

// paperOptions are those that the documents for paper have in common.
type paperOptions struct {
	simulation
	kit, route, record, out, date string
	force                         bool
}

func (o *paperOptions) declare(flags *pflag.FlagSet) {
	o.declareRoute(flags)
	flags.StringVar(&o.record, "record", "", "")
	o.declareFile(flags)
}

func (o *paperOptions) declareRoute(flags *pflag.FlagSet) {
	flags.StringVar(&o.kit, "kit", "", "")
	flags.StringVar(&o.route, "route", "", "")
}

func (o *paperOptions) declareFile(flags *pflag.FlagSet) {
	flags.StringVar(&o.out, "out", "", "")
	flags.StringVar(&o.date, "date", "", "")
	o.simulation.declare(flags)
	flags.BoolVar(&o.force, "force", false, "")
}

func (o *paperOptions) check(flags *pflag.FlagSet, files []string) error {
	switch end := strings.ToLower(filepath.Ext(o.out)); {
	case o.out != "" && end != ".html" && end != ".htm" && end != ".md":
		return &usageError{fmt.Sprintf("--out %s says neither HTML nor Markdown", o.out), "let the name end in .html or .md"}
	case o.force && o.out == "":
		return &usageError{"--force is of use only with --out", ""}
	case o.record != "" && len(files) == 0:
		return &usageError{"--record needs its prep as well", fmt.Sprintf("write minim %s PREP --record RECORD", flags.Name())}
	case o.record != "" && o.route != "":
		return &usageError{"--record and --route do not go together: the record says by which route", ""}
	}
	if o.date == "" {
		o.date = time.Now().Format(time.DateOnly)
	} else if _, err := time.Parse(time.DateOnly, o.date); err != nil {
		return &usageError{fmt.Sprintf("--date: %q is not a date", o.date), "write year, month and day, as in 2026-11-28"}
	}
	return o.simulation.check()
}

// paper works out what a document is made of. Where others are false, the routes beside
// the one that is named are left out.
func (o *paperOptions) paper(ctx context.Context, files []string, flags *pflag.FlagSet, others bool, c console) (*words.Paper, error) {
	if dir, name := filepath.Split(o.out); o.out != "" {
		if err := c.mayWrite(dir, []file{{name: name}}, o.force); err != nil {
			return nil, err
		}
	}
	prep, err := loadPrep(ctx, files, o.kit)
	if err != nil {
		return nil, err
	}
	if err := refuseRead("--out", o.out, prep.File, prep.Kit.File, o.record); err != nil {
		return nil, err
	}
	p := &words.Paper{Date: o.date, ByUser: o.route != ""}
	name := o.route
	if o.record != "" {
		if p.Batch, err = o.batch(ctx, prep); err != nil {
			return nil, withStops(prep, err)
		}
		name = p.Batch.Planned.Name
	}
	p.Origin = origin(prep, p.Batch, repeat(files, flags))
	if p.Batch != nil && (!others || !p.Batch.AsPlanned.Possible || len(p.Batch.Differences) > 0 || prep.CheckOrder(p.Batch.Planned) != nil) {
		p.Comparison = p.Batch.Alone()
		return p, nil
	}
	meter := newMeter(c.err, o.trials*len(prep.Routes))
	defer meter.clear()
	p.Comparison, err = o.compare(ctx, prep, name, others, meter)
	return p, withStops(prep, err)
}

// compare evaluates the routes, with the one that is named as the route to use.
func (o *paperOptions) compare(ctx context.Context, prep *route.Prep, name string, others bool, m *meter) (c *route.Comparison, err error) {
	settings := o.settings()
	settings.Progress = m.add
	if name != "" && others {
		c, err = route.CompareTo(ctx, prep, name, settings)
	} else {
		c, err = route.Compare(ctx, prep, name, settings)
	}
	switch {
	case err != nil:
		return nil, withRouteHint(prep, cannot(err))
	case c.Verdict.Use < 0 && name != "":
		return nil, cannot(&route.CannotError{Name: name, Reason: c.Results[0].Reason, Forbidden: c.Results[0].MayNotBeUsed()})
	case c.Verdict.Use < 0:
		return nil, noneLeft(c)
	}
	return c, nil
}

// batch works out what was made.
func (o *paperOptions) batch(ctx context.Context, prep *route.Prep) (*words.Batch, error) {
	r, err := bench.LoadRecord(ctx, o.record, prep)
	if err != nil {
		return nil, err
	}
	if !r.Finished() {
		return nil, &hinted{fmt.Errorf("%s: the batch is not finished", o.record), "minim made says what is still to come"}
	}
	m, err := record.Evaluate(ctx, r, o.settings())
	if err != nil {
		return nil, err
	}
	return &words.Batch{Made: m}, nil
}

// origin says from which files, as they were read, and by which command a document is
// made.
func origin(p *route.Prep, b *words.Batch, command string) words.Origin {
	out := words.Origin{Version: version, Command: command, Files: []words.File{
		fileOf(p.File, p.Digest), fileOf(p.Kit.File, p.Kit.Digest),
	}}
	if b != nil {
		out.Files = append(out.Files, fileOf(b.Record.File, b.Record.Digest))
	}
	return out
}

func fileOf(name, digest string) words.File {
	return words.File{Name: quantity.Printable(filepath.Base(name)), SHA256: digest}
}

// keep prints a document as Markdown, or writes it into the file that is named, with a
// picture beside Markdown where there is one.
func (o *paperOptions) keep(c console, document func(picture string) *page.Page, png []byte) error {
	if o.out == "" {
		_, err := c.out.Write(document("").Markdown())
		return err
	}
	dir, name := filepath.Split(o.out)
	var files []file
	if strings.EqualFold(filepath.Ext(name), ".md") {
		picture := ""
		if png != nil {
			picture = strings.TrimSuffix(name, filepath.Ext(name)) + ".png"
			files = append(files, file{picture, png})
		}
		files = append(files, file{name, document(picture).Markdown()})
	} else {
		data, err := document("").HTML()
		if err != nil {
			return err
		}
		files = append(files, file{name, data})
	}
	err := c.deliver(nil, func() (*staged, error) { return stage(dir, files, o.force) })
	if err != nil { // what was worked out is not lost
		c.out.Write(document("").Markdown())
	}
	return err
}

// cannot puts a hint to a route that the bench cannot do.
func cannot(err error) error {
	var no *route.CannotError
	if errors.As(err, &no) {
		return &hinted{err, "minim compare says what the others give"}
	}
	return err
}
