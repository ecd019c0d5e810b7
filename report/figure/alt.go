package figure

import (
	"fmt"
	"strings"

	"minim/uncertainty/route"
)

// SpreadAlt says in two sentences what the figure of [Spread] shows, for those
// who cannot see it.
func SpreadAlt(c *route.Comparison) string {
	var done []*route.Result
	for _, r := range ranked(c) {
		if r.Possible {
			done = append(done, r)
		}
	}
	if len(done) == 0 {
		return clean("No route can be done to make " + wanted(c.Prep) + ".")
	}
	marked, last := &c.Results[c.Verdict.Use], done[len(done)-1]
	s := fmt.Sprintf("How the strength spreads by each route (%d) to make %s: a row of a hundred dots for each. Marked %q: %s, %s",
		len(done), wanted(c.Prep), strings.ToLower(tag(c)), marked.Route.Name, spreadAlt(c, marked))
	if last != marked {
		s += fmt.Sprintf("; at the end: %s, %s", last.Route.Name, spreadAlt(c, last))
	}
	if n := len(c.Results) - len(done); n > 0 {
		s += fmt.Sprintf("; not possible: %d", n)
	}
	return clean(s + ".")
}

func spreadAlt(c *route.Comparison, r *route.Result) string {
	words := ""
	if !r.Informative {
		words = ", which could be nothing at all"
	}
	if len(r.Inside) == 0 {
		return shareWords(r.MonteCarlo.CoverageProbability) + " of batches within " + holds(r) + " of target" + words
	}
	return percent(r.Chance(), c.Prep.LeastChance) + " inside the tolerance" + words
}
