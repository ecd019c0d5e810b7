package figure

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"gonum.org/v1/plot/vg"

	"minim/uncertainty/near"
	"minim/uncertainty/plan"
	"minim/uncertainty/route"
)

func TestTradeStandsEveryPlan(t *testing.T) {
	skipIfSlow(t)
	for name, p := range plans(t) {
		t.Run(name, func(t *testing.T) {
			f, err := Trade(p)
			checkDrawn(t, f, err)
		})
	}
}

func TestTradeSaysWhatItShows(t *testing.T) {
	skipIfSlow(t)
	p := planned(demo(t))
	f, err := Trade(p)
	words := wordsOf(t, f, err)
	for _, want := range []string{
		"Toning dye for a glass fill: 15 mL of 0.060 % w/v dye in ethanol, within 7 % of target", "Note: invented for the demo",
		"Each mark is a route that no other beats, or a rounder one.", "direct", "one dilution", "two dilutions", "three dilutions", "your own routes",
		"hollow: chance of being inside under 95 %", "left over / mL", "give or take, in % of the strength (95 %)", "USE THIS ROUTE",
		"give or take 4.7 %, 51 mL left over, 99.7 in 100 inside", "f: two dilutions", "\ng\n",
		"Marked: two dilutions. Of the routes with a chance of at least 95 %, it is the one that leaves least over.",
		"2 routes of your own that cannot be done or could hold nothing at all are not shown.",
	} {
		assert.Contains(t, words, want)
	}
	for _, absent := range []string{"four dilutions", "over 100 %", "logarithmic"} {
		assert.NotContains(t, words, absent)
	}
	assert.Equal(t, "What is left over by the routes that no other beats, and some with rounder readings, (6) to make 15 mL of 0.060 % w/v dye in ethanol, within 7 % of target, "+
		"against their give or take: from 0 mL and 33 % to 108 mL and 4.6 %. Marked \"use this route\": two dilutions, "+
		"give or take 4.7 %, 51 mL left over, 99.7 in 100 inside.", altOfTrade(p))
}

func TestTradeSaysWhyARouteIsMarked(t *testing.T) {
	met, unmet := compare(t, cases["usual"]), compare(t, cases["all wide"])
	none := compare(t, cases["no tolerance"])
	for _, test := range []struct {
		c      *route.Comparison
		prefer string
		want   string
	}{
		{met, route.LeastLeftOver, "it is the one that leaves least over."},
		{met, route.Usual, "It is recommended: it has a chance of at least"},
		{none, route.Usual, "No tolerance is given; it is about as near to the target as any, with few measurements and round readings."},
		{met, route.Tightest, "it is the one with the least give or take."},
		{met, route.Fewest, "it is the one with the fewest measurements."},
		{met, route.LeastSolute, "it is the one that uses the least solute."},
		{met, route.Cheapest, "it is the one that costs least."},
		{unmet, route.Fewest, "No route has a chance of at least 95 %; this is the best of them."},
		{none, route.LeastLeftOver, "No tolerance is given; it is the one nearest to the target."},
		{none, route.Fewest, "No tolerance is given; it is the one with the fewest measurements."},
	} {
		p := planned(test.c)
		p.Options.Prefer = test.prefer
		f, err := Trade(p)
		assert.Contains(t, wordsOf(t, f, err), test.want)
	}
}

// Routes whose give or take is over 100 % are counted, those of the prep as well.
func TestTradeCountsWhatItDoesNotShow(t *testing.T) {
	c := compare(t, cases["usual"])
	p := front(c, made("a", 1, 10, 1, 0.96), made("b", 1, 10, 1.001, 0.96))
	f, err := Trade(p)
	assert.Contains(t, wordsOf(t, f, err), "1 route with a give or take over 100 % is not shown.")
	p.Own = []route.Result{made("c", 1, 10, math.Inf(1), 0), made("d", 1, 10, math.NaN(), 0), {Route: &route.Route{Name: "e"}}}
	f, err = Trade(p)
	words := wordsOf(t, f, err)
	assert.Contains(t, words, "3 routes with a give or take over 100 % are not shown.")
	assert.Contains(t, words, "1 route of your own that cannot be done or could hold nothing at all is not shown.")

	_, err = Trade(front(c, made("b", 1, 10, 1.001, 0.96)))
	assert.EqualError(t, err, "every route that was found has a give or take over 100 %, so there is no choice to draw")
}

