package figure

import (
	"strconv"

	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"

	"minim/report/words/picture"
)

// markLine is the edge of a mark with a number in it.
var markLine = draw.LineStyle{Color: ink, Width: 1.2}

func (l *money) draw(on *sheet, height vg.Length) {
	y := l.head.draw(on, height) - 6
	l.key().draw(on, y)
	top := height - l.head.height() - l.key().height() - 28
	on.write(smallText, left, namesFrom, top+8, l.words.Rows)
	on.write(smallText, right, pricesTo, top+8, l.words.Chance[0])
	on.write(smallText, right, rightTo, top+8, l.words.Chance[1])
	bottom := top - moneyHigh*vg.Length(len(l.Rows))
	ticks := onlyLabelled((&plane{}).marks(l.x, func(label string) vg.Length { return smallInk.Width(label) + 8 }))
	for _, t := range ticks {
		on.line(groundLine, l.x.at(t.value), bottom, l.x.at(t.value), top)
	}
	y = top
	for _, o := range l.Rows {
		y -= moneyHigh
		l.drawRow(on, &o, y)
	}
	axis{l.x.from, l.x.to, l.x.at}.draw(on, bottom, -1, ticks, picture.OnScale(picture.Labels.LeftOver, l.x.log))
	if l.x.zero {
		(&plane{x: l.x, y: scale{from: bottom, to: top}}).drawZero(on)
	}
	if len(l.coarse) > 0 {
		l.drawCoarse(on, footHeight(l.notes)+30)
	}
	on.writeParagraphs(footHeight(l.notes)-8, l.notes)
}

// drawRow draws a row that stands on the height y.
func (l *money) drawRow(on *sheet, o *picture.MoneyRow, y vg.Length) {
	name, figure := nameText, nameText
	if o.Chosen {
		name, figure = boldText, boldText
	}
	on.line(groundLine, namesFrom, y, rightTo, y)
	lines := l.wrap(name, moneyNames, 2, o.With)
	middle := y + moneyHigh/2
	on.writeLines(name, namesFrom, middle-3+vg.Length(len(lines)-1)*5.7, lines)
	price := l.cut(figure, pricesTo-moneyTo-14, l.Price(o.Choice))
	on.write(figure, right, pricesTo, middle-3, price)
	if !o.Found {
		on.write(smallText, left, moneyFrom, middle-3, picture.Labels.NoRoute)
		return
	}
	on.write(figure, right, rightTo, middle-3, l.Holds(o.Choice))
	on.counted(vg.Point{X: l.at(o.Choice), Y: middle}, moneyMark, l.good(o.Choice), strconv.Itoa(o.Best.Operations))
}

// counted draws a round mark with a number in it, filled or hollow.
func (s *sheet) counted(at vg.Point, radius vg.Length, filled bool, number string) {
	style := smallBold
	if filled {
		style = tagText
		s.circle(at, radius, blue, markLine)
	} else {
		s.circle(at, radius, paper, markLine)
	}
	s.write(style, centre, at.X, at.Y-2.8, number)
}

// drawCoarse draws the line of the coarsest readability that does, on the height y.
func (l *money) drawCoarse(on *sheet, y vg.Length) {
	on.writeLines(smallText, namesFrom, y+6, l.wrap(smallText, moneyNames, 3, picture.Labels.Coarsest))
	axis{l.coarsX.from, l.coarsX.to, l.coarsX.at}.draw(on, y, -1,
		onlyLabelled(l.coarsX.ticks(func(label string) vg.Length { return smallInk.Width(label) + 8 })), picture.OnScale(picture.Labels.Readability, true))
	for _, b := range l.Prep.Kit.Balances {
		x := l.coarsX.at(b.Readability)
		on.line(limitLine, x, y, x, y+5)
	}
	for _, p := range l.coarse {
		at := vg.Point{X: l.coarsX.at(p.readability), Y: y + 13 + 13*vg.Length(p.level)}
		if p.level == 0 {
			on.line(leader, at.X, y, at.X, at.Y)
		}
		on.counted(at, 6, true, strconv.Itoa(p.dilutions))
	}
}
