package equipment

import "minim/uncertainty"

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
	// drained: what stays, stays.
	drained Emptying = ""
	// Rinsed into the receiver with solvent that is not measured.
	Rinsed Emptying = "rinsed"
	// BlownOut: the last drop goes along.
	BlownOut Emptying = "blown-out"
)

// leftByRinse is the part that one rinse leaves behind: 0.1 mL of film and
// 5 mL of solvent leave 2 % (common practice, no source).
const leftByRinse = 0.02

// lessRetained adds μ - ρX to a volume: μ = E[X] for an instrument adjusted to
// deliver, 0 for one adjusted to contain.
func (k *Measure) lessRetained(u Use, volume uncertainty.Node) uncertainty.Node {
	retained, assumed := k.retained(u)
	if !retained.Known || retained.Mean == 0 {
		return volume
	}
	m := u.Model
	left := k.ofUse(u, retainedCode, retained.distribution())
	left.Assumed = assumed
	if k.knownScatter() && !k.Retained.Spread.Known || k.scatterMeasured(Delivered) {
		left.Distribution = exactly(retained.Mean)
	}
	switch {
	case k.Ex && u.Emptying == drained:
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
		u.Notes.Assume("left-by-rinse", "")
		stays = m.Multiply(m.Constant(leftByRinse), stays)
	}
	return m.Subtract(volume, stays)
}

// surplus appends μ, which the nominal volume does not hold: an error that is
// exactly known when the kit states it, and is the piece's when it is assumed.
func (k *Measure) surplus(u Use, retained Retained, assumed bool) uncertainty.Node {
	in := k.ofUse(u, shouldKeep, exactly(retained.Mean))
	if assumed {
		in.Owner, in.Distribution, in.Assumed = k.owner(u), retained.distribution(), true
	}
	return u.Model.Influence(in)
}

func exactly(x float64) uncertainty.Distribution { return uncertainty.Rectangular{Low: x, High: x} }

// knownScatter reports whether a stated repeatability, or the limit of a piston,
// already holds the scatter of what is retained.
func (k *Measure) knownScatter() bool { return k.Repeatability.Known || k.Random > 0 }

// Film appends the volume of liquid that an instrument still holds from before,
// when it was not rinsed with what it is to take.
func (k *Measure) Film(u Use) uncertainty.Node {
	u.Emptying = Rinsed // asks for a figure, stated or assumed
	r, assumed := k.retained(u)
	if r.Mean == 0 {
		return u.Model.Constant(0)
	}
	in := k.ofUse(u, filmCarried, r.distribution())
	in.Group.Kind, in.Assumed = film, assumed
	return u.Model.Influence(in)
}