func TestTradeOfNoRouteIsAnError(t *testing.T) {
	c := compare(t, cases["usual"])
	for _, p := range []*plan.Plan{{}, {Comparison: c}} {
		_, err := Trade(p)
		assert.EqualError(t, err, "no route was found, so there is no choice to draw")
	}
	assert.Equal(t, "No route was found to make 15 mL of 0.04 % w/v dye in water, within 8 % of target.", altOfTrade(&plan.Plan{Comparison: c}))
}

// The marked route is named in every plan, its name covers no mark, and all marks
// lie in the panel.
func TestTradePlaces(t *testing.T) {
	skipIfSlow(t)
	for name, p := range plans(t) {
		f, err := Trade(p)
		require.NoError(t, err, name)
		assert.Contains(t, wordsOf(t, f, err), newTrade(hand{}, p).Caption().Tag, name)
		d := laidOut(p)
		within := d.area()
		for _, q := range d.points() {
			at := d.place(q)
			assert.True(t, at.X >= within.x0 && at.X <= within.x1 && at.Y >= within.y0 && at.Y <= within.y1, "%s: a mark at %v", name, at)
			for _, l := range d.labels {
				assert.False(t, l.at.holds(at), "%s: a name covers a mark", name)
			}
		}
	}
}

// laidOut is the layout of a plan that can be drawn.
func laidOut(p *plan.Plan) *trade {
	t := newTrade(hand{}, p)
	t.layOut()
	return t
}

func TestLeftOverScale(t *testing.T) {
	volumes := func(list ...float64) (points []point) {
		for _, v := range list {
			points = append(points, point{leftOver: v})
		}
		return points
	}
	for _, test := range []struct {
		volumes   []float64
		log, zero bool
	}{
		{[]float64{0}, false, false}, {[]float64{0, 300}, false, false}, {[]float64{0, 301}, true, true},
		{[]float64{0.04, 301}, true, true}, {[]float64{0.06, 301}, true, false}, {[]float64{4000}, true, false},
		// Many small ones beside a large one would be crowded, a few are not.
		{[]float64{1, 2, 3, 4, 200}, false, false}, {[]float64{0, 1, 2, 3, 4, 50, 100, 200}, true, true},
	} {
		points := volumes(test.volumes...)
		s := leftOverScale(planeFrom, rightTo-14, points, points)
		assert.Equal(t, test.log, s.log, "%v", test.volumes)
		assert.Equal(t, test.zero, s.zero, "%v", test.volumes)
		last := vg.Length(math.Inf(-1))
		for _, v := range test.volumes {
			assert.True(t, s.at(v) > last && s.at(v) >= planeFrom && s.at(v) <= s.to, "%v of %v", v, test.volumes)
			last = s.at(v)
		}
	}
}

// A point lies as high as its give or take says, in proportion or by logarithm.
func TestRelativeScale(t *testing.T) {
	s := relativeScale([]float64{2, 8}, 100)
	near.Absolute(t, "half of 8.8 %", 100+float64(planeHigh)/2, float64(s.at(4.4)), 1e-9)
	s = relativeScale([]float64{0.15, 9}, 100)
	near.Absolute(t, "lowest mark", 0.1, s.low, 1e-12)
	near.Absolute(t, "highest mark", 20, s.high, 1e-12)
	near.Absolute(t, "a factor of ten of two hundred", 100+float64(planeHigh)*math.Log(10)/math.Log(200), float64(s.at(1)), 1e-9)
	for _, values := range [][]float64{{0}, {0, 100}, {100}, {1e-9, 100}} {
		s := relativeScale(values, 100)
		for _, v := range values {
			assert.True(t, s.at(v) >= 100 && s.at(v) <= 100+planeHigh, "%v of %v", v, values)
		}
	}
}
