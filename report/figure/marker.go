package figure

import (
	"image/color"
	"math"

	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"
)

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
