package words

import (
	"math"
	"regexp"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"minim/uncertainty"
	"minim/uncertainty/route"
)

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

var insteadOf = regexp.MustCompile(`(\S+(?: mL)?)( measurements)? instead of (\S+(?: mL)?)`)

// What is said against a route that is good enough is what the ranking went by, and it
// never puts a number against the same number (constructed).
func TestWhyNotSaysWhatDecided(t *testing.T) {
	for _, test := range []struct {
		used, other route.Result
		want        string
	}{
		{outcome(0.97, 4, 6), outcome(0.99, 8, 2), "good enough, but leaves 8 mL instead of 4 mL"},
		{outcome(0.97, 4, 6), outcome(0.99, 4.0001, 2), "good enough, but leaves 0.0001 mL more"},
		{outcome(0.97, 4, 4), outcome(0.99, 4, 6), "good enough, but takes 6 measurements instead of 4"},
		{outcome(0.97, 4, 6), outcome(0.99, 4, 6), "as good in all that decides (chance asked for, left over, measurements); the other stands before it"},
		// Chosen by name, against the ranking.
		{outcome(0.97, 8, 6), outcome(0.99, 4, 6), "good enough, and would be used if the other had not been chosen by name: leaves 4 mL instead of 8 mL"},
		{outcome(0.97, 4, 6), outcome(0.99, 4, 2), "good enough, and would be used if the other had not been chosen by name: takes 2 measurements instead of 6"},
		{outcome(0.60, 4, 6), outcome(0.99, 8, 9), "good enough, and would be used if the other had not been chosen by name: is inside in 99.0 of 100"},
		{outcome(0.60, 4, 6), outcome(0.94996, 8, 9), "inside with a chance of 94.99 in 100, asked for is 95"},
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
	assert.Contains(t, whyNot(c, &c.Results[1]), "chosen by name: the other makes too little")
}

// Whatever two routes give, the words name the criterion by which they were ranked.
func TestWhyNotOverAllPairs(t *testing.T) {
	var all []route.Result
	for _, chance := range []float64{0.5, 0.95, 0.99} {
		for _, left := range []float64{0, 4, 4.0001} {
			for _, operations := range []int{4, 6} {
				all = append(all, outcome(chance, left, operations))
			}
		}
	}
	words := map[string]string{
		"alike": "stands before it", "meeting": "in 100", "chance": "in 100", "left-over": "leaves", "operations": "measurements instead of",
	}
	for _, used := range all {
		for _, other := range all {
			c := ranked(used, other)
			_, by := c.Prep.Rank(&c.Results[0], &c.Results[1])
			got := whyNot(c, &c.Results[1])
			if other.Chance() >= 0.95 && by == "meeting" {
				assert.Contains(t, got, "is inside in")
			} else if other.Chance() < 0.95 {
				assert.Contains(t, got, "asked for is 95")
			} else {
				require.Contains(t, words, string(by))
				assert.Contains(t, got, words[string(by)])
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
