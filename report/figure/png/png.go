// Package png draws the pictures of package figure as PNG. It stands apart, since it needs
// what draws letters and lines in pixels, which an SVG goes without.
package png

import (
	"bytes"
	"fmt"
	"image"
	"image/png"

	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/vgimg"
)

// dotsPerInch of a PNG, enough for print.
const dotsPerInch = 200

// figure is a picture that is laid out, with its size in points, which may differ in pixels.
type figure[F any] interface {
	InPixels() F
	Size() (width, height vg.Length)
	Draw(c vg.CanvasSizer)
}

// Of draws a figure at 200 dots per inch, on white.
func Of[F figure[F]](drawn F) ([]byte, error) {
	f := drawn.InPixels()
	c := vgimg.NewWith(vgimg.UseWH(f.Size()), vgimg.UseDPI(dotsPerInch))
	f.Draw(c)
	var out bytes.Buffer
	// More effort makes the file a seventh smaller, in twice the time.
	encoder := png.Encoder{CompressionLevel: png.BestSpeed}
	if err := encoder.Encode(&out, withFewColours(c.Image().(*image.RGBA))); err != nil {
		return nil, fmt.Errorf("drawing a PNG: %w", err)
	}
	return out.Bytes(), nil
}
