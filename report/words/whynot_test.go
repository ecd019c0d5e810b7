package words

import (
	"math"
	"regexp"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"minim/uncertainty"
	"minim/uncertainty/policy"
	"minim/uncertainty/route"
)

// ranked is a comparison of two results, of which the first is used; good are their chances.
func ranked(used, other route.Result) *route.Comparison {
	p := &route.Prep{Volume: 10, LeastChance: 0.95, Tolerances: []route.Tolerance{{Text: "1 g/L", Limits: uncertainty.Limits{Lower: 9, Upper: 11}}}}
	c := &route.Comparison{Prep: p, Results: []route.Result{used, other}}
	c.Verdict.Choice = p.Choose(c.Results)
	return c
}

// outcome is a result with only what the ranking looks at.
func outcome(chance, leftOver float64, operations int) route.Result {
	return route.Result{
		Route: &route.Route{Name: "r"}, Possible: true, Informative: true, MadeML: 10,
		Inside: []route.Chance{{Simulated: chance}}, Analytic: uncertainty.Analytic{Value: 10}, LeftOverML: leftOver, Operations: operations, Closer: 0.5,
	}
}

var insteadOf = regexp.MustCompile(`(\S+(?: mL)?)( measurements)? instead of (\S+(?: mL)?)`)

// What is said against a route that is good enough is what the ranking went by, and it
// never puts a number against the same number (constructed).
func TestWhyNotSaysWhatDecided(t *testing.T) {
	for _, test := range []struct {
		used, other route.Result
		want        string
	}{
		{outcome(0.97, 4, 6), outcome(0.97, 8, 6), "good enough, but leaves 8 mL instead of 4 mL"},
		{outcome(0.97, 4, 6), outcome(0.97, 9.5, 4), "good enough, but leaves 9.5 mL, where 6 measurements in place of 4 leave no more than 4 mL"},
		{outcome(0.97, 4, 4), outcome(0.97, 4, 6), "good enough, but takes 6 measurements instead of 4;"},
		{outcome(0.97, 4, 4), outcome(0.97, 1, 6), "good enough, but takes 6 measurements instead of 4 and saves only 3 mL"},
		{outcome(0.99, 4, 6), outcome(0.97, 4, 6), "good enough, but is inside 97.0 in 100, and not the 97.5 that halve the risk asked for"},
		{outcome(0.97, 4, 6), outcome(0.97, 4, 6), "as good in all that decides; the other comes first by its name"},
		// Chosen by name, against the ranking.
		{outcome(0.97, 8, 6), outcome(0.97, 4, 6), "good enough, and would be used if the other had not been chosen by name: that leaves 8 mL instead of 4 mL"},
		{outcome(0.97, 4, 6), outcome(0.97, 4, 2), "good enough, and would be used if the other had not been chosen by name: that takes 6 measurements instead of 2"},
		{outcome(0.60, 4, 6), outcome(0.99, 8, 9), "good enough, and would be used if the other had not been chosen by name: that is inside 60.0 in 100"},
		{outcome(0.60, 4, 6), outcome(0.94996, 8, 9), "inside with a chance of 94.99 in 100, 95 asked for"},
	} {
		c := ranked(test.used, test.other)
		got := whyNot(c, &c.Results[1])
		assert.Contains(t, got, test.want)
		if m := insteadOf.FindStringSubmatch(got); m != nil {
			assert.NotEqual(t, m[1], m[3], got)
		}
	}
	tooLittle := outcome(0.99, 4, 6)
	tooLittle.MadeML = 9
	c := ranked(tooLittle, outcome(0.97, 8, 9))
	assert.Contains(t, whyNot(c, &c.Results[1]), "chosen by name: that makes too little")
}

// Whatever two routes give, the words name the criterion by which they were ranked.
func TestWhyNotOverAllPairs(t *testing.T) {
	var all []route.Result
	for _, chance := range []float64{0.5, 0.95, 0.99} {
		for _, left := range []float64{0, 4, 4.0001, 8, 20} {
			for _, operations := range []int{4, 6} {
				all = append(all, outcome(chance, left, operations))
			}
		}
	}
	words := map[policy.Rule]string{
		policy.Name: "by its name", policy.HalfRisk: "halve the risk", policy.Meeting: "in 100", policy.Chance: "in 100", policy.LeftOver: "leaves", policy.Operations: "measurements in",
	}
	for _, used := range all {
		for _, other := range all {
			c := ranked(used, other)
			_, by := c.Prep.Rank(&c.Results[0], &c.Results[1])
			got := whyNot(c, &c.Results[1])
			if other.Chance() >= 0.95 && by == policy.Meeting {
				assert.Contains(t, got, "is inside ")
			} else if other.Chance() < 0.95 {
				assert.Contains(t, got, "95 asked for")
			} else {
				require.Contains(t, words, by)
				assert.Contains(t, got, words[by])
			}
			if m := insteadOf.FindStringSubmatch(got); m != nil {
				assert.NotEqual(t, m[1], m[3], got)
			}
		}
	}
}

// What is shown before anything is simulated says so, and nothing of how often a route comes closer.
func TestBeforeItIsSimulated(t *testing.T) {
	first := outcome(0.97, 4, 6)
	first.Closer, first.MonteCarlo.ByLaw = math.NaN(), true
	c := ranked(first, first)
	assert.Equal(t, "not yet: the ends and chances are those of the linear part of the model, by its exact distribution", checked(c, &first, "give or take"))
	assert.NotContains(t, whyNot(c, &c.Results[1]), "closer")
	assert.NotContains(t, chance(c, &first), "batches")
}

// That a route is about as sure as the other is said where the figures that are shown agree, and by no rule that
// counts them as equal for other reasons (constructed).
func TestAboutAsTheOtherGoesByFigures(t *testing.T) {
	doubted := func(chance float64) route.Result {
		r := outcome(chance, 4, 6)
		r.Notes.Warn("only-dissolved", "ammonia")
		return r
	}
	for _, test := range []struct {
		used, other route.Result
		want        string
	}{
		{outcome(0.999, 4, 6), doubted(0.444), "44.4 in 100, 95 asked for, and is in doubt"},
		{outcome(0.3, 4, 6), doubted(0.444), "44.4 in 100, 95 asked for, but is in doubt"},
		{outcome(0.444, 4, 6), doubted(0.444), "44.4 in 100, 95 asked for, about as the other, but is in doubt"},
		{outcome(0.4443, 4, 6), outcome(0.4437, 9, 6), "44.4 in 100, 95 asked for, about as the other, but leaves 9 mL instead of 4 mL"},
	} {
		c := ranked(test.used, test.other)
		assert.Contains(t, whyNot(c, &c.Results[1]), test.want)
	}
}
