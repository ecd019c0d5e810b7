package reminder

import (
	"fmt"
	"strings"

	"minim/equipment/quantity"
	"minim/report/words/clause"
	"minim/uncertainty/hazards"
)

// AtStep are the usual cautions about what a step brings, which goes into the solvent where that is said: in the
// words in which they stand behind a hazard.
func AtStep(h hazards.OfSolution, intoSolvent bool) (list []string) {
	for _, kind := range []string{"acid", "alkali"} {
		if intoSolvent && h.Is(kind) {
			list = append(list, reminders[kind])
		}
	}
	if h.Vapour != nil {
		list = append(list, vapour(h.Vapour))
	}
	return list
}

// Vapour says what a solution gives off, and by what statements of GHS; nothing where none is known.
func Vapour(v *hazards.Vapour) string {
	if v == nil {
		return ""
	}
	by := clause.When(len(v.Phrases) > 0, strings.Join(v.Phrases, ", ")+" by GHS; ")
	from := clause.When(v.From > 0, fmt.Sprintf("counted from %s %% w/w on, ", quantity.Number(v.From)))
	return "; " + vapour(v) + " (" + by + from + v.Trust + ")"
}

func vapour(v *hazards.Vapour) string { return "gives off " + v.What + ": in a fume cupboard" }
