package figure

import (
	"errors"
	"math"

	"gonum.org/v1/plot/vg"

	"minim/report/words/picture"
	"minim/uncertainty/route"
)

// Columns of the budget figure, in points from the left: the route, its
// influences up to their right ends, their letters, the bars, the shares.
const (
	influencesFrom = namesFrom + namesWide + 8
	influencesTo   = vg.Length(312)
	sharedAt       = influencesTo + 8
	assumedAt      = influencesTo + 17
	barsFrom       = influencesTo + 25
	barsTo         = rightTo - 40
	lineHeight     = vg.Length(12)
	barHeight      = vg.Length(8)
	panelGap       = vg.Length(16)
	// endGap stands between the panels and the axes.
	endGap = vg.Length(10)
)

// budget is the layout of the figure of all budgets.
type budget struct {
	hand
	c      *route.Comparison
	words  picture.Caption
	panels []*panel
	cannot []*route.Result
	// low and high are the ends of the axis, in percent.
	low, high float64
	ticks     []tick
}

// Budget lays out the figure of what spoils the strength by the route to use: a bar for each of
// its largest influences as its share of the variance, and one for the rest. It returns an error
// when no route can be done.
func Budget(c *route.Comparison) (*Figure, error) {
	if c.Verdict.Use < 0 {
		return nil, errors.New("no route can be done, so there is no budget to draw")
	}
	return drawBudget(c, []*route.Result{&c.Results[c.Verdict.Use]})
}

// Budgets is [Budget] of all routes, in the order of [Spread].
func Budgets(c *route.Comparison) (*Figure, error) {
	if c.Verdict.Use < 0 {
		return Budget(c)
	}
	return drawBudget(c, ranked(c))
}

func drawBudget(c *route.Comparison, order []*route.Result) (*Figure, error) {
	return lettered(c.Prep, namesOf(inOrder(c)), func(h hand) (*Figure, error) { return layBudget(h, c, order), nil })
}

func layBudget(h hand, c *route.Comparison, order []*route.Result) *Figure {
	b := &budget{hand: h, c: c, words: picture.OfBudget(c, order, largest)}
	for _, r := range order {
		if !r.Possible {
			b.cannot = append(b.cannot, r)
			continue
		}
		b.panels = append(b.panels, newPanel(h, c, r))
	}
	b.scale()
	height := b.headHeight() + b.plotHeight() + b.footHeight()
	return &Figure{width: pageWidth, height: height, Alt: clean(b.words.Alt), paint: func(on *sheet) {
		b.drawHead(on, height)
		b.drawPlot(on, height-b.headHeight())
		on.writeParagraphs(b.footHeight()-8, b.paragraphs())
	}}
}

// scale fits the axis to the bars, from zero or from the most negative share to
// a mark beyond the largest.
func (b *budget) scale() {
	for _, p := range b.panels {
		for _, bar := range p.bars {
			b.low, b.high = math.Min(b.low, 100*bar.share), math.Max(b.high, 100*bar.share)
		}
	}
	if b.high == b.low {
		b.high = 100
	}
	marks := ticker{6}
	step, _ := marks.step(b.high - b.low)
	const slack = 1e-9
	b.low, b.high = step*math.Floor(b.low/step+slack), step*math.Ceil(b.high/step-slack)
	b.ticks = marks.ticks(b.low, b.high)
}

// x is the place of a share in percent.
func (b *budget) x(percent float64) vg.Length {
	return barsFrom + (barsTo-barsFrom)*vg.Length((percent-b.low)/(b.high-b.low))
}

func (b *budget) plotHeight() vg.Length {
	h := 2 * (axisHeight + endGap)
	for _, p := range b.panels {
		h += p.height
	}
	return h
}

// drawPlot draws the axes and the panels below the height top.
func (b *budget) drawPlot(on *sheet, top vg.Length) {
	top -= axisHeight
	bottom := top - b.plotHeight() + 2*axisHeight
	for _, t := range b.ticks {
		on.line(groundLine, b.x(t.value), bottom, b.x(t.value), top)
	}
	b.drawHeadings(on, top)
	y := top - endGap
	for _, p := range b.panels {
		b.drawPanel(on, p, y)
		y -= p.height
	}
	across := axis{barsFrom, barsTo, b.x}
	across.draw(on, top, 1, b.ticks, picture.Labels.Share)
	across.draw(on, bottom, -1, b.ticks, picture.Labels.Share)
}

func (b *budget) drawHeadings(on *sheet, top vg.Length) {
	y := top + 6
	on.write(smallText, left, namesFrom, y+9.5, b.words.Rows)
	on.write(smallText, left, namesFrom, y, b.words.Gives)
	on.write(smallText, right, influencesTo, y, picture.Labels.Influence)
}
