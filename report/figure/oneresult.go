package figure

import (
	"math"

	"gonum.org/v1/plot/vg"

	"minim/report/words/picture"
	"minim/uncertainty"
	"minim/uncertainty/route"
)

// Sizes of the figure of one result, in points. It is printed at this size: half the text of a
// report wide, with letters of 8 points.
const (
	oneWide  = 85 * vg.Millimeter
	oneHigh  = 45 * vg.Millimeter
	oneEdge  = vg.Length(3)
	oneBins  = 46
	oneDot   = (oneWide - 2*oneEdge) / oneBins
	oneBar   = vg.Length(8)
	oneLines = 3
)

// oneResult is the layout of one result.
type oneResult struct {
	hand
	picture.One
	c             *route.Comparison
	window        window
	title, stated []string
	key           [][]keyItem
}

// OneResult lays out one result that is possible for a report, 85 × 45 mm with letters of 8
// points: what it comes to, the strength with what it may be off by, a hundred dots against the
// tolerance, and the largest shares of the variance as one bar.
func OneResult(c *route.Comparison, r *route.Result) (*Figure, error) {
	alone := *c
	alone.Results, alone.Verdict.Use = []route.Result{*r}, 0
	words, w := picture.OfOne(c, r), holding(&alone)
	return lettered(c.Prep, namesOf(inOrder(&alone)), func(h hand) (*Figure, error) {
		o := &oneResult{hand: h, One: words, c: &alone, window: w}
		o.title = h.title(smallBold, oneWide-2*oneEdge, 2, o.Title)
		o.stated = h.wrap(smallInk, oneWide-2*oneEdge, 1, o.Stated)
		o.key = o.lines()
		return &Figure{width: oneWide, height: oneHigh, Printed: "one", Alt: clean(o.Alt), paint: o.draw}, nil
	})
}

// holding is a window that holds the tolerance and all dots of one result.
func holding(c *route.Comparison) window {
	values, l, target := hundred(&c.Results[0]), limitsOf(c), c.Prep.Target.Value
	low, high := math.Min(values[0], target), math.Max(values[len(values)-1], target)
	for _, v := range ends(l) {
		low, high = math.Min(low, v), math.Max(high, v)
	}
	if !(high-low > narrowest*target) {
		low, high = low-target/10, high+target/10
	}
	return covering(l, low, high, oneBins)
}

// covering is a window of so many bins that holds a range whole. A finite limit lies between two
// bins, and both do where they are a bin apart or more.
func covering(l uncertainty.Limits, low, high float64, count int) window {
	step := (high - low) / float64(count-2)
	if wide := l.Upper - l.Lower; !math.IsInf(wide, 0) && wide >= step {
		step = wide / math.Floor(wide/step)
	}
	edge := low
	if list := ends(l); len(list) > 0 {
		edge = list[0]
	}
	return window{edge - step*math.Ceil((edge-low)/step), step, count}
}

// lines are the shares by letters, as many beside each other as there is room for.
func (o *oneResult) lines() [][]keyItem {
	const columns = 2
	wide := (oneWide - 2*oneEdge) / columns
	var rows [][]keyItem
	for i, p := range o.Portions {
		if i%columns == 0 {
			rows = append(rows, nil)
		}
		share := " " + p.Share
		last := &rows[len(rows)-1]
		*last = append(*last, keyItem{style: smallInk, words: o.cut(smallInk, wide-14-smallInk.Width(share), p.Name) + share})
	}
	return rows
}

// x is the place of a strength, held inside the panel.
func (o *oneResult) x(v float64) vg.Length {
	return oneEdge + vg.Length(math.Min(math.Max(o.window.at(v), 0), oneBins))*oneDot
}
