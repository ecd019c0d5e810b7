package equipment

import (
	"fmt"

	"minim/uncertainty"
)

// Retained is the volume that stays in an instrument that was emptied: a gamma
// distribution, or rectangular from 0 to twice the mean when no spread is
// stated.
type Retained struct {
	Mean   float64
	Spread Stated
	Known  bool
}

func (r Retained) distribution() uncertainty.Distribution {
	switch {
	case !r.Spread.Known:
		return uncertainty.Rectangular{Low: 0, High: 2 * r.Mean}
	case r.Spread.Value <= 1e-9*r.Mean:
		return exactly(r.Mean)
	default:
		return uncertainty.Gamma{Mu: r.Mean, Sigma: r.Spread.Value}
	}
}

// Emptying is what is done with the liquid that stays in an instrument.
type Emptying string

// The ways to empty an instrument.
const (
	// Drained: what stays, stays.
	Drained Emptying = ""
	// Rinsed into the receiver with solvent that is not measured.
	Rinsed Emptying = "rinsed"
	// BlownOut: the last drop goes along.
	BlownOut Emptying = "blown out"
)

// leftByRinse is the part that one rinse leaves behind: 0.1 mL of film and
// 5 mL of solvent leave 2 % (common practice, no source).
const leftByRinse = 0.02

// remaining is ρ, the part of the retained liquid that remains.
func (e Emptying) remaining() float64 {
	switch e {
	case Rinsed:
		return leftByRinse
	case BlownOut:
		return 0
	default:
		return 1
	}
}

// lessRetained adds μ - ρX to a volume: μ = E[X] for an instrument adjusted to
// deliver, 0 for one adjusted to contain.
func (k *Measure) lessRetained(u Use, volume uncertainty.Node) uncertainty.Node {
	retained, assumed := k.retained(u)
	if !retained.Known || retained.Mean == 0 {
		return volume
	}
	m := u.Model
	left := uncertainty.Influence{
		Name: "retained in the " + k.Name, Owner: u.Step, Group: k.Name, Unit: "mL",
		Distribution: retained.distribution(), Assumed: assumed,
	}
	if k.knownScatter() && !k.Retained.Spread.Known {
		left.Distribution = exactly(retained.Mean)
	}
	switch {
	case k.Ex && u.Emptying == Drained:
		left.Nominal = retained.Mean
		volume = m.Add(volume, m.Constant(retained.Mean))
	case k.Ex:
		volume = m.Add(volume, k.surplus(u, retained, assumed))
	}
	if u.Emptying == BlownOut {
		return volume
	}
	stays := m.Influence(left)
	if u.Emptying == Rinsed {
		u.Notes.Assume("a rinse leaves 2 % of what stayed behind")
		stays = m.Multiply(m.Constant(leftByRinse), stays)
	}
	return m.Subtract(volume, stays)
}

// surplus appends μ, which the nominal volume does not hold: an error that is
// exactly known when the kit states it, and is the piece's when it is assumed.
func (k *Measure) surplus(u Use, retained Retained, assumed bool) uncertainty.Node {
	in := uncertainty.Influence{
		Name: "what the " + k.Name + " should have kept", Owner: u.Step, Group: k.Name, Unit: "mL",
		Distribution: exactly(retained.Mean), Assumed: assumed,
	}
	if assumed {
		in.Owner, in.Distribution = k.owner(u), retained.distribution()
	}
	return u.Model.Influence(in)
}

func exactly(x float64) uncertainty.Distribution { return uncertainty.Rectangular{Low: x, High: x} }

// knownScatter reports whether a stated repeatability, or the limit of a piston,
// already holds the scatter of what is retained.
func (k *Measure) knownScatter() bool { return k.Repeatability.Known || k.Random > 0 }

// retained is what the kit states, or what is assumed.
func (k *Measure) retained(u Use) (r Retained, assumed bool) {
	switch {
	case k.Retained.Known:
		return k.Retained, false
	case k.Ex && u.Emptying == Drained:
		if !k.knownScatter() {
			u.Notes.LeaveOut("scatter of what stays in the " + k.Name + " when it is emptied")
		}
		return Retained{}, false
	case k.Kind.Receives():
		return k.retainedWhenPoured(u)
	case u.Emptying == BlownOut && k.Kind.anyVolume():
		return Retained{}, false // it is made to be pressed empty
	case k.Class != nil && k.Class.DeadSpace > 0:
		u.Notes.Assume(fmt.Sprintf("the dead space of the %s is at most %s (%s, %s)",
			k.Name, Millilitres(k.Class.DeadSpace), k.Class, k.Class.DeadSpaceTrust))
		return Retained{Mean: k.Class.DeadSpace / 2, Known: true}, true
	case k.Capacity < 1:
		u.Notes.LeaveOut("what stays in the tip of the " + k.Name)
		return Retained{}, false
	}
	u.Notes.Assume(fmt.Sprintf("the last drop in the tip of the %s is 0.01 to 0.05 mL (from memory)", k.Name))
	return lastDrop, true
}

// lastDrop in the tip of a pipette of 1 mL or more: 0.01 to 0.05 mL (from
// memory). For smaller ones there is no figure.
var lastDrop = Retained{Mean: 0.03, Spread: Stated{0.0115, true}, Known: true}

// retainedWhenPoured is what a cylinder adjusted to contain keeps when it is
// poured out, by capacity in mL, with half of it as standard deviation.
// Measured near 10 mL (five deliveries, pt.scribd.com/doc/55952279, and three,
// studymode.com/essays/Accuracy-And-Precision-137415.html) and 50 mL (two,
// bartleby.com/essay/Lab-report-calibration-of-volumetric-flask-PKJE4S43VJ);
// the other sizes follow the film that gravity leaves in 10 s, √(νL/gt), and one
// hanging drop.
var retainedWhenPoured = map[float64]float64{5: 0.08, 10: 0.10, 25: 0.15, 50: 0.25, 100: 0.40}

func (k *Measure) retainedWhenPoured(u Use) (Retained, bool) {
	mean, ok := retainedWhenPoured[k.Capacity]
	if k.Kind != Cylinder || !ok {
		u.Notes.LeaveOut("what stays in the " + k.Name + " when it is poured out")
		return Retained{}, false
	}
	u.Notes.Assume(fmt.Sprintf("the %s keeps about %s when it is poured out", k.Name, Millilitres(mean)))
	return Retained{Mean: mean, Spread: Stated{mean / 2, true}, Known: true}, true
}

// Film appends the volume of liquid that an instrument still holds from before,
// when it was not rinsed with what it is to take.
func (k *Measure) Film(u Use) uncertainty.Node {
	u.Emptying = Rinsed // asks for a figure, stated or assumed
	r, assumed := k.retained(u)
	if r.Mean == 0 {
		return u.Model.Constant(0)
	}
	return u.Model.Influence(uncertainty.Influence{
		Name: "film carried over in the " + k.Name, Owner: u.Step, Group: k.Name + ", not rinsed", Unit: "mL",
		Distribution: r.distribution(), Assumed: assumed,
	})
}
