package words

import (
	"slices"
	"strings"

	"minim/uncertainty/hazards"
	"minim/uncertainty/route"
)

// lastRow is what is done after the last step.
func (b *sheetBench) lastRow() []string {
	vented := len(b.orders) > 0 && b.order(len(b.orders)-1).Gas
	do := either(vented, "Leave the last bottle under a vented cap, never tight", "Close the last bottle") + "; date and initials on its label"
	care := "Each left-over to its own labelled waste" + when(b.gas(), ", under a vented cap") + "; glass, balance and bench clean"
	return []string{do, care}
}

// wasteHabits are what to mind with waste, by hazard.
func (b *sheetBench) wasteHabits() string {
	return when(b.gas(), " What gives off gas stays under a vented cap in the waste as well.") +
		when(b.anyPart("oxidiser"), " Tissue that took up an oxidiser is soaked in water before it goes there.")
}

// orderHabits are what to mind all along where solvent goes first.
func (b *sheetBench) orderHabits() []string {
	var list, all clauses
	list.Add(b.anyOrder(isTurned), "%s goes first, and what is dissolved or diluted into it, never the reverse; tips stay above the liquid there.", capital(b.prep().Solvent.Name))
	list.Add(b.anyOrder(func(o *route.Order) bool { return len(o.Early) > 0 }), "The record takes the steps by their numbers all the same.")
	list.Add(b.anyOrder(func(o *route.Order) bool { return o.Unknown }),
		"Hazards that are not stated are unknown: where gas comes or it warms, leave it open and upright until that is past.")
	all.Put("", strings.Join(list, " "))
	return all
}

// anyPart reports whether one of the words is stated for what a step brings, or for the solvent.
func (b *sheetBench) anyPart(words ...string) bool {
	solvent := hazards.OfSolution{Solution: b.prep().Solvent.Hazards}
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
func (b *sheetBench) extras() []string {
	var list clauses
	list.Add(b.gas() || b.anyOrder(givesOff), "a fume cupboard")
	list.Add(b.anyOrder(func(o *route.Order) bool { return o.Bath && !b.isWeighed(o) }), "a beaker")
	list.Add(b.anyOrder(func(o *route.Order) bool { return o.Bath }), "a cold bath")
	return list
}

// givesOff reports whether a part gives off what must not be breathed.
func givesOff(o *route.Order) bool {
	for _, h := range o.Parts {
		if h.Vapour != nil {
			return true
		}
	}
	return false
}

// toSpare is said of solute beyond what the steps weigh.
func (b *sheetBench) toSpare() string {
	toxic := (&hazards.OfSolution{Undiluted: b.prep().Solute.Hazards}).Any("toxic")
	return either(toxic, ", and no more than is needed to weigh it", ", and some to spare")
}

// toDrop is in what solvent is kept ready: in a wash bottle, which one must not squeeze
// with what harms or gives off gas.
func (b *sheetBench) toDrop() string {
	solvent, words := b.prep().Solvent.Name, hazards.OfSolution{Solution: b.prep().Solvent.Hazards}
	harms := words.Any("acid", "alkali", "corrosive", "toxic", "oxidiser", "gas")
	return either(harms, "a small beaker of "+solvent+" with a dropper", "a wash bottle of "+solvent)
}

// bringsSolid reports whether a step brings a solid.
func (b *sheetBench) bringsSolid() bool {
	return !b.prep().Solute.Fluid() && slices.ContainsFunc(b.route.Steps, func(s route.Step) bool { return s.Verb.Traits().BringsSolid })
}

// weighsOnBoat reports whether a step weighs on a boat.
func (b *sheetBench) weighsOnBoat() bool {
	for i := range b.route.Steps {
		v := b.route.Steps[i].Verb
		if v == route.AddSolute || v == route.Weigh && b.prep().Boat(b.route, i).Used {
			return true
		}
	}
	return false
}

// caps are those of the bottles.
func (b *sheetBench) caps() string { return when(b.gas(), "vented ") + "caps" }
