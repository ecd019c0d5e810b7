package equipment

import (
	"math"

	"minim/uncertainty"
)

// Pan is what stands on a balance: a load, by which its error of linearity goes.
type Pan struct {
	// grams that the balance carries, without a vessel of unknown mass, and the last mass that
	// was read to make up so much, 0 of a vessel.
	grams, read float64
	// third numbers the groups of three digits of the display by which loads share the
	// local part of the error.
	third float64
	// local is the code of that part, which tells loads in a boat or a vessel of unknown
	// mass from others.
	local uncertainty.Code
}

// PanWith is the pan with what stands on it when it is zeroed: a boat on which solute is
// weighed, or another vessel. Where its mass is not stated it counts as nothing, so that
// weighings alike are at loads alike; a boat is then told from other vessels, which are
// hardly as heavy. An assumed mass would say that two vessels differ, or do not, and by how
// much: nobody knows.
func (b *Balance) PanWith(vessel Stated, boat bool) Pan {
	switch {
	case vessel.Known:
		return b.loaded(vessel.Value, linearAtLoad, math.Inf(-1))
	case boat:
		return Pan{local: linearInBoat}
	}
	return Pan{local: linearInVessel}
}

// Under is the load with so much more on the pan.
func (b *Balance) Under(p Pan, grams float64) Pan {
	above := b.loaded(p.grams+grams, p.local, p.third)
	above.read = grams
	return above
}

// loaded is a load that is told from the one before it, however near that is: what is read
// between the two holds two local parts.
func (b *Balance) loaded(grams float64, local uncertainty.Code, before float64) Pan {
	third := math.Floor(math.Round(grams/b.Readability) / 3)
	return Pan{grams: grams, third: math.Max(third, before+0.5), local: local}
}

// unknown reports whether the mass of the vessel is not known.
func (p Pan) unknown() bool { return p.local != linearAtLoad }
