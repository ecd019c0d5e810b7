package route

import "minim/equipment"

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
	// From is the number, from 1, of the step that made the solution which is taken from, or
	// strengthened with; 0 for a stock, and for what stands at hand.
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
	// Open is for how many minutes the solution that it makes stands open, and Mouth how wide its
	// vessel is open, in mm.
	Open, Mouth equipment.Stated
	// Contraction on mixing, as a fraction of the volume.
	Contraction equipment.Stated
}

// Measuring is a step that measures a volume with an instrument, emptied as that is made to be.
func Measuring(verb Verb, k *equipment.Measure, mL float64) Step {
	s := Step{Verb: verb, Amount: mL, Measure: k}
	if verb.Traits().Empties {
		s.Emptying = k.AsMeant(mL)
	}
	return s
}

// Emptied is what is done with what stays in the instrument: what the step says or, where
// its verb says nothing of it, as the instrument is made.
func (s *Step) Emptied() equipment.Emptying {
	if s.Measure != nil && !s.Verb.Traits().Empties {
		return s.Measure.AsMeant(s.Amount)
	}
	return s.Emptying
}

// piece is the piece that a step uses.
func (s *Step) piece() pieceOf { return pieceOf{s.Measure, max(s.Piece, 1)} }
