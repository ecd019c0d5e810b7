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
		return fmt.Sprintf("weigh %s of %s on the %s", s.Balance.Display(s.Amount), p.Solute.Name, instrument(s))
	case route.Start:
		return "start from " + s.Stock.Name
	case route.MakeUpTo:
		return fmt.Sprintf("make up to %s in the %s; mix%s", equipment.Millilitres(s.Amount), instrument(s), emptyFor(r, i))
	case route.Take:
		return fmt.Sprintf("take %s %s", equipment.Millilitres(s.Amount), with)
	case route.Add:
		return fmt.Sprintf("add %s of %s %s%s", equipment.Millilitres(s.Amount), p.Solvent.Name, with, mixAfter(r, i))
	case route.WeighAliquot:
		return fmt.Sprintf("zero a vessel on the %s and put %s of the solution in it", instrument(s), s.Balance.Display(s.Amount))
	default:
		return fmt.Sprintf("add %s up to %s in all on the %s; mix", p.Solvent.Name, s.Balance.Display(s.Amount), instrument(s))
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
	for _, later := range r.Steps[i+1:] {
		if later.Measure == s.Measure && max(later.Piece, 1) == max(s.Piece, 1) {
			return "; pour into a clean dry bottle and rinse the " + instrument(s)
		}
	}
	return ""
}

// mixAfter says to mix after the last of several additions.
func mixAfter(r *route.Route, i int) string {
	if i+1 < len(r.Steps) && r.Steps[i+1].Verb == route.Add {
		return ""
	}
	return "; mix"
}
