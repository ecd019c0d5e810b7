package route

import (
	"slices"

	"minim/equipment/quantity"
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

// grammar says for a verb which key names its instrument, what the amount is,
// after which states of the work it can stand, and what the step does.
type grammar struct {
	instrument string
	kind       quantity.Kind
	after      []state
	then       state
	brings     brought
	does       traits
}

// brought is what a step brings to what stands on the bench.
type brought string

const (
	aStock   brought = "a stock" // of which the steps that follow take
	aMass    brought = "a mass of solute"
	aPacket  brought = "a packet"
	aVolume  brought = "a volume of solute"
	solvent  brought = "solvent"
	stronger brought = "a stronger solution"
	aPart    brought = "a part of the solution"
	theWhole brought = "all of the solution"
)

// traits of a verb, beside what it brings.
type traits int

const (
	// empties: its instrument delivers, and what stays in it can be rinsed or blown out.
	empties traits = 1 << iota
	// mixes a measured volume with what is there, which may contract.
	mixes
	// fills up to a mark or a total.
	fills
	// measuresOut what is then put to the rest.
	measuresOut
)

// state is what stands on the bench between two steps.
type state string

const (
	nothing     state = "nothing yet"
	stock       state = "a stock"
	solid       state = "measured solute"
	solution    state = "a finished solution"
	aliquot     state = "an aliquot"
	mixture     state = "a solution that is being diluted"
	weighedPart state = "a weighed aliquot"
)

// Verbs are those of steps, each with a key of its own, and that which takes all.
func Verbs() []Verb { return append(slices.Clone(verbs), TakeAll) }

var verbs = []Verb{Weigh, UsePacket, Measured, Start, DissolveIn, MakeUpTo, Take, Pour, Add, WeighAliquot, WeighUpTo, Strengthen, AddSolute}

var grammars = map[Verb]grammar{
	Weigh:        {"on", quantity.Mass, []state{nothing, solid}, solid, aMass, measuresOut},
	UsePacket:    {"", quantity.Share, []state{nothing, solid}, solid, aPacket, measuresOut},
	Measured:     {"with", quantity.Volume, []state{nothing, solid}, solid, aVolume, measuresOut | empties},
	Start:        {"", quantity.Share, []state{nothing}, stock, aStock, 0},
	DissolveIn:   {"with", quantity.Volume, []state{solid}, solution, solvent, mixes},
	MakeUpTo:     {"in", quantity.Volume, []state{solid, aliquot}, solution, solvent, fills},
	Take:         {"with", quantity.Volume, []state{stock, solution, mixture, aliquot}, aliquot, aPart, measuresOut | empties},
	Pour:         {"from", quantity.Volume, []state{stock, solution, mixture, aliquot}, aliquot, aPart, measuresOut | empties},
	Add:          {"with", quantity.Volume, []state{aliquot, mixture}, mixture, solvent, measuresOut | mixes},
	WeighAliquot: {"on", quantity.Mass, []state{stock, solution, mixture}, weighedPart, aPart, measuresOut},
	WeighUpTo:    {"on", quantity.Mass, []state{solid, weighedPart}, solution, solvent, fills},
	TakeAll:      {"", quantity.Share, []state{stock, solution, mixture}, aliquot, theWhole, 0},
	Strengthen:   {"with", quantity.Volume, []state{aliquot, mixture}, mixture, stronger, measuresOut | mixes},
	AddSolute:    {"on", quantity.Mass, []state{aliquot, mixture}, mixture, aMass, measuresOut},
}

func (v Verb) brings(what ...brought) bool { return slices.Contains(what, grammars[v].brings) }

func (v Verb) does(t traits) bool { return grammars[v].does&t != 0 }

// usesInstrument reports whether a step of the verb reads one.
func (v Verb) usesInstrument() bool { return grammars[v].instrument != "" }

// Fills reports whether a step of the verb makes up to a mark or a total, with solvent.
func (v Verb) Fills() bool { return v.does(fills) }

// AddsTo reports whether a step of the verb adds to a solution, as others may after it.
func (v Verb) AddsTo() bool { return grammars[v].then == mixture }

// WeighsSolute reports whether a step of the verb weighs solute.
func (v Verb) WeighsSolute() bool { return v.brings(aMass) }

// BringsSolid reports whether a step of the verb brings in solute by mass.
func (v Verb) BringsSolid() bool { return v.brings(aMass, aPacket) }

// BringsSolute reports whether a step of the verb brings in solute itself.
func (v Verb) BringsSolute() bool { return v.brings(aMass, aPacket, aVolume) }

// FromSolution reports whether a step of the verb takes a part of a solution.
func (v Verb) FromSolution() bool { return v.brings(aPart) }

// MeasuresOut reports whether a step of the verb measures something out that is then
// put to the rest: when it is spoilt, it is done again by itself.
func (v Verb) MeasuresOut() bool { return v.does(measuresOut) }

// Key is the key of a step that names its verb, and holds its reading.
func (v Verb) Key() string {
	if v == TakeAll {
		return string(Take)
	}
	return string(v)
}

// Uses is the key by which a step of the verb names its instrument, "" of one without, and
// what its amount is: a mass of what is put on a balance, a volume of all others.
func (v Verb) Uses() (key string, amount quantity.Kind) {
	return grammars[v].instrument, grammars[v].kind
}

// Empties reports whether what stays in the instrument of a step can be rinsed or blown out.
func (v Verb) Empties() bool { return v.does(empties) }

// Mixes reports whether a step mixes a measured amount with what is there.
func (v Verb) Mixes() bool { return v.does(mixes) }
