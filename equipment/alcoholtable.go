package equipment

import (
	"sort"
	"sync"
)

// alcoholRow is what is known of ethanol and water at one strength.
type alcoholRow struct {
	MassFraction float64 `csv:"mass_fraction,fraction"`
	// Densities in g/mL at 15, 20 and 25 °C, the cubic Expansion in 1/°C and the surface
	// Tension in mN/m at 20 °C.
	At15         float64 `csv:"density_15C_g_per_mL"`
	At20         float64 `csv:"density_20C_g_per_mL"`
	At25         float64 `csv:"density_25C_g_per_mL"`
	Expansion    float64 `csv:"expansion_per_K"`
	Tension      float64 `csv:"surface_tension_mN_per_m"`
	Source       string  `csv:"source"`
	Trust        string  `csv:"trust"`
	TensionTrust string  `csv:"tension_trust"`
	Note         string  `csv:"note"`
}

var alcoholRows = sync.OnceValue(func() []alcoholRow { return readTable[alcoholRow](tableFiles, "ethanol_water") })

// AlcoholExpansion is the cubic expansion in 1/°C of ethanol and water with that mass
// fraction of ethanol from 20 °C to t °C, so that a volume at t is that at 20 °C times
//
//	ρ(20)/ρ(t) = 1/(1 - γ (t - 20)),  γ = γ20 - c (t - 20)/ρ(20)
//
// with c = (ρ(15) + ρ(25) - 2 ρ(20))/50 from the densities of OIML R 22. It panics outside
// 0 to 1.
func AlcoholExpansion(massFraction, t float64) float64 {
	return alcoholAt(massFraction, func(r *alcoholRow) float64 {
		c := (r.At15 + r.At25 - float64(2*r.At20)) / 50
		return r.Expansion - float64(c/r.At20*(t-20))
	})
}

// AlcoholTension is the surface tension in mN/m at 20 °C of ethanol and water with that mass
// fraction of ethanol. It panics outside 0 to 1.
func AlcoholTension(massFraction float64) float64 {
	return alcoholAt(massFraction, func(r *alcoholRow) float64 { return r.Tension })
}

// alcoholAt interpolates between the two nearest strengths of the table.
func alcoholAt(massFraction float64, of func(*alcoholRow) float64) float64 {
	requireFraction(massFraction)
	rows := alcoholRows()
	above := max(1, sort.Search(len(rows), func(i int) bool { return rows[i].MassFraction >= massFraction }))
	a, b := &rows[above-1], &rows[above]
	share := (massFraction - a.MassFraction) / (b.MassFraction - a.MassFraction)
	return of(a) + float64(share*(of(b)-of(a)))
}
