package figure

import (
	"image/color"
	"slices"

	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"

	"minim/report/words/picture"
)

// balanceLine is the edge of a balance.
var balanceLine = draw.LineStyle{Color: ink, Width: 1.3}

const balanceRadius = vg.Length(4.5)

// name finds places for the names of the lines, the balances and the tolerance.
func (f *readable) name() {
	p := &placer{within: f.area()}
	for _, b := range f.balances {
		at := f.place(b.readability, b.relative)
		p.taken, p.named = append(p.taken, squareRound(at, balanceRadius+1.5)), append(p.named, at)
	}
	for _, c := range f.curves {
		for _, run := range c.runs {
			for i, q := range run {
				p.taken = append(p.taken, squareRound(f.place(q.readability, q.relative), curveRadius+1))
				if i > 0 {
					p.follow(f.place(run[i-1].readability, run[i-1].relative), f.place(q.readability, q.relative))
				}
			}
		}
	}
	if f.half > 0 {
		y := f.y.at(f.half)
		p.follow(vg.Point{X: f.x.from, Y: y}, vg.Point{X: f.x.to, Y: y})
	}
	p.within.x1 = rightTo
	for _, c := range f.curves {
		l := label{point: f.place(c.end().readability, c.end().relative)}
		l.add(smallInk, linesWide, 1, picture.Dilutions(c.dilutions))
		f.keep(l, p, pageWidth)
	}
	p.within.x1 = f.x.to
	for _, b := range f.balances {
		f.nameBalance(p, b)
	}
	if f.half > 0 {
		f.nameTolerance(p)
	}
}

// nameTolerance writes next to the limit line what it is, as far left as there is
// room for it.
func (f *readable) nameTolerance(p *placer) {
	const step, near = 6, 6
	for _, words := range []string{picture.Tolerance(f.Prep.Tolerances[0]), picture.Labels.Tolerance} {
		for x := f.x.from; x < f.x.to; x += step {
			l := label{point: vg.Point{X: x, Y: f.y.at(f.half)}}
			l.add(smallBold, 220, 1, words)
			if f.keep(l, p, near) {
				return
			}
		}
	}
}

// nameBalance names a balance, in bold letters when it is good enough, and tells the
// price of one that could be bought; cut short where there is no room for all.
func (f *readable) nameBalance(p *placer, b balance) {
	style := smallInk
	if b.choice.Meets {
		style = smallBold
	}
	at := f.place(b.readability, b.relative)
	full, short := label{point: at}, label{point: at}
	full.add(style, 120, 2, b.choice.Name)
	if b.choice.Price.Stated() && !b.choice.Owned {
		full.add(smallText, 120, 1, b.choice.Price.String())
	}
	if !f.keep(full, p, pageWidth) {
		short.add(style, 70, 1, b.choice.Name)
		f.keep(short, p, pageWidth)
	}
}

// keep puts a label down where there is room for it, and reports whether there is.
func (f *readable) keep(l label, p *placer, reach vg.Length) bool {
	if !l.place(p, reach) {
		return false
	}
	l.ground = f.ground(l.at)
	f.labels = append(f.labels, l)
	return true
}

// ground is the colour of the panel at an area; nil where there are two.
func (f *readable) ground(a area) color.Color {
	switch {
	case f.half == 0 || a.y0 >= f.y.at(f.half):
		return paper
	case a.x1 <= f.x.to && a.y1 <= f.y.at(f.half):
		return shaded
	}
	return nil
}

// curveRadius is that of the marks on a line.
const curveRadius = vg.Length(2.6)

// drawPlot draws the panel.
func (f *readable) drawPlot(on *sheet) {
	if f.half > 0 {
		on.box(shaded, f.x.from, f.y.from, f.x.to, f.y.at(f.half))
	}
	f.drawGround(on)
	if f.half > 0 {
		on.line(limitLine, f.x.from, f.y.at(f.half), f.x.to, f.y.at(f.half))
	}
	for _, c := range f.curves {
		f.drawCurve(on, c)
	}
	for i := range f.labels {
		f.labels[i].draw(on)
	}
	for _, b := range f.balances {
		f.drawBalance(on, f.place(b.readability, b.relative), b.choice.Owned)
	}
	f.drawAxes(on, picture.Labels.Readability, f.Caption().GiveOrTake)
}

func (f *readable) drawCurve(on *sheet, c curve) {
	m := markOf(c.dilutions)
	style := draw.LineStyle{Color: m.colour, Width: 1.3, Dashes: m.dashes}
	for _, run := range c.runs {
		line := make([]vg.Point, len(run))
		for i, q := range run {
			line[i] = f.place(q.readability, q.relative)
		}
		if len(line) > 1 {
			on.StrokeLines(style, line)
		}
		for i, at := range line {
			on.mark(m, at, curveRadius, !run[i].cut)
		}
	}
}

func (f *readable) drawBalance(on *sheet, at vg.Point, owned bool) {
	if owned {
		on.circle(at, balanceRadius, ink, balanceLine)
		return
	}
	on.circle(at, balanceRadius, paper, balanceLine)
}

func (f *readable) paragraphs() []paragraph { return paragraphs(nil, f.Caption().Notes) }

// key explains the marks that occur.
func (f *readable) key() *key {
	k := &key{stretch: 1.04, gap: 14}
	k.say(boldText, picture.Labels.Balance)
	for _, kind := range []struct {
		owned bool
		words string
	}{{true, picture.Labels.Owned}, {false, picture.Labels.ToBuy}} {
		if slices.ContainsFunc(f.balances, func(b balance) bool { return b.choice.Owned == kind.owned }) {
			k.show(2*balanceRadius, kind.words, func(on *sheet, x, y vg.Length) {
				f.drawBalance(on, vg.Point{X: x + balanceRadius, Y: y}, kind.owned)
			})
		}
	}
	if slices.ContainsFunc(f.balances, func(b balance) bool { return b.choice.Meets }) {
		k.say(boldText, picture.Labels.Good)
	}
	return k
}
