package equipment

import (
	"math"
	"slices"

	"minim/uncertainty"
)

// How far what a mixture does may be on the way from its most plentiful part to another: so
// many times the share of that one, up to all of the way. Ethanol and water, and isopropanol
// and acetone in water, keep within them (a test holds the first, liquids of one table the others).
const (
	reachOfExpansion = 2
	reachOfTension   = 10
)

// ExpansionBounds are the bounds of the cubic expansion of a mixture, in 1/°C, where that of
// each part is known.
func ExpansionBounds(parts []Part, of func(name string) (float64, bool)) (low, high float64, known bool) {
	return amid(parts, reachOfExpansion, of)
}

// amid bounds what a mixture does by what its parts do: it lies from its most plentiful part
// on towards each other by at most the reach times the share of that one. Nothing is known where
// one of the parts is not.
func amid(parts []Part, reach float64, of func(name string) (float64, bool)) (low, high float64, known bool) {
	if len(parts) == 0 {
		return 0, 0, false
	}
	main := parts[0]
	for _, p := range parts {
		if p.Share > main.Share {
			main = p
		}
	}
	from, known := of(main.Name)
	low, high = from, from
	for _, p := range parts {
		x, there := of(p.Name)
		end := from + float64(math.Min(1, reach*p.Share)*(x-from))
		low, high, known = math.Min(low, end), math.Max(high, end), known && there
	}
	return low, high, known
}

// meniscus bounds the correction in mL for a liquid in a tube of that bore; the two are one
// where its surface tension and density are known.
func (s Solvent) meniscus(bore float64, correction func(bore, tension, density float64) float64) (low, high float64, known bool) {
	if s.Tension > 0 && s.Density > 0 {
		c := correction(bore, s.Tension, s.Density)
		return c, c, true
	}
	return amid(s.wettingParts(), reachOfTension, func(name string) (float64, bool) {
		l, _ := FindLiquid(name)
		if l.SurfaceTension == 0 {
			return 0, false
		}
		return correction(bore, l.SurfaceTension, l.Density), true
	})
}

// mostUnknown is the share of what is not known that hardly changes the surface tension of an
// organic liquid, which is low already; that of water it may lower by far.
const mostUnknown = 0.1

// wettingParts are the parts of a mixture without a little of what no table has.
func (s Solvent) wettingParts() []Part {
	known := slices.DeleteFunc(slices.Clone(s.Parts), func(p Part) bool {
		l, _ := FindLiquid(p.Name)
		return l.SurfaceTension == 0
	})
	share := 0.0
	for _, p := range known {
		share += p.Share
	}
	if share < 1-mostUnknown || slices.ContainsFunc(known, func(p Part) bool { return IsWater(p.Name) }) {
		return s.Parts
	}
	return known
}

// inBetween appends where a mixture lies between its bounds, from 0 to 1, one for the whole bench.
func (u *Use) inBetween(code uncertainty.Code, g uncertainty.Group) uncertainty.Node {
	return u.Model.Influence(uncertainty.Influence{
		Code: code, Owner: uncertainty.Owner{Kind: uncertainty.Bench, Name: u.Day.Solvent.Name}, Group: g,
		Distribution: uncertainty.Rectangular{Low: 0, High: 1}, Nominal: 0.5, Assumed: true,
	})
}
