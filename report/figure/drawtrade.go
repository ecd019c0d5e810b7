package figure

import (
	"math"
	"slices"

	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"

	"minim/report/words/picture"
)

var (
	// ownLine is the edge of a route of the prep itself, useLine the ring round the
	// route to use, stairLine the least give or take for so much left over.
	ownLine   = draw.LineStyle{Color: soft, Width: 1}
	useLine   = draw.LineStyle{Color: ink, Width: 1.4}
	stairLine = draw.LineStyle{Color: soft, Width: 0.8, Dashes: []vg.Length{3, 2}}
)

const (
	ownRadius = vg.Length(2.4)
	useRadius = vg.Length(8)
)

// name finds places for the names of the route to use and of the own routes.
func (t *trade) name() {
	p := &placer{within: t.area()}
	for _, q := range t.front {
		p.taken = append(p.taken, squareRound(t.place(q), 1.4*t.radius()))
	}
	for _, q := range t.own {
		at := t.place(q)
		p.taken, p.named = append(p.taken, squareRound(at, ownRadius+1)), append(p.named, at)
	}
	stairs := t.stairs()
	for i := 1; i < len(stairs); i++ {
		p.follow(stairs[i-1], stairs[i])
	}
	if t.used != nil {
		p.taken = append(p.taken, squareRound(t.place(*t.used), useRadius+1))
		l := label{tag: t.Caption().Tag, point: t.place(*t.used)}
		l.add(t.hand, boldText, 190, 2, picture.Letter(t.Verdict.Use)+": "+t.used.result.Route.Name)
		l.add(t.hand, smallText, 190, 2, picture.Figures(t.Prep, t.used.result))
		t.keep(l, p, pageWidth)
	}
	t.nameRows(p)
	for _, q := range t.own {
		if t.used != nil && q.result.Route.Name == t.used.result.Route.Name {
			continue
		}
		l := label{point: t.place(q)}
		l.add(t.hand, smallText, 110, 1, q.result.Route.Name)
		t.keep(l, p, 10)
	}
}

// nameRows names the routes that a plan lists by their letters in its table.
func (t *trade) nameRows(p *placer) {
	for i := range t.Results {
		q := pointOf(&t.Results[i])
		if i == t.Verdict.Use || !q.drawn() {
			continue
		}
		l := label{point: t.place(q)}
		l.add(t.hand, smallBold, 20, 1, picture.Letter(i))
		t.keep(l, p, 14)
	}
}

// keep puts a label down where there is room for it.
func (t *trade) keep(l label, p *placer, reach vg.Length) {
	if l.place(p, reach) {
		l.ground = paper
		t.labels = append(t.labels, l)
	}
}

// stairs are the corners of the line of the least give or take that is drawn for so
// much left over or less.
func (t *trade) stairs() (corners []vg.Point) {
	sorted := t.points()
	slices.SortFunc(sorted, point.compare)
	least := math.Inf(1)
	for _, q := range sorted {
		if q.relative >= least {
			continue
		}
		at := t.place(q)
		if n := len(corners); n > 0 {
			corners = append(corners, vg.Point{X: at.X, Y: corners[n-1].Y})
		}
		corners, least = append(corners, at), q.relative
	}
	return append(corners, vg.Point{X: t.x.to, Y: corners[len(corners)-1].Y})
}

// drawPlot draws the panel with its points and names.
func (t *trade) drawPlot(on *sheet) {
	t.drawGround(on)
	for i := range t.labels {
		t.labels[i].draw(on)
	}
	on.StrokeLines(stairLine, t.stairs())
	for _, q := range t.own {
		on.circle(t.place(q), ownRadius, paper, ownLine)
	}
	for _, q := range slices.Backward(t.front) { // those with few measurements on top
		t.drawPoint(on, q)
	}
	if t.used != nil {
		t.drawPoint(on, *t.used)
		on.ring(t.place(*t.used), useRadius, useLine)
	}
	t.drawAxes(on, picture.OnScale(picture.Labels.LeftOver, t.x.log), picture.OnScale(t.Caption().GiveOrTake, t.y.log))
}

func (t *trade) drawPoint(on *sheet, q point) {
	on.mark(markOf(q.result.Dilutions), t.place(q), t.radius(), t.good(q.result))
}

// radius of the marks, smaller where there are many.
func (t *trade) radius() vg.Length {
	const many = 40
	if len(t.front) > many {
		return 0.8 * markRadius
	}
	return markRadius
}

func (t *trade) paragraphs() []paragraph { return t.hand.paragraphs(nil, t.Caption().Notes) }

// key explains the marks that occur.
func (t *trade) key() *key {
	k := &key{stretch: 1.04, gap: 14}
	k.say(boldText, picture.Labels.Mark)
	for i := range marks {
		if !slices.ContainsFunc(t.front, func(q point) bool { return markOf(q.result.Dilutions) == &marks[i] }) {
			continue
		}
		k.show(2*markRadius, picture.Dilutions(i), func(on *sheet, x, y vg.Length) {
			on.mark(&marks[i], vg.Point{X: x + markRadius, Y: y}, markRadius, true)
		})
	}
	if slices.ContainsFunc(t.front, func(q point) bool { return !t.good(q.result) }) {
		k.show(2*markRadius, t.Caption().Hollow, func(on *sheet, x, y vg.Length) {
			on.mark(&anyMark, vg.Point{X: x + markRadius, Y: y}, markRadius, false)
		})
	}
	if len(t.own) > 0 {
		k.show(2*ownRadius, picture.Labels.Own, func(on *sheet, x, y vg.Length) {
			on.circle(vg.Point{X: x + ownRadius, Y: y}, ownRadius, paper, ownLine)
		})
	}
	k.show(24, picture.Labels.Stairs, func(on *sheet, x, y vg.Length) {
		on.line(stairLine, x, y, x+24, y)
	})
	return k
}
