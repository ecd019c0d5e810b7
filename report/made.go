package report

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"time"

	"minim/equipment/benchfile"
	"minim/uncertainty/plan"
	"minim/uncertainty/record"
	"minim/uncertainty/route"
)

// Batch is what was made, and what can be done about it.
type Batch struct {
	*record.Made
	// Rescue is nil where none was looked for; NoWay says why none was found.
	Rescue *plan.Rescue
	NoWay  *plan.NoWayError
}

// comparison is the batch in the form of a comparison of two routes, of which the one
// to use is that which was made.
func (b *Batch) comparison() *route.Comparison {
	c := &route.Comparison{Prep: b.Prep, Settings: b.Settings, Results: []route.Result{named("as planned", b.AsPlanned), named("as made", b.AsMade)}}
	c.Verdict = route.Verdict{Use: 1, Meets: b.Meets()}
	c.Notes = b.AsMade.Notes
	return c
}

// Alone is the batch in the form of a comparison of one route.
func (b *Batch) Alone() *route.Comparison {
	c := b.comparison()
	c.Results, c.Verdict.Use = []route.Result{b.AsMade}, 0
	return c
}

// Spread is the comparison whose spread is drawn: the plan, the batch, and the batch
// after the way to correct it that is recommended.
func (b *Batch) Spread() *route.Comparison {
	c := b.comparison()
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

// Made is the screen of a batch: what was wanted, whether the batch is that, what was
// done, what makes it differ from the plan, how far off the readings still to come may
// be, how it can be corrected, what the figures rest on, and cautions.
func Made(batch *Batch) string {
	b := new(strings.Builder)
	stops(b, batch.Prep)
	heading(b, batch.Prep)
	hang(b, "Record:", recorded(batch.Record), 8)
	if text := planFirst(batch); text != "" {
		hang(b, "First:", text, 8)
	}
	b.WriteString("\n")
	hang(b, madeWord(batch), batch.Made.Made.Name, runes(madeWord(batch))+2)
	for _, f := range madeFacts(batch) {
		hang(b, "  "+f.label, f.text, 14)
	}
	paragraphs(b, "What was done", entryLines(batch.Record))
	paragraphs(b, "Still to come: a reading that keeps the batch inside", roomLines(batch))
	rescueText(b, batch)
	footing(b, batch.comparison(), batch.cautions())
	return b.String()
}

// recorded says what a record is of.
func recorded(r *record.Record) string {
	parts := []string{benchfile.Printable(r.File)}
	if r.Batch != "" {
		parts = append(parts, "batch "+r.Batch)
	}
	parts = append(parts, count(len(r.Entries), "entry"))
	if text := byWhom(r); text != "" {
		parts = append(parts, text)
	}
	return strings.Join(parts, ", ")
}

// byWhom lists who made the entries, and when the first and the last were made.
func byWhom(r *record.Record) string {
	text := ""
	if people := makers(r); len(people) > 0 {
		text = "by " + strings.Join(people, ", ")
	}
	switch first, last, ordered := r.Times(); {
	case first == "":
	case first == last:
		text += " " + first
	case !ordered:
		text += fmt.Sprintf(", the first entry %s, the last %s", first, last)
	default:
		text += fmt.Sprintf(" from %s to %s", first, last)
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

// MadeOn is the date of the last entry about a step up to one, from 1; "" when it is not
// known.
func (b *Batch) MadeOn(step int) string {
	for i := len(b.Entries) - 1; i >= 0; i-- {
		if e := &b.Entries[i]; e.Step > 0 && e.Step <= step && len(e.At) >= len(time.DateOnly) {
			return e.At[:len(time.DateOnly)]
		}
	}
	return ""
}

// madeFacts say what a batch is.
func madeFacts(b *Batch) []fact {
	c, r := b.comparison(), &b.AsMade
	list := strengthFacts(c, r)
	list = append(list, fact{"Inside", batchChance(b)}, fact{"Plan", againstPlan(b)})
	for _, e := range b.Effects {
		list = append(list, fact{"", effectWords(b, e)})
	}
	list = append(append(list, shiftFacts(r)...), rest(c, r)...)
	if b.Finished() {
		for i := range list {
			if list[i].label == "Makes" {
				list[i] = fact{"Made", amounts(b.Prep, r, "took")}
			}
		}
	}
	for _, f := range gaps(b.Record) {
		list = append(list, fact{"Mind", f})
	}
	return list
}

// batchChance is the chance that this batch is inside, or will be.
func batchChance(b *Batch) string {
	r := &b.AsMade
	text := "the chance that this batch is "
	if !b.Finished() {
		text = "if the rest goes as planned, the chance that this batch will be "
	}
	if len(r.Inside) == 0 {
		return fmt.Sprintf("%swithin %s of the target is %s in 100", text, Percent(r.HoldsWithin), Asked(b.Settings.Coverage))
	}
	text += fmt.Sprintf("%s: %s in 100", insideWords(b.Prep.Tolerances[0]), InHundred(r.Chance(), b.Prep.LeastChance))
	if !b.Meets() {
		text += ", asked for is " + Asked(b.Prep.LeastChance)
	}
	return text
}

// againstPlan compares the batch with the plan.
func againstPlan(b *Batch) string {
	if !b.AsPlanned.Possible {
		return "the bench cannot do it as planned: " + b.AsPlanned.Reason
	}
	text := State(&b.AsPlanned).Value + " " + b.Prep.Target.Unit.Name
	if b.AsPlanned.Elsewhere != nil {
		text += " (" + aim(&route.Comparison{Prep: b.Plan}, &b.AsPlanned) + ")"
	}
	switch d := b.Difference(); {
	case math.Abs(d) < 5e-5:
		return text + "; this batch is as planned"
	case d > 0:
		return fmt.Sprintf("%s; this batch is %s above it", text, Percent(d))
	default:
		return fmt.Sprintf("%s; this batch is %s below it", text, Percent(-d))
	}
}
