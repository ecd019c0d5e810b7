package figure

import (
	"image/color"

	"gonum.org/v1/plot/font"
	"gonum.org/v1/plot/font/liberation"
	"gonum.org/v1/plot/text"
	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"
)

// Colours after M. Okabe and K. Ito, Color Universal Design (2008), which
// readers with any colour vision tell apart; from memory. Nothing is told by
// colour alone.
var (
	blue       = color.NRGBA{0x00, 0x72, 0xB2, 0xFF}
	vermillion = color.NRGBA{0xD5, 0x5E, 0x00, 0xFF}
	purple     = color.NRGBA{0xCC, 0x79, 0xA7, 0xFF}
	green      = color.NRGBA{0x00, 0x9E, 0x73, 0xFF}

	paper  = color.NRGBA{0xFF, 0xFF, 0xFF, 0xFF}
	ink    = color.NRGBA{0x1A, 0x1A, 0x1A, 0xFF}
	soft   = color.NRGBA{0x59, 0x59, 0x59, 0xFF}
	faint  = color.NRGBA{0xC4, 0xC4, 0xC4, 0xFF}
	shaded = color.NRGBA{0xDC, 0xEE, 0xF9, 0xFF} // sky blue 56B4E9, thinned
)

// Sizes of a figure, in points.
const (
	// pageWidth is 8 inches: A4 with narrow margins.
	pageWidth = 8 * vg.Inch
	margin    = vg.Length(14)
	// leading is the distance of two lines over the size of their letters.
	leading = 1.2
)

// Line styles: each colour has its own dashes.
var (
	axisLine   = draw.LineStyle{Color: ink, Width: 0.8}
	groundLine = draw.LineStyle{Color: faint, Width: 0.6}
	limitLine  = draw.LineStyle{Color: blue, Width: 1}
	targetLine = draw.LineStyle{Color: ink, Width: 1, Dashes: []vg.Length{4, 2.5}}
	frameLine  = draw.LineStyle{Color: ink, Width: 1.6}
	ringLine   = draw.LineStyle{Color: vermillion, Width: 0.8}
	crossLine  = draw.LineStyle{Color: ink, Width: 0.9}
	hatchLine  = draw.LineStyle{Color: vermillion, Width: 0.9}
	restLine   = draw.LineStyle{Color: soft, Width: 0.8}
)

// otherLine marks the limits of the i-th tolerance after the first.
func otherLine(i int) draw.LineStyle { return otherLines[i%len(otherLines)] }

var otherLines = []draw.LineStyle{
	{Color: purple, Width: 1.2, Dashes: []vg.Length{1.2, 1.8}},
	{Color: green, Width: 1.2, Dashes: []vg.Length{7, 2, 1.2, 2}},
	{Color: soft, Width: 1.2, Dashes: []vg.Length{9, 3}},
}

// Letters.
var (
	titleText = letters(15, ink, true)
	bodyText  = letters(10.5, ink, false)
	nameText  = letters(9.5, ink, false)
	boldText  = letters(9.5, ink, true)
	figures   = letters(12, ink, false)
	boldFigs  = letters(12, ink, true)
	smallText = letters(8, soft, false)
	smallInk  = letters(8, ink, false)
	tagText   = letters(8, paper, true)
	smallBold = letters(8, ink, true)
)

// fonts draws and measures words in the fonts that come with the program.
var fonts = text.Plain{Fonts: font.NewCache(liberation.Collection())}

func letters(size vg.Length, c color.Color, bold bool) text.Style {
	f := font.Font{Typeface: "Liberation", Variant: "Sans", Size: size}
	if bold {
		f.Weight = 3 // WeightBold of golang.org/x/image/font
	}
	return text.Style{Color: c, Font: f, Handler: fonts}
}
