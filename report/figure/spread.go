package figure

import (
	"errors"

	"gonum.org/v1/plot/vg"

	"minim/report/words"
	"minim/report/words/picture"
	"minim/uncertainty/rescue"
	"minim/uncertainty/route"
)

// Columns of the spread figure, in points from the left.
const (
	namesFrom  = margin
	namesWide  = vg.Length(108)
	panelFrom  = vg.Length(182)
	panelTo    = panelFrom + bins*dot
	rightTo    = pageWidth - margin
	rowHeight  = vg.Length(50)
	axisHeight = vg.Length(32)
	keyHeight  = vg.Length(15)
)

// spread is the layout of the figure of all spreads.
type spread struct {
	c      *route.Comparison
	words  picture.Caption
	window window
	rows   []*row
	cannot []*route.Result
	// none is true when some batch holds nothing of the solute.
	none bool
}

// Spread lays out the figure of the spread of the strength of every route
// against the tolerance: a row of a hundred dots for each, of which every dot
// is one chance in a hundred, filled inside the tolerance and hollow outside.
// The axis shows a few tolerances; what lies beyond is piled up at its edges
// and counted. It returns an error when no route can be done.
func Spread(c *route.Comparison) (*Figure, error) {
	if c.Verdict.Use < 0 {
		return nil, errors.New("no route can be done, so there is no spread to draw")
	}
	order := ranked(c)
	return drawSpread(c, picture.OfRoutes(c, order), order), nil
}

func drawSpread(c *route.Comparison, words picture.Caption, order []*route.Result) *Figure {
	s := &spread{c: c, words: words, window: windowOf(c)}
	for _, r := range order {
		if !r.Possible {
			s.cannot = append(s.cannot, r)
			continue
		}
		row := newRow(c, r, s.window)
		s.rows = append(s.rows, row)
		s.none = s.none || row.none
	}
	height := s.headHeight() + s.plotHeight() + s.footHeight()
	return &Figure{width: pageWidth, height: height, Alt: clean(words.Alt), paint: func(on *sheet) {
		s.key().draw(on, headingOf(s.c.Prep).draw(on, height)-6)
		s.drawPlot(on, height-s.headHeight())
		s.drawFoot(on, s.footHeight())
	}}
}

func (s *spread) plotHeight() vg.Length {
	return 2*axisHeight + keyHeight + vg.Length(len(s.rows))*rowHeight
}

// x is the place of a strength on the paper, held inside the panel.
func (s *spread) x(v float64) vg.Length {
	return panelFrom + vg.Length(min(max(s.window.at(v), 0), bins))*dot
}

// drawPlot draws the axes, the tolerance and the rows below the height top.
func (s *spread) drawPlot(on *sheet, top vg.Length) {
	top -= axisHeight
	bottom := top - keyHeight - vg.Length(len(s.rows))*rowHeight
	s.drawTolerance(on, bottom, top)
	s.drawHeadings(on, top)
	y := top - keyHeight
	for _, r := range s.rows {
		y -= rowHeight
		s.drawRow(on, r, y)
	}
	s.drawMarks(on, bottom, top)
	s.drawAxes(on, bottom, top)
}

// Batch lays out the figure of the spread of one batch: as it was planned, as it was
// made, and as it will be when it is corrected as recommended, in the form of [Spread].
func Batch(b *words.Batch) (*Figure, error) {
	c := b.Spread()
	return drawSpread(c, picture.OfBatch(c, b.Finished()), inOrder(c)), nil
}

// Ways lays out the figure of the spread of the ways to correct a solution, in the form
// of [Spread].
func Ways(r *rescue.Rescue) (*Figure, error) {
	return drawSpread(r.Comparison, picture.OfWays(r.Comparison), inOrder(r.Comparison)), nil
}

// inOrder are the results as they stand.
func inOrder(c *route.Comparison) []*route.Result {
	list := make([]*route.Result, len(c.Results))
	for i := range c.Results {
		list[i] = &c.Results[i]
	}
	return list
}
