package figure

import (
	"fmt"
	"strings"

	"minim/uncertainty/route"
)

// altOfSpread says in two sentences what the figure of [Spread] shows, for those
// who cannot see it.
func altOfSpread(c *route.Comparison) string {
	return altOf(c, "How the strength spreads by each route", "a row of a hundred dots for each", spreadAlt)
}

// altOfBudget does so for the figure of [Budget].
func altOfBudget(c *route.Comparison) string {
	return altOf(c, "What spoils the strength by each route", "bars for the largest shares of the variance of each", budgetAlt)
}

// altOf names the subject of a figure and the form that it has, and tells of the
// marked route and of the last.
func altOf(c *route.Comparison, subject, form string, tell func(*route.Comparison, *route.Result) string) string {
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
	on := ""
	if len(c.Prep.Changes) > 0 {
		on = ", on a changed kit"
	}
	s := fmt.Sprintf("%s (%d) to make %s%s: %s. Marked %q: %s, %s",
		subject, len(done), wanted(c.Prep), on, form, strings.ToLower(tag(c)), marked.Route.Name, tell(c, marked))
	if last != marked {
		s += fmt.Sprintf("; at the end: %s, %s", last.Route.Name, tell(c, last))
	}
	not, stopped := len(c.Results)-len(done), 0
	for i := range c.Results {
		if c.Results[i].MayNotBeUsed() {
			stopped++
		}
	}
	if n := not - stopped; n > 0 {
		s += fmt.Sprintf("; not possible: %d", n)
	}
	if stopped > 0 {
		s += fmt.Sprintf("; not to be used: %d", stopped)
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

func budgetAlt(_ *route.Comparison, r *route.Result) string {
	bars := barsOf(r.Analytic.Budget)
	if len(bars) == 0 {
		return "spoilt by nothing that is counted"
	}
	words := fmt.Sprintf("spoilt most by %s (%s)", bars[0].words, shareOfVariance(bars[0].share))
	if len(bars) > 1 {
		words += fmt.Sprintf(" and %s (%s)", bars[1].words, shareOfVariance(bars[1].share))
	}
	return words
}
