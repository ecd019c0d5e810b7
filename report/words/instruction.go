package words

import (
	"fmt"

	"minim/equipment"
	"minim/report/words/verb"
	"minim/uncertainty/route"
)

// Instructions words the steps of a route so that they can be done, in the
// imperative and without numbers in front.
func Instructions(p *route.Prep, r *route.Route) []string {
	orders, _ := p.Orders(r) // a route that cannot be done has none
	lines := make([]string, len(r.Steps))
	for i := range r.Steps {
		o := orderOf(orders, i)
		if lines[i] = instruction(p, r, i, o); !o.Refused.None() && i == o.First {
			lines[i] = "do not do this as it stands, since solvent cannot go first: " + lines[i]
		}
	}
	return lines
}

// instruction words a step with what is done besides.
func instruction(p *route.Prep, r *route.Route, i int, o *route.Order) string {
	s := &r.Steps[i]
	into, turned := goesInto(p, r, i, o), isTurned(o) && o.Refused.None() && r.Steps[o.First].Verb == route.WeighAliquot
	besides := map[string]string{"solute": p.Solute.Weighed(), "solvent": p.Solvent.Name, "before": before(s), "after": after(s), "tare": when(s.SeparateTare, ", between a tare and a gross reading"),
		"back": when(s.WeighedBack, either(p.Solute.Fluid(), "; weigh the emptied beaker back", "; weigh the emptied boat back")),
		"into": when(into != "", ", "+into), "portions": when(into != "", either(p.Solute.Fluid(), "; let it run slowly ", "; bring it in portions ")+into), "added": addedTo(o, i), "mix": mixOpen(o), "mix last": mixAfter(r, i, o), "empty": emptyFor(r, i)}
	if turned && s.Balance != nil {
		besides["ahead"] = s.Balance.Display(o.Ahead)
	}
	return verb.Do(s, besides, turned)
}

// goesInto says what a part goes into that must not have solvent put onto it; "" where
// nothing need go first.
func goesInto(p *route.Prep, r *route.Route, i int, o *route.Order) string {
	if !isTurned(o) || !o.Refused.None() || !isBroughtIn(o, i) {
		return ""
	}
	if len(o.Early) > 0 {
		return "into what " + stepNumbers(o.Early) + " measured first" + when(o.Bath, ", in a cold bath")
	}
	return "into some of the " + p.Solvent.Name + when(o.Bath && r.Steps[o.Last].Verb == route.MakeUpTo, " in a beaker") + when(o.Bath, " in a cold bath")
}

// addedTo says how what is strong is added to a solution that is there already; "" where it
// is not.
func addedTo(o *route.Order, i int) string {
	return when(isBroughtIn(o, i) && o.Refused.None(), ", little by little"+when(o.Bath, ", in a cold bath"))
}

// stepNumbers are "step 3" or "steps 3 and 4", of steps from 0.
func stepNumbers(steps []int) string {
	numbers := make([]int, len(steps))
	for i, k := range steps {
		numbers[i] = k + 1
	}
	return plural(numbers, "step ", "steps ") + numberList(numbers)
}

// mixOpen says to mix what may be closed, or what gives off gas.
func mixOpen(o *route.Order) string {
	return either(o.Gas, "; mix it open, in a fume cupboard", "; mix")
}

// before says in what state an instrument is used, where it is not rinsed with
// what it will take.
func before(s *route.Step) string {
	switch s.State {
	case route.Wet:
		return fmt.Sprintf("with the %s still wet: ", instrument(s))
	case route.Used:
		return fmt.Sprintf("without rinsing the %s: ", instrument(s))
	default:
		return ""
	}
}

// after says what is done with what stays in an instrument.
func after(s *route.Step) string {
	switch s.Emptied() {
	case equipment.Rinsed:
		return "; rinse it into the receiver"
	case equipment.BlownOut:
		return "; blow the last drop out"
	default:
		return ""
	}
}

func instrument(s *route.Step) string { return verb.Instrument(s) }

// emptyFor says to free a vessel that a later step needs again.
func emptyFor(r *route.Route, i int) string {
	s := &r.Steps[i]
	if i+1 < len(r.Steps) && r.Steps[i+1].Verb == route.TakeAll {
		return "" // all of it goes on
	}
	for _, later := range r.Steps[i+1:] {
		if later.Measure == s.Measure && max(later.Piece, 1) == max(s.Piece, 1) {
			return "; pour into a clean dry bottle and rinse the " + instrument(s)
		}
	}
	return ""
}

// mixAfter says to mix after the last of several additions.
func mixAfter(r *route.Route, i int, o *route.Order) string {
	return either(i+1 < len(r.Steps) && r.Steps[i+1].Verb.Traits().AddsTo, "", mixOpen(o))
}
