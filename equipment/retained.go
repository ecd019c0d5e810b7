package equipment

import (
	"math"

	"minim/uncertainty"
)

// Retained is the volume that stays in an instrument that was emptied: a gamma
// distribution, or rectangular from 0 to twice the mean when no spread is
// stated.
type Retained struct {
	Mean   float64
	Spread Stated
	Known  bool
	// poured: what stays on average is unknown by Spread, which is that of the vessel and of who
	// pours; each pour scatters besides.
	poured bool
}

// within is its distribution where no more than most can stay.
func (r Retained) within(most float64) uncertainty.Distribution {
	switch {
	case !r.Spread.Known:
		return uncertainty.Rectangular{Low: 0, High: min(2*r.Mean, most)}
	case r.Spread.Value <= 1e-9*r.Mean:
		return exactly(r.Mean)
	default:
		return uncertainty.GammaBelow(r.Mean, r.Spread.Value, most)
	}
}

// distribution is that of what stays of a volume that is large beside it.
func (r Retained) distribution() uncertainty.Distribution { return r.within(math.Inf(1)) }

// surely is what stays at least in the mean, with all that a narrow distribution holds, and of
// pours the most that the mean may be.
func (r Retained) surely() float64 {
	if r.poured {
		return r.Mean * (1 + halfUnknown)
	}
	if r.Spread.Known && r.Spread.Value <= r.Mean/1000 {
		return r.Mean + float64(8*r.Spread.Value)
	}
	return r.Mean
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

// AsMeant is how an instrument is emptied of a volume as it is made to be.
func (k *Measure) AsMeant(mL float64) Emptying {
	if k.BlowOut && !k.BetweenMarks(mL, drained) {
		return BlownOut
	}
	return drained
}

// leavesDrop: the volume that it delivers does not hold what stays in it.
func (k *Measure) leavesDrop() bool { return k.Ex && !k.BlowOut }

// lessRetained adds μ - ρX to a volume: μ = E[X] for an instrument adjusted to
// deliver, 0 for one adjusted to contain. Of one that is made to be blown out the
// last drop X is a part of the volume. X is no more than what was measured; a
// [Cannot] error says that its mean is.
func (k *Measure) lessRetained(u Use, volume uncertainty.Node, mark float64) (uncertainty.Node, error) {
	if k.nothingLost(u, mark) {
		return volume, nil
	}
	retained, assumed := k.retained(u)
	if !retained.Known || retained.Mean == 0 {
		return volume, nil
	}
	m, share, most := u.Model, 1.0, mark
	if u.Emptying == Rinsed {
		share = leftByRinse
	}
	if k.leavesDrop() {
		most += retained.Mean
	}
	if u.Emptying != BlownOut && share*retained.surely() >= most*(1-1e-9) {
		return 0, Cannot("keeps-all", k.Name, ML(mark), ML(retained.Mean))
	}
	switch {
	case k.leavesDrop() && u.Emptying == drained:
		volume = m.Add(volume, k.known(u, keptByDesign, retained.Mean, "mL", k.groundOfRetained()))
	case k.leavesDrop():
		volume = m.Add(volume, k.surplus(u, retained, assumed))
	}
	if u.Emptying == BlownOut {
		return volume, nil
	}
	stays := k.stays(u, retained, assumed, most/share)
	if u.Emptying == Rinsed {
		u.Notes.Assume("left-by-rinse", "")
		stays = m.Multiply(k.assumed(u, partByRinse, leftByRinse, ""), stays)
	}
	return m.Subtract(volume, stays), nil
}

// stays appends X, no more than most.
func (k *Measure) stays(u Use, r Retained, assumed bool, most float64) uncertainty.Node {
	if r.poured && !k.Ex {
		return k.keptByPours(u, r, most)
	}
	left := k.ofUse(u, retainedCode, r.within(most))
	left.Assumed, left.Ground = assumed, k.groundOfRetained()
	if k.isExact(u, assumed) {
		left.Distribution = exactly(r.Mean)
	}
	if k.leavesDrop() && u.Emptying == drained {
		left.Nominal = r.Mean
	}
	return u.Model.Influence(left)
}

// nothingLost reports whether nothing that is known of stays behind of what was measured: the
// last drop of a pipette belongs to it and goes along, or what runs out stops at a mark. It
// says what is not known.
func (k *Measure) nothingLost(u Use, mark float64) bool {
	toTip := !k.BetweenMarks(mark, u.Emptying)
	switch {
	case k.leavesDrop():
		return false
	case !k.Kind.Traits().LastDrop:
		return u.Emptying == BlownOut
	case !k.Ex && u.Emptying != Rinsed:
		u.Notes.LeaveOut("film-that-stays", k.Name)
		if toTip && u.Emptying == drained {
			u.Notes.Warn("in-runs-out", k.Name)
		}
	case k.Ex && u.Emptying == Rinsed:
		u.Notes.LeaveOut("film-rinsed-out", k.Name)
	case k.Ex && u.Emptying == drained && toTip:
		u.Notes.Warn("last-drop-left", k.Name)
	case k.Ex && !k.holdsRetained(u):
		u.Notes.LeaveOut("scatter-of-retained", k.Name)
	}
	return u.Emptying == BlownOut || !toTip
}

// isExact: the scatter of what stays is in that of the use, and nothing else is unknown of it. Of a
// last drop that does not stay as it is meant to, what is assumed of it counts. Readings of
// deliveries hold the scatter of a drop that stays as it is meant to, whatever is stated of it.
func (k *Measure) isExact(u Use, assumed bool) bool {
	if k.leavesDrop() && u.Emptying == drained && k.scatterMeasured(u, Delivered) {
		return true
	}
	return k.holdsRetained(u) && !k.Retained.Spread.Known && !(assumed && k.Kind.Traits().LastDrop)
}

// MayKeepAll reports whether all of a volume may stay behind, with more than a chance.
func (k *Measure) MayKeepAll(u Use, mL, chance float64) bool {
	u.Notes = new(Notes) // it is said where the volume is delivered
	if k.Kind.Traits().Counts || u.Emptying == Rinsed || k.leavesDrop() || k.nothingLost(u, mL) {
		return false
	}
	r, assumed := k.retained(u)
	return r.Known && r.Mean > 0 && !k.isExact(u, assumed) && r.above(mL) > chance
}

// above is the chance that more than a volume stays, were there enough.
func (r Retained) above(mL float64) float64 {
	switch {
	case !r.Spread.Known:
		return 1 - mL/(2*r.Mean)
	case r.Spread.Value <= 1e-9*r.Mean:
		return 0
	}
	return uncertainty.Gamma{Mu: r.Mean, Sigma: r.Spread.Value}.Above(mL)
}

// surplus appends μ, which the nominal volume does not hold: an error that is
// exactly known when the kit states it, and is the piece's when it is assumed.
func (k *Measure) surplus(u Use, retained Retained, assumed bool) uncertainty.Node {
	in := k.ofUse(u, shouldKeep, exactly(retained.Mean))
	if assumed {
		in.Owner, in.Distribution, in.Assumed = k.owner(u), retained.distribution(), true
	}
	in.Ground = k.groundOfRetained()
	return u.Model.Influence(in)
}

func exactly(x float64) uncertainty.Distribution { return uncertainty.Rectangular{Low: x, High: x} }

// Film appends the volume of liquid that an instrument still holds from before,
// when it was not rinsed with what it is to take.
func (k *Measure) Film(u Use) uncertainty.Node {
	u.Emptying = Rinsed // asks for a figure, stated or assumed
	r, assumed := k.retained(u)
	if r.Mean == 0 {
		return u.Model.Constant(0)
	}
	in := k.ofUse(u, filmCarried, r.distribution())
	in.Group.Kind, in.Assumed, in.Ground = film, assumed, k.groundOfRetained()
	return u.Model.Influence(in)
}
