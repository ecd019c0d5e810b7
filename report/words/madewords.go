package words

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"minim/equipment"
	"minim/equipment/benchfile"
	"minim/equipment/quantity"
	"minim/report/words/clause"
	"minim/report/words/verb"
	"minim/uncertainty/bench"
	"minim/uncertainty/record"
	"minim/uncertainty/route"
)

// EffectWords say what a deviation from the plan does.
func EffectWords(b *Batch, e record.Effect) string {
	by := either(math.Abs(e.Relative) < 5e-4, "hardly anything", fmt.Sprintf("%+.1f %%", 100*e.Relative))
	switch {
	case e.Step == record.Extra:
		return fmt.Sprintf("what was done after the plan, from step %d on: %s", len(b.Planned.Steps)+1, by)
	case e.Done == nil:
		return fmt.Sprintf("the bench at %s: %s", temperature(b.Prep.Bench.Temperature.Value, b.Prep.Bench.Within), by)
	}
	return fmt.Sprintf("step %d, %s in place of %s: %s", e.Step, differs(e.Done, e.Planned), differs(e.Planned, e.Done), by)
}

// differs names what a step has that another has not: its reading, its instrument, or
// both.
func differs(s, other *route.Step) string {
	switch {
	case s.Balance == nil && s.Measure == nil:
		return verb.Short(s)
	case s.Balance == other.Balance && s.Measure == other.Measure && s.Amount != other.Amount:
		return measured(s)
	case s.Amount == other.Amount && (s.Balance != other.Balance || s.Measure != other.Measure):
		return "the " + instrument(s)
	case s.Amount == other.Amount:
		return strings.Join(bench.Written(s), ", ")
	}
	return measured(s) + " with the " + instrument(s)
}

// measured is what a step reads: a mass as displayed, a volume, or drops.
func measured(s *route.Step) string { return verb.Amount(s) }

// temperature is "22 °C, within 1 °C".
func temperature(t float64, within equipment.Stated) string {
	return quantity.Decimal(t, 4) + " °C" + when(within.Known, ", within "+quantity.Decimal(within.Value, 4)+" °C")
}

// Gaps say what the record does not say.
func Gaps(r *record.Record) []string {
	var list clauses
	of := func(origin record.Origin, format string, words ...[2]string) {
		steps := r.OfOrigin(origin)
		args := []any{plural(steps, "step ", "steps ") + numberList(steps)}
		for _, w := range words {
			args = append(args, plural(steps, w[0], w[1]))
		}
		list.Put("", when(len(steps) > 0, fmt.Sprintf(format, args...)))
	}
	are := [2]string{"is", "are"}
	of(record.Missing, "nothing is recorded of %s, which %s taken from the plan", are)
	of(record.AsPlanned, "no reading is recorded of %s, which %s done: %s taken from the plan", [2]string{"was", "were"}, [2]string{"it is", "they are"})
	of(record.ToCome, "%s %s still to come, and taken from the plan", are)
	list.Add(r.Begun > 0, "the last %s recorded have not led to a solution yet, and are not counted", count(r.Begun, "step"))
	n := unsigned(r)
	list.Add(len(n) > 0, "nobody has signed %s %s", plural(n, "entry", "entries"), numberList(n))
	for _, b := range r.Backward {
		list.Add(true, "entry %d bears an earlier time than entry %d above it: what counts is the order of the entries", b.Entry, b.Above)
	}
	for _, c := range r.Cut {
		list.Add(true, "line %d of %s is cut off and left out: %s", c.Line, quantity.Printable(r.File), strings.TrimSpace(c.Text))
	}
	return append(list, planGaps(r)...)
}

// mostDifferences from the plan that are told one by one.
const mostDifferences = 12

// planGaps say what the plan in a record rests on, and where the prep and its kit as they
// are now differ from it.
func planGaps(r *record.Record) (list []string) {
	switch {
	case r.PlanMissing:
		return []string{"this record does not carry what was planned: all rests on the prep and the kit as they are now"}
	case r.Undigested:
		list = append(list, "the plan in this record has no digest: whether it is as it was when the record was begun is not known")
	}
	list = append(list, clause.Each(r.Newcomers, func(name string) string {
		return fmt.Sprintf("the %s was neither in the prep nor in its kit when this record was begun, and counts as they have it now", name)
	})...)
	if len(r.Differences) == 0 {
		return list
	}
	list = append(list, "the plan in this record and the prep with its kit as they are now differ: the batch counts by the plan in the record"+bothHazards(r)+"; by the prep as it is now it counts in a copy of the record without its tables [planned]")
	for i, d := range r.Differences {
		if i == mostDifferences {
			return append(list, fmt.Sprintf("%d more such differences", len(r.Differences)-i))
		}
		list = append(list, differenceWords(d.Of, d.Key, d.Then, d.Now))
	}
	return list
}

// bothHazards says of hazards that have changed which hold.
func bothHazards(r *record.Record) string {
	if !slices.ContainsFunc(r.Differences, func(d benchfile.Difference) bool {
		return d.Key == "hazards" || d.List == "hazard"
	}) {
		return ""
	}
	return either(r.Now.Solute.Name != r.Plan.Solute.Name, ", and its hazards are those stated there", ", with the hazards of both")
}

// differenceWords say of one thing what was planned then, and what now.
func differenceWords(of, key, then, now string) string {
	what := strings.Trim(of+", "+key, ", ")
	return either(key == "" && now == "",
		what+": planned then, no longer there now",
		fmt.Sprintf("%s: planned then %s, now %s", what, cmp.Or(then, "not stated"), cmp.Or(now, "not stated")))
}

// unsigned lists the entries that do not say by whom and when.
func unsigned(r *record.Record) (list []int) {
	for i := range r.Entries {
		if e := &r.Entries[i]; e.By == "" || e.At == "" {
			list = append(list, e.Number)
		}
	}
	return list
}

// numberList is "1, 2 and 5".
func numberList(list []int) string { return quantity.Series(clause.Each(list, strconv.Itoa), "and") }

func plural[T any](list []T, one, several string) string { return either(len(list) == 1, one, several) }
