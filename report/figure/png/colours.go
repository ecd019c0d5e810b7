package png

import (
	"cmp"
	"image"
	"image/color"
	"math"
	"slices"
)

// nearColour is how far apart two colours may be in red, green or blue, of 255, to be one:
// the edges of letters and lines have hundreds, which nobody tells apart.
const nearColour = 12

// mostColours that a picture with a table of colours may have.
const mostColours = 256

// shade is a colour of a picture, how many pixels have it, and its place in the table.
type shade struct {
	colour color.RGBA
	count  int
	place  uint8
}

// withFewColours gives each pixel one of a few colours by its place in a table of them: a quarter
// of the bytes, and of the time that they take to be written. The most frequent
// colours stay as they are.
func withFewColours(picture *image.RGBA) *image.Paletted {
	shades, pixels := shadesOf(picture)
	order := make([]int, len(shades))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(shades[b].count, shades[a].count) })
	var table []color.RGBA
	for _, i := range order {
		s := &shades[i]
		place, off := nearest(table, s.colour)
		if off > nearColour && len(table) < mostColours {
			place, table = len(table), append(table, s.colour)
		}
		s.place = uint8(place)
	}
	palette := make(color.Palette, len(table))
	for i, c := range table {
		palette[i] = c
	}
	few := image.NewPaletted(picture.Rect, palette)
	for i, shade := range pixels {
		few.Pix[i] = shades[shade].place
	}
	return few
}

// shadesOf lists the colours of a picture, and which of them each pixel has.
func shadesOf(picture *image.RGBA) (shades []shade, pixels []int32) {
	number := make(map[color.RGBA]int32)
	pixels = make([]int32, len(picture.Pix)/4)
	var last int32
	for i := range pixels {
		p := picture.Pix[4*i : 4*i+4 : 4*i+4]
		c := color.RGBA{R: p[0], G: p[1], B: p[2], A: p[3]}
		if len(shades) == 0 || shades[last].colour != c {
			var known bool
			if last, known = number[c]; !known {
				last = int32(len(shades))
				number[c], shades = last, append(shades, shade{colour: c})
			}
		}
		shades[last].count++
		pixels[i] = last
	}
	return shades, pixels
}

// nearest is the place of the nearest colour in a table, and how far off it is.
func nearest(table []color.RGBA, c color.RGBA) (place, off int) {
	off = math.MaxInt
	for i, t := range table {
		if d := max(apart(t.R, c.R), apart(t.G, c.G), apart(t.B, c.B)); d < off {
			place, off = i, d
		}
	}
	return place, off
}

func apart(a, b uint8) int { return int(max(a, b) - min(a, b)) }
