package picture

import (
	"fmt"
	"strings"

	"minim/equipment/quantity"
	"minim/uncertainty/route"
)

// Caption is what a figure of spreads says: what its rows are, the word on the marked one,
// the notes, and what it shows.
type Caption struct {
	Rows, Tag string
	Notes     []string
	Alt       string
}

// OfRoutes words the spread of all routes; [SpreadAlt] says what it shows.
func OfRoutes(c *route.Comparison) Caption {
	return Caption{Rows: Head.Routes, Tag: Tag(c), Notes: []string{marked(c), dots(c), predicted}}
}

// OfBatch words the spread of one batch.
func OfBatch(c *route.Comparison, finished bool) Caption {
	note := "The batch as made goes by what was really read, with all that is uncertain of that."
	if !finished {
		note = "The batch goes by what has been read so far, and for what is still to come by the plan."
	}
	return Caption{Head.Batch, "THIS BATCH", []string{note, dots(c)}, rowsAlt("How the strength of a batch spreads", c)}
}

// OfWays words the spread of the ways to correct a solution.
func OfWays(c *route.Comparison) Caption {
	word, note := "DO THIS", "Marked: the way that is recommended."
	if !c.Verdict.Meets && len(c.Prep.Tolerances) > 0 {
		word, note = Tag(c), "No way reaches a chance of "+Share(c.Prep.LeastChance)+"; the best of them is marked."
	}
	note += " What is uncertain of the solution as it is counts in each."
	return Caption{Head.Ways, word, []string{note, dots(c)}, rowsAlt("How the strength spreads by each way to correct a solution", c)}
}

// dots says what the dots stand for.
func dots(c *route.Comparison) string {
	mc := &c.Results[c.Verdict.Use].MonteCarlo
	return fmt.Sprintf("The dots stand for %s simulated batches (seed %d), each dot for one in a hundred. %s%s.",
		quantity.Grouped(mc.Trials), mc.Seed, meaning, Share(mc.CoverageProbability))
}

// ChanceHead heads, on two lines, what is said of each row.
func ChanceHead(p *route.Prep, coverage float64) [2]string {
	if len(p.Tolerances) == 0 {
		return [2]string{Share(coverage) + " of batches stay", "within this of target"}
	}
	return [2]string{"chance of being", Dots.Inside}
}

// rowsAlt tells of every row.
func rowsAlt(subject string, c *route.Comparison) string {
	parts := make([]string, len(c.Results))
	for i := range c.Results {
		r := &c.Results[i]
		parts[i] = r.Route.Name + ", not possible"
		if r.Possible {
			parts[i] = r.Route.Name + ", " + spreadAlt(c, r)
		}
	}
	return fmt.Sprintf("%s, wanted %s: a row of a hundred dots for each. %s.", subject, Wanted(c.Prep), strings.Join(parts, "; "))
}

// SpreadAlt says in two sentences what the figure of the spread of all routes, in their
// order, shows.
func SpreadAlt(c *route.Comparison, order []*route.Result) string {
	return alt(c, order, "How the strength spreads by each route", "a row of a hundred dots for each", spreadAlt)
}

func spreadAlt(c *route.Comparison, r *route.Result) string {
	words := ""
	if !r.Informative {
		words = ", which could be nothing at all"
	}
	if len(r.Inside) == 0 {
		return Share(r.MonteCarlo.CoverageProbability) + " of batches within " + Holds(r) + " of target" + words
	}
	return Inside(r, c.Prep) + " the tolerance" + words
}

// alt names the subject of a figure and the form that it has, and tells of the marked
// route and of the last.
func alt(c *route.Comparison, order []*route.Result, subject, form string, tell func(*route.Comparison, *route.Result) string) string {
	var done []*route.Result
	stopped := 0
	for _, r := range order {
		if r.Possible {
			done = append(done, r)
		}
		if r.MayNotBeUsed() {
			stopped++
		}
	}
	if len(done) == 0 {
		return "No route can be done to make " + Wanted(c.Prep) + "."
	}
	use, last := &c.Results[c.Verdict.Use], done[len(done)-1]
	s := fmt.Sprintf("%s (%d) to make %s%s: %s. Marked %q: %s, %s",
		subject, len(done), Wanted(c.Prep), OnChanged(c.Prep), form, strings.ToLower(Tag(c)), use.Route.Name, tell(c, use))
	if last != use {
		s += fmt.Sprintf("; at the end: %s, %s", last.Route.Name, tell(c, last))
	}
	if n := len(order) - len(done) - stopped; n > 0 {
		s += fmt.Sprintf("; not possible: %d", n)
	}
	if stopped > 0 {
		s += fmt.Sprintf("; not to be used: %d", stopped)
	}
	return s + "."
}
