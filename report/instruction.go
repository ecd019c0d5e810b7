package report

import (
	"fmt"
	"strings"

	"minim/equipment"
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

func instruction(p *route.Prep, r *route.Route, i int, o *route.Order) string {
	s := &r.Steps[i]
	with, solute, into := "with the "+instrument(s), p.Solute.Weighed(), goesInto(p, r, i, o)
	switch s.Verb {
	case route.Weigh:
		return fmt.Sprintf("weigh %s of %s on the %s%s%s%s", s.Balance.Display(s.Amount), solute, instrument(s), tare(s), inPortions(into), weighBack(s))
	case route.UsePacket:
		return fmt.Sprintf("use the whole of the %s of %s%s", s.Packet.Name, solute, inPortions(into))
	case route.Measured:
		return before(s) + fmt.Sprintf("measure %s of %s %s%s%s", amount(s), solute, with, into, after(s))
	case route.Start:
		return "start from " + s.Stock.Name
	case route.DissolveIn:
		return before(s) + dissolve(p, s) + mixOpen(o)
	case route.MakeUpTo:
		return before(s) + fmt.Sprintf("make up to %s in the %s%s%s", amount(s), instrument(s), mixOpen(o), emptyFor(r, i))
	case route.Take:
		return before(s) + fmt.Sprintf("take %s %s%s%s", amount(s), with, into, after(s))
	case route.Pour:
		return before(s) + fmt.Sprintf("fill the %s to %s with the solution and pour it out%s%s", instrument(s), amount(s), into, after(s))
	case route.TakeAll:
		return "go on with all of the solution" + into
	case route.Strengthen:
		return before(s) + fmt.Sprintf("add %s of %s %s%s%s", amount(s), strong(s), with, addedTo(o, i), mixAfter(r, i, o))
	case route.AddSolute:
		return fmt.Sprintf("weigh %s of %s on the %s%s%s and dissolve it in the solution%s%s", s.Balance.Display(s.Amount), solute, instrument(s), tare(s), weighBack(s), addedTo(o, i), mixAfter(r, i, o))
	case route.Add:
		return before(s) + fmt.Sprintf("add %s of %s %s%s", amount(s), p.Solvent.Name, with, mixAfter(r, i, o))
	case route.WeighAliquot:
		return weighOut(p, s, o)
	case route.WeighUpTo:
		return weighTotal(p, r, i, o)
	default:
		panic(fmt.Sprintf("report: unknown verb %q", s.Verb))
	}
}

// goesInto says what a part goes into that must not have solvent put onto it; "" where
// nothing need go first.
func goesInto(p *route.Prep, r *route.Route, i int, o *route.Order) string {
	if !isTurned(o) || !o.Refused.None() || !isBroughtIn(o, i) {
		return ""
	}
	text := fmt.Sprintf(", into some of the %s", p.Solvent.Name)
	switch {
	case len(o.Early) > 0:
		return ", into what " + stepNumbers(o.Early) + " measured first" + strings.Replace(inBath(o), " in", ", in", 1)
	case o.Bath && r.Steps[o.Last].Verb == route.MakeUpTo:
		text += " in a beaker"
	}
	return text + inBath(o)
}

func inBath(o *route.Order) string {
	if o.Bath {
		return " in a cold bath"
	}
	return ""
}

// addedTo says how what is strong is added to a solution that is there already; "" where it
// is not.
func addedTo(o *route.Order, i int) string {
	if !isBroughtIn(o, i) || !o.Refused.None() {
		return ""
	}
	return ", little by little" + strings.Replace(inBath(o), " in", ", in", 1)
}

// inPortions words for a solid what it goes into.
func inPortions(into string) string {
	if into == "" {
		return ""
	}
	return "; bring it in portions" + strings.TrimPrefix(into, ",")
}

// stepNumbers are "step 3" or "steps 3 and 4".
func stepNumbers(steps []int) string {
	var numbers []string
	for _, k := range steps {
		numbers = append(numbers, fmt.Sprint(k+1))
	}
	if len(numbers) == 1 {
		return "step " + numbers[0]
	}
	return "steps " + series(numbers, "and")
}

// mixOpen says to mix what may be closed, or what gives off gas.
func mixOpen(o *route.Order) string {
	if o.Gas {
		return "; mix it open, in a fume cupboard"
	}
	return "; mix"
}

func weighOut(p *route.Prep, s *route.Step, o *route.Order) string {
	if isTurned(o) && o.Refused.None() {
		return fmt.Sprintf("zero a vessel on the %s, put %s of %s in it, zero it again and put %s of the solution in", instrument(s),
			s.Balance.Display(o.Ahead), p.Solvent.Name, s.Balance.Display(s.Amount))
	}
	return fmt.Sprintf("zero a vessel on the %s and put %s of the solution in it", instrument(s), s.Balance.Display(s.Amount))
}

func weighTotal(p *route.Prep, r *route.Route, i int, o *route.Order) string {
	s := &r.Steps[i]
	if isTurned(o) && o.Refused.None() && r.Steps[o.First].Verb == route.WeighAliquot {
		return fmt.Sprintf("both together are %s in all on the %s%s", s.Balance.Display(s.Amount), instrument(s), mixOpen(o))
	}
	return fmt.Sprintf("add %s up to %s in all on the %s%s", p.Solvent.Name, s.Balance.Display(s.Amount), instrument(s), mixOpen(o))
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

// tare says how the boat is counted off.
func tare(s *route.Step) string {
	if s.SeparateTare {
		return ", between a tare and a gross reading"
	}
	return ""
}

// weighBack says to weigh the emptied boat.
func weighBack(s *route.Step) string {
	if s.WeighedBack {
		return "; weigh the emptied boat back"
	}
	return ""
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
func mixAfter(r *route.Route, i int, o *route.Order) string {
	if i+1 < len(r.Steps) {
		switch r.Steps[i+1].Verb {
		case route.Add, route.Strengthen, route.AddSolute:
			return ""
		}
	}
	return mixOpen(o)
}
