package figure

import (
	"errors"
	"math"

	"gonum.org/v1/plot/vg"

	"minim/report/words/picture"
	"minim/uncertainty/purchase"
)

// Columns of the figure of what money changes, in points from the left.
const (
	moneyNames = vg.Length(150)
	moneyFrom  = margin + moneyNames + 22
	moneyTo    = rightTo - 140
	moneyHigh  = vg.Length(30)
	// pricesTo and chancesTo are where those columns end.
	pricesTo  = rightTo - 66
	moneyMark = vg.Length(9.5)
	// coarseHigh is the room for the line of the coarsest readability.
	coarseHigh = vg.Length(56)
)

// money is the layout of the figure of what money changes.
type money struct {
	hand
	picture.Money
	words picture.Caption
	head  *heading
	x     scale
	notes []paragraph
	// coarse are the points of the coarsest readability that does, on a scale of their own.
	coarse []coarsePoint
	coarsX scale
}

// coarsePoint is a number of dilutions with the coarsest readability in g; level counts those
// below it at the same place.
type coarsePoint struct {
	dilutions   int
	readability float64
	level       int
}

// Changes lays out the figure of what money changes: a row for each balance that is owned and for
// each instrument that could be had, with a mark at what the best route leaves over, which is
// filled where that route is good enough and holds its number of measurements; a row for the present bench without each
// measure that its best route uses; and below it the coarsest readability that does. It returns an error where there is no route.
func Changes(p *purchase.Purchase) (*Figure, error) {
	m := picture.MoneyOf(p)
	if len(m.Drawn()) == 0 {
		return nil, errors.New("no route was found with any instrument, so there is nothing to draw of what money changes")
	}
	return lettered(p.Prep, nil, func(h hand) (*Figure, error) { return layMoney(h, m), nil })
}

func layMoney(h hand, m picture.Money) *Figure {
	l := &money{hand: h, Money: m, words: m.Caption()}
	l.head = headingOf(h, m.Prep, l.words.Title)
	l.notes = h.paragraphs(nil, l.words.Notes)
	var points []point
	for _, o := range m.Drawn() {
		points = append(points, pointOf(&o.Best))
	}
	l.x = leftOverScale(moneyFrom, moneyTo, nil, points)
	l.setCoarse()
	height := l.head.height() + l.key().height() + 28 + moneyHigh*vg.Length(len(m.Rows)) + 34 + l.coarseHigh() + footHeight(l.notes)
	return &Figure{width: pageWidth, height: height, Alt: clean(l.words.Alt), paint: func(on *sheet) { l.draw(on, height) }}
}

// setCoarse places the points of the coarsest readability.
func (l *money) setCoarse() {
	var values []float64
	count := make(map[float64]int)
	for i := range l.BreakEven {
		if b := &l.BreakEven[i]; b.Readability > 0 {
			l.coarse = append(l.coarse, coarsePoint{b.Dilutions, b.Readability, count[b.Readability]})
			count[b.Readability]++
			values = append(values, b.Readability)
		}
	}
	if len(values) == 0 {
		return
	}
	for _, b := range l.Prep.Kit.Balances {
		values = append(values, b.Readability)
	}
	l.coarsX = logarithmicOf(moneyFrom, rightTo-20, values)
}

func (l *money) coarseHigh() vg.Length {
	if len(l.coarse) == 0 {
		return 0
	}
	level := 0
	for _, p := range l.coarse {
		level = max(level, p.level)
	}
	return coarseHigh + vg.Length(level)*13
}

// key explains the marks.
func (l *money) key() *key {
	k := &key{stretch: 1.04, gap: 14}
	k.say(boldText, picture.Labels.Money)
	mark := func(filled bool, words string) {
		k.show(12, words, func(on *sheet, x, y vg.Length) { on.counted(vg.Point{X: x + 6, Y: y}, 6, filled, "") })
	}
	if len(l.Prep.Tolerances) > 0 {
		mark(true, picture.Labels.GoodEnough)
		mark(false, picture.Labels.NotEnough)
	}
	return k
}

// good reports whether the mark of a choice is filled; without a tolerance all are.
func (l *money) good(o *purchase.Choice) bool { return o.Meets || len(l.Prep.Tolerances) == 0 }

// at is the place of what a choice leaves over.
func (l *money) at(o *purchase.Choice) vg.Length { return l.x.at(math.Max(0, o.Best.LeftOverML)) }
