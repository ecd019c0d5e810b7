package words

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"minim/equipment"
	"minim/uncertainty"
	"minim/uncertainty/route"
	"minim/uncertainty/strengths"
)

// off is a result that aims by so much of 10 g/L elsewhere; amended says whether another
// reading mends it.
func off(name string, by float64, amended bool) route.Result {
	scale := &equipment.Balance{Name: "scale", Readability: 0.01, Capacity: 100}
	r := outcome(0.4, 4, 2)
	r.Route = &route.Route{Name: name, Steps: []route.Step{{Verb: route.Weigh, Amount: 0.6, Balance: scale}}}
	r.Intended = 10 * (1 + by)
	r.Analytic.Value = r.Intended
	r.Elsewhere = &route.Elsewhere{Off: by}
	if amended {
		r.Elsewhere.Step, r.Elsewhere.Chance = 1, 0.94996
		r.Elsewhere.Amended = route.Step{Verb: route.Weigh, Amount: 0.68, Balance: scale}
	}
	return r
}

// aimed is a comparison of such results, of which the one at a place is used.
func aimed(use int, results ...route.Result) *route.Comparison {
	c := ranked(outcome(0.99, 4, 2), outcome(0.99, 4, 2))
	c.Prep.Kit, c.Results, c.Verdict.Use = new(equipment.Kit), results, use
	c.Prep.Target, _ = strengths.Parse("10 g/L")
	c.Prep.Tolerances = []route.Tolerance{{Text: "1 g/L", Limits: uncertainty.Limits{Lower: 9, Upper: 11}}}
	return c
}

func TestElsewhereWords(t *testing.T) {
	for want, r := range map[string]route.Result{
		"comes out 12 % too weak: weigh 0.68 g instead of 0.60 g on the scale (step 1); then it is inside 94.99 in 100, as it stands 40.0 (its steps aim at 8.8 g/L, the target is 10 g/L)": off("a", -0.12, true),
		"comes out 25 % too strong: its steps aim at 12.5 g/L, the target is 10 g/L, and no other reading of a single step brings it there on this bench":                                   off("a", 0.25, false),
	} {
		c := aimed(0, r)
		assert.Equal(t, want, elsewhereWords(c.Prep, &c.Results[0]))
	}
	cut := off("a", 0.25, false)
	cut.Elsewhere.Cut = true
	c := aimed(0, cut)
	assert.Contains(t, elsewhereWords(c.Prep, &c.Results[0]), "that was tried brings it there on this bench (not all were)")
}

// The route to use comes first, then those that a reading would mend, three in all; the
// others are counted, and said below (constructed).
func TestWhatIsSaidFirst(t *testing.T) {
	good := outcome(0.99, 4, 2)
	good.Route = &route.Route{Name: "good"}
	names := func(c *route.Comparison) (list []string) {
		for _, line := range FirstLines(c) {
			name, _, _ := strings.Cut(line, " comes out")
			list = append(list, name)
		}
		return list
	}
	assert.Empty(t, names(aimed(0, good)))
	assert.Equal(t, []string{"b", "a"}, names(aimed(1, off("a", -0.1, true), off("b", 0.1, true), good)))
	assert.Equal(t, []string{"b", "a"}, names(aimed(1, off("a", -0.1, true), off("b", 0.1, false), good)))
	assert.Equal(t, []string{"1 other route aims elsewhere, see below"}, names(aimed(0, good, off("a", -0.1, false))))
	many := aimed(4, off("a", -0.1, true), off("b", -0.1, true), off("c", -0.1, true), off("d", -0.1, true), good, off("e", -0.1, false))
	assert.Equal(t, []string{"a", "b", "c", "2 other routes aim elsewhere as well, see below"}, names(many))
	for i, said := range []bool{true, true, true, false, true, false} {
		r := &many.Results[i]
		assert.Equal(t, said, !strings.Contains(whyNotHere(many, r), " % too weak"), r.Route.Name)
		assert.Equal(t, r.Elsewhere != nil, strings.Contains(whyNotAt(many, r), "comes out 10 % too weak"), r.Route.Name)
	}
}

// A route that is to be used and as sure as it would be aimed at the target is said to aim elsewhere below its strength only.
func TestFirstOnlyWhatGains(t *testing.T) {
	sure := off("a", 0.02, true)
	sure.Inside[0].Simulated, sure.Elsewhere.Chance = 0.9999, 0.9998
	assert.Empty(t, FirstLines(aimed(0, sure)))
	sure.Inside[0].Simulated = 0.98
	assert.Len(t, FirstLines(aimed(0, sure)), 1)
}
