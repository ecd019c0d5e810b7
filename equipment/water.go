package equipment

import "fmt"

// WaterExpansion is the cubic expansion in 1/°C of water free of air, at t °C and
// 101 325 Pa,
//
//	γ = -(dρ/dt)/ρ,  ρ = a5 (1 - (t+a1)² (t+a2) / (a3 (t+a4)))
//
// The density ρ holds from 0 to 40 °C within 0.001 kg/m³, and may be carried on to 50 °C
// for the purposes of a bench; outside that it panics. It is negative below 3.98 °C.
// Source: Tanaka et al., Metrologia 38 (2001) 301.
func WaterExpansion(t float64) float64 {
	lack, slope := waterLack(t)
	return slope / (1 - lack)
}

// waterLack is 1 - ρ/a5 and its derivative by t.
func waterLack(t float64) (lack, slope float64) {
	if !(t >= 0 && t <= 50) {
		panic(fmt.Sprintf("equipment: no density of water at %v °C", t))
	}
	a, b, d := t-3.983035, t+301.797, t+69.34881
	scale := a / (522528.9 * d)
	return float64(scale * a * b), scale * (float64(2*b) + float64(a*(1-b/d)))
}
