package equipment

import (
	"fmt"

	"minim/uncertainty/portable"
)

// AlcoholDensity is the density in g/mL at 20 °C of ethanol and water with mass
// fraction p of ethanol, 0 to 1:
//
//	ρ = Σ A_k p^(k-1), k = 1 to 12
//
// It panics outside 0 to 1. Source: OIML R 22 (1973), the same in Directive
// 76/766/EEC.
func AlcoholDensity(massFraction float64) float64 {
	requireFraction(massFraction)
	return portable.Polynomial(massFraction, alcoholCoefficients...) / 1000
}

// alcoholCoefficients are A_1 to A_12 of OIML R 22 at 20 °C, in kg/m³.
var alcoholCoefficients = []float64{
	998.20123, -192.9769495, 389.1238958, -1668.103923, 13522.15441, -88292.78388,
	306287.4042, -613838.1234, 747017.2998, -547846.1354, 223446.0334, -39032.85426,
}

// alcoholByVolume is the volume fraction q at 20 °C, the part of its volume that
// the ethanol would fill by itself (% vol is 100 q):
//
//	q = p ρ(p)/ρ(1)
//
// It panics as [AlcoholDensity] does. Source: OIML R 22.
func alcoholByVolume(massFraction float64) float64 {
	return min(massFraction*AlcoholDensity(massFraction)/AlcoholDensity(1), 1)
}

// AlcoholByMass is the mass fraction of a volume fraction: [alcoholByVolume]
// backwards. It panics outside 0 to 1.
func AlcoholByMass(volumeFraction float64) float64 {
	requireFraction(volumeFraction)
	return root(0, 1, 1e-12, func(p float64) float64 { return alcoholByVolume(p) - volumeFraction })
}

// MixAlcohol mixes two liquids of ethanol and water at 20 °C, given by volume and
// volume fraction of ethanol, and returns the volume and volume fraction of the
// mixture. The masses add:
//
//	m = v ρ(p),   p = (m1 p1 + m2 p2)/(m1 + m2),   volume = (m1 + m2)/ρ(p)
//
// It panics when a fraction is outside 0 to 1, when a volume is negative, and when
// both are 0.
func MixAlcohol(v1, q1, v2, q2 float64) (volume, q float64) {
	if !(v1 >= 0 && v2 >= 0 && v1+v2 > 0) {
		panic("equipment: a mixture needs volumes above zero")
	}
	p1, p2 := AlcoholByMass(q1), AlcoholByMass(q2)
	m1, m2 := float64(v1*AlcoholDensity(p1)), float64(v2*AlcoholDensity(p2))
	p := (float64(m1*p1) + float64(m2*p2)) / (m1 + m2)
	return (m1 + m2) / AlcoholDensity(p), alcoholByVolume(p)
}

func requireFraction(x float64) {
	if !(x >= 0 && x <= 1) {
		panic(fmt.Sprintf("equipment: a fraction of alcohol of %v is not within 0 to 1", x))
	}
}
