package words

import (
	"fmt"

	"minim/uncertainty/route"
)

// weigh says where solute is weighed, and where it goes.
func (b *bench) weigh(i int) string {
	s, solute, o := &b.route.Steps[i], b.prep().Solute.Weighed(), b.order(i)
	boat := b.prep().Boat(b.route, i)
	if !boat.Used {
		return fmt.Sprintf("zero dry bottle %d, cap off, on the %s; weigh %s of %s straight into it; write; do not zero again", b.bottle[o.Last], instrument(s), measured(s), solute)
	}
	text := b.onBoat(s)
	if b.isWeighed(o) {
		return fmt.Sprintf("%s; leave it on the boat, covered, until step %d", text, o.Last+1)
	}
	text = b.ahead(i) + text + "; " + b.tipped(i, "it all", "it")
	return text + when(boat.Rinsed, ", and rinse the boat into it") + b.cooled(i) + weighedBack(s)
}

// onBoat says how solute is weighed on a boat.
func (b *bench) onBoat(s *route.Step) string {
	boat := either(s.SeparateTare, "write what the empty boat shows", "zero a boat")
	return fmt.Sprintf("%s on the %s; weigh %s of %s; write", boat, instrument(s), measured(s), b.prep().Solute.Weighed())
}

// tipped says how a solid goes into its vessel: at once, or in portions.
func (b *bench) tipped(i int, whole, part string) string {
	return either(b.goesIn(i),
		fmt.Sprintf("tip %s in portions into %s, swirling, until no solid is left", part, b.vessel(i)),
		fmt.Sprintf("tip %s into %s", whole, b.vessel(i)))
}

func (b *bench) cooled(i int) string {
	return when(b.goesIn(i), either(b.order(i).Gas, "; let it cool, open, in a fume cupboard", "; let cool"))
}

func weighedBack(s *route.Step) string {
	return when(s.WeighedBack, "; weigh the emptied boat, write that as well")
}

// packet says where the content of a packet goes.
func (b *bench) packet(i int) string {
	o, whole := b.order(i), "the whole of the "+b.route.Steps[i].Packet.Name
	if b.isWeighed(o) {
		return fmt.Sprintf("leave the %s unopened until step %d", b.route.Steps[i].Packet.Name, o.Last+1)
	}
	return b.ahead(i) + b.tipped(i, whole, whole) + b.cooled(i)
}

// addSolute says how more solute comes into a solution.
func (b *bench) addSolute(i int) string {
	s := &b.route.Steps[i]
	text := fmt.Sprintf("%s; %s", b.onBoat(s), b.tipped(i, "it all", "it"))
	return text + b.cooled(i) + weighedBack(s) + b.mixed(i)
}
