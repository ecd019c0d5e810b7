package words

import (
	"minim/report/words/reminder"
	"minim/report/words/verb"
)

// care is what to mind at a step (common practice; the sizes of these mistakes are in
// the measurement model where it counts them).
func (b *sheetBench) care(i int) []string {
	part := i
	if o := b.order(i); b.isWeighed(o) && i == o.Last && len(b.waiting(o)) > 0 {
		part = o.First // which goes in only now
	}
	return append(reminder.AtStep(b.order(i).Parts[part], b.goesIn(part)), b.careOf(i)...)
}

// careOf is what to mind by what a step does.
func (b *sheetBench) careOf(i int) []string {
	s := &b.route.Steps[i]
	switch {
	case s.Verb.Traits().WeighsSolute:
		return b.weighing(i)
	case s.Balance != nil:
		return []string{verb.Care(s)}
	case s.Measure != nil && s.Verb.Traits().Fills:
		return b.filling(i)
	case s.Measure != nil:
		return verb.Delivering(s, b.goesIn(i))
	case s.Packet != nil:
		return b.emptyingPacket(i)
	case s.Stock != nil:
		return []string{verb.Care(s)}
	}
	return b.pouringAll(i)
}

// weighing is what to mind when solute is weighed.
func (b *sheetBench) weighing(i int) []string {
	list := clauses{"no draught; read when the display stands still, and write what it shows"}
	list.Add(b.prep().Solute.Assay.Known, "the assay is counted already")
	return append(list, b.dust(i)...)
}

// dust is what to mind with a powder that must not be breathed.
func (b *sheetBench) dust(i int) []string {
	switch h := b.order(i).Parts[i]; {
	case b.prep().Solute.Fluid():
		return nil
	case h.Any("toxic", "sensitiser", "dust"):
		return []string{"raise no dust: in a weighing enclosure or a fume cupboard, its draught kept off the pan; wipe up damp, never sweep"}
	case h.Unknown():
		return []string{"raise no dust"}
	}
	return nil
}

// emptyingPacket is what to mind with a packet: it is rinsed where solvent is made up to a
// mark or a total.
func (b *sheetBench) emptyingPacket(i int) []string {
	o := b.order(i)
	first := either(b.makesMark(o) || b.isWeighed(o), "rinse the packet out with "+b.rinsedWith(i)+", into the same vessel", "empty it to the last "+either(b.prep().Solute.Fluid(), "drop", "grain"))
	return append([]string{first}, b.dust(i)...)
}

// pouringAll is what to mind with a solution that goes on whole.
func (b *sheetBench) pouringAll(i int) []string {
	if o := b.order(i); b.makesMark(o) || b.goesIn(i) {
		return []string{"to the last drop"}
	}
	return []string{"rinse its vessel with what is added"}
}

// filling is what to mind when something is made up to a mark.
func (b *sheetBench) filling(i int) []string {
	s := &b.route.Steps[i]
	list := []string{either(s.Measure.Division == 0,
		"bottom of the meniscus at the mark, at eye level, the last drops with a dropper, none above it; write a tick, or what else happened",
		"bottom of the meniscus at the line, at eye level; last drops with a dropper, none above it; read before mixing")}
	if b.soluteBefore(i) && !isTurned(b.order(i)) {
		list = append([]string{either(b.prep().Solute.Fluid(), "mix it with a part first, until it is even", "dissolve it in a part first, until no solid is left") + "; let it come to the temperature of the bench"}, list...)
	}
	return append(list, verb.StateOf(s)...)
}

// soluteBefore reports whether what is made up has to dissolve first, or to mix, of what was weighed.
func (b *sheetBench) soluteBefore(i int) bool {
	return i > 0 && b.route.Steps[i-1].Verb.Traits().BringsSolid && !b.route.Steps[i-1].Verb.Traits().AddsTo
}
