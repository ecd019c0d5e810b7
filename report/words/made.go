package words

import (
	"fmt"
	"slices"
	"strings"
	"time"

	"minim/equipment/quantity"
	"minim/report/page"
	"minim/uncertainty/record"
	"minim/uncertainty/rescue"
	"minim/uncertainty/route"
)

// Batch is what was made, and what can be done about it.
type Batch struct {
	*record.Made
	// Rescue is nil where none was looked for; NoWay says why none was found.
	Rescue *rescue.Rescue
	NoWay  *rescue.NoWayError
}

// Comparison is the batch in the form of a comparison of two routes, of which the one
// to use is that which was made.
func (b *Batch) Comparison() *route.Comparison {
	c := &route.Comparison{Prep: b.Prep, Settings: b.Settings, Results: []route.Result{named("as planned", b.AsPlanned), named("as made", b.AsMade)}}
	c.Verdict = route.Verdict{Use: 1, Meets: b.Meets()}
	c.Notes = b.AsMade.Notes
	return c
}

// Alone is the batch in the form of a comparison of one route.
func (b *Batch) Alone() *route.Comparison {
	c := b.Comparison()
	c.Results, c.Verdict.Use = []route.Result{b.AsMade}, 0
	return c
}

// Spread is the comparison whose spread is drawn: the plan, the batch, and the batch
// after the way to correct it that is recommended.
func (b *Batch) Spread() *route.Comparison {
	c := b.Comparison()
	if !b.AsPlanned.Possible {
		c.Results, c.Verdict.Use = c.Results[1:], 0
	}
	if b.Rescue != nil && b.Rescue.Prep.Target == b.Prep.Target {
		c.Results = append(c.Results, named("corrected", b.Rescue.Results[b.Rescue.Verdict.Use]))
	}
	return c
}

// named is a result under another name.
func named(name string, r route.Result) route.Result {
	other := *r.Route
	other.Name = name
	r.Route = &other
	return r
}

// madeIs says which record it is, whether the batch is what was wanted, and what it is.
func madeIs(b *Batch) []page.Block {
	list := []page.Block{page.Paragraph{Label: "Record", Text: recorded(b.Record)}}
	if text := PlanFirst(b); text != "" {
		list = append(list, page.Paragraph{Label: "First", Text: text, At: 8})
	}
	return append(list, page.Heading{Label: MadeWord(b), Text: b.Made.Made.Name}, page.Facts{List: madeFacts(b), At: 14, Indent: 2})
}

// doneAndToCome says what was done, how far off the readings still to come may be, and how the
// batch can be corrected.
func doneAndToCome(b *Batch) (list []page.Block) {
	if len(b.Entries) > 0 {
		list = section("What was done", page.Only{Text: true, Blocks: []page.Block{page.Facts{List: entryLines(b.Record), Indent: 2}}}, offScreen(entryTable(b.Record)))
	}
	list = append(list, lined("Still to come: a reading that keeps the batch inside", RoomLines(b))...)
	switch {
	case b.NoWay != nil:
		return append(list, page.Gap{}, page.Paragraph{Label: "To correct it", Text: NoWayWords(b.NoWay)})
	case b.Rescue != nil:
		return append(list, corrections(b.Rescue)...)
	}
	return list
}

// recorded says what a record is of.
func recorded(r *record.Record) string {
	parts := clauses{quantity.Printable(r.File)}
	parts.Put("batch ", r.Batch)
	parts.Put("", count(len(r.Entries), "entry"))
	parts.Put("", byWhom(r))
	return strings.Join(parts, ", ")
}

// byWhom lists who made the entries, and when the first and the last were made.
func byWhom(r *record.Record) string {
	people := makers(r)
	text := when(len(people) > 0, "by "+strings.Join(people, ", "))
	switch {
	case r.First == "":
	case r.First == r.Last:
		text += " " + r.First
	case r.Reversed:
		text += fmt.Sprintf(", the first entry %s, the last %s", r.First, r.Last)
	default:
		text += fmt.Sprintf(" from %s to %s", r.First, r.Last)
	}
	return strings.TrimSpace(text)
}

// makers are those who made entries, in order.
func makers(r *record.Record) (people []string) {
	for i := range r.Entries {
		if by := r.Entries[i].By; by != "" && !slices.Contains(people, by) {
			people = append(people, by)
		}
	}
	return people
}

// madeOn is the date of the last entry about a step up to one, from 1; "" when it is not
// known.
func (b *Batch) madeOn(step int) string {
	for i := len(b.Entries) - 1; i >= 0; i-- {
		if e := &b.Entries[i]; e.Step > 0 && e.Step <= step && len(e.At) >= len(time.DateOnly) {
			return e.At[:len(time.DateOnly)]
		}
	}
	return ""
}

// madeFacts say what a batch is.
func madeFacts(b *Batch) []fact {
	c, r := b.Comparison(), &b.AsMade
	list := strengthFacts(c, r)
	list = append(list, fact{"Inside", batchChance(b)}, fact{"Plan", AgainstPlan(b)})
	for _, e := range b.Effects {
		list = append(list, fact{"", EffectWords(b, e)})
	}
	makes := fact{either(b.Finished(), "Made", "Makes"), amounts(b.Prep, r, either(b.Finished(), "took", "takes"))}
	list = append(append(list, said(fact{"Shifted", shifts(r)})...), rest(c, r, makes)...)
	for _, f := range Gaps(b.Record) {
		list = append(list, fact{"Mind", f})
	}
	return list
}

// batchChance is the chance that this batch is inside, or will be.
func batchChance(b *Batch) string {
	r := &b.AsMade
	text := either(b.Finished(), "the chance that this batch is ", "if the rest goes as planned, the chance that this batch will be ")
	if len(r.Inside) == 0 {
		return fmt.Sprintf("%swithin %s of the target is %s in 100", text, quantity.Percent(r.HoldsWithin), asked(b.Settings.Coverage))
	}
	text += fmt.Sprintf("%s: %s in 100", insideWords(b.Prep.Tolerances[0]), chanceOf(b.Prep, r))
	return text + when(!b.Meets(), ", "+asked(b.Prep.LeastChance)+" asked for") + CloseCall(b.Prep, r)
}

// AgainstPlan compares the batch with the plan.
func AgainstPlan(b *Batch) string {
	if !b.AsPlanned.Possible {
		return "the bench cannot do it as planned: " + b.AsPlanned.Reason.String()
	}
	text := state(&b.AsPlanned).Value + " " + b.Prep.Target.Unit.Name + when(b.AsPlanned.Elsewhere != nil, " ("+aim(b.Plan, &b.AsPlanned)+")")
	off := aside(b.Difference(), 5e-5)
	return text + "; this batch is " + either(off == "", "as planned", off+" it")
}
