package figure

import (
	"gonum.org/v1/plot/text"
	"gonum.org/v1/plot/vg"

	"minim/uncertainty/route"
)

const (
	textWide = pageWidth - 2*margin
	// footWide leaves room for a font that is wider than the one measured.
	footWide = 0.85 * textWide
	// otherHeight is the room for the name of a tolerance drawn as lines.
	otherHeight = vg.Length(12)
)

// headHeight is the room above the axes: title, what is wanted, the key of the
// dots, the note.
func (s *spread) headHeight() vg.Length {
	h := margin + 14 + 17*vg.Length(len(s.wantedLines())) + 20
	if s.note() != "" {
		h += 12
	}
	return h + 8
}

func (s *spread) wantedLines() []string { return wrap(bodyText, textWide, 2, wanted(s.c.Prep)) }

func (s *spread) note() string {
	note := clean(s.c.Prep.Note)
	if note == "" {
		return ""
	}
	return cut(smallText, textWide, "Note: "+note)
}

func (s *spread) drawHead(on *sheet, top vg.Length) {
	y := top - margin - 12
	on.write(titleText, left, margin, y, cut(titleText, textWide, title(s.c.Prep)))
	y = on.writeLines(bodyText, margin, y-18, s.wantedLines())
	if note := s.note(); note != "" {
		on.write(smallText, left, margin, y, note)
		y -= 12
	}
	s.drawKey(on, y-6)
}

// drawKey explains the dots in one line.
func (s *spread) drawKey(on *sheet, y vg.Length) {
	x := margin
	words := func(style text.Style, w string) {
		on.write(style, left, x, y, w)
		x += 1.12*style.Width(w) + 12
	}
	mark := func(draw func([]vg.Point, vg.Length), w string) {
		draw([]vg.Point{{X: x + 2, Y: y + 3.2}}, 3)
		x += 9
		words(nameText, w)
	}
	words(boldText, "Each dot is one batch in a hundred.")
	if len(s.c.Prep.Tolerances) > 0 {
		mark(on.discs, "inside the tolerance")
		mark(on.rings, "outside")
	}
	if s.none {
		mark(on.crosses, "nothing in it at all")
	}
	on.line(targetLine, x+2, y-3, x+2, y+10)
	x += 9
	words(nameText, "target")
}

// paragraph is a text below the axes, broken into lines.
type paragraph struct {
	style text.Style
	lines []string
}

func (s *spread) paragraphs() (list []paragraph) {
	add := func(style text.Style, words string) {
		list = append(list, paragraph{style, wrap(style, footWide, 2, words)})
	}
	for _, r := range s.cannot {
		// A long name must not hide the reason.
		add(smallInk, "Not possible: "+cut(smallInk, footWide/2, clean(r.Route.Name))+". "+r.Reason+".")
	}
	for _, note := range footnotes(s.c) {
		add(smallText, note)
	}
	return list
}

// others are the tolerances after the first, which are drawn as lines.
func (s *spread) others() []route.Tolerance {
	return s.c.Prep.Tolerances[min(1, len(s.c.Prep.Tolerances)):]
}

// footHeight is the room below the axes.
func (s *spread) footHeight() vg.Length {
	h := margin + 6 + otherHeight*vg.Length(len(s.others()))
	for _, p := range s.paragraphs() {
		h += leading * p.style.Font.Size * vg.Length(len(p.lines))
	}
	return h
}

func (s *spread) drawFoot(on *sheet, top vg.Length) {
	y := top - 8
	for i, t := range s.others() {
		on.line(otherLine(i), margin, y+3, margin+26, y+3)
		on.write(smallInk, left, margin+32, y, cut(smallInk, textWide-32, toleranceWords(t)))
		y -= otherHeight
	}
	for _, p := range s.paragraphs() {
		y = on.writeLines(p.style, margin, y, p.lines)
	}
}
