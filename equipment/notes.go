package equipment

import (
	"errors"
	"fmt"

	"minim/equipment/quantity"
	"minim/report/words/note"
)

// Notes collects what a result rests on besides stated figures, each once and
// in the order in which it came up.
type Notes struct {
	// Warnings are things that a careful worker would want to know.
	Warnings []note.Note
	// Assumed are defaults that stand in for what was not stated.
	Assumed []note.Note
	// FromMemory are class limits whose table row nobody has seen.
	FromMemory []note.Note
	// NotCounted are influences that are left out since nothing is known.
	NotCounted []note.Note
}

// Warn adds a warning.
func (n *Notes) Warn(code, subject string, args ...any) {
	note.Add(&n.Warnings, note.Of(code, subject, args...))
}

// Assume adds an assumption.
func (n *Notes) Assume(code, subject string, args ...any) {
	note.Add(&n.Assumed, note.Of(code, subject, args...))
}

// Remember adds a figure that is from memory.
func (n *Notes) Remember(code, subject string, args ...any) {
	note.Add(&n.FromMemory, note.Of(code, subject, args...))
}

// LeaveOut adds something that is not counted.
func (n *Notes) LeaveOut(code, subject string, args ...any) {
	note.Add(&n.NotCounted, note.Of(code, subject, args...))
}

// TakeAsPure notes that a substance counts as pure, since no assay is stated. Of a liquid by its name that is assumed,
// since many are sold with water in them; of a solid its impurity is not counted.
func (n *Notes) TakeAsPure(substance string) {
	n.LeaveOut("impurity", substance)
	if _, liquid := FindLiquid(substance); liquid {
		n.Assume("liquid-as-pure", substance)
	}
}

// Merge adds the notes of another list.
func (n *Notes) Merge(other Notes) {
	note.Add(&n.Warnings, other.Warnings...)
	note.Add(&n.Assumed, other.Assumed...)
	note.Add(&n.FromMemory, other.FromMemory...)
	note.Add(&n.NotCounted, other.NotCounted...)
}

// ml is a volume in mL, and grams a mass in g, of a note.
type (
	ml    float64
	grams float64
)

func (v ml) String() string    { return quantity.Millilitres(float64(v)) }
func (m grams) String() string { return quantity.Grams(float64(m)) }

// ML is a volume in mL, as an argument of a note.
func ML(volume float64) fmt.Stringer { return ml(volume) }

// G is a mass in g, as an argument of a note.
func G(mass float64) fmt.Stringer { return grams(mass) }

func showML(volume float64) any { return ML(volume) }
func showG(mass float64) any    { return G(mass) }

// impossibility is the error of [Cannot].
type impossibility struct{ reason note.Note }

func (e *impossibility) Error() string { return e.reason.String() }

// Cannot is the error of an instrument that cannot do what a step asks of it, a finding about
// a route and not a fault in a file. Its reason is made as by [note.Of], and told by [WhyNot].
func Cannot(code, subject string, args ...any) error {
	return &impossibility{note.Of(code, subject, args...)}
}

// WhyNot is the reason of a [Cannot] error; no is false for any other.
func WhyNot(err error) (reason note.Note, no bool) {
	var e *impossibility
	if no = errors.As(err, &e); no {
		reason = e.reason
	}
	return reason, no
}
