package png

import (
	"image"
	"image/color"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
)

// painted is a picture with paper, lines, and shades at their edges.
func painted(shade func(r *rand.Rand) color.RGBA) *image.RGBA {
	r := rand.New(rand.NewPCG(1, 1))
	picture := image.NewRGBA(image.Rect(0, 0, 200, 100))
	for y := range 100 {
		for x := range 200 {
			c := color.RGBA{255, 255, 255, 255}
			switch {
			case x%20 == 0:
				c = color.RGBA{0, 114, 178, 255}
			case x%20 == 1:
				c = shade(r)
			}
			picture.SetRGBA(x, y, c)
		}
	}
	return picture
}

// Of a few colours with the shades between them each pixel keeps its own but for what nobody
// sees, and paper and lines theirs.
func TestColoursStay(t *testing.T) {
	picture := painted(func(r *rand.Rand) color.RGBA {
		part := r.Float64()
		return color.RGBA{uint8(255 * (1 - part)), uint8(114*part + 255*(1-part)), uint8(178*part + 255*(1-part)), 255}
	})
	few := withFewColours(picture)
	assert.Less(t, len(few.Palette), 40)
	for y := range 100 {
		for x := range 200 {
			is, was := few.At(x, y).(color.RGBA), picture.RGBAAt(x, y)
			_, off := nearest([]color.RGBA{is}, was)
			if x%20 == 1 {
				assert.LessOrEqual(t, off, nearColour)
			} else {
				assert.Zero(t, off)
			}
		}
	}
}

// Of a picture with any colours as many as there may be are kept, the others are the nearest of
// them.
func TestManyColours(t *testing.T) {
	picture := painted(func(r *rand.Rand) color.RGBA {
		return color.RGBA{uint8(r.IntN(256)), uint8(r.IntN(256)), uint8(r.IntN(256)), 255}
	})
	few := withFewColours(picture)
	assert.Len(t, few.Palette, mostColours)
	assert.Equal(t, color.RGBA{0, 114, 178, 255}, few.At(20, 50))
	assert.Equal(t, color.RGBA{255, 255, 255, 255}, few.At(30, 50))
	for y := range 100 {
		_, off := nearest([]color.RGBA{few.At(21, y).(color.RGBA)}, picture.RGBAAt(21, y))
		assert.Less(t, off, 90)
	}
}
