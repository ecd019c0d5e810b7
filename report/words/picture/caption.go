package picture

import (
	"fmt"
	"strings"

	"minim/equipment/quantity"
	"minim/report/words/clause"
	"minim/uncertainty/route"
)

// Caption is what is said in and about a figure as a whole; a figure without rows has no words
// for them.
type Caption struct {
	// Title is what the figure comes to.
	Title Title
	// Rows and Gives head what they are, Chance on two lines what is said of each; Tag is the word
	// on the marked one.
	Rows, Gives, Tag string
	Chance           [2]string
	// GiveOrTake is the name of its axis; Hollow explains a mark of a route whose chance is too
	// low.
	GiveOrTake, Hollow string
	Notes              []string
	// Alt says in two sentences what the figure shows.
	Alt string
}

// captionOf heads rows, and has the notes and what the figure shows.
func captionOf(c *route.Comparison, title Title, rows, word, alt string, notes ...string) Caption {
	chance := [2]string{"chances in 100 of", "being " + Labels.Inside}
	if len(c.Prep.Tolerances) == 0 {
		chance = [2]string{share(c.Results[c.Verdict.Use].MonteCarlo.CoverageProbability) + " of batches stay", "within this of target"}
	}
	return Caption{Title: title, Rows: rows + ", and the strength", Gives: "it gives in " + c.Prep.Target.Unit.Name, Tag: word, Chance: chance, Notes: notes, Alt: alt}
}

// OfRoutes words the spread of all routes, in their order.
func OfRoutes(c *route.Comparison, order []*route.Result) Caption {
	if c.Verdict.Use < 0 {
		return noneCan(c)
	}
	what := alt(c, order, "How the strength spreads by each route", "a row of a hundred dots for each", spreadAlt)
	return captionOf(c, Finding(c), "route", tag(c), what, marked(c), dots(c), predicted)
}

// OfBudget words all budgets, given the names and shares of the largest influences of a route.
func OfBudget(c *route.Comparison, order []*route.Result, largest func(*route.Result) []string) Caption {
	if c.Verdict.Use < 0 {
		return noneCan(c)
	}
	what := alt(c, order, "What spoils the strength"+clause.When(len(order) > 1, " by each route"), "bars for the largest shares of the variance"+clause.When(len(order) > 1, " of each"), func(_ *route.Comparison, r *route.Result) string {
		list := largest(r)
		return clause.Either(len(list) > 0, "spoilt most by "+quantity.Series(list, "and"), "spoilt by "+Labels.None)
	})
	return captionOf(c, Spoilt(&c.Results[c.Verdict.Use]), "route", tag(c), what, marked(c),
		"The variance is the square of the standard uncertainty: without an influence of 50 %, 71 % of the give or take would remain.",
		meaning+share(c.Settings.Coverage)+".", predicted)
}

// noneCan says that there is nothing to show.
func noneCan(c *route.Comparison) Caption {
	return Caption{Alt: "No route can be done to make " + wanted(c.Prep) + "."}
}

// OfBatch words the spread of one batch.
func OfBatch(c *route.Comparison, finished bool) Caption {
	note := clause.Either(finished, "The batch as made goes by what was really read, with all that is uncertain of that.",
		"The batch goes by what has been read so far, and for what is still to come by the plan.")
	return captionOf(c, FoundAll(c), "batch", "THIS BATCH"+outsideTag(c), rowsAlt("How the strength of a batch spreads", c), note, dots(c))
}

// OfWays words the spread of the ways to correct a solution.
func OfWays(c *route.Comparison) Caption {
	word, note := "DO THIS", "Marked: the way that is recommended."
	if !c.Verdict.Meets && len(c.Prep.Tolerances) > 0 {
		word, note = tag(c), "No way reaches a chance of "+share(c.Prep.LeastChance)+"; the best of them is marked."
	}
	note += " What is uncertain of the solution as it is counts in each."
	return captionOf(c, Finding(c), "way", word, rowsAlt("How the strength spreads by each way to correct a solution", c), note, dots(c))
}

// outsideTag says of a batch whose strength is not permitted that it is outside.
func outsideTag(c *route.Comparison) string {
	r := &c.Results[c.Verdict.Use]
	out := len(c.Prep.Tolerances) > 0 && r.Chance() < c.Prep.LeastChance && !c.Prep.Tolerances[0].Limits.Permits(r.Quoted.Value)
	return clause.When(out, ": OUTSIDE")
}

// dots says what the dots stand for.
func dots(c *route.Comparison) string {
	mc := &c.Results[c.Verdict.Use].MonteCarlo
	return fmt.Sprintf("The dots stand for %s simulated batches (seed %d), each dot for one in a hundred. %s%s.",
		quantity.Grouped(mc.Trials), mc.Seed, meaning, share(mc.CoverageProbability))
}

// marked says why the marked route is marked.
func marked(c *route.Comparison) string {
	least := share(c.Prep.LeastChance)
	switch {
	case len(c.Verdict.Choice.Fell) > 0 && c.Verdict.Choice.Use != c.Verdict.Use:
		return "Marked: the route that was asked for; the usual rules would have another."
	case c.Verdict.Meets:
		return "Marked: the route that is recommended, which has a chance of at least " + least + "."
	case len(c.Prep.Tolerances) == 0:
		return "Marked: the route that is recommended, which stays about as near to the target as any. No tolerance is given."
	}
	return "No route here makes enough with a chance of at least " + least + "; the best of them is marked."
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
	return fmt.Sprintf("%s, wanted %s: a row of a hundred dots for each. %s.", subject, wanted(c.Prep), strings.Join(parts, "; "))
}

func spreadAlt(c *route.Comparison, r *route.Result) string {
	words := clause.When(!r.Informative, ", which could be nothing at all")
	if len(r.Inside) == 0 {
		return share(r.MonteCarlo.CoverageProbability) + " of batches within " + quantity.Percent(r.HoldsWithin) + " of target" + words
	}
	return inside(c.Prep, r) + words
}

// alt names the subject of a figure and the form that it has, and tells of the marked
// route and of the last.
func alt(c *route.Comparison, order []*route.Result, subject, form string, tell func(*route.Comparison, *route.Result) string) string {
	var last *route.Result
	done, stopped := 0, 0
	for _, r := range order {
		if r.Possible {
			last = r
			done++
		}
		if r.MayNotBeUsed() {
			stopped++
		}
	}
	use := &c.Results[c.Verdict.Use]
	parts := clause.List{fmt.Sprintf("%s (%d) to make %s%s: %s. Marked %q: %s, %s",
		subject, done, wanted(c.Prep), onChanged(c.Prep), form, strings.ToLower(tag(c)), use.Route.Name, tell(c, use))}
	parts.Add(last != use, "at the end: %s, %s", last.Route.Name, tell(c, last))
	cannot := len(order) - done - stopped
	parts.Add(cannot > 0, "not possible: %d", cannot)
	parts.Add(stopped > 0, "not to be used: %d", stopped)
	return strings.Join(parts, "; ") + "."
}
