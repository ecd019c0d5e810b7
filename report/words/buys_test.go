package words

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"minim/uncertainty"
	"minim/uncertainty/plan"
	"minim/uncertainty/route"
)

// What more measurements buy is said beside the route before, up to the one that is recommended, and
// beside that after it; whether it is worth it by the rule that decided (constructed: 10 mL wanted,
// so that two measurements must save 5 mL).
func TestWhatMoreMeasurementsBuy(t *testing.T) {
	with := func(dilutions int, r route.Result) route.Result {
		r.Dilutions = dilutions
		return r
	}
	for _, test := range []struct {
		results []route.Result
		want    []string
	}{
		{
			[]route.Result{with(0, outcome(0.98, 80, 2)), with(1, outcome(0.98, 6, 4)), with(2, outcome(0.99, 5.96, 6))},
			[]string{
				"a dilution saves 74 mL: worth it",
				"a second dilution saves 0.04 mL, inside 99.0 in 100 (before: inside 98.0 in 100): not worth it",
			},
		},
		{
			[]route.Result{with(0, outcome(0.98, 9, 2)), with(1, outcome(0.96, 1, 4)), with(3, outcome(0.98, 9.5, 8))},
			[]string{
				"a dilution saves 8 mL, inside 96.0 in 100 (before: inside 98.0 in 100); but it is inside 96.0 in 100, and not the 97.5 that halve the risk asked for",
				"6 more measurements leave 0.5 mL more: not worth it",
			},
		},
		{
			[]route.Result{with(0, outcome(0.98, 9, 2)), with(0, outcome(0.98, 9, 3))},
			[]string{"1 more measurement gives much the same: not worth it"},
		},
		{
			[]route.Result{with(0, outcome(0.98, 90, 2)), with(1, outcome(0.98, 40, 4)), with(2, outcome(0.98, 9, 6))},
			[]string{"a dilution saves 50 mL", "a second dilution saves 31 mL: worth it"},
		},
	} {
		p := &route.Prep{Volume: 10, LeastChance: 0.95, Tolerances: []route.Tolerance{{Text: "1 g/L", Limits: uncertainty.Limits{Lower: 9, Upper: 11}}}}
		c := &route.Comparison{Prep: p, Results: test.results}
		c.Verdict.Choice = p.Choose(c.Results)
		c.Verdict.Use = c.Verdict.Choice.Use
		found := &plan.Plan{Comparison: c}
		found.Options.Prefer = route.Usual
		var got []string
		for _, f := range buys(found) {
			got = append(got, f.Text)
		}
		assert.Equal(t, test.want, got)
	}
}

// Routes that are shown and do not reach what is asked for are told apart, where another does (constructed).
func TestRoutesThatFallShort(t *testing.T) {
	for want, chances := range map[string][]float64{
		"Not enough: a and b, for want of the 95 in 100 asked for. ": {0.93, 0.94, 0.96},
		"": {0.95, 0.96, 0.97},
	} {
		c := &route.Comparison{Prep: ranked(outcome(1, 0, 2), outcome(1, 0, 2)).Prep}
		for _, chance := range chances {
			c.Results = append(c.Results, outcome(chance, 0, 2))
		}
		c.Verdict = route.Verdict{Use: 2, Meets: true}
		assert.Equal(t, want, fallShort(&plan.Plan{Comparison: c}))
		c.Verdict.Meets = false
		assert.Empty(t, fallShort(&plan.Plan{Comparison: c}), "the verdict says so")
	}
}
