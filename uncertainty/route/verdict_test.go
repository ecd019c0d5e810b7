package route

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"

	"minim/uncertainty"
)

// candidate is a result with only what the verdict looks at.
func candidate(name string, chance, leftOver float64, operations int) Result {
	return Result{
		Route: &Route{Name: name}, Analytic: uncertainty.Analytic{Value: 1}, Possible: true, Informative: true, MadeML: 10,
		Inside: []Chance{{Simulated: chance}}, LeftOverML: leftOver, Operations: operations,
		HoldsWithin: 1 - chance,
	}
}

func judged(tolerances int, results ...Result) (string, bool) {
	c := &Comparison{Prep: &Prep{Volume: 10, LeastChance: 0.95}, Results: results}
	for range tolerances {
		c.Prep.Tolerances = append(c.Prep.Tolerances, Tolerance{Limits: uncertainty.Limits{Upper: 2}})
	}
	v := c.judge()
	if v.Use < 0 {
		return "none", v.Meets
	}
	if c.Prep.Better(&results[v.Use], &results[v.Use]) {
		return "better than itself", v.Meets
	}
	return results[v.Use].Route.Name, v.Meets
}

func TestVerdict(t *testing.T) {
	impossible := Result{Route: &Route{Name: "impossible"}, Inside: []Chance{{Simulated: 1}}}
	uninformative := candidate("uninformative", 0.99, 0, 1)
	uninformative.Informative = false
	short := candidate("short", 0.999, 0, 1)
	short.MadeML = 9
	for _, c := range []struct {
		name    string
		want    string
		meets   bool
		results []Result
	}{
		{"half the risk before less left over", "a", true, []Result{candidate("a", 0.99, 50, 2), candidate("b", 0.96, 20, 6), candidate("c", 0.94, 0, 2)}},
		{"without it, what two more measurements save", "b", true, []Result{candidate("a", 0.96, 30, 4), candidate("b", 0.96, 20, 6), candidate("c", 0.94, 0, 2)}},
		{"fewer measurements where they save too little", "a", true, []Result{candidate("a", 0.99, 20, 4), candidate("b", 0.98, 18, 6)}},
		{"the required chance itself is enough", "b", true, []Result{candidate("a", 0.96, 20, 6), candidate("b", 0.95, 10, 4)}},
		{"what is about the least left over goes by its name", "a", true, []Result{candidate("b", 0.96, 10, 4), candidate("a", 0.96, 12, 4)}},
		{"none reaches it: the best chance", "b", false, []Result{candidate("a", 0.5, 0, 2), candidate("b", 0.9, 90, 9)}},
		{"what makes too little comes last", "a", false, []Result{candidate("a", 0.5, 5, 2), short}},
		{"what says nothing comes last", "a", false, []Result{uninformative, candidate("a", 0.5, 5, 2)}},
		{"what is impossible never", "a", false, []Result{impossible, candidate("a", 0.1, 5, 2)}},
		{"none can be done", "none", false, []Result{impossible}},
		{"only one that makes too little", "short", false, []Result{short}},
	} {
		got, meets := judged(1, c.results...)
		assert.Equal(t, c.want, got, c.name)
		assert.Equal(t, c.meets, meets, c.name)
	}
	got, meets := judged(0, candidate("wide", 0.5, 0, 1), candidate("tight", 0.9, 90, 9))
	assert.Equal(t, "tight", got, "without a tolerance the tightest")
	assert.False(t, meets)
	assert.True(t, math.IsNaN((&Result{}).Chance()))
}
