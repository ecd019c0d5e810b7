package figure

import (
	"fmt"

	"gonum.org/v1/plot/vg"

	"minim/report/words/picture"
	"minim/uncertainty/route"
)

// drawRow draws a row whose lower edge stands at the height y.
func (s *spread) drawRow(on *sheet, r *row, y vg.Length) {
	ground := y + 4
	on.line(groundLine, namesFrom, y, rightTo, y)
	shift := func(points []vg.Point) []vg.Point {
		moved := make([]vg.Point, len(points))
		for i, p := range points {
			moved[i] = p.Add(vg.Point{X: panelFrom, Y: ground})
		}
		return moved
	}
	on.discs(shift(r.inside), dotRadius)
	on.rings(shift(r.outside), dotRadius)
	on.crosses(shift(r.empty), dotRadius)
	s.drawCounts(on, r, ground+dot*pileHigh+2.5)
	s.drawRowWords(on, r.result, y)
}

// drawCounts writes over the piles at the edges how many dots are too weak and
// too strong; without a tolerance, how many lie beyond the edges.
func (s *spread) drawCounts(on *sheet, r *row, y vg.Length) {
	style, below, above, weak, strong := smallBold, r.weak, r.strong, picture.Labels.TooWeak, picture.Labels.TooStrong
	if len(s.c.Prep.Tolerances) == 0 {
		style, below, above, weak, strong = smallText, r.below, r.above, picture.Labels.Weaker, picture.Labels.Stronger
	}
	if below > 0 {
		on.write(style, right, panelFrom-pileGap, y, fmt.Sprintf("%d %s", below, weak))
	}
	if above > 0 {
		on.write(style, left, panelTo+pileGap, y, fmt.Sprintf("%d %s", above, strong))
	}
}

// drawRowWords writes the name and the spread on the left, the chance and what
// is left over on the right, and frames the route to use.
func (s *spread) drawRowWords(on *sheet, r *route.Result, y vg.Length) {
	name, value := nameText, figures
	if r == &s.c.Results[s.c.Verdict.Use] {
		name, value = boldText, boldFigs
		on.frameRoute(y, y+rowHeight, s.words.Tag)
	}
	next := on.writeLines(name, namesFrom, y+rowHeight-17, wrap(name, namesWide, 2, r.Route.Name))
	spread := smallText
	if !r.Informative {
		spread = smallBold
	}
	gives, chance, leftOver := picture.Beside(s.c.Prep, r)
	on.writeLines(spread, namesFrom, next, wrap(spread, namesWide, 2, gives))
	on.write(value, right, rightTo, y+rowHeight-24, chance)
	on.write(smallText, right, rightTo, y+rowHeight-37, leftOver)
}

// frameRoute frames the route to use, with a word on the frame.
func (s *sheet) frameRoute(bottom, top vg.Length, words string) {
	s.frame(frameLine, namesFrom-6, bottom, rightTo+6, top)
	wide := 1.2*tagText.Width(words) + 8
	s.box(ink, namesFrom-6, top-5, namesFrom-6+wide, top+6)
	s.write(tagText, centre, namesFrom-6+wide/2, top-2.5, words)
}
