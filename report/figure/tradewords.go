package figure

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"gonum.org/v1/plot/vg"

	"minim/equipment/quantity"
	"minim/uncertainty/plan"
	"minim/uncertainty/route"
)

func (t *trade) coverage() string { return shareWords(t.front[0].result.Analytic.CoverageProbability) }

// figures of a route, beside its name.
func (t *trade) figures(q point) string {
	words := "give or take " + quantity.Percent(q.relative/100) + ", " + leavings(q.result, t.p.Prep.Volume)
	if len(q.result.Inside) > 0 {
		words += ", " + percent(q.result.Chance(), t.p.Prep.LeastChance) + " inside"
	}
	return words
}

// key explains the marks that occur.
func (t *trade) key() (k key) {
	k.say(boldText, "Each mark is a route that no other beats.")
	for i := range marks {
		if !slices.ContainsFunc(t.front, func(q point) bool { return markOf(q.result.Dilutions) == &marks[i] }) {
			continue
		}
		k.show(2*markRadius, marks[i].words, func(on *sheet, x, y vg.Length) {
			on.mark(&marks[i], vg.Point{X: x + markRadius, Y: y}, markRadius, true)
		})
	}
	if slices.ContainsFunc(t.front, func(q point) bool { return !t.good(q.result) }) {
		k.show(2*markRadius, "hollow: chance of being inside under "+shareWords(t.p.Prep.LeastChance), func(on *sheet, x, y vg.Length) {
			on.mark(&anyMark, vg.Point{X: x + markRadius, Y: y}, markRadius, false)
		})
	}
	if len(t.own) > 0 {
		k.show(2*ownRadius, "your own routes", func(on *sheet, x, y vg.Length) {
			on.circle(vg.Point{X: x + ownRadius, Y: y}, ownRadius, paper, ownLine)
		})
	}
	k.show(24, "least give or take for that much left over or less", func(on *sheet, x, y vg.Length) {
		on.line(stairLine, x, y, x+24, y)
	})
	return k
}

// notes explain what is drawn, and say what is not.
func (t *trade) notes() []string {
	list := []string{t.chosen(), t.beaten(), "Give or take: expanded uncertainty, coverage probability " + t.coverage() + "."}
	if t.x.log {
		list[2] += " What is left over is drawn on a logarithmic scale."
	}
	if t.hidden > 0 {
		list = append(list, counted(t.hidden, "route", "with a give or take over 100 %", "not shown"))
	}
	if t.silent > 0 {
		list = append(list, counted(t.silent, "route", "of your own that cannot be done or could hold nothing at all", "not shown"))
	}
	if t.p.CutShort {
		list = append(list, cutShortWords)
	}
	return append(list, predicted)
}

// cutShortWords are said of a search that was cut short.
const cutShortWords = "The search was cut short before all routes were searched: one that beats these may exist."

// beaten says what it is to beat a route.
func (t *trade) beaten() string {
	by := "nearness to the target (expected difference and give or take)"
	if len(t.p.Prep.Tolerances) > 0 {
		by = "chance of being inside (over 99.9 % counts as equal)"
	}
	return "A route beats another when it is at least as good in " + by + ", left over and number of measurements, and better in one of them."
}

// counted is "3 routes of that kind are not shown.".
func counted(n int, noun, which, what string) string {
	if n == 1 {
		return fmt.Sprintf("1 %s %s is %s.", noun, which, what)
	}
	return fmt.Sprintf("%d %ss %s are %s.", n, noun, which, what)
}

// chosen names the marked route in full and says why it is marked.
func (t *trade) chosen() string {
	c := t.p.Comparison
	if c.Verdict.Use < 0 {
		return "No route is marked."
	}
	// A long name must not hide the reason.
	words := "Marked: " + cut(smallText, footWide/2, clean(c.Results[c.Verdict.Use].Route.Name)) + ". "
	least := shareWords(c.Prep.LeastChance)
	switch {
	case c.Verdict.Meets:
		return words + "Of the routes with a chance of at least " + least + ", it is the one " + preferred(t.p.Options.Prefer) + "."
	case len(c.Prep.Tolerances) > 0:
		return words + "No route has a chance of at least " + least + "; this is the best of them."
	case t.p.Options.Prefer == route.LeastLeftOver:
		return words + "No tolerance is given; it is the one nearest to the target."
	}
	return words + "No tolerance is given; it is the one " + preferred(t.p.Options.Prefer) + "."
}

// preferred says what a preference makes small.
func preferred(preference string) string {
	switch preference {
	case route.Tightest:
		return "with the least give or take"
	case route.Fewest:
		return "with the fewest measurements"
	case route.LeastSolute:
		return "that uses the least solute"
	case route.Cheapest:
		return "that costs least"
	}
	return "that leaves least over"
}

// altOfTrade says in two sentences what the figure of [Trade] shows.
func altOfTrade(p *plan.Plan) string {
	if p.Comparison == nil {
		return "No route was found."
	}
	t := newTrade(p)
	if len(t.front) == 0 {
		return clean("No route was found to make " + wanted(p.Prep) + ".")
	}
	on := ""
	if len(p.Prep.Changes) > 0 {
		on = ", on a changed kit"
	}
	s := fmt.Sprintf("What is left over by the routes that no other beats (%d) to make %s%s, against their give or take: %s.",
		len(t.front), wanted(p.Prep), on, t.ends())
	if t.used != nil {
		s += fmt.Sprintf(" Marked %q: %s, %s.", strings.ToLower(tag(p.Comparison)), t.used.result.Route.Name, t.figures(*t.used))
	}
	if p.CutShort {
		s += " " + cutShortWords
	}
	return clean(s)
}

// ends tells of the routes of the front with the least left over and with the
// least give or take.
func (t *trade) ends() string {
	words := func(q point) string { return millilitres(q.leftOver) + " and " + quantity.Percent(q.relative/100) }
	first, last := slices.MinFunc(t.front, point.compare), slices.MinFunc(t.front, func(a, b point) int {
		return cmp.Or(cmp.Compare(a.relative, b.relative), cmp.Compare(a.leftOver, b.leftOver))
	})
	if first == last {
		return words(first)
	}
	return "from " + words(first) + " to " + words(last)
}
