package words

import (
	"fmt"
	"slices"
	"strings"

	"minim/equipment/quantity"
	"minim/report/page"
	"minim/report/words/beside"
	"minim/report/words/note"
	"minim/uncertainty/rescue"
	"minim/uncertainty/route"
)

// BatchWords say what the solution is.
func BatchWords(r *rescue.Rescue) string {
	a, unit := &r.Batch.Analytic, r.Prep.Target.Unit.Name
	return volume(r.Batch.MadeML) + " of " + either(a.ExpandedUncertainty == 0, quantity.Number(a.Value)+" "+unit+", taken as exact", state(&r.Batch).sentence(unit))
}

func NoWayWords(e *rescue.NoWayError) string {
	return "no way was found: " + e.Reason.String() + when(!e.Cure.None(), "; what would help: "+e.Cure.String())
}

// corrections are the way that is recommended, and the others.
func corrections(r *rescue.Rescue) []page.Block {
	list := []page.Block{
		page.Heading{Label: r.Finding().String(), Text: r.Results[r.Verdict.Use].Route.Name},
		page.Steps{First: ShownFrom(r) + 1, Items: WayInstructions(r, r.Verdict.Use)},
		page.Gap{}, page.Facts{List: rescueFacts(r), At: 14, Indent: 2},
	}
	if len(r.Results) > 1 {
		list = append(append(list, page.Gap{}, wayTable(r), page.Paragraph{Text: wayLegend(r), At: 2}), whyNotOthers(r.Comparison)...)
	}
	return list
}

// ShownFrom is how many steps stand before those that are shown: all of those by which a
// batch was made; a bottle is shown as the first step. The words of a step name others by
// their numbers in the whole.
func ShownFrom(r *rescue.Rescue) int {
	if fromBottle(r) {
		return 0
	}
	return r.Before
}

// fromBottle reports whether the solution is a stock and not one that was made.
func fromBottle(r *rescue.Rescue) bool {
	steps := r.Results[0].Route.Steps
	return steps[0].Verb == route.Start && r.Before == 1
}

// WayInstructions are the steps of a way that are shown.
func WayInstructions(r *rescue.Rescue, way int) []string {
	if len(r.Results[way].Route.Steps) == r.Before {
		return []string{"leave it as it is"}
	}
	return Instructions(r.Prep, r.Results[way].Route)[ShownFrom(r):]
}

// rescueFacts say what the recommended way gives.
func rescueFacts(r *rescue.Rescue) []fact {
	used, aside, does := &r.Results[r.Verdict.Use], r.SetAside(r.Verdict.Use), !r.LeavesIt()
	stays := len(r.Prep.Tolerances) > 0 && !r.Verdict.Meets && r.Prep.Tolerances[0].Limits.Permits(used.Quoted.Value) && r.Inherits(r.Verdict.Use)
	evaporates := does && r.Batch.Analytic.Value <= r.Prep.Target.Value && rescue.MayEvaporate(r.Prep)
	return slices.Concat(said(
		fact{"Is now", BatchWords(r)},
		fact{"Set aside", when(does && aside > 1e-9, asideWords(r, aside))},
		fact{"Gives", when(does, volume(used.MadeML)+when(!used.Enough(r.Prep.Volume), " of the "+quantity.Millilitres(r.Prep.Volume)+" wanted"))},
		fact{"Strength", when(does, state(used).sentence(r.Prep.Target.Unit.Name)+" ("+coverage(r.Comparison, used)+"), with all that is uncertain of the solution as it is")}),
		beside.Facts(used), said(
			fact{"Inside", chance(r.Comparison, used)},
			fact{"Spoilt by", when(does, spoiltBy(used))},
			fact{"Mind", when(does && stays, "what is uncertain of the solution stays uncertain in whatever is made of it; a new batch by a better route can be surer")},
			fact{"Not tried", strings.Join(note.Texts(r.NotTried), "; ")},
			fact{"Or else", when(evaporates, note.Of("evaporating", "").String())}))
}

// asideWords say how much is not used, and why.
func asideWords(r *rescue.Rescue, aside float64) string {
	whole := r.Batch.MadeML * r.Batch.Analytic.Value / r.Prep.Target.Value
	return fmt.Sprintf("%s as it is now: all of it would make %s%s", volume(aside), volume(whole), when(whole > r.Largest*(1+1e-9), ", and the largest vessel holds "+volume(r.Largest)))
}

// wayLegend explains the names in the table.
func wayLegend(r *rescue.Rescue) string {
	parts := make([]string, len(r.Results))
	for i := range r.Results {
		parts[i] = fmt.Sprintf("%s: %s", r.Results[i].Route.Name, r.Kinds[i])
	}
	return strings.Join(parts, "; ")
}

// wayTable has the ways and what each gives.
func wayTable(r *rescue.Rescue) *page.Table {
	columns := append(strengthColumns(r.Comparison), column{"makes", "mL", func(r *route.Result) string { return quantity.Decimal(r.MadeML, 3) }})
	t := tableOf("way", append(columns, column{head: "set aside", unit: "mL"}))
	for i := range r.Results {
		found := &r.Results[i]
		row := []string{found.Route.Name, "not possible", "", "", "", ""}
		if found.Possible {
			row = slices.Concat([]string{found.Route.Name}, cellsOf(columns, found), []string{quantity.Decimal(r.SetAside(i), 3)})
		}
		t.Rows = append(t.Rows, page.Row{Cells: row, Marked: i == r.Verdict.Use})
	}
	return t
}
