package report

import (
	"fmt"

	"minim/equipment"
	"minim/uncertainty/route"
)

// Instructions words the steps of a route so that they can be done, in the
// imperative and without numbers in front.
func Instructions(p *route.Prep, r *route.Route) []string {
	lines := make([]string, len(r.Steps))
	for i := range r.Steps {
		lines[i] = instruction(p, r, i)
	}
	return lines
}

func instruction(p *route.Prep, r *route.Route, i int) string {
	s := &r.Steps[i]
	with := "with the " + instrument(s)
	switch s.Verb {
	case route.Weigh:
		return fmt.Sprintf("weigh %s of %s on the %s%s", s.Balance.Display(s.Amount), p.Solute.Weighed(), instrument(s), howWeighed(s))
	case route.UsePacket:
		return fmt.Sprintf("use the whole of the %s of %s", s.Packet.Name, p.Solute.Weighed())
	case route.Measured:
		return before(s) + fmt.Sprintf("measure %s of %s %s%s", amount(s), p.Solute.Weighed(), with, after(s))
	case route.Start:
		return "start from " + s.Stock.Name
	case route.DissolveIn:
		return before(s) + dissolve(p, s) + "; mix"
	case route.MakeUpTo:
		return before(s) + fmt.Sprintf("make up to %s in the %s; mix%s", amount(s), instrument(s), emptyFor(r, i))
	case route.Take:
		return before(s) + fmt.Sprintf("take %s %s%s", amount(s), with, after(s))
	case route.Pour:
		return before(s) + fmt.Sprintf("fill the %s to %s with the solution and pour it out%s", instrument(s), amount(s), after(s))
	case route.TakeAll:
		return "go on with all of the solution"
	case route.Strengthen:
		return before(s) + fmt.Sprintf("add %s of %s %s%s", amount(s), strong(s), with, mixAfter(r, i))
	case route.AddSolute:
		return fmt.Sprintf("weigh %s of %s on the %s%s and dissolve it in the solution%s", s.Balance.Display(s.Amount), p.Solute.Weighed(), instrument(s), howWeighed(s), mixAfter(r, i))
	case route.Add:
		return before(s) + fmt.Sprintf("add %s of %s %s%s", amount(s), p.Solvent.Name, with, mixAfter(r, i))
	case route.WeighAliquot:
		return fmt.Sprintf("zero a vessel on the %s and put %s of the solution in it", instrument(s), s.Balance.Display(s.Amount))
	case route.WeighUpTo:
		return fmt.Sprintf("add %s up to %s in all on the %s; mix", p.Solvent.Name, s.Balance.Display(s.Amount), instrument(s))
	default:
		panic(fmt.Sprintf("report: unknown verb %q", s.Verb))
	}
}

// strong is the solution that a step strengthens with.
func strong(s *route.Step) string {
	if s.Stock != nil {
		return s.Stock.Name
	}
	return "the solution of " + s.Of()
}

// amount is a volume, or a number of drops.
func amount(s *route.Step) string {
	switch {
	case s.Measure.Kind != equipment.Dropper:
		return equipment.Millilitres(s.Amount)
	case s.Amount == 1:
		return "1 drop"
	default:
		return fmt.Sprintf("%.0f drops", s.Amount)
	}
}

func dissolve(p *route.Prep, s *route.Step) string {
	if s.Balance != nil {
		return fmt.Sprintf("dissolve in %s of %s, weighed on the %s", s.Balance.Display(s.Amount), p.Solvent.Name, instrument(s))
	}
	return fmt.Sprintf("dissolve in %s of %s, measured with the %s", amount(s), p.Solvent.Name, instrument(s))
}

// howWeighed says what is done with the boat.
func howWeighed(s *route.Step) string {
	text := ""
	if s.SeparateTare {
		text = ", between a tare and a gross reading"
	}
	if s.WeighedBack {
		text += "; weigh the emptied boat back"
	}
	return text
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
	switch s.Emptying {
	case equipment.Rinsed:
		return "; rinse it into the receiver"
	case equipment.BlownOut:
		return "; blow the last drop out"
	default:
		return ""
	}
}

func instrument(s *route.Step) string {
	name := ""
	switch {
	case s.Measure != nil:
		name = s.Measure.Name
	case s.Balance != nil:
		name = s.Balance.Name
	}
	if s.Piece > 1 {
		name = fmt.Sprintf("%s (piece %d)", name, s.Piece)
	}
	return name
}

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
func mixAfter(r *route.Route, i int) string {
	if i+1 < len(r.Steps) {
		switch r.Steps[i+1].Verb {
		case route.Add, route.Strengthen, route.AddSolute:
			return ""
		}
	}
	return "; mix"
}
