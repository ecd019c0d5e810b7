package figure

import (
	"image/color"
	"math"
	"strings"

	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"
)

// sheet is the paper of a figure. Lengths are in points from the bottom left.
type sheet struct{ draw.Canvas }

// align says which part of a text stands at its place.
type align float64

const (
	left   align = 0
	centre align = -0.5
	right  align = -1
)

// write puts a line of text on the base line y. An SVG is told the alignment.
func (s *sheet) write(style textStyle, a align, x, y vg.Length, words string) {
	words = clean(words)
	s.SetColor(style.Color)
	svg, _ := s.Canvas.Canvas.(*svgCanvas)
	if svg == nil {
		words = withoutForeign(words)
	}
	parts := runs(words)
	if svg != nil && len(parts) == 1 && !parts[0].up {
		svg.write(style, a, vg.Point{X: x, Y: y}, words, style.wide(parts[0]))
		return
	}
	x += vg.Length(a) * style.Width(words)
	for _, r := range parts {
		s.writeRun(style, r, x, y)
		x += style.wide(r)
	}
}

// writeRun puts a part of a line at its place. Spaces at its ends are room: an SVG does not draw
// them.
func (s *sheet) writeRun(style textStyle, r run, x, y vg.Length) {
	if trimmed := strings.TrimLeft(r.words, " "); trimmed != r.words {
		x += style.Width(r.words[:len(r.words)-len(trimmed)])
		r.words = trimmed
	}
	if r.words = strings.TrimRight(r.words, " "); r.words == "" {
		return
	}
	wide := style.wide(r)
	if r.up {
		style, y, r.words = style.higher(), y+raisedRise*style.Font.Size, lowered(r.words)
	}
	if svg, ok := s.Canvas.Canvas.(*svgCanvas); ok {
		svg.write(style, left, vg.Point{X: x, Y: y}, r.words, wide)
		return
	}
	s.FillString(style.face(), vg.Point{X: x, Y: y}, r.words)
}

// writeLines puts lines below each other from the base line y downwards and
// returns the base line that comes next.
func (s *sheet) writeLines(style textStyle, x, y vg.Length, lines []string) vg.Length {
	for _, line := range lines {
		s.write(style, left, x, y, line)
		y -= leading * style.Font.Size
	}
	return y
}

func (s *sheet) writeParagraphs(y vg.Length, list []paragraph) {
	for _, p := range list {
		y = s.writeLines(p.style, margin, y, p.lines)
	}
}

func (s *sheet) line(style draw.LineStyle, x0, y0, x1, y1 vg.Length) {
	s.StrokeLine2(style, x0, y0, x1, y1)
}

func (s *sheet) box(c color.Color, x0, y0, x1, y1 vg.Length) {
	s.FillPolygon(c, corners(x0, y0, x1, y1))
}

func (s *sheet) frame(style draw.LineStyle, x0, y0, x1, y1 vg.Length) {
	c := corners(x0, y0, x1, y1)
	s.StrokeLines(style, append(c, c[0], c[1]))
}

// inlay is a frame whose line lies within the box.
func (s *sheet) inlay(style draw.LineStyle, x0, y0, x1, y1 vg.Length) {
	half := min(style.Width, x1-x0, y1-y0) / 2
	s.frame(style, x0+half, y0+half, x1-half, y1-half)
}

// hatch draws rising lines inside a box.
func (s *sheet) hatch(style draw.LineStyle, x0, y0, x1, y1 vg.Length) {
	const apart = 3.5
	wide, high := x1-x0, y1-y0
	var p vg.Path
	for d := apart - high; d < wide; d += apart {
		from, to := max(d, 0), min(d+high, wide)
		p.Move(vg.Point{X: x0 + from, Y: y0 + from - d})
		p.Line(vg.Point{X: x0 + to, Y: y0 + to - d})
	}
	if len(p) > 0 {
		s.SetLineStyle(style)
		s.Stroke(p)
	}
}

func corners(x0, y0, x1, y1 vg.Length) []vg.Point {
	return []vg.Point{{X: x0, Y: y0}, {X: x1, Y: y0}, {X: x1, Y: y1}, {X: x0, Y: y1}}
}

// discs draws filled circles, rings hollow ones, crosses crosses; each as one
// path, which keeps an SVG small.
func (s *sheet) discs(at []vg.Point, radius vg.Length) {
	s.SetColor(blue)
	s.Fill(circles(at, radius))
}

func (s *sheet) rings(at []vg.Point, radius vg.Length) {
	s.SetLineStyle(ringLine)
	s.Stroke(circles(at, radius-ringLine.Width/2))
}

func (s *sheet) crosses(at []vg.Point, radius vg.Length) {
	r := radius - crossLine.Width/2
	var p vg.Path
	for _, c := range at {
		p.Move(c.Add(vg.Point{X: -r, Y: -r}))
		p.Line(c.Add(vg.Point{X: r, Y: r}))
		p.Move(c.Add(vg.Point{X: -r, Y: r}))
		p.Line(c.Add(vg.Point{X: r, Y: -r}))
	}
	s.SetLineStyle(crossLine)
	s.Stroke(p)
}

func circles(at []vg.Point, radius vg.Length) vg.Path {
	var p vg.Path
	for _, c := range at {
		p.Move(c.Add(vg.Point{X: radius}))
		p.Arc(c, radius, 0, 2*math.Pi)
		p.Close()
	}
	return p
}
