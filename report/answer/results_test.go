package answer

import (
	"context"
	"testing"

	"github.com/stretchr/testify/require"

	"minim/equipment"
	"minim/uncertainty"
	read "minim/uncertainty/bench"
	"minim/uncertainty/contest"
	"minim/uncertainty/route"
	"minim/uncertainty/strengths"
)

const demoPrep = "../../cmd/minim/demo/dye.toml"

func compared(t *testing.T, path string) *route.Comparison {
	t.Helper()
	p, err := read.LoadPrep(context.Background(), path, "")
	require.NoError(t, err)
	c, err := contest.Compare(context.Background(), p, "", uncertainty.Settings{Trials: 20_000, Seed: 7, Coverage: 0.95})
	require.NoError(t, err)
	return c
}

// ranked is a comparison of two results, of which the first is used; good are their chances.
func ranked(used, other route.Result) *route.Comparison {
	p := &route.Prep{Volume: 10, LeastChance: 0.95, Tolerances: []route.Tolerance{{Text: "1 g/L", Limits: uncertainty.Limits{Lower: 9, Upper: 11}}}}
	c := &route.Comparison{Prep: p, Results: []route.Result{used, other}}
	return c
}

// outcome is a result with only what the ranking looks at.
func outcome(chance, leftOver float64, operations int) route.Result {
	return route.Result{
		Route: &route.Route{Name: "r"}, Possible: true, Informative: true, MadeML: 10,
		Inside: []route.Chance{{Simulated: chance}}, LeftOverML: leftOver, Operations: operations, Closer: 0.5,
	}
}

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
