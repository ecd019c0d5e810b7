package figure

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"gonum.org/v1/plot/vg"

	"minim/report/words"
	"minim/report/words/clause"
	"minim/report/words/influence"
	"minim/report/words/inline"
	"minim/report/words/picture"
	"minim/uncertainty"
	"minim/uncertainty/route"
)

// What a panel shows of a budget: so many influences, none of them smaller than
// the least share; a single one that would be left over is shown as well.
const (
	mostBars   = 6
	leastShare = 0.01
)

// panel is a route with its bars and the words beside them.
type panel struct {
	result *route.Result
	bars   []bar
	words  []paragraph
	height vg.Length
}

// bar is one influence, or all that are not shown.
type bar struct {
	words           string
	share           float64
	shared, assumed bool
	// rest counts the influences of the last bar; 0 for an influence.
	rest int
}

func newPanel(h hand, c *route.Comparison, r *route.Result) *panel {
	p := &panel{result: r, bars: barsOf(h, r.Analytic.Budget)}
	name, strength := nameText, smallText
	if r == &c.Results[c.Verdict.Use] {
		name = boldText
	}
	if !r.Informative {
		strength = smallBold
	}
	add := func(style textStyle, words string) {
		p.words = append(p.words, paragraph{style, h.wrap(style, namesWide, 2, words)})
	}
	add(name, r.Route.Name)
	gives, chance, _ := picture.Beside(c.Prep, r)
	add(strength, gives)
	if len(r.Inside) > 0 {
		add(smallText, picture.InHundred(chance))
	}
	if math.Abs(r.AssumedShare) >= leastShare {
		add(smallText, picture.Labels.AssumedShare+shareOfVariance(r.AssumedShare))
	}
	p.height = panelGap + max(heightOf(p.words), lineHeight*vg.Length(max(1, len(p.bars))))
	return p
}

// barsOf chooses and words the bars of a budget, the largest first. Influences
// that take no part are left out.
func barsOf(h hand, all []uncertainty.Contribution) []bar {
	lines := slices.DeleteFunc(slices.Clone(all), func(l uncertainty.Contribution) bool { return l.Share == 0 })
	slices.SortStableFunc(lines, func(a, b uncertainty.Contribution) int {
		return cmp.Compare(math.Abs(b.Share), math.Abs(a.Share))
	})
	shown := 0
	for shown < min(mostBars, len(lines)) && math.Abs(lines[shown].Share) >= leastShare {
		shown++
	}
	if shown == len(lines)-1 {
		shown++
	}
	var bars []bar
	for i := range lines[:shown] {
		l := &lines[i]
		bars = append(bars, bar{words: h.called(lines, l), share: l.Share, shared: l.Uses > 1, assumed: l.Assumed})
	}
	if shown < len(lines) {
		rest := bar{rest: len(lines) - shown}
		for i := range lines[shown:] {
			rest.share += lines[shown+i].Share
		}
		rest.words = fmt.Sprintf(picture.Labels.RestOf, rest.rest)
		bars = append(bars, rest)
	}
	return bars
}

// called is the name of a line, cut to its column. When others of the budget
// have the same name, its owner is added, and never cut away by a long name.
func (h hand) called(lines []uncertainty.Contribution, l *uncertainty.Contribution) string {
	const wide = influencesTo - influencesFrom
	name, same := influence.Name(&l.Influence), 0
	for i := range lines {
		if influence.Name(&lines[i].Influence) == name {
			same++
		}
	}
	if same < 2 {
		return h.cut(smallInk, wide, name)
	}
	whose := clause.Either(l.Owner.Kind == uncertainty.OneUse, fmt.Sprintf("step %d", l.Owner.Step), influence.Owner(l.Owner))
	owner := " (" + h.cut(smallInk, wide/2, whose) + ")"
	return h.cut(smallInk, wide-smallInk.Width(owner), name) + owner
}

// shareOfVariance prints a share with a true minus sign.
func shareOfVariance(x float64) string { return inline.Minus(words.Share(x)) }

// largest are the influences of the first two bars.
func largest(r *route.Result) []string {
	bars := barsOf(hand{}, r.Analytic.Budget)
	return clause.Each(bars[:min(2, len(bars))], func(b bar) string { return b.words + " (" + shareOfVariance(b.share) + ")" })
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
func (b *budget) headHeight() vg.Length {
	return headingOf(b.hand, b.c.Prep, b.words.Title).height() + 44
}

func (b *budget) drawHead(on *sheet, top vg.Length) {
	y := headingOf(b.hand, b.c.Prep, b.words.Title).draw(on, top) - 6
	on.write(boldText, left, margin, y, picture.Labels.Bar)
	b.key().draw(on, y-16)
}

// key explains patterns and letters, of those that occur.
func (b *budget) key() *key {
	k := &key{stretch: 1.06, gap: 14}
	show := func(words, letter string, patterns ...bar) {
		behind := 23 * vg.Length(len(patterns))
		room := behind
		if letter != "" {
			room += k.stretch*boldText.Width(letter) + 3
		}
		k.show(room-4, words, func(on *sheet, x, y vg.Length) {
			for _, p := range patterns {
				p.fill(on, x, y-4.3, x+18, y-4.3+barHeight)
			}
			if letter != "" {
				on.write(boldText, left, x+behind, y-3.3, letter)
			}
		})
	}
	show(picture.Labels.One, "", bar{})
	if b.some(func(r bar) bool { return r.assumed }) {
		show(picture.Labels.Assumed, "A", bar{assumed: true})
	}
	if b.some(func(r bar) bool { return r.rest > 0 }) {
		show(picture.Labels.Rest, "", bar{rest: 1})
	}
	if b.some(func(r bar) bool { return r.shared }) {
		show(picture.Labels.Shared, "S")
	}
	return k
}

func (b *budget) some(holds func(bar) bool) bool {
	return slices.ContainsFunc(b.panels, func(p *panel) bool { return slices.ContainsFunc(p.bars, holds) })
}

func (b *budget) paragraphs() []paragraph { return b.hand.paragraphs(b.cannot, b.words.Notes) }

func (b *budget) footHeight() vg.Length { return footHeight(b.paragraphs()) }
