package figure

import (
	"strings"

	"gonum.org/v1/plot/vg"

	"minim/report/words/picture"
	"minim/uncertainty/route"
)

const (
	textWide = pageWidth - 2*margin
	// footWide leaves room for a font that is wider than the one measured.
	footWide = 0.85 * textWide
	// otherHeight is the room for the name of a tolerance drawn as lines.
	otherHeight = vg.Length(12)
)

// heading is what stands above a figure: what it comes to as its title, what is wanted, and in
// small letters what is changed, and the note of the prep.
type heading struct {
	title, wanted, notes []string
}

// mostTitle is how many lines a title has at most.
const mostTitle = 3

func headingOf(hand hand, p *route.Prep, finding picture.Title) *heading {
	subject, changed := picture.Heading(p, shortened(hand.clean(p.Title), 60))
	h := &heading{title: hand.title(titleText, textWide, mostTitle, finding), wanted: hand.wrap(bodyText, textWide, 2, subject)}
	if changed != "" {
		h.notes = hand.wrap(smallText, textWide, 2, changed)
	}
	if note := hand.clean(p.Note); note != "" {
		h.notes = append(h.notes, hand.cut(smallText, textWide, picture.Labels.Note+note))
	}
	return h
}

// title breaks a finding into lines. Where names leave no room for what they are said to come to,
// they are cut.
func (h hand) title(style textStyle, wide vg.Length, most int, finding picture.Title) []string {
	for letters := 60; ; letters -= 4 {
		lines := h.wrap(style, wide, most, finding(func(name string) string { return shortened(h.clean(name), letters) }))
		if letters <= 12 || !strings.HasSuffix(lines[len(lines)-1], "…") {
			return lines
		}
	}
}

func (h *heading) height() vg.Length {
	return margin + 12 + titleText.Font.Size*leading*vg.Length(len(h.title)-1) + 18 + 12.6*vg.Length(len(h.wanted)-1) + 12*vg.Length(len(h.notes)) + 4
}

// draw returns the base line that comes next.
func (h *heading) draw(on *sheet, top vg.Length) vg.Length {
	y := on.writeLines(titleText, margin, top-margin-12, h.title) + leading*titleText.Font.Size
	y = on.writeLines(bodyText, margin, y-18, h.wanted)
	for _, note := range h.notes {
		on.write(smallText, left, margin, y, note)
		y -= 12
	}
	return y
}

// headHeight is the room above the axes: heading and key of the dots.
func (s *spread) headHeight() vg.Length {
	return headingOf(s.hand, s.c.Prep, s.words.Title).height() + 13 + s.key().height()
}

// key explains the dots.
func (s *spread) key() *key {
	k := &key{stretch: 1.12, gap: 12}
	dot := func(draw func(*sheet, []vg.Point, vg.Length), words string) {
		k.show(5, words, func(on *sheet, x, y vg.Length) { draw(on, []vg.Point{{X: x + 2, Y: y - 0.1}}, 3) })
	}
	k.say(boldText, picture.Labels.Dot)
	if len(s.c.Prep.Tolerances) > 0 {
		dot((*sheet).discs, picture.Labels.Inside)
		dot((*sheet).rings, picture.Labels.Outside)
	}
	if s.none {
		dot((*sheet).crosses, picture.Labels.Nothing)
	}
	if s.before != nil {
		k.show(16, picture.Labels.Before, func(on *sheet, x, y vg.Length) { on.line(wasLine, x, y, x+16, y) })
	}
	k.show(5, picture.Labels.Target, func(on *sheet, x, y vg.Length) { on.line(targetLine, x+2, y-6.3, x+2, y+6.7) })
	return k
}

// paragraph is a text below the axes, broken into lines.
type paragraph struct {
	style textStyle
	lines []string
}

// paragraphs say what cannot or must not be done and why, and then the notes.
func (h hand) paragraphs(cannot []*route.Result, notes []string) (list []paragraph) {
	add := func(style textStyle, words string) {
		list = append(list, paragraph{style, h.wrap(style, footWide, 2, words)})
	}
	for _, r := range cannot {
		// A long name must not hide the reason.
		add(smallInk, picture.Cannot(r, h.cut(smallInk, footWide/2, r.Route.Name)))
	}
	for _, note := range notes {
		add(smallText, note)
	}
	if h.note != "" {
		add(smallText, h.note)
	}
	return list
}

func heightOf(list []paragraph) (h vg.Length) {
	for _, p := range list {
		h += leading * p.style.Font.Size * vg.Length(len(p.lines))
	}
	return h
}

func (s *spread) paragraphs() []paragraph { return s.hand.paragraphs(s.cannot, s.words.Notes) }

// others are the tolerances after the first, which are drawn as lines.
func (s *spread) others() []route.Tolerance {
	return s.c.Prep.Tolerances[min(1, len(s.c.Prep.Tolerances)):]
}

// footHeight is the room below the axes.
func (s *spread) footHeight() vg.Length {
	return margin + 6 + otherHeight*vg.Length(len(s.others())) + heightOf(s.paragraphs())
}

func (s *spread) drawFoot(on *sheet, top vg.Length) {
	y := top - 8
	for i, t := range s.others() {
		on.line(otherLine(i), margin, y+3, margin+26, y+3)
		on.write(smallInk, left, margin+32, y, s.cut(smallInk, textWide-32, picture.Tolerance(t)))
		y -= otherHeight
	}
	on.writeParagraphs(y, s.paragraphs())
}

// key explains the marks of a figure: one after the other, on as many lines as
// they need.
type key struct {
	// stretch is how much wider than measured words may be, and gap what stands between items.
	stretch, gap vg.Length
	items        []keyItem
}

type keyItem struct {
	style textStyle
	words string
	// wide is the room that the mark before the words takes, 0 for none; draw
	// draws it from x, round the height y.
	wide vg.Length
	draw func(on *sheet, x, y vg.Length)
}

const keyLine = vg.Length(15)

func (k *key) width(i keyItem) vg.Length { return i.wide + k.stretch*i.style.Width(i.words) }

func (k *key) say(style textStyle, words string) {
	k.items = append(k.items, keyItem{style: style, words: words})
}

func (k *key) show(wide vg.Length, words string, draw func(on *sheet, x, y vg.Length)) {
	k.items = append(k.items, keyItem{nameText, words, wide + 4, draw})
}

// lines breaks the key.
func (k *key) lines() (lines [][]keyItem) {
	x := vg.Length(0)
	for _, item := range k.items {
		if len(lines) == 0 || x+k.width(item) > textWide {
			lines, x = append(lines, nil), 0
		}
		last := len(lines) - 1
		lines[last] = append(lines[last], item)
		x += k.width(item) + k.gap
	}
	return lines
}

func (k *key) height() vg.Length { return keyLine * vg.Length(len(k.lines())) }

// draw writes the key from the base line y downwards.
func (k *key) draw(on *sheet, y vg.Length) {
	for _, line := range k.lines() {
		x := margin
		for _, item := range line {
			if item.draw != nil {
				item.draw(on, x, y+3.3)
			}
			on.write(item.style, left, x+item.wide, y, item.words)
			x += k.width(item) + k.gap
		}
		y -= keyLine
	}
}
