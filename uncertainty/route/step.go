package route

import (
	"fmt"
	"slices"

	"minim/equipment"
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

// State of an instrument before a step.
type State string

// The states of a pipette or a vessel before it is used.
const (
	// Conditioned: rinsed with what it will take, so that nothing is carried
	// over. The default.
	Conditioned State = "conditioned"
	Dry         State = "dry"
	// Wet: it holds a film of solvent.
	Wet State = "wet"
	// Used: it holds a film of what it held before.
	Used State = "used"
)

// Step is one step of a route.
type Step struct {
	Verb Verb
	// Amount is the display reading in g, the mark in mL, or a number of drops.
	Amount float64
	// Lost is what was measured out in the step besides and thrown away, in the unit
	// of the amount; of a solution that was made, the solvent. It is 0 in a plan.
	Lost float64
	// Balance, Measure, Stock or Packet is what the step uses; the others are
	// nil.
	Balance *equipment.Balance
	Measure *equipment.Measure
	Stock   *Stock
	Packet  *Packet
	// From is the number, from 1, of the step that made the solution which is
	// strengthened with; 0 for a stock.
	From int
	// Piece of the instrument, from 1; 0 when not stated.
	Piece int
	// Reading is the step's own word for how carefully is read, or "".
	Reading equipment.Reading
	// Emptying is what is done with what stays in the instrument.
	Emptying equipment.Emptying
	// State of the instrument before the step; "" is Conditioned.
	State State
	// WeighedBack: the boat is weighed again, so that nothing is left on it
	// unknown. LeftBehind in g is the most that stays on it.
	WeighedBack bool
	LeftBehind  equipment.Stated
	// SeparateTare: tare and gross are two readings.
	SeparateTare bool
	// Vessel is the mass in g of what stands zeroed on the balance.
	Vessel equipment.Stated
	// Contraction on mixing, as a fraction of the volume.
	Contraction equipment.Stated
}

// grammar says for a verb which key names its instrument, what the amount is,
// and after which states of the work it can stand.
type grammar struct {
	instrument string
	kind       quantity.Kind
	after      []state
	then       state
}

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

var verbs = []Verb{Weigh, UsePacket, Measured, Start, DissolveIn, MakeUpTo, Take, Pour, Add, WeighAliquot, WeighUpTo, Strengthen, AddSolute}

var grammars = map[Verb]grammar{
	Weigh:        {"on", quantity.Mass, []state{nothing, solid}, solid},
	UsePacket:    {"", quantity.Share, []state{nothing, solid}, solid},
	Measured:     {"with", quantity.Volume, []state{nothing, solid}, solid},
	Start:        {"", quantity.Share, []state{nothing}, stock},
	DissolveIn:   {"with", quantity.Volume, []state{solid}, solution},
	MakeUpTo:     {"in", quantity.Volume, []state{solid, aliquot}, solution},
	Take:         {"with", quantity.Volume, []state{stock, solution, mixture, aliquot}, aliquot},
	Pour:         {"from", quantity.Volume, []state{stock, solution, mixture, aliquot}, aliquot},
	Add:          {"with", quantity.Volume, []state{aliquot, mixture}, mixture},
	WeighAliquot: {"on", quantity.Mass, []state{stock, solution, mixture}, weighedPart},
	WeighUpTo:    {"on", quantity.Mass, []state{solid, weighedPart}, solution},
	TakeAll:      {"", quantity.Share, []state{stock, solution, mixture}, aliquot},
	Strengthen:   {"with", quantity.Volume, []state{aliquot, mixture}, mixture},
	AddSolute:    {"on", quantity.Mass, []state{aliquot, mixture}, mixture},
}

// piece is the piece that a step uses.
func (s *Step) piece() pieceOf { return pieceOf{s.Measure, max(s.Piece, 1)} }

// Verbs lists the verbs that have a key of their own.
func Verbs() []Verb { return slices.Clone(verbs) }

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

// Of names what a step strengthens with: a stock, or "step 2"; "" for other steps.
func (s *Step) Of() string {
	switch {
	case s.Verb != Strengthen:
		return ""
	case s.Stock != nil:
		return s.Stock.Name
	}
	return fmt.Sprintf("step %d", s.From)
}
