package figure

import (
	"cmp"
	"errors"
	"math"
	"slices"

	"gonum.org/v1/plot/vg"

	"minim/report/words/picture"
	"minim/uncertainty/plan"
	"minim/uncertainty/route"
)

// trade is the layout of the figure of what a small give or take costs in left
// over.
type trade struct {
	hand
	plane
	picture.Trade
	// front are the routes that no other beats, own those of the prep itself.
	front, own []point
	// used is the route to use; nil when it is not drawn.
	used   *point
	labels []label
}

// point is a route with what it leaves over in mL and its relative expanded
// uncertainty in percent.
type point struct {
	result             *route.Result
	leftOver, relative float64
}

// Trade lays out the figure of what is left over by the routes that no other beats
// against the give or take that they have, in percent of the strength, with the
// routes of the prep itself beside them. The route to use is ringed and named. A
// route whose give or take is over 100 % is counted below, and not drawn. It
// returns an error when there is no route to draw.
func Trade(p *plan.Plan) (*Figure, error) {
	if p.Comparison == nil || len(p.Front) == 0 {
		return nil, errors.New("no route was found, so there is no choice to draw")
	}
	return lettered(p.Prep, namesOf(inOrder(p.Comparison)), func(h hand) (*Figure, error) {
		t := newTrade(h, p)
		if len(t.front) == 0 {
			return nil, errors.New("every route that was found has a give or take over 100 %, so there is no choice to draw")
		}
		t.layOut()
		words := t.Caption()
		return planeFigure(headingOf(h, p.Prep, words.Title), t.y.to, t.key(), t.paragraphs(), words.Alt, t.drawPlot), nil
	})
}

// layOut fits the scales and finds places for the names.
func (t *trade) layOut() {
	t.x = leftOverScale(planeFrom, rightTo-14, t.front, t.points())
	t.y = relativeScale(relatives(t.points()), footHeight(t.paragraphs())+underPlane)
	t.setTicks()
	t.name()
}

// ends tells of the routes of the front with the least left over and with the
// least give or take.
func (t *trade) ends() []*route.Result {
	first, last := slices.MinFunc(t.front, point.compare), slices.MinFunc(t.front, func(a, b point) int {
		return cmp.Or(cmp.Compare(a.relative, b.relative), cmp.Compare(a.leftOver, b.leftOver))
	})
	if first == last {
		return []*route.Result{first.result}
	}
	return []*route.Result{first.result, last.result}
}

// newTrade sorts out what is drawn.
func newTrade(h hand, p *plan.Plan) *trade {
	t := &trade{hand: h, Trade: picture.Trade{Plan: p}}
	for i := range p.Front {
		t.front = t.take(t.front, &p.Front[i].Result)
	}
	for i := range p.Own {
		if r := &p.Own[i]; r.Possible && r.Informative {
			t.own = t.take(t.own, r)
		} else {
			t.Silent++
		}
	}
	if u := p.Verdict.Use; u >= 0 {
		// A long name must not hide the reason why it is marked.
		t.Marked = t.cut(smallText, footWide/2, p.Results[u].Route.Name)
		if used := pointOf(&p.Results[u]); used.drawn() {
			t.used, t.Used = &used, true
		}
	}
	if t.Drawn = len(t.front); t.Drawn > 0 {
		t.Coverage, t.Ends = t.front[0].result.Analytic.CoverageProbability, t.ends()
	}
	return t
}

func (t *trade) take(list []point, r *route.Result) []point {
	if p := pointOf(r); p.drawn() {
		return append(list, p)
	}
	t.Hidden++
	return list
}

func pointOf(r *route.Result) point { return point{r, math.Max(0, r.LeftOverML), relative(r)} }

// relative is half of the interval that is quoted, in percent of the strength.
func relative(r *route.Result) float64 { return 100 * r.GiveOrTake() }

// compare puts little left over first, then a small give or take.
func (p point) compare(q point) int {
	return cmp.Or(cmp.Compare(p.leftOver, q.leftOver), cmp.Compare(p.relative, q.relative))
}

// drawn is false over 100 %.
func (p point) drawn() bool { return p.relative <= 100 }

// points are all that are drawn.
func (t *trade) points() []point {
	all := append(append([]point{}, t.own...), t.front...)
	if t.used != nil {
		all = append(all, *t.used)
	}
	return all
}

func (t *trade) place(p point) vg.Point {
	return vg.Point{X: t.x.at(p.leftOver), Y: t.y.at(p.relative)}
}

// good reports whether a route has the chance of being inside that is asked for;
// without a tolerance all are good.
func (t *trade) good(r *route.Result) bool {
	return len(t.Prep.Tolerances) == 0 || r.Chance() >= t.Prep.LeastChance
}
