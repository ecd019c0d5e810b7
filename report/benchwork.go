package report

import (
	"fmt"

	"minim/equipment"
	"minim/uncertainty/route"
)

// bench is what stands on the bench while a sheet goes through the steps: the solutions
// made, each in a bottle with a number.
type bench struct {
	*Paper
	route *route.Route
	// bottle is the number of the bottle that each step makes, 0 for none, and left what
	// remains in it in the end, in mL.
	bottle []int
	left   []float64
	// strength of what is in each bottle, in the unit of the target.
	strength []float64
	made     []float64
}

// newBench numbers the bottles of a route.
func newBench(p *Paper) *bench {
	b := &bench{Paper: p, route: p.route()}
	steps := b.route.Steps
	b.bottle = make([]int, len(steps))
	solutions, err := p.prep().Solutions(b.route)
	if err != nil {
		return b // a batch or a route that can be done has its solutions
	}
	for _, s := range solutions {
		b.bottle[s.Step-1] = len(b.left) + 1
		b.left = append(b.left, s.LeftML)
		b.strength = append(b.strength, p.prep().StrengthOf(s.Concentration))
		b.made = append(b.made, s.MadeML)
	}
	return b
}

// next is the step from i on that makes a solution, and its bottle.
func (b *bench) next(i int) (step, bottle int) {
	for ; i < len(b.bottle); i++ {
		if b.bottle[i] > 0 {
			return i, b.bottle[i]
		}
	}
	return len(b.bottle) - 1, 0
}

// source is where a step takes from.
func (b *bench) source(i int) string {
	for i--; i >= 0; i-- {
		if b.bottle[i] > 0 {
			return fmt.Sprintf("bottle %d", b.bottle[i])
		}
		if s := b.route.Steps[i].Stock; s != nil && b.route.Steps[i].Verb == route.Start {
			return s.Name
		}
	}
	return "the solution"
}

// into is the vessel in which what a step measures out is made up, or the bottle in which
// it is mixed.
func (b *bench) into(i int) string {
	step, bottle := b.next(i)
	if s := &b.route.Steps[step]; s.Verb == route.MakeUpTo {
		return "the " + instrument(s)
	}
	return fmt.Sprintf("dry bottle %d", bottle)
}

// do says what a step does with which liquid, from where, into what.
func (b *bench) do(i int) string {
	s, solvent := &b.route.Steps[i], b.prep().Solvent.Name
	_, bottle := b.next(i)
	switch s.Verb {
	case route.Weigh:
		return b.weigh(i)
	case route.UsePacket:
		return fmt.Sprintf("tip the whole of the %s into %s", s.Packet.Name, b.into(i))
	case route.Measured:
		return fmt.Sprintf("measure %s of %s with the %s into %s", measured(s), b.prep().Solute.Weighed(), instrument(s), b.into(i))
	case route.MakeUpTo:
		return b.makeUp(i)
	case route.Take:
		return fmt.Sprintf("turn %s over a few times; take %s from it with the %s into %s; write", b.source(i), measured(s), instrument(s), b.into(i))
	case route.Pour:
		return fmt.Sprintf("turn %s over a few times; fill the %s from it to %s and pour that into %s; write", b.source(i), instrument(s), measured(s), b.into(i))
	case route.Add:
		return fmt.Sprintf("add %s of %s with the %s to bottle %d; close, shake", measured(s), solvent, instrument(s), bottle)
	case route.DissolveIn:
		how := "measured with"
		if s.Balance != nil {
			how = "weighed on"
		}
		return fmt.Sprintf("add %s of %s, %s the %s, to bottle %d; close, shake%s", measured(s), solvent, how, instrument(s), bottle, b.untilDissolved(i))
	case route.TakeAll:
		return fmt.Sprintf("pour all of %s into %s", b.source(i), b.into(i))
	case route.Strengthen:
		return fmt.Sprintf("add %s of %s with the %s to bottle %d; write; close, shake", measured(s), b.strong(s), instrument(s), bottle)
	case route.AddSolute:
		return fmt.Sprintf("zero a boat on the %s; weigh %s of %s; write; tip it all into bottle %d; close, shake until no solid is left", instrument(s), measured(s), b.prep().Solute.Weighed(), bottle)
	case route.WeighAliquot:
		return fmt.Sprintf("zero dry bottle %d, cap off, on the %s; put %s from %s into it with a clean dry dropper; write; do not zero again", bottle, instrument(s), measured(s), b.source(i))
	case route.WeighUpTo:
		return fmt.Sprintf("bottle %d still on the %s, not zeroed: add %s up to %s on the display, at the end with a clean dropper; write; close, shake%s", bottle, instrument(s), solvent, measured(s), b.untilDissolved(i))
	}
	return Instructions(b.prep(), b.route)[i]
}

