package main

import (
	"fmt"
	"path/filepath"
	"slices"
	"strings"

	"minim/report"
	"minim/report/figure"
	"minim/report/figure/png"
	"minim/uncertainty/plan"
	"minim/uncertainty/rescue"
	"minim/uncertainty/route"
)

// formatNameList are the names of all formats, the same for every command.
var formatNameList = []string{"text", "json", "markdown", "csv"}

// renderer is all ways to write the result of a command, beside that on the kit as
// it is where there is one.
type renderer[R any] struct {
	// name of the files, without their ends.
	name string
	// formats in the order of formatNameList.
	formats  [4]func(result, before R) ([]byte, error)
	pictures []picture[R]
}

// picture is drawn as SVG and as PNG. One that may be missing is left out, and said to
// be, where there is nothing to draw.
type picture[R any] struct {
	file         string
	draw         func(R) (*figure.Figure, error)
	mayBeMissing bool
}

var comparisons = renderer[*route.Comparison]{
	name: "compare",
	formats: [4]func(c, before *route.Comparison) ([]byte, error){
		asText(report.Text), report.JSON, asText(report.Markdown), report.CSV,
	},
	pictures: []picture[*route.Comparison]{{"spread", figure.Spread, false}, {"budget", figure.Budget, false}},
}

var plans = renderer[*plan.Plan]{
	name: "plan",
	formats: [4]func(p, before *plan.Plan) ([]byte, error){
		asText(report.Plan), report.PlanJSON, asText(report.PlanMarkdown), report.PlanCSV,
	},
	pictures: []picture[*plan.Plan]{
		{"routes", figure.Trade, true},
		{"spread", func(p *plan.Plan) (*figure.Figure, error) { return figure.Spread(p.Comparison) }, false},
	},
}

var purchases = renderer[*plan.Purchase]{
	name: "buy",
	formats: [4]func(p, before *plan.Purchase) ([]byte, error){
		asText(report.Purchase), report.PurchaseJSON, asText(report.PurchaseMarkdown), report.PurchaseCSV,
	},
	pictures: []picture[*plan.Purchase]{{"readability", figure.Readability, true}},
}

var batches = renderer[*report.Batch]{
	name: "made",
	formats: [4]func(b, before *report.Batch) ([]byte, error){
		alone(func(b *report.Batch) ([]byte, error) { return []byte(report.Made(b)), nil }), alone(report.MadeJSON),
		alone(func(b *report.Batch) ([]byte, error) { return []byte(report.MadeMarkdown(b)), nil }), alone(report.MadeCSV),
	},
	pictures: []picture[*report.Batch]{
		{"made", figure.Batch, false},
	},
}

var rescues = renderer[*rescue.Rescue]{
	name: "rescue",
	formats: [4]func(r, before *rescue.Rescue) ([]byte, error){
		alone(func(r *rescue.Rescue) ([]byte, error) { return []byte(report.Rescue(r)), nil }), alone(report.RescueJSON),
		alone(func(r *rescue.Rescue) ([]byte, error) { return []byte(report.RescueMarkdown(r)), nil }), alone(report.RescueCSV),
	},
	pictures: []picture[*rescue.Rescue]{
		{"rescue", figure.Ways, false},
	},
}

// alone makes a renderer of one for a result that has none before it.
func alone[R any](render func(result R) ([]byte, error)) func(result, before R) ([]byte, error) {
	return func(result, before R) ([]byte, error) { return render(result) }
}

// fileEnds are the ends of the names of files, in the order of formatNameList.
var fileEnds = [...]string{"txt", "json", "md", "csv"}

// asText makes a renderer of one that cannot fail.
func asText[R any](words func(result, before R) string) func(result, before R) ([]byte, error) {
	return func(result, before R) ([]byte, error) { return []byte(words(result, before)), nil }
}

// checkFormat refuses a format that is not known.
func checkFormat(name string) error {
	if slices.Contains(formatNameList, name) {
		return nil
	}
	return &usageError{fmt.Sprintf("--format %s is not known", name), "the formats are " + formatNames("and")}
}

func formatNames(last string) string { return joined(formatNameList, last) }

// joined is "a, b and c", where "and" is the last word to join by.
func joined(words []string, last string) string {
	n := len(words) - 1
	if n < 1 {
		return strings.Join(words, "")
	}
	return strings.Join(words[:n], ", ") + " " + last + " " + words[n]
}

// print renders a result in a format.
func (r *renderer[R]) print(format string, result, before R) ([]byte, error) {
	return r.formats[slices.Index(formatNameList, format)](result, before)
}

// mayKeep refuses a folder in which a file of the result would replace another, and with
// force as well one that is read, before anything is worked out for it.
func (r *renderer[R]) mayKeep(c console, dir string, force bool, read ...string) error {
	if dir == "" {
		return nil
	}
	var files []file
	for _, end := range fileEnds {
		files = append(files, file{name: r.name + "." + end})
	}
	for _, p := range r.pictures {
		files = append(files, file{name: p.file + ".svg"}, file{name: p.file + ".png"})
	}
	for _, f := range files {
		if err := refuseRead("--out", filepath.Join(dir, f.name), read...); err != nil {
			return err
		}
	}
	return c.mayWrite(dir, files, force)
}

// show prints a result in a format, as text with what to type next, and writes it into
// a folder, if there is one, with what else is to be written.
func (r *renderer[R]) show(c console, s shown, result, before R, more ...stager) error {
	printed, err := r.print(s.format, result, before)
	if err != nil {
		return err
	}
	if s.format == "text" {
		printed = append(printed, s.next...)
	}
	keep := func() (*staged, error) { return r.keep(s.dir, s.force, result, before) }
	return c.deliver(printed, append([]stager{keep}, more...)...)
}

// shown is how a result is to be shown.
type shown struct {
	format, dir string
	force       bool
	next        string
}

// keep stages all formats and pictures for a folder; without one there is nothing
// to keep.
func (r *renderer[R]) keep(dir string, force bool, result, before R) (*staged, error) {
	if dir == "" {
		return new(staged), nil
	}
	var files []file
	var missing []string
	for i, render := range r.formats {
		data, err := render(result, before)
		if err != nil {
			return nil, err
		}
		files = append(files, file{r.name + "." + fileEnds[i], data})
	}
	for _, p := range r.pictures {
		drawn, err := p.draw(result)
		if err != nil && p.mayBeMissing {
			missing = append(missing, fmt.Sprintf("%s.svg is not drawn: %s", p.file, err))
			continue
		}
		if err != nil {
			return nil, err
		}
		svg, err := drawn.SVG()
		if err != nil {
			return nil, err
		}
		dots, err := png.Of(drawn)
		if err != nil {
			return nil, err
		}
		files = append(files, file{p.file + ".svg", svg}, file{p.file + ".png", dots})
	}
	kept, err := stage(dir, files, force)
	if err == nil {
		kept.missing = missing
	}
	return kept, err
}
