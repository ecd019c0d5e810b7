package figure

import (
	"errors"
	"math"
	"slices"

	"gonum.org/v1/plot/text"
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
	c      *route.Comparison
	words  picture.Caption
	panels []*panel
	cannot []*route.Result
	// low and high are the ends of the axis, in percent.
	low, high float64
	ticks     []tick
}

// Budget lays out the figure of what spoils the strength by every route: a
// panel for each, with a bar for each of its largest influences as its share of
// the variance, and one for the rest. The panels share one axis and have the
// order of [Spread]. It returns an error when no route can be done.
func Budget(c *route.Comparison) (*Figure, error) {
	if c.Verdict.Use < 0 {
		return nil, errors.New("no route can be done, so there is no budget to draw")
	}
	order := ranked(c)
	b := &budget{c: c, words: picture.OfBudget(c, order, largest)}
	for _, r := range order {
		if !r.Possible {
			b.cannot = append(b.cannot, r)
			continue
		}
		b.panels = append(b.panels, newPanel(c, r))
	}
	b.scale()
	height := b.headHeight() + b.plotHeight() + b.footHeight()
	return &Figure{width: pageWidth, height: height, Alt: clean(b.words.Alt), paint: func(on *sheet) {
		b.drawHead(on, height)
		b.drawPlot(on, height-b.headHeight())
		on.writeParagraphs(b.footHeight()-8, b.paragraphs())
	}}, nil
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

// drawPanel draws a panel below the height top.
func (b *budget) drawPanel(on *sheet, p *panel, top vg.Length) {
	on.line(groundLine, namesFrom, top-p.height, rightTo, top-p.height)
	if p.result == &b.c.Results[b.c.Verdict.Use] {
		on.frameRoute(top-p.height, top, b.words.Tag)
	}
	first := top - panelGap/2 - 8
	on.writeParagraphs(first, p.words)
	if len(p.bars) == 0 {
		on.write(smallInk, right, influencesTo, first, picture.Labels.None)
	}
	for i, bar := range p.bars {
		b.drawBar(on, bar, first-lineHeight*vg.Length(i))
	}
	on.line(axisLine, b.x(0), top-p.height+panelGap/2-2, b.x(0), top-panelGap/2+2)
}

// drawBar draws a bar with its words on the base line y.
func (b *budget) drawBar(on *sheet, bar bar, y vg.Length) {
	on.write(smallInk, right, influencesTo, y, bar.words)
	if bar.shared {
		on.write(smallBold, centre, sharedAt, y, "S")
	}
	if bar.assumed {
		on.write(smallBold, centre, assumedAt, y, "A")
	}
	from, to := b.span(bar.share)
	bar.fill(on, from, y+3-barHeight/2, to, y+3+barHeight/2)
	share := shareOfVariance(bar.share)
	on.box(paper, to+3, y-2, to+5+smallInk.Width(share), y+7)
	on.write(smallInk, left, to+4, y, share)
}

// span is where the bar of a share starts and ends: a negative one ends at zero.
func (b *budget) span(share float64) (from, to vg.Length) {
	return b.x(min(0, 100*share)), b.x(max(0, 100*share))
}

// fill draws a box in the pattern of the bar: full when stated, hatched when
// assumed, empty for the rest.
func (r bar) fill(on *sheet, x0, y0, x1, y1 vg.Length) {
	switch {
	case r.rest > 0:
		on.box(paper, x0, y0, x1, y1)
		on.inlay(restLine, x0, y0, x1, y1)
	case r.assumed:
		on.box(paper, x0, y0, x1, y1)
		on.hatch(hatchLine, x0, y0, x1, y1)
		on.inlay(ringLine, x0, y0, x1, y1)
	default:
		on.box(blue, x0, y0, x1, y1)
	}
}

// headHeight is the room above the axes: heading and key of the bars.
func (b *budget) headHeight() vg.Length { return headingOf(b.c.Prep).height() + 44 }

func (b *budget) drawHead(on *sheet, top vg.Length) {
	y := headingOf(b.c.Prep).draw(on, top) - 6
	on.write(boldText, left, margin, y, picture.Labels.Bar)
	b.drawKey(on, y-16)
}

// drawKey explains patterns and letters, of those that occur.
func (b *budget) drawKey(on *sheet, y vg.Length) {
	x := margin
	words := func(style text.Style, w string, gap vg.Length) {
		on.write(style, left, x, y, w)
		x += 1.06*style.Width(w) + gap
	}
	pattern := func(r bar) {
		r.fill(on, x, y-1, x+18, y-1+barHeight)
		x += 23
	}
	pattern(bar{})
	words(nameText, picture.Labels.One, 14)
	if b.some(func(r bar) bool { return r.assumed }) {
		pattern(bar{assumed: true})
		words(boldText, "A", 3)
		words(nameText, picture.Labels.Assumed, 14)
	}
	if b.some(func(r bar) bool { return r.rest > 0 }) {
		pattern(bar{rest: 1})
		words(nameText, picture.Labels.Rest, 14)
	}
	if b.some(func(r bar) bool { return r.shared }) {
		words(boldText, "S", 3)
		words(nameText, picture.Labels.Shared, 0)
	}
}

func (b *budget) some(holds func(bar) bool) bool {
	return slices.ContainsFunc(b.panels, func(p *panel) bool { return slices.ContainsFunc(p.bars, holds) })
}

func (b *budget) paragraphs() []paragraph { return paragraphs(b.cannot, b.words.Notes) }

func (b *budget) footHeight() vg.Length { return footHeight(b.paragraphs()) }
