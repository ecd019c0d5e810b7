package words

import (
	"fmt"
	"strings"

	"minim/equipment/quantity"
	"minim/report/words/verb"
	"minim/uncertainty/route"
)

// weigh says where solute is weighed, and where it goes.
func (b *sheetBench) weigh(i int) string {
	s, solute, o := &b.route.Steps[i], b.prep().Solute.Weighed(), b.order(i)
	boat := b.prep().Boat(b.route, i)
	if !boat.Used {
		return fmt.Sprintf("%s; weigh %s of %s straight into it; write; do not zero again", b.zeroBottle(o, s), measured(s), solute)
	}
	text := b.onBoat(s)
	if b.isWeighed(o) {
		return fmt.Sprintf("%s; leave it %s, covered, until step %d", text, either(b.prep().Solute.Fluid(), "in the small beaker", "on the boat"), o.Last+1)
	}
	text = b.ahead(i) + text + "; " + b.tipped(i, "it all", "it")
	return text + b.rinsed(i, boat.Rinsed) + b.weighedBack(s)
}

// boat is what solute is weighed in.
func (b *sheetBench) boat() string { return either(b.prep().Solute.Fluid(), "small beaker", "boat") }

// rinsed says to rinse what solute was weighed in, and to let cool: of what must go into the solvent, a liquid
// stays behind as it is, and no solvent is put onto it, but what is mixed.
func (b *sheetBench) rinsed(i int, rinse bool) string {
	if b.goesIn(i) && b.prep().Solute.Fluid() {
		return b.cooled(i) + when(rinse, b.rinsedByMixture(i))
	}
	return when(rinse, fmt.Sprintf(", and rinse the %s into it", b.boat())) + b.cooled(i)
}

func (b *sheetBench) rinsedByMixture(i int) string {
	return fmt.Sprintf("; rinse the %s into it twice with %s, never with %s", b.boat(), b.rinsedWith(i), b.prep().Solvent.Name)
}

// rinsedWith is with what that is rinsed which what a step brings was in.
func (b *sheetBench) rinsedWith(i int) string {
	return either(b.goesIn(i) && b.prep().Solute.Fluid(), "some of the mixture", "a little solvent")
}

// zeroBottle says to zero the bottle in which a step of a balance weighs, with what it may weigh empty.
func (b *sheetBench) zeroBottle(o *route.Order, s *route.Step) string {
	return fmt.Sprintf("zero dry bottle %d, cap off%s, on the %s", b.bottle[o.Last], verb.EmptyMost(&b.route.Steps[o.Last], false), instrument(s))
}

// onBoat says how solute is weighed on a boat.
func (b *sheetBench) onBoat(s *route.Step) string {
	fluid := b.prep().Solute.Fluid()
	boat, most := either(s.SeparateTare, "write what the empty "+b.boat()+" shows", "zero a "+b.boat()), verb.EmptyMost(s, fluid)
	return fmt.Sprintf("%s%s on the %s; weigh %s of %s%s; write", boat, either(s.SeparateTare, strings.Replace(most, "empty ", "", 1), most)+when(most != "", ","), instrument(s), measured(s), b.prep().Solute.Weighed(), when(fluid, " into it with a clean dry dropper"))
}

// tipped says how solute goes into its vessel: at once, or in portions, and a liquid slowly.
func (b *sheetBench) tipped(i int, whole, part string) string {
	fluid := b.prep().Solute.Fluid()
	if !b.goesIn(i) {
		return fmt.Sprintf("%s %s into %s", either(fluid, "pour", "tip"), whole, b.vessel(i))
	}
	return verb.Brought(part, b.vessel(i), fluid)
}

func (b *sheetBench) cooled(i int) string {
	return when(b.goesIn(i), either(b.order(i).Gas, "; let it cool, open, in a fume cupboard", "; let cool"))
}

func (b *sheetBench) weighedBack(s *route.Step) string {
	return when(s.WeighedBack, "; weigh the emptied "+b.boat()+", write that as well")
}

// packet says where the content of a packet goes.
func (b *sheetBench) packet(i int) string {
	o, whole := b.order(i), "the whole of the "+b.route.Steps[i].Packet.Name
	if b.isWeighed(o) {
		return fmt.Sprintf("leave the %s unopened until step %d", b.route.Steps[i].Packet.Name, o.Last+1)
	}
	return b.ahead(i) + b.tipped(i, whole, whole) + b.cooled(i)
}

// addSolute says how more solute comes into a solution.
func (b *sheetBench) addSolute(i int) string {
	s := &b.route.Steps[i]
	text := fmt.Sprintf("%s; %s", b.onBoat(s), b.tipped(i, "it all", "it"))
	return text + b.cooled(i) + b.weighedBack(s) + b.mixed(i)
}

