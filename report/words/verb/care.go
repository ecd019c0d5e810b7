package verb

import (
	"fmt"

	"minim/equipment"
	"minim/equipment/quantity"
	"minim/report/words/clause"
	"minim/uncertainty/route"
)

// Delivering is what to mind with an instrument that measures out, what goes into a mixture or not.
func Delivering(s *route.Step, intoMixture bool) []string {
	list := StateOf(s)
	if len(list) == 0 && !s.Measure.Kind.Traits().Counts {
		list = []string{"rinse the " + s.Measure.Kind.Traits().Table + " with a little of the same first, to waste"}
	}
	switch s.Measure.Kind.Traits().Care {
	case "counted":
		return append(list, "hold it upright; count")
	case "pressed":
		list = append(list, "no bubble; slow and even; wipe the tip")
	case "runs":
		list = append(list, "no bubble; wipe the tip; bottom of the meniscus at eye level", Running(s))
	default:
		list = append(list, "bottom of the meniscus at eye level; pour, and let it drain")
	}
	if s.Emptied() == equipment.Rinsed {
		list = append(list, "rinse it into the receiver"+clause.When(intoMixture, ", with some of the mixture"))
	}
	return list
}

// Running says how far a pipette runs out: to its tip, or from its top line to the one that is
// so much further down.
func Running(s *route.Step) string {
	fill := "fill to the top line"
	if s.Amount < s.Measure.Capacity*(1-1e-9) {
		fill = "fill to the line from which " + Amount(s) + " run out to the tip"
	}
	switch k := s.Measure; {
	case k.TwoMarks && k.Division == 0:
		return "fill to the upper mark, let it run out at the wall to the lower one; the rest to waste"
	case k.BetweenMarks(s.Amount, s.Emptied()):
		return "from the top line down by " + Amount(s) + ", which is what to write; the rest to waste"
	case s.Emptied() == equipment.BlownOut:
		return fill + "; let it run out at the wall, wait; then blow the last drop out"
	case !k.Ex:
		return fill + "; let it run out at the wall; what stays in it is not delivered, and counted so (a rinse, or one marked Ex, is to be planned)"
	}
	return fill + "; let it run out at the wall, wait 5 s or as marked on it; leave the last drop in the tip"
}

// StateOf says in what state the instrument must be, where it is not rinsed.
func StateOf(s *route.Step) []string {
	switch s.State {
	case route.Wet:
		return []string{"it is still wet with solvent"}
	case route.Used:
		return []string{"not rinsed since its last use"}
	case route.Dry:
		return []string{"clean and dry"}
	}
	return nil
}

// Of vessels that weigh more than these, in g, nobody makes up so little, or weighs solute in them (judgement).
const mostOfVessels, mostOfBeakers, mostOfBoats = 500.0, 60.0, 20.0

// EmptyMost says what a vessel may weigh empty in which a step weighs, a liquid solute or anything else, where its mass
// is not stated and one could be heavier.
func EmptyMost(s *route.Step, liquid bool) string {
	heaviest := clause.Either(!s.Verb.Traits().WeighsSolute, mostOfVessels, clause.Either(liquid, mostOfBeakers, mostOfBoats))
	if s.Balance == nil || s.Vessel.Known || s.Balance.Capacity-s.Amount >= heaviest {
		return ""
	}
	return fmt.Sprintf(", empty at most %s", quantity.GramsWithin(s.Balance.Capacity-s.Amount))
}

// Brought says how what is strong goes into a vessel with solvent.
func Brought(part, vessel string, fluid bool) string {
	return clause.Either(fluid, fmt.Sprintf("let %s run slowly into %s, swirling", part, vessel), fmt.Sprintf("tip %s in portions into %s, swirling, until no solid is left", part, vessel))
}

// RunsOut reports whether a measure has a tip that what it holds runs from.
func RunsOut(m *equipment.Measure) bool { return m.Kind.Traits().Care != "poured" }
