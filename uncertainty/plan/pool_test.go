package plan

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"minim/equipment"
	"minim/uncertainty"
	"minim/uncertainty/route"
)

// What rounding leaves over is no reason for two measurements more (constructed: 15 mL of a solute with a
// price, of which two must save 3.75 mL; four leave 6.5 mL or, rounder, 10 mL, six leave 4.3 mL). Where six
// save enough of what is least, they are recommended.
func TestRoundingBuysNoMeasurements(t *testing.T) {
	p := route.NewPrep(&equipment.Kit{})
	p.Volume, p.Solute.Price = 15, equipment.Price{Amount: 1, Currency: "EUR"}
	p.Tolerances = []route.Tolerance{{Limits: uncertainty.Limits{Lower: 0.9, Upper: 1.1}}}
	of := func(operations int, grams, leftOver float64) route.Result {
		on := &equipment.Balance{Readability: 0.001, Capacity: 100}
		return route.Result{
			Route: &route.Route{Steps: []route.Step{{Verb: route.Weigh, Balance: on, Amount: grams}}}, Possible: true, Informative: true,
			Operations: operations, MadeML: 15, LeftOverML: leftOver, Inside: []route.Chance{{Simulated: 0.99}}, Analytic: uncertainty.Analytic{Value: 1},
		}
	}
	for six, use := range map[float64]int{4.3: 0, 2.7: 1} {
		l := &pool{prep: p, options: Options{Limits: route.Limits{Prefer: route.Usual}}}
		for _, r := range []route.Result{of(4, 1.23, 6.5), of(4, 1, 10), of(6, 1, six)} {
			l.add(r, 0)
			l.simulated[len(l.results)-1] = true
		}
		places, at := l.shown()
		assert.Equal(t, use, at)
		assert.Equal(t, [][]int{{0, 2}, {1, 2}}[use], places)
	}
}

// What does not reach what is asked for is shown beside what does where it takes fewer measurements, which says why it
// takes more, and not where it takes more (constructed); where nothing reaches it, all is shown.
func TestNothingMoreThatFallsShortIsShown(t *testing.T) {
	p := route.NewPrep(&equipment.Kit{})
	p.Volume, p.LeastChance, p.Tolerances = 15, 0.95, []route.Tolerance{{Limits: uncertainty.Limits{Lower: 0.9, Upper: 1.1}}}
	shown := func(use int, chances ...float64) []int {
		l, places := &pool{prep: p}, []int{}
		for i, chance := range chances {
			l.add(route.Result{Route: &route.Route{}, Possible: true, Informative: true, MadeML: 15, Inside: []route.Chance{{Simulated: chance}}}, 0)
			places = append(places, i)
		}
		return l.worthShowing(places, use)
	}
	assert.Equal(t, []int{0}, shown(0, 0.999, 0.003))
	assert.Equal(t, []int{0, 1, 3}, shown(1, 0.94, 0.97, 0.94, 0.96))
	assert.Equal(t, []int{0, 1}, shown(0, 0.94, 0.93))
	p.Tolerances = nil
	assert.Equal(t, []int{0, 1}, shown(0, 0.94, 0.93))
}