// strong is what a step strengthens with: a stock, or the bottle of a step before.
func (b *bench) strong(s *route.Step) string {
	if s.Stock != nil {
		return s.Stock.Name
	}
	return fmt.Sprintf("bottle %d", b.bottle[s.From-1])
}

// weigh says where solute is weighed, and where it goes.
func (b *bench) weigh(i int) string {
	s, solute := &b.route.Steps[i], b.prep().Solute.Weighed()
	step, bottle := b.next(i)
	if b.route.Steps[step].Verb == route.WeighUpTo && !s.SeparateTare {
		return fmt.Sprintf("zero dry bottle %d, cap off, on the %s; weigh %s of %s straight into it; write; do not zero again", bottle, instrument(s), measured(s), solute)
	}
	boat := "zero a boat"
	if s.SeparateTare {
		boat = "write what the empty boat shows"
	}
	text := fmt.Sprintf("%s on the %s; weigh %s of %s; write; tip it all into %s", boat, instrument(s), measured(s), solute, b.into(i))
	if b.route.Steps[step].Verb == route.MakeUpTo && !s.WeighedBack {
		text += ", and rinse the boat into it"
	}
	if s.WeighedBack {
		return text + "; weigh the emptied boat, write that as well"
	}
	return text
}

// untilDissolved reminds of solute that is there as a solid.
func (b *bench) untilDissolved(i int) string {
	if b.Paper.solidBefore(i) {
		return " until no solid is left"
	}
	return ""
}

// makeUp says with what is made up, and how it is mixed and kept.
func (b *bench) makeUp(i int) string {
	s := &b.route.Steps[i]
	inside := ""
	if i > 0 && b.route.Steps[i-1].Measure != nil {
		inside = fmt.Sprintf(", where %s already is", measured(&b.route.Steps[i-1]))
	}
	text := fmt.Sprintf("%s to %s in the %s%s; write; ", b.prep().Solvent.Name, measured(s), instrument(s), inside)
	if s.Measure.Kind == equipment.Flask {
		text += fmt.Sprintf("close, turn over ten times, pour into dry bottle %d, close", b.bottle[i])
	} else {
		text += fmt.Sprintf("pour into dry bottle %d and back, twice, and then keep it there, closed", b.bottle[i])
	}
	if emptyFor(b.route, i) != "" {
		text += fmt.Sprintf("; rinse the %s with %s and drain it for later", instrument(s), b.prep().Solvent.Name)
	}
	return text
}

// again is the step, from 1, from which to go on when one was spoilt: itself where it
// measures out and enough is left for that, and else the one that began its solution.
func (b *bench) again(i int) int {
	s := &b.route.Steps[i]
	switch first := b.begin(i); {
	case s.Verb.FromSolution() && !b.enough(i) && first > 0:
		return b.again(first - 1)
	case s.Verb.FromSolution(), s.Verb == route.Weigh, s.Verb == route.UsePacket, s.Verb == route.Measured:
		return i + 1
	case b.route.Steps[first].Verb.FromSolution():
		return b.again(first)
	default:
		return first + 1
	}
}

// begin is the step, from 0, that begins the solution which a step is part of.
func (b *bench) begin(i int) int {
	for ; i > 0; i-- {
		if b.route.Begins(i) {
			return i
		}
	}
	return 0
}

// enough reports whether what a step takes can be taken once more: a pipette that is not
// emptied is filled to its top line, and some of the solution rinses it.
func (b *bench) enough(i int) bool {
	s := &b.route.Steps[i]
	need := s.Amount
	if s.Measure != nil && s.Measure.Kind == equipment.Graduated {
		need = s.Measure.Capacity
	}
	for j := i - 1; j >= 0; j-- {
		if n := b.bottle[j]; n > 0 {
			return b.left[n-1] >= 1.2*need
		}
	}
	return true // a stock
}
