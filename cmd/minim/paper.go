package main

import (
	"context"
	"fmt"
	"path/filepath"
	"strings"
	"time"

	"github.com/spf13/pflag"

	"minim/report/answer"
	"minim/report/page"
	"minim/report/words"
	"minim/uncertainty/bench"
)

// paperOptions are those of the documents for paper: minim report, sheet and label.
type paperOptions struct {
	simulation
	kit, route, record, out, date string
	force                         bool
	label                         words.Label
	size, sheet                   string
}

// mostLabels on a sheet.
const mostLabels = 60

// declare leaves out the record of a sheet, which is of no batch yet.
func (o *paperOptions) declare(flags *pflag.FlagSet) {
	flags.StringVar(&o.kit, "kit", "", "")
	flags.StringVar(&o.route, "route", "", "")
	if flags.Name() != "sheet" {
		flags.StringVar(&o.record, "record", "", "")
	}
	flags.StringVar(&o.out, "out", "", "")
	flags.StringVar(&o.date, "date", "", "")
	o.simulation.declare(flags)
	flags.BoolVar(&o.force, "force", false, "")
	if flags.Name() == "label" {
		flags.IntVar(&o.label.Count, "count", 8, "")
		flags.StringVar(&o.label.By, "by", "", "")
		flags.StringVar(&o.label.Batch, "batch", "", "")
		flags.StringVar(&o.label.UseBy, "use-by", "", "")
		flags.StringVar(&o.size, "size", "", "")
		flags.StringVar(&o.sheet, "sheet", "", "")
	}
}

// check dates a report; a sheet and a label have a box or a blank to write in, but for what a
// record says.
func (o *paperOptions) check(c call) error {
	_, bad := time.Parse(time.DateOnly, o.date)
	switch end := strings.ToLower(filepath.Ext(o.out)); {
	case o.out != "" && end != ".html" && end != ".htm" && end != ".md":
		return &usageError{fmt.Sprintf("--out %s says neither HTML nor Markdown", o.out), "let the name end in .html or .md"}
	case o.force && o.out == "":
		return &usageError{"--force is of use only with --out", ""}
	case o.record != "" && len(c.files) == 0:
		return &usageError{"--record needs its prep as well", fmt.Sprintf("write minim %s PREP --record RECORD", c.flags.Name())}
	case o.record != "" && o.route != "":
		return &usageError{"--record and --route do not go together: the record says by which route", ""}
	case o.date != "" && bad != nil:
		return &usageError{fmt.Sprintf("--date: %q is not a date", o.date), "write year, month and day, as in 2026-11-28"}
	case o.date == "" && c.flags.Name() == "report":
		o.date = time.Now().Format(time.DateOnly)
	}
	if err := o.simulation.check(); err != nil {
		return err
	}
	if n := o.label.Count; c.flags.Lookup("count") != nil && (n < 1 || n > mostLabels) {
		return &usageError{fmt.Sprintf("--count must lie between 1 and %d, found %d", mostLabels, n), ""}
	}
	return o.readLayout()
}

// readLayout reads how large labels are and how they stand on paper.
func (o *paperOptions) readLayout() (err error) {
	layout := &o.label.Layout
	if o.size != "" {
		if layout.Size, err = page.ParseLabelSize(o.size); err != nil {
			return &usageError{"--size: " + err.Error(), fmt.Sprintf("write width and height from %s to %s, as in \"60 x 40 mm\"", page.LeastLabel, page.MostLabel)}
		}
	}
	if o.sheet != "" {
		if layout.Sheet, err = page.ParseLabelSheet(o.sheet); err == nil {
			err = layout.Check()
		}
		if err != nil {
			return &usageError{"--sheet: " + err.Error(), "write paper, columns x rows, margin and gap, as in \"A4, 3 x 7, margin 7 mm, gap 2.5 mm\"; two lengths, as in \"margin 7 x 15 mm\", are from the left and from above"}
		}
	}
	return nil
}

// run makes the document that the command is named by.
func (o *paperOptions) run(ctx context.Context, c call) error {
	if dir, name := filepath.Split(o.out); o.out != "" {
		if err := c.mayWrite(dir, o.force, name); err != nil {
			return err
		}
	}
	prep, err := c.prep(ctx, o.kit)
	if err != nil {
		return err
	}
	if err := refuseRead("--out", o.out, prep.File, prep.Kit.File, o.record); err != nil {
		return err
	}
	q := answer.Question{
		Prep: prep, Route: o.route, Settings: o.settings(), Date: o.date, Label: o.label, Origin: words.Origin{Version: version, Command: c.repeat()},
	}
	if o.record != "" {
		if q.Record, err = bench.LoadRecord(ctx, o.record, prep); err == nil && !q.Record.Finished() {
			err = &hinted{fmt.Errorf("%s: the batch is not finished", o.record), "minim made says what is still to come"}
		}
		if err != nil {
			return withStops(prep, err)
		}
	}
	a, err := c.ask(ctx, c.flags.Name(), q)
	if err != nil {
		return err
	}
	if r := q.Record; r != nil && c.flags.Name() == "label" && len(r.Differences) > 0 {
		tell(c.err, "the plan in %s and the prep with its kit as they are now differ; the label says what holds by the plan", r.File)
	}
	return o.keep(c, a)
}

// keep prints a document as Markdown, or writes it into the file that is named, with a
// picture beside Markdown where there is one.
func (o *paperOptions) keep(c call, a *answer.Answer) error {
	print := func() error {
		text, err := a.In("markdown")
		if err == nil {
			_, err = c.out.Write(text)
		}
		return err
	}
	if o.out == "" {
		return print()
	}
	dir, name := filepath.Split(o.out)
	var files []file
	format := "html"
	if strings.EqualFold(filepath.Ext(name), ".md") {
		format = "markdown"
		pictures, err := a.Beside(strings.TrimSuffix(name, filepath.Ext(name)))
		if err != nil {
			return err
		}
		files = append(files, pictures...)
	}
	text, err := a.In(format)
	if err != nil {
		return err
	}
	files = append(files, file{Name: name, Data: text})
	err = c.deliver(nil, a, func(*answer.Answer) (*staged, error) { return stage(dir, files, o.force) })
	if err != nil { // what was worked out is not lost
		_, _ = a.Beside("")
		_ = print()
	}
	return err
}
