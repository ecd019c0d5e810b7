package picture

import (
	"cmp"
	"fmt"
	"math"
	"strings"

	"minim/equipment/quantity"
	"minim/report/words/clause"
	"minim/uncertainty/plan"
	"minim/uncertainty/route"
)

// OnScale names an axis, which says so where it is logarithmic.
func OnScale(name string, logarithmic bool) string {
	return name + clause.When(logarithmic, ", logarithmic scale")
}

// giveOrTakeAxis is the axis of a give or take with a coverage probability, 0 where none is stated.
func giveOrTakeAxis(coverage float64) string {
	return "give or take, in % of the strength" + clause.When(coverage > 0, " ("+share(coverage)+")")
}

// Figures are those of a route beside its name.
func Figures(p *route.Prep, r *route.Result) string {
	return "give or take " + quantity.Percent(r.GiveOrTake()) + ", " + leavings(r, p.Volume) + clause.When(len(r.Inside) > 0, ", "+inside(p, r))
}

// Trade is what is drawn of a search.
type Trade struct {
	*plan.Plan
	// Marked is the name of the marked route, as there is room for it; Used is true where it is
	// drawn.
	Marked string
	Used   bool
	// Coverage is the probability that a give or take has.
	Coverage float64
	// Drawn routes are those of the front, Hidden ones too wide, and Silent ones say nothing.
	Drawn, Hidden, Silent int
	// Ends are the first and the last of the front, or the one that it has.
	Ends []*route.Result
}

// Caption explains what is drawn, and says what is not, and what the figure shows.
func (t *Trade) Caption() Caption {
	return Caption{Title: t.title(), Tag: tag(t.Comparison), GiveOrTake: giveOrTakeAxis(t.Coverage), Hollow: "hollow: chance of being inside under " + share(t.Prep.LeastChance), Notes: t.notes(), Alt: t.alt()}
}

// title is what the marked route comes to, and what the least left over would of those that were
// found; own routes, which are drawn as well, may leave over less.
func (t *Trade) title() Title {
	use := t.Verdict.Use
	if use < 0 || len(t.Ends) == 0 {
		return func(func(string) string) string { return "No route is good enough" }
	}
	r, least := &t.Results[use], t.Ends[0]
	rest := ""
	if least != r && millilitres(least.LeftOverML) != millilitres(r.LeftOverML) {
		rest = "; the least found is " + millilitres(math.Max(0, least.LeftOverML)) + ", at " + clause.Either(len(least.Inside) > 0, shortChance(t.Prep, least)+" in 100", shortChance(t.Prep, least))
	}
	return func(name func(string) string) string { return found(t.Prep, r, name) + rest }
}

func (t *Trade) notes() []string {
	list := clause.List{t.chosen(), t.beaten(), meaning + share(t.Coverage) + "."}
	list.Add(t.Hidden > 0, "%s", notShown(t.Hidden, "with a give or take over 100 %"))
	list.Add(t.Silent > 0, "%s", notShown(t.Silent, "of your own that cannot be done or could hold nothing at all"))
	list.Put("", clause.When(t.CutShort, cutShort))
	return append(list, predicted)
}

// cutShort is said of a search that was cut short.
const cutShort = "The search was cut short before all routes were searched: one that beats these may exist."

// beaten says what it is to beat a route.
func (t *Trade) beaten() string {
	by := clause.Either(len(t.Prep.Tolerances) > 0, "chance of being inside (over 99.9 % counts as equal)", "nearness to the target (expected difference and give or take)")
	return "A route beats another when it is at least as good in " + by + ", left over and number of measurements, and better in one of them."
}

// notShown is "3 routes of that kind are not shown.".
func notShown(n int, which string) string {
	return clause.Either(n == 1, "1 route "+which+" is not shown.", fmt.Sprintf("%d routes %s are not shown.", n, which))
}

// chosen names the marked route in full and says why it is marked.
func (t *Trade) chosen() string {
	c := t.Comparison
	if c.Verdict.Use < 0 {
		return "No route is marked."
	}
	words, least := "Marked: "+t.Marked+". ", share(c.Prep.LeastChance)
	usual := t.Options.Prefer == route.Usual
	switch {
	case c.Verdict.Meets && usual:
		return words + "It is recommended: it has a chance of at least " + least + ", few measurements for what it leaves over, and round readings."
	case c.Verdict.Meets:
		return words + "Of the routes with a chance of at least " + least + ", it is the one " + preferred(t.Options.Prefer) + "."
	case len(c.Prep.Tolerances) > 0:
		return words + "No route has a chance of at least " + least + "; this is the best of them."
	case usual:
		return words + "No tolerance is given; it is about as near to the target as any, with few measurements and round readings."
	case t.Options.Prefer == route.LeastLeftOver:
		return words + "No tolerance is given; it is the one nearest to the target."
	}
	return words + "No tolerance is given; it is the one " + preferred(t.Options.Prefer) + "."
}

// preferred says what a preference makes small.
func preferred(preference string) string {
	return cmp.Or(preferences[preference], "that leaves least over")
}

var preferences = map[string]string{
	route.Tightest:    "with the least give or take",
	route.Fewest:      "with the fewest measurements",
	route.LeastSolute: "that uses the least solute",
	route.Cheapest:    "that costs least",
}

func (t *Trade) alt() string {
	if t.Drawn == 0 {
		return "No route was found to make " + wanted(t.Prep) + "."
	}
	end := func(r *route.Result) string {
		return millilitres(max(0, r.LeftOverML)) + " and " + quantity.Percent(r.GiveOrTake())
	}
	ends := end(t.Ends[0])
	if len(t.Ends) > 1 {
		ends = "from " + ends + " to " + end(t.Ends[1])
	}
	s := fmt.Sprintf("What is left over by the routes that no other beats, and some with rounder readings, (%d) to make %s%s, against their give or take: %s.",
		t.Drawn, wanted(t.Prep), onChanged(t.Prep), ends)
	if used := t.Verdict.Use; t.Used {
		s += fmt.Sprintf(" Marked %q: %s, %s.", strings.ToLower(tag(t.Comparison)), t.Results[used].Route.Name, Figures(t.Prep, &t.Results[used]))
	}
	return s + clause.When(t.CutShort, " "+cutShort)
}
