package figure

import (
	"image/color"
	"math"

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

	// vesselBlue is what goes on of a solution.
	vesselBlue = color.NRGBA{0x8F, 0xBF, 0xDD, 0xFF}
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
	wasLine    = draw.LineStyle{Color: soft, Width: 2}
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
	boldTitle = letters(11, ink, true)
)

// fonts draws and measures words in the fonts that come with the program.
var fonts = text.Plain{Fonts: font.NewCache(liberation.Collection())}

// textStyle is how letters look.
type textStyle struct{ text.Style }

func letters(size vg.Length, c color.Color, bold bool) textStyle {
	f := font.Font{Typeface: "Liberation", Variant: "Sans", Size: size}
	if bold {
		f.Weight = 3 // WeightBold of golang.org/x/image/font
	}
	return textStyle{text.Style{Color: c, Font: f, Handler: fonts}}
}

// mark is how routes with one number of dilutions are drawn: a colour, a shape
// and dashes of their own.
type mark struct {
	colour color.NRGBA
	// corners of the shape in a circle of radius 1 and the same area for all.
	corners []vg.Point
	dashes  []vg.Length
}

// orange is the fifth colour after Okabe and Ito, as those in style.go.
var orange = color.NRGBA{0xE6, 0x9F, 0x00, 0xFF}

// marks by number of dilutions; the last stands for all that are more. Circles
// are left to what is no route of the search.
var marks = []mark{
	{blue, regular(4, math.Pi/4), nil},
	{vermillion, regular(3, math.Pi/2), []vg.Length{7, 2.5}},
	{green, regular(4, 0), []vg.Length{1.5, 2}},
	{purple, regular(3, -math.Pi/2), []vg.Length{7, 2, 1.5, 2}},
	{orange, regular(5, math.Pi/2), []vg.Length{11, 2.5}},
	{ink, star(), []vg.Length{3.5, 2}},
}

// anyMark stands for all of them in a key.
var anyMark = mark{colour: soft, corners: regular(4, math.Pi/4)}

func markOf(dilutions int) *mark { return &marks[min(dilutions, len(marks)-1)] }

// regular returns the corners of a regular polygon of area π·0.8, the first of
// them in the given direction.
func regular(n int, first float64) (corners []vg.Point) {
	turn := 2 * math.Pi / float64(n)
	radius := math.Sqrt(0.8 * math.Pi / (float64(n) / 2 * math.Sin(turn)))
	for i := range n {
		sin, cos := math.Sincos(first + turn*float64(i))
		corners = append(corners, vg.Point{X: vg.Length(radius * cos), Y: vg.Length(radius * sin)})
	}
	return corners
}

// star returns the corners of a star with four points.
func star() (corners []vg.Point) {
	for i := range 8 {
		radius := 1.6 - 1.0*float64(i%2)
		sin, cos := math.Sincos(math.Pi / 4 * float64(i))
		corners = append(corners, vg.Point{X: vg.Length(radius * cos), Y: vg.Length(radius * sin)})
	}
	return corners
}

// markRadius is the usual size of a mark.
const markRadius = vg.Length(4)

// mark draws a mark as large as a circle of that radius, filled or hollow.
func (s *sheet) mark(m *mark, at vg.Point, radius vg.Length, filled bool) {
	outline := make([]vg.Point, len(m.corners))
	for i, c := range m.corners {
		outline[i] = at.Add(c.Scale(radius))
	}
	inner, edge := paper, draw.LineStyle{Color: m.colour, Width: 1.2}
	if filled {
		// A light edge parts marks that lie on each other.
		inner, edge = m.colour, draw.LineStyle{Color: paper, Width: 0.5}
	}
	s.FillPolygon(inner, outline)
	s.StrokeLines(edge, append(outline, outline[0], outline[1]))
}

// circle draws a circle, filled with a colour, with an edge.
func (s *sheet) circle(at vg.Point, radius vg.Length, inner color.Color, edge draw.LineStyle) {
	path := circles([]vg.Point{at}, radius)
	s.SetColor(inner)
	s.Fill(path)
	s.ring(at, radius, edge)
}

// ring draws a circle that is not filled.
func (s *sheet) ring(at vg.Point, radius vg.Length, edge draw.LineStyle) {
	s.SetLineStyle(edge)
	s.Stroke(circles([]vg.Point{at}, radius))
}
