package main

import (
	"fmt"
	"path/filepath"

	"minim/report/data"
	"minim/report/figure"
	"minim/report/figure/png"
	"minim/report/page"
)

// formats are the names of all formats, the same for every command, and fileEnds the ends of
// the names of files in them.
var (
	formats  = []string{"text", "json", "markdown", "html", "csv"}
	fileEnds = []string{"txt", "json", "md", "html", "csv"}
)

// screenWidth is how many characters a line of a screen has.
const screenWidth = 80

// renderer is all ways to write the result of a command, beside that on the kit as
// it is where there is one.
type renderer[R any] struct {
	// name of the files, without their ends.
	name string
	// page is what text, of so many characters a line, Markdown and HTML show; HTML holds the
	// pictures.
	page     func(result, before R, pictures ...page.Figure) *page.Page
	width    int
	data     func(result, before R) data.Data
	pictures []picture[R]
}

// picture is drawn as SVG and as PNG. One that may be missing is left out, and said to
// be, where there is nothing to draw.
type picture[R any] struct {
	file         string
	draw         func(R) (*figure.Figure, error)
	mayBeMissing bool
}

// alone makes the page of a result that has none before it.
func alone[R any](of func(result R, pictures ...page.Figure) *page.Page) func(result, before R, pictures ...page.Figure) *page.Page {
	return func(result, before R, pictures ...page.Figure) *page.Page { return of(result, pictures...) }
}

// aloneData renders a result that has none before it.
func aloneData[R any](of func(result R) data.Data) func(result, before R) data.Data {
	return func(result, before R) data.Data { return of(result) }
}

// print renders a result in a format.
func (r *renderer[R]) print(format string, result, before R) ([]byte, error) {
	if format != "html" {
		return r.render(format, result, before, nil)
	}
	drawn, _, err := r.draw(result)
	if err != nil {
		return nil, err
	}
	return r.render(format, result, before, drawn)
}

// render renders a result with pictures that are drawn.
func (r *renderer[R]) render(format string, result, before R, pictures []drawing) ([]byte, error) {
	switch {
	case format == "json":
		return r.data(result, before).JSON()
	case format == "csv":
		return r.data(result, before).CSV()
	}
	figures := make([]page.Figure, len(pictures))
	for i, p := range pictures {
		figures[i] = page.Figure{PNG: p.png, Alt: p.alt}
	}
	whole := r.page(result, before, figures...)
	switch format {
	case "text":
		return []byte(whole.Text(r.width)), nil
	case "markdown":
		return whole.Markdown(), nil
	}
	return whole.HTML()
}

// drawing is a picture that is drawn.
type drawing struct {
	file, alt string
	svg, png  []byte
}

// draw draws the pictures; missing says of each that is left out why.
func (r *renderer[R]) draw(result R) (list []drawing, missing []string, err error) {
	for _, p := range r.pictures {
		drawn, err := p.draw(result)
		if err != nil && p.mayBeMissing {
			missing = append(missing, fmt.Sprintf("%s.svg is not drawn: %s", p.file, err))
			continue
		}
		if err != nil {
			return nil, nil, err
		}
		d := drawing{file: p.file, alt: drawn.Alt()}
		if d.svg, err = drawn.SVG(); err != nil {
			return nil, nil, err
		}
		if d.png, err = png.Of(drawn); err != nil {
			return nil, nil, err
		}
		list = append(list, d)
	}
	return list, missing, nil
}

// mayKeep refuses a folder in which a file of the result would replace another, and with
// force as well one that is read, before anything is worked out for it.
func (r *renderer[R]) mayKeep(c console, o *destination, read ...string) error {
	if o.dir == "" {
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
		if err := refuseRead("--out", filepath.Join(o.dir, f.name), read...); err != nil {
			return err
		}
	}
	return c.mayWrite(o.dir, files, o.force)
}

// show prints a result in a format, as text with what to type next, and writes it into
// a folder, if there is one, with what else is to be written.
func (r *renderer[R]) show(c console, o *destination, next string, result, before R, more ...stager) error {
	printed, err := r.print(o.format, result, before)
	if err != nil {
		return err
	}
	if o.format == "text" {
		printed = append(printed, next...)
	}
	keep := func() (*staged, error) { return r.keep(o, result, before) }
	return c.deliver(printed, append([]stager{keep}, more...)...)
}

// keep stages all formats and pictures for a folder; without one there is nothing
// to keep.
func (r *renderer[R]) keep(o *destination, result, before R) (*staged, error) {
	if o.dir == "" {
		return new(staged), nil
	}
	pictures, missing, err := r.draw(result)
	if err != nil {
		return nil, err
	}
	var files []file
	for i, format := range formats {
		data, err := r.render(format, result, before, pictures)
		if err != nil {
			return nil, err
		}
		files = append(files, file{r.name + "." + fileEnds[i], data})
	}
	for _, p := range pictures {
		files = append(files, file{p.file + ".svg", p.svg}, file{p.file + ".png", p.png})
	}
	kept, err := stage(o.dir, files, o.force)
	if err == nil {
		kept.missing = missing
	}
	return kept, err
}
