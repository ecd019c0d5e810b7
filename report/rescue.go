package report

import (
	"fmt"
	"strconv"
	"strings"

	"minim/equipment"
	"minim/uncertainty/rescue"
	"minim/uncertainty/route"
)

// Rescue is the screen of the ways to correct a solution at hand: what is wanted, what
// there is, the way that is recommended, the others, what the figures rest on, and
// cautions.
func Rescue(r *rescue.Rescue) string {
	b := new(strings.Builder)
	stops(b, r.Prep)
	heading(b, r.Prep)
	hang(b, "There is:", batchWords(r), 10)
	rescueWays(b, r)
	footing(b, r.Comparison, cautionsOf(r.Comparison))
	return b.String()
}

// batchWords say what the solution is.
func batchWords(r *rescue.Rescue) string {
	strength := State(&r.Batch).sentence(r.Prep.Target.Unit.Name)
	if a := &r.Batch.Analytic; a.ExpandedUncertainty == 0 {
		strength = limit(a.Value) + " " + r.Prep.Target.Unit.Name + ", taken as exact"
	}
	return volume(r.Batch.MadeML) + " of " + strength
}

// rescueText is the part about a rescue on the screen of a batch.
func rescueText(b *strings.Builder, batch *Batch) {
	switch {
	case batch.NoWay != nil:
		b.WriteString("\n")
		hang(b, "To correct it:", noWayWords(batch.NoWay), 15)
	case batch.Rescue != nil:
		rescueWays(b, batch.Rescue)
	}
}

func noWayWords(e *rescue.NoWayError) string {
	text := "no way was found: " + e.Reason
	if e.Cure != "" {
		text += "; what would help: " + e.Cure
	}
	return text
}

// rescueWays is the way that is recommended, and the others.
func rescueWays(b *strings.Builder, r *rescue.Rescue) {
	used := &r.Results[r.Verdict.Use]
	b.WriteString("\n")
	hang(b, rescueWord(r), used.Route.Name, runes(rescueWord(r))+2)
	for i, line := range wayInstructions(r, r.Verdict.Use) {
		hang(b, right(strconv.Itoa(shownFrom(r)+i+1), 4)+"  ", line, 7)
	}
	b.WriteString("\n")
	for _, f := range rescueFacts(r) {
		hang(b, "  "+f.label, f.text, 14)
	}
	if len(r.Results) > 1 {
		b.WriteString("\n")
		writeGrid(b, fit(30, 12, func(most int) [][]string { return wayRows(r, most) }))
		hang(b, "", wayLegend(r), 2)
	}
}

// shownFrom is how many steps stand before those that are shown: all of those by which a
// batch was made; a bottle is shown as the first step. The words of a step name others by
// their numbers in the whole.
func shownFrom(r *rescue.Rescue) int {
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

// rescueWord says how far a way can be recommended.
func rescueWord(r *rescue.Rescue) string {
	to := "TO " + r.Prep.Target.Text
	if !r.Results[r.Verdict.Use].Enough(r.Prep.Volume) {
		return fmt.Sprintf("%s, BUT LESS THAN THE %s WANTED", to, equipment.Millilitres(r.Prep.Volume))
	}
	if !r.Verdict.Meets && len(r.Prep.Tolerances) > 0 {
		return fmt.Sprintf("%s, NEAREST (none reaches %s in 100)", to, Asked(r.Prep.LeastChance))
	}
	return to
}

// wayInstructions are the steps of a way that are shown.
func wayInstructions(r *rescue.Rescue, way int) []string {
	return Instructions(r.Prep, r.Results[way].Route)[shownFrom(r):]
}

// rescueFacts say what the recommended way gives.
func rescueFacts(r *rescue.Rescue) []fact {
	used := &r.Results[r.Verdict.Use]
	list := []fact{{"Is now", batchWords(r)}}
	if aside := r.SetAside(r.Verdict.Use); aside > 1e-9 {
		list = append(list, fact{"Set aside", asideWords(r, aside)})
	}
	list = append(list,
		fact{"Gives", volume(used.MadeML)},
		fact{"Strength", State(used).sentence(r.Prep.Target.Unit.Name) + " (" + coverage(r.Comparison, used) + "), with all that is uncertain of the solution as it is"},
		fact{"Inside", chance(r.Comparison, used)},
		fact{"Spoilt by", spoiltBy(used)})
	if len(r.Prep.Tolerances) > 0 && !r.Verdict.Meets && r.Prep.Tolerances[0].Limits.Permits(used.Analytic.Value) {
		list = append(list, fact{"Mind", "what is uncertain of the solution stays uncertain in whatever is made of it; a new batch by a better route can be surer"})
	}
	if len(r.NotTried) > 0 {
		list = append(list, fact{"Not tried", strings.Join(r.NotTried, "; ")})
	}
	if !r.TooStrong() && r.Prep.MayEvaporate() {
		list = append(list, fact{"Or else", rescue.Evaporating})
	}
	return list
}

// asideWords say how much is not used, and why.
func asideWords(r *rescue.Rescue, aside float64) string {
	text := volume(aside) + " as it is now"
	whole := r.Batch.MadeML * r.Batch.Analytic.Value / r.Prep.Target.Value
	if whole > r.Largest*(1+1e-9) {
		return fmt.Sprintf("%s: all of it would make %s, and the largest vessel holds %s", text, volume(whole), volume(r.Largest))
	}
	return fmt.Sprintf("%s: all of it would make %s", text, volume(whole))
}

// wayLegend explains the names in the table.
func wayLegend(r *rescue.Rescue) string {
	parts := make([]string, len(r.Results))
	for i := range r.Results {
		parts[i] = fmt.Sprintf("%s: %s", r.Results[i].Route.Name, r.Kinds[i])
	}
	return strings.Join(parts, "; ")
}

// wayRows are the cells of the table of the ways.
func wayRows(r *rescue.Rescue, most int) [][]string {
	rows := [][]string{
		{"", "strength", "give or take", insideHead(r.Comparison), "makes", "set aside"},
		{"  way", r.Prep.Target.Unit.Name, "(" + Asked(r.Settings.Coverage) + " %)", insideUnit(r.Comparison), "mL", "mL"},
	}
	for i := range r.Results {
		mark := "  "
		if i == r.Verdict.Use {
			mark = "* "
		}
		found := &r.Results[i]
		row := []string{mark + shorten(found.Route.Name, most)}
		if !found.Possible {
			rows = append(rows, append(row, "not possible", "", "", "", ""))
			continue
		}
		s := State(found)
		inside := Percent(found.HoldsWithin)
		if len(found.Inside) > 0 {
			inside = InHundred(found.Chance(), r.Prep.LeastChance)
		}
		rows = append(rows, append(row, s.Value, s.spread(), inside, limit(roundSignificant(found.MadeML, 3)), limit(roundSignificant(r.SetAside(i), 3))))
	}
	return rows
}