// zeroed says to zero the bottle of a solution that is made by weighing, where a liquid
// goes into it before the total is weighed, and what solvent goes first.
func (b *sheetBench) zeroed(i int) string {
	o := b.order(i)
	for k := o.First; k < i; k++ {
		if b.route.Steps[k].Verb == route.Measured {
			return ""
		}
	}
	total := &b.route.Steps[o.Last]
	text := b.zeroBottle(o, total) + "; "
	if !isTurned(o) {
		return text
	}
	return text + fmt.Sprintf("put about %s of %s in it; take it off the %s%s; ", total.Balance.Display(o.Ahead), b.prep().Solvent.Name, instrument(total), when(o.Bath, " into a cold bath"))
}

// weighAliquot says how a part of a solution is weighed: into a dry bottle, or into the
// solvent in it.
func (b *sheetBench) weighAliquot(i int) string {
	s, o := &b.route.Steps[i], b.order(i)
	bottle := b.zeroBottle(o, s)
	if !isTurned(o) {
		return fmt.Sprintf("%s; put %s from %s into it with a clean dry dropper; write; do not zero again", bottle, measured(s), b.source(i))
	}
	return fmt.Sprintf("%s; put %s of %s in it, and note at step %d what it shows; zero it again; let %s %s run into it slowly, with a clean dry dropper%s; write",
		bottle, s.Balance.Display(o.Ahead), b.prep().Solvent.Name, o.Last+1, measured(s), b.outOf(i), b.settle(i))
}

// weighUpTo says how a total is reached.
func (b *sheetBench) weighUpTo(i int) string {
	s, o := &b.route.Steps[i], b.order(i)
	if isTurned(o) && b.route.Steps[o.First].Verb == route.WeighAliquot {
		return fmt.Sprintf("add nothing more: write the sum of the %s noted here and of what step %d read, %s as planned%s", b.prep().Solvent.Name, o.First+1, measured(s), b.mixed(i))
	}
	up := fmt.Sprintf("add %s up to %s on the display, at the end with a clean dropper; write", b.prep().Solvent.Name, measured(s))
	still := fmt.Sprintf("bottle %d still on the %s, not zeroed: ", b.bottle[i], instrument(s))
	if solids := b.waiting(o); len(solids) > 0 {
		still = b.zeroed(i) + b.tippedTogether(o, solids)
	} else if isTurned(o) || b.route.Steps[i-1].Verb == route.Measured {
		still = b.backOn(o)
	}
	return still + up + b.backAgain(o) + b.mixed(i)
}

// waiting are the solids that wait on boats and in packets for a total.
func (b *sheetBench) waiting(o *route.Order) (list []string) {
	for k := o.First; k < o.Last; k++ {
		switch s := &b.route.Steps[k]; {
		case s.Verb == route.UsePacket:
			list = append(list, "the whole of the "+s.Packet.Name)
		case s.Verb == route.Weigh && b.prep().Boat(b.route, k).Rinsed:
			list = append(list, fmt.Sprintf("what step %d weighed%s", k+1, when(!(b.goesIn(k) && b.prep().Solute.Fluid()), ", with rinsing,")))
		case s.Verb == route.Weigh && b.prep().Boat(b.route, k).Used:
			list = append(list, fmt.Sprintf("what step %d weighed", k+1))
		}
	}
	return list
}

// tippedTogether says how they go into the bottle on the balance.
func (b *sheetBench) tippedTogether(o *route.Order, solids []string) string {
	all, fluid := quantity.Series(solids, "and"), b.prep().Solute.Fluid()
	return either(isTurned(o), verb.Brought(all, "it", fluid)+when(fluid && b.prep().Boat(b.route, o.First).Rinsed, b.rinsedByMixture(o.First)), either(fluid, "pour ", "tip ")+all+" into it") + "; " + b.backOn(o)
}

// backOn says how the bottle comes back on the balance that it was zeroed on.
func (b *sheetBench) backOn(o *route.Order) string {
	cool := when(isTurned(o), "at room temperature"+when(o.Bath, " and dry outside")+", ")
	return fmt.Sprintf("bottle %d, %son the %s, not zeroed again: ", b.bottle[o.Last], cool, instrument(&b.route.Steps[o.Last]))
}

// backAgain says to weigh boats back that waited.
func (b *sheetBench) backAgain(o *route.Order) string {
	var steps clauses
	for k := o.First; k < o.Last; k++ {
		steps.Add(b.route.Steps[k].WeighedBack, "; weigh the emptied %s of step %d, write that there", b.boat(), k+1)
	}
	return strings.Join(steps, "")
}
