// Package mixed has the liquids that solutes are dissolved in, and what becomes of them when they are
// mixed or made up to a mark.
package mixed

import (
	"math"
	"slices"
	"strings"

	"minim/equipment"
)

// Liquid is the liquid that a solute is dissolved in, or a liquid solute.
type Liquid struct {
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
	Parts []equipment.Part
}

// Parted lists the parts of the liquid, which of one that was not mixed is itself.
func (l Liquid) Parted() []equipment.Part {
	if l.Parts == nil {
		return []equipment.Part{{Name: l.Name, Share: 1}}
	}
	return l.Parts
}

// Without are the parts but for the solute, where it holds the liquid solute of that name.
func (l Liquid) Without(solute string) (parts []equipment.Part) {
	for _, p := range l.Parted() {
		if !l.Solute || p.Name != solute {
			parts = append(parts, p)
		}
	}
	return parts
}

// partsWith are the parts of a volume v of the liquid and a volume of another.
func (l Liquid) partsWith(v float64, other Liquid, added float64) (parts []equipment.Part) {
	if !(v+added > 0) {
		return l.Parted()
	}
	for _, p := range l.Parted() {
		parts = append(parts, equipment.Part{Name: p.Name, Share: p.Share * v / (v + added)})
	}
	for _, p := range other.Parted() {
		share := float64(p.Share * added / (v + added))
		at := slices.IndexFunc(parts, func(q equipment.Part) bool { return q.Name == p.Name })
		if at < 0 {
			parts = append(parts, equipment.Part{Name: p.Name})
			at = len(parts) - 1
		}
		parts[at].Share += share
	}
	return parts
}

// Of is the liquid of a name or an alias.
func Of(name string) Liquid {
	if liquid, found := equipment.FindLiquid(name); found {
		return Liquid{Name: liquid.Name, Ethanol: liquid.Alcohol}
	}
	return Liquid{Name: name, Ethanol: math.NaN()}
}

// Alcoholic reports whether two liquids are both ethanol and water, so that
// OIML R 22 says how they mix.
func Alcoholic(a, b Liquid) bool { return !math.IsNaN(a.Ethanol) && !math.IsNaN(b.Ethanol) }

// With is what becomes of a volume v of a liquid, in mL, to which a volume is
// added of another.
func (l Liquid) With(v float64, other Liquid, added float64) Liquid {
	if l.Name == other.Name {
		return l
	}
	mixed := Liquid{Name: l.Name, Last: other.Name, Ethanol: math.NaN(), Solute: l.Solute, Parts: l.partsWith(v, other, added)}
	if l.Last != other.Name {
		mixed.Name += " and " + other.Name
	}
	if Alcoholic(l, other) {
		_, mixed.Ethanol = equipment.MixAlcohol(v, l.Ethanol, added, other.Ethanol)
	}
	return mixed
}

// Contracts is the share by which a volume v of ethanol and water and a volume that is added take up
// less than both together.
func (l Liquid) Contracts(v float64, other Liquid, added float64) (share float64) {
	volume, _ := equipment.MixAlcohol(v, l.Ethanol, added, other.Ethanol)
	return 1 - volume/(v+added)
}

// UpTo is what becomes of a volume v that is made up to a mark with another
// liquid. Of ethanol and water more goes in than mark - v, since they contract.
func (l Liquid) UpTo(v float64, other Liquid, mark float64) Liquid {
	added := mark - v
	if l.Name != other.Name && Alcoholic(l, other) {
		for range 20 { // each round leaves a tenth of the error
			volume, _ := equipment.MixAlcohol(v, l.Ethanol, added, other.Ethanol)
			added = math.Max(0, added+mark-volume)
		}
	}
	return l.With(v, other, added)
}

// DensityAndTension are the density in g/mL and the surface tension in mN/m at 20 °C, of ethanol and
// water by their strength; 0 where they are not known.
func (l Liquid) DensityAndTension() (density, tension float64) {
	liquid, found := equipment.FindLiquid(l.Name)
	if !found && !math.IsNaN(l.Ethanol) {
		strength := equipment.AlcoholByMass(l.Ethanol)
		return equipment.AlcoholDensity(strength), equipment.AlcoholTension(strength)
	}
	return liquid.Density, liquid.SurfaceTension
}

// Organic reports whether it is known by its name to be or to hold an organic liquid.
func (l Liquid) Organic() bool {
	return slices.ContainsFunc(equipment.Recognise(l.Name), func(r equipment.Recognition) bool { return strings.HasPrefix(r.Group, "organic") })
}

// Volatile reports whether a substance is known to evaporate from its solutions by its name
// (common practice, no source), or since it is a gas by itself, stated or by its name.
func Volatile(name, state string) bool {
	l, _ := equipment.FindLiquid(name)
	s, found := equipment.FindStock(name)
	short, _ := withoutBottle(name)
	return l.Volatile || found && s.Volatile || state == "gas" || state != "solid" && isGas(short)
}
