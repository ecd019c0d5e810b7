package answer

import (
	"cmp"
	"context"
	"errors"
	"fmt"
	"slices"

	"minim/report/data"
	"minim/report/figure"
	"minim/report/page"
	"minim/report/words"
	"minim/report/words/clause"
	"minim/report/words/glance"
	"minim/uncertainty/route"
)

// Answer is what a question comes to.
type Answer struct {
	// Comparison of the routes, or of the ways to correct what there is; nil of what compares
	// none. Where its verdict names none to use, there is no page.
	Comparison *route.Comparison
	// Batch that was made; nil where the question is of none.
	Batch    *words.Batch
	page     func(pictures ...page.Block) *page.Page
	glance   func() *glance.Screen // nil where the page is short by itself
	width    int                   // of a line of text
	data     data.Data
	pictures []picture
	// beside are the names of the files of the pictures that lie beside Markdown, in their order.
	beside []string
	drawn  []drawing
	kind   string
	encode func(*figure.Figure) ([]byte, error)
}

// picture is to be drawn. One that may be missing is left out, and said to be, where there is
// nothing to draw.
type picture struct {
	draw         func() (*figure.Figure, error)
	mayBeMissing bool
}

// drawn is how a picture of something is drawn.
func drawn[T any](draw func(T) (*figure.Figure, error), of T) func() (*figure.Figure, error) {
	return func() (*figure.Figure, error) { return draw(of) }
}

// screenWidth is how many characters a line of a screen has.
const screenWidth = 80

type format struct{ name, end string }

// formats that every answer has, with the ends of the names of files in them.
var formats = []format{{"text", ".txt"}, {"json", ".json"}, {"markdown", ".md"}, {"html", ".html"}, {"csv", ".csv"}}

// Formats are the names of those that every answer has.
func Formats() []string {
	return clause.Each(formats, func(f format) string { return f.name })
}

// kind is a kind of question, with the names of the pictures of its answer.
type kind struct {
	ask      func(ctx context.Context, q *Question) (*Answer, error)
	pictures []string
}

// kinds by their names; each stands in the file that answers it.
var kinds = map[string]kind{}

func answers(name string, ask func(ctx context.Context, q *Question) (*Answer, error), pictures ...string) bool {
	kinds[name] = kind{ask, pictures}
	return true
}

// Ask answers a question of a kind: "compare", "plan", "buy", "made", "rescue", "report",
// "sheet", "label", "kit" or "classes". Its errors are those of what works the answer out.
func Ask(ctx context.Context, kind string, q Question) (*Answer, error) {
	k, ok := kinds[kind]
	if !ok {
		return nil, fmt.Errorf("there is no kind of question %q", kind)
	}
	a, err := k.ask(ctx, &q)
	if err == nil {
		a.kind, a.encode, a.width = kind, q.PNG, cmp.Or(a.width, screenWidth)
	}
	return a, err
}

// FileNames are those of the files of an answer: all formats, and the pictures as SVG and PNG.
func FileNames(kind string) (names []string) {
	names = clause.Each(formats, func(f format) string { return kind + f.end })
	for _, name := range kinds[kind].pictures {
		names = append(names, name+".svg", name+".png")
	}
	return names
}

// In is the answer in a format, or its first picture as "svg" or "png", nil where there is
// none.
func (a *Answer) In(format string) ([]byte, error) {
	switch format {
	case "json":
		return a.data.JSON(), nil
	case "csv":
		return a.data.CSV(), nil
	}
	if a.Comparison != nil && a.Comparison.Verdict.Use < 0 {
		return nil, errNoRoute
	}
	var drawn []drawing
	if slices.Contains([]string{"html", "svg", "png"}, format) || len(a.beside) > 0 {
		var err error
		if drawn, err = a.draw(); err != nil {
			return nil, err
		}
	}
	var figures []page.Block
	for i, d := range drawn {
		if d.png == nil {
			continue
		}
		f := page.Figure{PNG: d.png, Alt: d.alt, Class: d.printed}
		if i < len(a.beside) {
			f.File = a.beside[i]
		}
		figures = append(figures, f)
	}
	switch format {
	case "text":
		return []byte(a.page().Text(a.width)), nil
	case "markdown":
		return a.page(figures...).Markdown(), nil
	case "html":
		return a.page(figures...).HTML()
	}
	if len(drawn) == 0 {
		return nil, nil
	}
	return map[string][]byte{"svg": drawn[0].svg, "png": drawn[0].png}[format], nil
}

// Screen is the whole of an answer for a window of so many columns.
func (a *Answer) Screen(columns int) (string, error) {
	if a.Comparison != nil && a.Comparison.Verdict.Use < 0 {
		return "", errNoRoute
	}
	return a.page().Text(columns), nil
}

// Glance is what is seen of it first: see package glance. Next is what to type next, "" for nothing. An
// answer of instruments has none.
func (a *Answer) Glance(columns int, next string) (string, error) {
	if a.Comparison != nil && a.Comparison.Verdict.Use < 0 {
		return "", errNoRoute
	}
	return a.glance().Text(columns, next), nil
}

var errNoRoute = errors.New("none of the routes can be used: the comparison says why")

// Files are the answer in all formats and its pictures, by the names of [FileNames]; missing
// says of each picture that is left out why.
func (a *Answer) Files() (files []File, missing []error, err error) {
	for _, f := range formats {
		text, err := a.In(f.name)
		if err != nil {
			return nil, nil, err
		}
		files = append(files, File{a.kind + f.end, text})
	}
	drawn, err := a.draw()
	for i, d := range drawn {
		name := a.pictureName(i)
		if d.missing != nil {
			missing = append(missing, fmt.Errorf("%s.svg is not drawn: %w", name, d.missing))
			continue
		}
		files = append(files, File{name + ".svg", d.svg}, File{name + ".png", d.png})
	}
	return files, missing, err
}

// Beside are the pictures as PNG under names that begin alike, which Markdown names them by from
// then on; with no name it leaves them out again.
func (a *Answer) Beside(name string) (files []File, err error) {
	if a.beside = nil; name == "" {
		return nil, nil
	}
	drawn, err := a.draw()
	if err != nil {
		return nil, err
	}
	for i, d := range drawn {
		file := name + clause.When(i > 0, "-"+a.pictureName(i)) + ".png"
		if d.png != nil {
			files = append(files, File{file, d.png})
		}
		a.beside = append(a.beside, file)
	}
	return files, nil
}

// pictureName is that of a picture; those beyond the names of their kind are further parts of the first.
func (a *Answer) pictureName(i int) string {
	names := kinds[a.kind].pictures
	if i >= len(names) {
		return fmt.Sprintf("%s-%d", names[0], i-len(names)+2)
	}
	return names[i]
}

// drawing is a picture that is drawn, or why it is missing.
type drawing struct {
	alt, printed string
	svg, png     []byte
	missing      error
}

// draw draws the pictures once.
func (a *Answer) draw() (list []drawing, err error) {
	if len(a.drawn) == len(a.pictures) {
		return a.drawn, nil
	}
	for _, p := range a.pictures {
		drawn, err := p.draw()
		if err != nil && p.mayBeMissing {
			list = append(list, drawing{missing: err})
			continue
		}
		if err != nil {
			return nil, err
		}
		d := drawing{alt: drawn.Alt, printed: drawn.Printed}
		if d.svg, err = drawn.SVG(); err != nil {
			return nil, err
		}
		if a.encode != nil {
			if d.png, err = a.encode(drawn); err != nil {
				return nil, err
			}
		}
		list = append(list, d)
	}
	a.drawn = list
	return list, nil
}
