package verb

import (
	"minim/equipment"
	"minim/uncertainty/route"
)

// Delivering is what to mind with an instrument that measures out.
func Delivering(s *route.Step) []string {
	list := State(s)
	if len(list) == 0 && !s.Measure.Kind.Traits().Counts {
		list = []string{"rinse the " + s.Measure.Kind.Traits().Table + " with a little of the same first, to waste"}
	}
	switch s.Measure.Kind.Traits().Care {
	case "counted":
		return append(list, "hold it upright; count")
	case "pressed":
		list = append(list, "no bubble; slow and even; wipe the tip")
	case "runs":
		list = append(list, "no bubble; wipe the tip; bottom of the meniscus at eye level", running(s))
	default:
		list = append(list, "bottom of the meniscus at eye level; pour, and let it drain")
	}
	if s.Emptied() == equipment.Rinsed {
		list = append(list, "rinse it into the receiver")
	}
	return list
}

// running says how far a pipette runs out: to its tip, or from its top line to the one that is
// so much further down.
func running(s *route.Step) string {
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

// State says in what state the instrument must be, where it is not rinsed.
func State(s *route.Step) []string {
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
