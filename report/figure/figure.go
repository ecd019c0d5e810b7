// Package figure draws with gonum/plot. Of a finished comparison: the strengths of
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
// A figure holds no date and repeats byte for byte.
package figure

import (
	"bytes"
	"fmt"

	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"
	"gonum.org/v1/plot/vg/vgimg"
)

// Figure is a picture that is laid out and can be drawn in either format.
type Figure struct {
	width, height vg.Length
	// alt says in words what the picture shows.
	alt   string
	paint func(*sheet)
}

// Alt says in words what the picture shows, for those who cannot see it.
func (f *Figure) Alt() string { return f.alt }

// dotsPerInch of a PNG, enough for print.
const dotsPerInch = 200

// PNG draws the figure at 200 dots per inch, on white.
func (f *Figure) PNG() ([]byte, error) {
	c := vgimg.NewWith(vgimg.UseWH(f.width, f.height), vgimg.UseDPI(dotsPerInch))
	f.drawOn(c)
	var out bytes.Buffer
	if _, err := (vgimg.PngCanvas{Canvas: c}).WriteTo(&out); err != nil {
		return nil, fmt.Errorf("drawing a PNG: %w", err)
	}
	return out.Bytes(), nil
}

// SVG draws the figure with its words as text elements.
func (f *Figure) SVG() ([]byte, error) {
	c := newSVG(f.width, f.height)
	f.drawOn(c)
	return c.document(f.alt)
}

func (f *Figure) drawOn(c vg.CanvasSizer) {
	s := &sheet{draw.New(c)}
	s.box(paper, 0, 0, f.width, f.height)
	f.paint(s)
}
