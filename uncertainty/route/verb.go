package route

import (
	"slices"

	"minim/equipment/quantity"
	"minim/report/words/note"
)

// Verb is what a step does.
type Verb string

// The verbs of a step.
const (
	Weigh        Verb = "weigh"         // solute, on a balance
	UsePacket    Verb = "packet"        // the whole of a bought packet of solute
	Measured     Verb = "measure"       // a liquid solute, by volume
	Start        Verb = "start"         // from a stock
	DissolveIn   Verb = "dissolve-in"   // a measured amount of solvent
	MakeUpTo     Verb = "make-up-to"    // the mark of a vessel
	Take         Verb = "take"          // a measured volume
	Pour         Verb = "pour"          // what a vessel holds up to a mark
	Add          Verb = "add"           // a measured volume of solvent
	WeighAliquot Verb = "weigh-aliquot" // a part of the solution, on a balance
	WeighUpTo    Verb = "weigh-up-to"   // a total mass, with solvent
	Strengthen   Verb = "strengthen"    // by a measured volume of a stronger solution
	AddSolute    Verb = "add-solute"    // to a solution, on a balance
)

// TakeAll is the verb of { take = "all" }: all of the solution goes on.
const TakeAll Verb = "take all"

// traits of a verb: how it is written, after which states of the work it can stand, and
// what the step does.
type traits struct {
	// Key is the key of a step that names the verb, and holds its reading.
	Key string
	// Instrument is the key by which a step names its instrument, "" of one without, and
	// Amount what its amount is: a mass of what is put on a balance, a volume of all others.
	Instrument string
	Amount     quantity.Kind
	after      []state
	then       state
	brings     brought
	// MeasuresOut something that is then put to the rest: when it is spoilt, it is done
	// again by itself.
	MeasuresOut bool
	// Empties: its instrument delivers, and what stays in it can be rinsed or blown out.
	Empties bool
	// Mixes a measured amount with what is there, which may contract.
	Mixes bool
	// Fills up to a mark or a total, with solvent.
	Fills bool
	// AddsTo a solution, as others may after it.
	AddsTo bool
	// WeighsSolute; or BringsSolid, solute by mass, or BringsSolute, in whatever way.
	WeighsSolute, BringsSolid, BringsSolute bool
	// FromSolution takes a part of one.
	FromSolution bool
	// Makes a solution, or goes on mixing one, in a vessel that may stand open.
	Makes bool
	// open is for how many minutes a solution that it makes stands open, in a vessel that does not
	// close, where that is not stated (judgement): until it has dissolved, is weighed, is used. What is
	// mixed of measured volumes is in a bottle that is closed.
	open float64
}

// brought is what a step brings to what stands on the bench. A note of the code says it of
// solute.
type brought string

const (
	aStock   brought = "stock" // of which the steps that follow take
	aMass    brought = "mass-of-solute"
	aPacket  brought = "packet-of-solute"
	aVolume  brought = "volume-of-solute"
	solvent  brought = "solvent"
	stronger brought = "stronger"
	aPart    brought = "part"
	theWhole brought = "whole"
)

// state is what stands on the bench between two steps; a note of the code says it.
type state string

const (
	nothing     state = "nothing-yet"
	stock       state = "stock-ready"
	solid       state = "solute-measured"
	solution    state = "solution-finished"
	aliquot     state = "aliquot-taken"
	mixture     state = "solution-being-diluted"
	weighedPart state = "aliquot-weighed"
)

// String says what stands there.
func (s state) String() string { return note.Of(string(s), "").String() }

// Verbs are those of steps, each with a key of its own, and that which takes all.
func Verbs() []Verb {
	return []Verb{Weigh, UsePacket, Measured, Start, DissolveIn, MakeUpTo, Take, Pour, Add, WeighAliquot, WeighUpTo, Strengthen, AddSolute, TakeAll}
}

var verbs = func() map[Verb]*traits {
	toStart, toTake, toMix := []state{nothing, solid}, []state{stock, solution, mixture, aliquot}, []state{aliquot, mixture}
	table := map[Verb]*traits{
		Weigh:        {Instrument: "on", Amount: quantity.Mass, after: toStart, then: solid, brings: aMass, MeasuresOut: true},
		UsePacket:    {Amount: quantity.Share, after: toStart, then: solid, brings: aPacket, MeasuresOut: true},
		Measured:     {Instrument: "with", Amount: quantity.Volume, after: toStart, then: solid, brings: aVolume, MeasuresOut: true, Empties: true},
		Start:        {Amount: quantity.Share, after: []state{nothing}, then: stock, brings: aStock},
		DissolveIn:   {Instrument: "with", Amount: quantity.Volume, after: []state{solid}, then: solution, brings: solvent, Mixes: true, open: 15},
		MakeUpTo:     {Instrument: "in", Amount: quantity.Volume, after: []state{solid, aliquot}, then: solution, brings: solvent, Fills: true, open: 5},
		Take:         {Instrument: "with", Amount: quantity.Volume, after: toTake, then: aliquot, brings: aPart, MeasuresOut: true, Empties: true},
		Pour:         {Instrument: "from", Amount: quantity.Volume, after: toTake, then: aliquot, brings: aPart, MeasuresOut: true, Empties: true},
		Add:          {Instrument: "with", Amount: quantity.Volume, after: toMix, then: mixture, brings: solvent, MeasuresOut: true, Mixes: true},
		WeighAliquot: {Instrument: "on", Amount: quantity.Mass, after: toTake[:3], then: weighedPart, brings: aPart, MeasuresOut: true},
		WeighUpTo:    {Instrument: "on", Amount: quantity.Mass, after: []state{solid, weighedPart}, then: solution, brings: solvent, Fills: true, open: 10},
		TakeAll:      {Amount: quantity.Share, after: toTake[:3], then: aliquot, brings: theWhole},
		Strengthen:   {Instrument: "with", Amount: quantity.Volume, after: toMix, then: mixture, brings: stronger, MeasuresOut: true, Mixes: true},
		AddSolute:    {Instrument: "on", Amount: quantity.Mass, after: toMix, then: mixture, brings: aMass, MeasuresOut: true},
	}
	for v, t := range table {
		t.Key, t.AddsTo, t.FromSolution = string(v), t.then == mixture, t.brings == aPart
		t.Makes = t.then == mixture || t.then == solution
		t.WeighsSolute = t.brings == aMass
		t.BringsSolid = t.WeighsSolute || t.brings == aPacket
		t.BringsSolute = t.BringsSolid || t.brings == aVolume
	}
	table[TakeAll].Key = string(Take)
	return table
}()

// Traits of the verb; none of one that is not known.
func (v Verb) Traits() *traits {
	if t := verbs[v]; t != nil {
		return t
	}
	return new(traits)
}

func (v Verb) brings(what ...brought) bool { return slices.Contains(what, v.Traits().brings) }

// MeasuresSolute reports whether the solute is measured out by its volume.
func (v Verb) MeasuresSolute() bool { return v.brings(aVolume) }
