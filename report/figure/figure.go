// Package figure draws with the canvas of gonum/plot (its vg, font and text; not the
// package plot itself). Of a finished comparison: the strengths of
// all routes against the tolerance, and what spoils them. Of a search: what a small
// give or take costs in left over; and of the question what to buy: what the
// readability of a balance does. It reckons nothing; counts, quantiles, shares and
// the verdict come from the comparison or the search.
//
// A row of a hundred dots, one for each chance in a hundred, is a quantile dotplot: M. Kay,
// T. Kola, J. R. Hullman and S. A. Munson, "When (ish) is My Bus?", CHI 2016,
// doi:10.1145/2858036.2858558 (from memory). They show 20 to 100 dots, stacked; here they
// stand beside each other in a row for each route.
//
// It draws SVG by itself. What draws pixels for a PNG stands in figure/png, so that a program
// which shows SVG alone goes without it.
//
// A figure holds no date and repeats byte for byte.
package figure

import (
	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"
)

// Figure is a picture that is laid out and can be drawn.
type Figure struct {
	width, height vg.Length
	// Alt says in words what the picture shows, for those who cannot see it.
	Alt   string
	paint func(*sheet)
}

// Size of the paper, in points.
func (f *Figure) Size() (width, height vg.Length) { return f.width, f.height }

// SVG draws the figure with its words as text elements.
func (f *Figure) SVG() ([]byte, error) {
	c := newSVG(f.width, f.height)
	f.Draw(c)
	return c.document(f.Alt)
}

// Draw draws the figure on a canvas of its size, on white.
func (f *Figure) Draw(c vg.CanvasSizer) {
	s := &sheet{draw.New(c)}
	s.box(paper, 0, 0, f.width, f.height)
	f.paint(s)
}
