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
	hand
	c      *route.Comparison
	words  picture.Caption
	window window
	rows   []*row
	// high is how high each of them is.
	high   vg.Length
	cannot []*route.Result
	// none is true when some batch holds nothing of the solute.
	none bool
	// before are the routes on the kit as it is, by their names, where c is on a changed one.
	before map[string]*route.Result
}

// Spread lays out the figure of the spread of the strength of every route
// against the tolerance: a row of a hundred dots for each, of which every dot
// is one chance in a hundred, filled inside the tolerance and hollow outside.
// The axis shows a few tolerances; what lies beyond is piled up at its edges
// and counted. It returns an error when no route can be done.
func Spread(c *route.Comparison) (*Figure, error) { return SpreadChanged(c, nil) }

// SpreadChanged is [Spread] of a comparison on a changed kit, with that on the kit as it is beside it; nil for
// none.
func SpreadChanged(c, before *route.Comparison) (*Figure, error) {
	if c.Verdict.Use < 0 {
		return nil, errors.New("no route can be done, so there is no spread to draw")
	}
	order := ranked(c)
	return drawSpread(c, before, picture.OfRoutes(c, order), order, windowOf(c))
}

// drawSpread lays it out for both kinds of picture.
func drawSpread(c, before *route.Comparison, words picture.Caption, order []*route.Result, w window) (*Figure, error) {
	return lettered(c.Prep, namesOf(inOrder(c)), func(h hand) (*Figure, error) { return laySpread(h, c, before, words, order, w), nil })
}

func laySpread(h hand, c, before *route.Comparison, words picture.Caption, order []*route.Result, w window) *Figure {
	s := &spread{hand: h, c: c, words: words, window: w}
	if before != nil {
		s.before = possible(before)
	}
	for _, r := range order {
		if !r.Possible {
			s.cannot = append(s.cannot, r)
			continue
		}
		row := newRow(c, r, s.window)
		s.rows = append(s.rows, row)
		s.none = s.none || row.none
	}
	s.high = s.highest()
	height := s.headHeight() + s.plotHeight() + s.footHeight()
	return &Figure{width: pageWidth, height: height, Alt: clean(words.Alt), paint: func(on *sheet) {
		s.key().draw(on, headingOf(s.hand, s.c.Prep, s.words.Title).draw(on, height)-6)
		s.drawPlot(on, height-s.headHeight())
		s.drawFoot(on, s.footHeight())
	}}
}

func (s *spread) plotHeight() vg.Length {
	return 2*axisHeight + keyHeight + vg.Length(len(s.rows))*s.high
}

// x is the place of a strength on the paper, held inside the panel.
func (s *spread) x(v float64) vg.Length {
	return panelFrom + vg.Length(min(max(s.window.at(v), 0), bins))*dot
}

// drawPlot draws the axes, the tolerance and the rows below the height top.
func (s *spread) drawPlot(on *sheet, top vg.Length) {
	top -= axisHeight
	bottom := top - keyHeight - vg.Length(len(s.rows))*s.high
	s.drawTolerance(on, bottom, top)
	s.drawHeadings(on, top)
	y := top - keyHeight
	for _, r := range s.rows {
		y -= s.high
		s.drawRow(on, r, y)
	}
	s.drawMarks(on, bottom, top)
	s.drawAxes(on, bottom, top)
}

// Batch lays out the figure of the spread of one batch: as it was planned, as it was
// made, and as it will be when it is corrected as recommended, in the form of [Spread]. The axis
// holds the batch as made whole.
func Batch(b *words.Batch) (*Figure, error) {
	c := b.Spread()
	return drawSpread(c, nil, picture.OfBatch(c, b.Finished()), inOrder(c), windowOn(c))
}

// Ways lays out the figure of the spread of the ways to correct a solution, in the form
// of [Spread].
func Ways(r *rescue.Rescue) (*Figure, error) {
	return drawSpread(r.Comparison, nil, picture.OfWays(r.Comparison), inOrder(r.Comparison), windowOn(r.Comparison))
}

// possible are the results of routes that can be done, by their names.
func possible(c *route.Comparison) map[string]*route.Result {
	list := make(map[string]*route.Result, len(c.Results))
	for i := range c.Results {
		if r := &c.Results[i]; r.Possible {
			list[r.Route.Name] = r
		}
	}
	return list
}

// inOrder are the results as they stand.
func inOrder(c *route.Comparison) []*route.Result {
	list := make([]*route.Result, len(c.Results))
	for i := range c.Results {
		list[i] = &c.Results[i]
	}
	return list
}
