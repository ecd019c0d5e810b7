package figure

import (
	"bytes"
	"fmt"
	"html"
	"strings"

	"gonum.org/v1/plot/font"
	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/vgsvg"
)

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
func (c *svgCanvas) write(f font.Face, a align, pt vg.Point, words string) {
	c.attributes = append(c.attributes, fmt.Sprintf("text-anchor=\"%s\" textLength=\"%.5g\" lengthAdjust=\"spacingAndGlyphs\"",
		anchors[a], f.Width(words).Points()))
	c.FillString(f, pt, words)
}

// document is the finished file; alt is its text alternative.
func (c *svgCanvas) document(alt string) ([]byte, error) {
	var raw bytes.Buffer
	if _, err := c.WriteTo(&raw); err != nil {
		return nil, fmt.Errorf("drawing an SVG: %w", err)
	}
	doc := strings.ReplaceAll(raw.String(), "font-family:Liberation Sans;",
		"font-family:'Liberation Sans',Arial,Helvetica,sans-serif;")
	doc = strings.Replace(doc, "<svg ", fmt.Sprintf("<svg role=\"img\" aria-label=\"%s\" ", html.EscapeString(alt)), 1)
	parts := strings.Split(doc, "<text ")
	for i, attributes := range c.attributes {
		parts[i+1] = "<text " + attributes + " " + parts[i+1]
	}
	return []byte(strings.Join(parts, "")), nil
}
