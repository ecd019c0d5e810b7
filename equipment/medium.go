package equipment

import (
	"math"
	"slices"
)

// Medium is the liquid that a solute is dissolved in, or a liquid solute.
type Medium struct {
	// Name of the liquid, or of what has been mixed.
	Name string
	// Last is the name of the liquid that was mixed in last, "" where none
	// was.
	Last string
	// Ethanol is the volume fraction of ethanol in ethanol and water, NaN in
	// anything else.
	Ethanol float64
	// Solute: it is, or holds, the liquid solute itself.
	Solute bool
	// Parts of a mixture; nil of what was not mixed here.
	Parts []Part
}

// Parted lists the parts of the liquid, which of one that was not mixed is itself.
func (l Medium) Parted() []Part {
	if l.Parts == nil {
		return []Part{{Name: l.Name, Share: 1}}
	}
	return l.Parts
}

// partsWith are the parts of a volume v of the liquid and a volume of another.
func (l Medium) partsWith(v float64, other Medium, added float64) (parts []Part) {
	if !(v+added > 0) {
		return l.Parted()
	}
	for _, p := range l.Parted() {
		parts = append(parts, Part{Name: p.Name, Share: p.Share * v / (v + added)})
	}
	for _, p := range other.Parted() {
		share := float64(p.Share * added / (v + added))
		at := slices.IndexFunc(parts, func(q Part) bool { return q.Name == p.Name })
		if at < 0 {
			parts = append(parts, Part{Name: p.Name})
			at = len(parts) - 1
		}
		parts[at].Share += share
	}
	return parts
}

// MediumOf is the liquid of a name or an alias.
func MediumOf(name string) Medium {
	if liquid, found := FindLiquid(name); found {
		return Medium{Name: liquid.Name, Ethanol: liquid.Alcohol}
	}
	return Medium{Name: name, Ethanol: math.NaN()}
}

// Alcoholic reports whether two liquids are both ethanol and water, so that
// OIML R 22 says how they mix.
func Alcoholic(a, b Medium) bool { return !math.IsNaN(a.Ethanol) && !math.IsNaN(b.Ethanol) }

// With is what becomes of a volume v of a liquid, in mL, to which a volume is
// added of another.
func (l Medium) With(v float64, other Medium, added float64) Medium {
	if l.Name == other.Name {
		return l
	}
	mixed := Medium{Name: l.Name, Last: other.Name, Ethanol: math.NaN(), Solute: l.Solute, Parts: l.partsWith(v, other, added)}
	if l.Last != other.Name {
		mixed.Name += " and " + other.Name
	}
	if Alcoholic(l, other) {
		_, mixed.Ethanol = MixAlcohol(v, l.Ethanol, added, other.Ethanol)
	}
	return mixed
}

// UpTo is what becomes of a volume v that is made up to a mark with another
// liquid. Of ethanol and water more goes in than mark - v, since they contract.
func (l Medium) UpTo(v float64, other Medium, mark float64) Medium {
	added := mark - v
	if l.Name != other.Name && Alcoholic(l, other) {
		for range 20 { // each round leaves a tenth of the error
			volume, _ := MixAlcohol(v, l.Ethanol, added, other.Ethanol)
			added = math.Max(0, added+mark-volume)
		}
	}
	return l.With(v, other, added)
}
