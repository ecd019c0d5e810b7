package words

import (
	"fmt"
	"strings"

	"minim/uncertainty/route"
)

// lastRow is what is done after the last step.
func (b *bench) lastRow() []string {
	do, vented := "Close the last bottle; date and initials on its label", ""
	if len(b.orders) > 0 && b.order(len(b.orders)-1).Gas {
		do = "Leave the last bottle under a vented cap, never tight; date and initials on its label"
	}
	if b.gas() {
		vented = ", under a vented cap"
	}
	care := "Each left-over to its own labelled waste" + vented + "; glass, balance and bench clean"
	return []string{do, care, "–", "–", "", "–"}
}

// wasteHabits are what to mind with waste, by hazard.
func (b *bench) wasteHabits() string {
	text := ""
	if b.gas() {
		text += " What gives off gas stays under a vented cap in the waste as well."
	}
	if b.anyPart("oxidiser") {
		text += " Tissue that took up an oxidiser is soaked in water before it goes there."
	}
	return text
}

// orderHabits are what to mind all along where solvent goes first.
func (b *bench) orderHabits() (list []string) {
	if b.anyOrder(isTurned) {
		list = append(list, fmt.Sprintf("%s goes first, and what is dissolved or diluted into it, never the reverse; tips stay above the liquid there.", capital(b.prep().Solvent.Name)))
	}
	if b.anyOrder(func(o *route.Order) bool { return len(o.Early) > 0 }) {
		list = append(list, "The record takes the steps by their numbers all the same.")
	}
	if b.anyOrder(func(o *route.Order) bool { return o.Unknown }) {
		list = append(list, "Hazards that are not stated are unknown: where gas comes or it warms, leave it open and upright until that is past.")
	}
	if len(list) == 0 {
		return nil
	}
	return []string{strings.Join(list, " ")}
}

// anyPart reports whether one of the words is stated for what a step brings, or for the solvent.
func (b *bench) anyPart(words ...string) bool {
	solvent := route.SolutionHazards{Solution: b.prep().Solvent.Hazards}
	return solvent.Any(words...) || b.anyOrder(func(o *route.Order) bool {
		for _, h := range o.Parts {
			if h.Any(words...) {
				return true
			}
		}
		return false
	})
}

// extras are what the order of work and the hazards ask for besides.
func (b *bench) extras() (list []string) {
	has := func(found bool, what string) {
		if found {
			list = append(list, what)
		}
	}
	has(b.gas(), "a fume cupboard")
	has(b.anyOrder(func(o *route.Order) bool { return o.Bath && !b.isWeighed(o) }), "a beaker")
	has(b.anyOrder(func(o *route.Order) bool { return o.Bath }), "a cold bath")
	return list
}

// toSpare is said of solute beyond what the steps weigh.
func (b *bench) toSpare() string {
	if (&route.SolutionHazards{Undiluted: b.prep().Solute.Hazards}).Any("toxic") {
		return ", and no more than is needed to weigh it"
	}
	return ", and some to spare"
}

// toDrop is in what solvent is kept ready: in a wash bottle, which one must not squeeze
// with what harms or gives off gas.
func (b *bench) toDrop() string {
	solvent, words := b.prep().Solvent.Name, route.SolutionHazards{Solution: b.prep().Solvent.Hazards}
	if words.Any("acid", "alkali", "corrosive", "toxic", "oxidiser", "gas") {
		return "a small beaker of " + solvent + " with a dropper"
	}
	return "a wash bottle of " + solvent
}

// caps are those of the bottles.
func (b *bench) caps() string {
	if b.gas() {
		return "vented caps"
	}
	return "caps"
}

// weighsOnBoat reports whether a step weighs on a boat.
func (b *bench) weighsOnBoat() bool {
	for i := range b.route.Steps {
		v := b.route.Steps[i].Verb
		if v == route.AddSolute || v == route.Weigh && b.prep().Boat(b.route, i) != route.NoBoat {
			return true
		}
	}
	return false
}
