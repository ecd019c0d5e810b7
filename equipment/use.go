package equipment

import (
	"cmp"

	"minim/uncertainty"
)

// Use is one use of an instrument in one step of a route.
type Use struct {
	// Model is the measurement model of the route, to be appended to.
	Model *uncertainty.Model
	// Notes takes what is assumed and what is not counted.
	Notes *Notes
	// Step is this use, such as step 3 of a route. It owns the errors that are made
	// anew each time.
	Step uncertainty.Owner
	// Piece is the number of the piece where there are several alike; 0 and 1
	// both mean the first.
	Piece int
	// Reading is how carefully scales are read: the word of the step, or else
	// of the bench. The instrument's own word stands between the two.
	StepReading, BenchReading Reading
	// Emptying is what is done with what stays in the instrument.
	Emptying Emptying
	// Marks is the number of different marks of the piece that the route
	// uses; 0 counts as 1. LineMarks is the same for the measure with which
	// the pen line of a jar was set, that of the line included.
	Marks, LineMarks int
	// Day is the state of the bench.
	Day Day
	// Solution is the name of the solution that is measured, in the solvent of the day;
	// "" for a pure liquid.
	Solution string
}

// Day is what all volumes of a route have in common.
type Day struct {
	// Known is false when the temperature of the bench is not stated.
	Known bool
	// Excess is the node of the bench temperature minus 20 °C.
	Excess uncertainty.Node
	// LiquidExpansion of what is measured, in 1/°C; of a mixture of which no more is known it is
	// from that on up to so much more as ExpansionSpan.
	LiquidExpansion, ExpansionSpan float64
	// Expands is what that rests on.
	Expands        uncertainty.Ground
	ExpandsAssumed bool
	// Solvent that is read at the marks. MeniscusIgnored: other liquids are
	// read like water.
	Solvent         Solvent
	MeniscusIgnored bool
}

// influence is one of an instrument, whose intended value is zero. Its owner is the
// instrument, or a use with it.
func influence(owner uncertainty.Owner, code uncertainty.Code, unit string, d uncertainty.Distribution) uncertainty.Influence {
	group := uncertainty.Group{Kind: uncertainty.Instrument, Name: cmp.Or(owner.With, owner.Name)}
	return uncertainty.Influence{Code: code, Owner: owner, Group: group, Unit: unit, Distribution: d}
}

// ofUse is an influence in mL that is made anew each time that a measure is used.
func (k *Measure) ofUse(u Use, code uncertainty.Code, d uncertainty.Distribution) uncertainty.Influence {
	return influence(with(u.Step, k.Name), code, "mL", d)
}

// with is the owner of what happens to an instrument in a use.
func with(use uncertainty.Owner, instrument string) uncertainty.Owner {
	use.With = instrument
	return use
}

// piece is the owner of what stays the same with one piece of an instrument.
func (u *Use) piece(name string, count int) uncertainty.Owner {
	o := uncertainty.Owner{Kind: uncertainty.Instrument, Name: name}
	if count > 1 {
		o.Piece = max(u.Piece, 1)
	}
	return o
}

// Stated is a figure that a kit may or may not state.
type Stated struct {
	Value float64
	Known bool
}
