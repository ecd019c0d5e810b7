package figure

import (
	"slices"

	"gonum.org/v1/plot/text"
	"gonum.org/v1/plot/vg"

	"minim/report/words/picture"
)

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

func (b *budget) drawFoot(on *sheet, top vg.Length) { on.writeParagraphs(top-8, b.paragraphs()) }
