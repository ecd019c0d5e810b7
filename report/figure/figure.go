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
	"bytes"
	"fmt"
	"html"
	"strings"

	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"
	"gonum.org/v1/plot/vg/vgsvg"
)

// Figure is a picture that is laid out and can be drawn.
type Figure struct {
	width, height vg.Length
	// Printed names the size that it is printed at on a page; "" for any.
	Printed string
	// Alt says in words what the picture shows, for those who cannot see it.
	Alt   string
	paint func(*sheet)
	// pixels is the figure as it is drawn in pixels, where that differs; else nil.
	pixels func() *Figure
}

// InPixels is the figure as it is drawn in pixels, with letters that the font has.
func (f *Figure) InPixels() *Figure {
	if f.pixels == nil {
		return f
	}
	return f.pixels()
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

// svgCanvas draws an SVG whose words keep their places when the font they were
// measured with is not there. vgsvg names Liberation Sans alone and places each
// text by its left end, so another font would be a serif and run into its
// neighbours. Here the font has successors of the same widths (Arial,
// Helvetica), and each text states the length it must fill and the end it is
// held by. No font is embedded: that would add a megabyte for two weights.
type svgCanvas struct {
	*vgsvg.Canvas
	// attributes of the text elements, in order.
	attributes []string
}

func newSVG(width, height vg.Length) *svgCanvas {
	return &svgCanvas{Canvas: vgsvg.NewWith(vgsvg.UseWH(width, height))}
}

// anchors are the words of SVG for the alignments.
var anchors = map[align]string{left: "start", centre: "middle", right: "end"}

// write draws one text element.
func (c *svgCanvas) write(style textStyle, a align, pt vg.Point, words string, wide vg.Length) {
	c.attributes = append(c.attributes, fmt.Sprintf("text-anchor=\"%s\" textLength=\"%.5g\" lengthAdjust=\"spacingAndGlyphs\"",
		anchors[a], wide.Points()))
	c.FillString(style.face(), pt, words)
}

// document is the finished file; alt is its text alternative.
func (c *svgCanvas) document(alt string) ([]byte, error) {
	var raw bytes.Buffer
	if _, err := c.WriteTo(&raw); err != nil {
		return nil, fmt.Errorf("drawing an SVG: %w", err)
	}
	doc := strings.ReplaceAll(raw.String(), "font-family:Liberation Sans;",
		"font-family:'Liberation Sans',Arial,Helvetica,sans-serif;")
	doc = strings.Replace(doc, "<svg ", fmt.Sprintf("<svg %s=\"img\" %s=\"%s\" ", "role", "aria-label", html.EscapeString(alt)), 1)
	parts := strings.Split(doc, "<text ")
	for i, attributes := range c.attributes {
		parts[i+1] = "<text " + attributes + " " + parts[i+1]
	}
	return []byte(strings.Join(parts, "")), nil
}
