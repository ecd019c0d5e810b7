package words

import (
	"fmt"
	"slices"
	"strings"

	"minim/equipment"
	"minim/equipment/quantity"
	"minim/report/words/note"
	"minim/uncertainty/policy"
	"minim/uncertainty/route"
)

// FellBy is the rule by which a route fell behind the one that is used; none where that was chosen by
// name against the rules.
func FellBy(c *route.Comparison, r *route.Result) policy.Rule {
	for i, rule := range c.Verdict.Choice.Fell {
		if c.Verdict.Use == c.Verdict.Choice.Use && &c.Results[i] == r {
			return rule
		}
	}
	return policy.None
}

// secondTo says why a route that is good enough is not the one to use.
func secondTo(c *route.Comparison, r, used *route.Result) string {
	choice := c.Verdict.Choice
	if by := FellBy(c, r); by != policy.None {
		return goodBut(by, outdone{c.Prep, r, used, choice.Least})
	}
	order, by := c.Prep.Rank(used, r)
	if order < 0 {
		return goodBut(by, outdone{c.Prep, r, used, used.LeftOverML})
	}
	recommended := choice.Use >= 0 && choice.Use < len(c.Results) && &c.Results[choice.Use] == r
	text := either(recommended, "would be used if the other had not been", "better than the one that was")
	return "good enough, and " + text + " chosen by name: that " + outdone{c.Prep, used, r, r.LeftOverML}.by(by)
}

// goodBut says why a route is not used that is good enough.
func goodBut(by policy.Rule, o outdone) string {
	if by == policy.Name {
		return "as good in all that decides; the other comes first by its name"
	}
	return "good enough, but " + o.by(by)
}

// alsoOutdone says why a route is not used that is as sure, or as tight, as what decides, and whether it is so as the one
// that is by the figures that are shown; "" where that decided, or another was chosen by name.
func alsoOutdone(c *route.Comparison, r, used *route.Result) string {
	by := FellBy(c, r)
	if slices.Contains([]policy.Rule{policy.None, policy.Use, policy.Holding, policy.Meeting, policy.Chance}, by) {
		return ""
	}
	a, b := Shown(c.Prep, r), Shown(c.Prep, used)
	alike := a.Inside == b.Inside && (a.Inside != "" || a.HoldsWithin == b.HoldsWithin)
	return either(alike, ", about as the other, but ", either(len(r.Inside) > 0 && r.Chance() < used.Chance(), ", and ", ", but ")) + outdone{c.Prep, r, used, c.Verdict.Choice.Least}.by(by)
}

// outdone is a result beside another that is used rather than it. Least is what is left over by
// the route with as many measurements as the other that leaves least.
type outdone struct {
	prep        *route.Prep
	lost, other *route.Result
	least       float64
}

// by says what the rule by which a route fell behind found against it.
func (o outdone) by(rule policy.Rule) string {
	switch rule {
	case policy.Use:
		return "makes too little, or says too little of the amount"
	case policy.Doubt:
		return "is in doubt: " + strings.Join(note.Joined(note.Doubts(o.lost.Notes.Warnings)), "; ")
	case policy.HalfRisk:
		halved := asked(o.prep.Ask().Halved())
		return either(inHundred(o.lost.Chance(), o.prep.LeastChance) == halved, "is inside a little less than the "+halved+" in 100 that halve the risk asked for",
			fmt.Sprintf("is %s, and not the %s that halve the risk asked for", insideIn(o.prep, o.lost), halved))
	case policy.Meeting, policy.Chance, policy.Surer:
		return "is " + sureness(o.prep, o.lost)
	case policy.Holding:
		return "holds within " + quantity.Percent(o.lost.HoldsWithin)
	case policy.Misreading:
		return "would be expected outside with every reading a step of the display or 0.2 of a division off, all the same way"
	case policy.Operations:
		return o.byOperations()
	case policy.LeftOver:
		return leaves(o.lost.LeftOverML, o.other.LeftOverML)
	}
	return o.byHandling(rule)
}

// byOperations says what more measurements save, or fewer cost.
func (o outdone) byOperations() string {
	n, other := o.lost.Operations, o.other.Operations
	if n < other {
		return fmt.Sprintf("leaves %s, where %d measurements in place of %d leave no more than %s", volume(o.lost.LeftOverML), other, n, volume(o.least))
	}
	text, saved := fmt.Sprintf("takes %d measurements instead of %d", n, other), o.least-o.lost.LeftOverML
	if saved >= float64(float64(n-other)/2*o.prep.Ask().WorthTwo()) {
		return fmt.Sprintf("%s: no more than %d where %d halve the risk", text, policy.MostBeside, policy.Enough)
	}
	return text + when(saved > 0 && !route.SameVolume(o.least, o.lost.LeftOverML), " and saves only "+volume(saved))
}

// byHandling says what is against the readings and the instruments of a route.
func (o outdone) byHandling(rule policy.Rule) string {
	switch rule {
	case policy.LowOnScale:
		k := at(o.lost.Route, policy.FirstLow)
		return "reads the " + k.Name + " below " + either(k.Kind.Traits().Dial, "a tenth of its range", "a fifth of its scale")
	case policy.BothWays:
		return fmt.Sprintf("measures with the %s both what makes it stronger and what makes it weaker", at(o.lost.Route, policy.FirstBothWays).Name)
	case policy.TooLarge:
		large, enough := o.prep.TooLarge(o.lost.Route)
		return fmt.Sprintf("uses the %s where the %s would do", large.Name, enough.Name)
	case policy.Roundness:
		return "has readings that are less round"
	case policy.Solute:
		lost, other := soluteTaken(o.prep, o.lost), soluteTaken(o.prep, o.other)
		return either(lost == other, "takes a little more solute", fmt.Sprintf("takes %s instead of %s", lost, other))
	}
	return "comes later by its name"
}

// at is the instrument of the step that a rule finds fault with.
func at(r *route.Route, fault func([]policy.Reading) int) *equipment.Measure {
	return r.Steps[fault(r.Readings())].Measure
}

// policyOrder names in a line by what the route to use is chosen, in this order.
func policyOrder(p *route.Prep) string {
	return "in order, by " + either(p.Ask().Tolerant, "risk, misreading", "tightness") + ", measurements, left over, roundness"
}

// policyLine says in a sentence by what the route to use is chosen.
func policyLine(p *route.Prep) string {
	q := p.Ask()
	text := either(q.Tolerant, fmt.Sprintf("half the risk asked for (%s in 100, else %s, else the surest), inside with every reading a step off", asked(q.Halved()), asked(q.Asked)),
		"about as tight as the tightest")
	return fmt.Sprintf("as far as there is a choice, %s; the fewest measurements, of which two more must save %s%s; within %s of the least left over the roundest readings", text, volume(q.WorthTwo()),
		when(q.Tolerant, fmt.Sprintf(" (no more than %d where %d halve the risk)", policy.MostBeside, policy.Enough)), volume(q.Near()))
}
