package equipment

import (
	"fmt"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"

	"minim/uncertainty/near"
)

// spiritDensity is the whole formula of OIML R 22 (1973), the same in Directive 76/766/EEC, in
// g/mL at t °C:
//
//	ρ = Σ A_k p^(k-1) + Σ B_k (t-20)^k + Σ Σ C_ik p^k (t-20)^i
func spiritDensity(p, t float64) float64 {
	a := []float64{998.20123, -192.9769495, 389.1238958, -1668.103923, 13522.15441, -88292.78388, 306287.4042, -613838.1234, 747017.2998, -547846.1354, 223446.0334, -39032.85426}
	b := []float64{-2.0618513e-1, -5.2682542e-3, 3.6130013e-5, -3.8957702e-7, 7.1693540e-9, -9.9739231e-11}
	c := [][]float64{
		{1.693443461530087e-1, -1.046914743455169e1, 7.196353469546523e1, -7.047478054272792e2, 3.924090430035045e3, -1.210164659068747e4, 2.248646550400788e4, -2.605562982188164e4, 1.852373922069467e4, -7.420201433430137e3, 1.285617841998974e3},
		{-1.193013005057010e-2, 2.517399633803461e-1, -2.170575700536993, 1.353034988843029e1, -5.029988758547014e1, 1.096355666577570e2, -1.422753946421155e2, 1.080435942856230e2, -4.414153236817392e1, 7.442971530188783},
		{-6.802995733503803e-4, 1.876837790289664e-2, -2.002561813734156e-1, 1.022992966719220, -2.895696483903638, 4.810060584300675, -4.672147440794683, 2.458043105903461, -5.411227621436812e-1},
		{4.075376675622027e-6, -8.763058573471110e-6, 6.515031360099368e-6, -1.515784836987210e-6},
		{-2.788074354782409e-8, 1.345612883493354e-8},
	}
	sum := func(x float64, coefficients []float64) (s float64) {
		for _, k := range slices.Backward(coefficients) {
			s = s*x + k
		}
		return s
	}
	d := t - 20
	byTemperature := slices.Clone(b)
	for i := range c {
		byTemperature[i] += p * sum(p, c[i])
	}
	return (sum(p, a) + d*sum(d, byTemperature)) / 1000
}

// OIML R 22 at five strengths and three temperatures: the table to its five decimals, and
// what the model makes of it, the density at 20 °C and the expansion from there. Beside them
// the densities of an engineer's handbook (Perry, from memory) at the same strengths by mass.
func TestAlcoholAgainstOIML(t *testing.T) {
	handbook := map[float64][3]float64{
		0.1: {0.98304, 0.98187, 0.98043}, 0.2: {0.97068, 0.96864, 0.96639}, 0.5: {0.91776, 0.91384, 0.90985}, 0.7: {0.87187, 0.86766, 0.86340}, 0.9: {0.82227, 0.81797, 0.81362},
	}
	for p, perry := range handbook {
		for i, at := range []float64{15, 20, 25} {
			what := fmt.Sprintf("%v by mass at %v °C", p, at)
			tabled := alcoholAt(p, func(r *alcoholRow) float64 { return []float64{r.At15, r.At20, r.At25}[i] })
			near.Absolute(t, what+", table", spiritDensity(p, at), tabled, 0.6e-5)
			near.Absolute(t, what+", handbook", perry[i], tabled, 1e-4)
			model := AlcoholDensity(p) * (1 - AlcoholExpansion(p, at)*(at-20))
			near.Absolute(t, what+", model", spiritDensity(p, at), model, 2e-5)
		}
	}
}

// Between the strengths of the table, and at the temperatures of a bench, the volume is right
// within 0.03 %.
func TestAlcoholExpansion(t *testing.T) {
	for p := 0.0; p <= 1; p += 0.01 {
		for _, at := range []float64{10, 15, 18, 22, 25, 30, 35} {
			want := spiritDensity(p, at) / spiritDensity(p, 20)
			near.Absolute(t, fmt.Sprintf("%.2f by mass at %v °C", p, at), want, 1-AlcoholExpansion(p, at)*(at-20), 3e-4)
		}
	}
	// At the ends it is that of the pure liquids: water by Tanaka et al., ethanol by handbooks.
	near.Absolute(t, "water", WaterExpansion(22.5), AlcoholExpansion(0, 25), 2e-6)
	near.Absolute(t, "ethanol", 1.09e-3, AlcoholExpansion(1, 20), 1e-5)
	// No straight line between the two: at 20 % by mass 0.000446, at 50 % 0.000869 (derivative of
	// the same formula), a line would give 0.00038 and 0.00065.
	near.Absolute(t, "20 %", 0.000446, AlcoholExpansion(0.2, 20), 1e-6)
	near.Absolute(t, "50 %", 0.000869, AlcoholExpansion(0.5, 20), 1e-6)
	assert.Panics(t, func() { AlcoholExpansion(1.01, 20) })
}

// Surface tension: the pure liquids from two sources, falling steeply at first. The printed row
// of 96 % vol agrees with that of the liquids.
func TestAlcoholTension(t *testing.T) {
	near.Absolute(t, "water", 72.74, AlcoholTension(0), 0.1)
	near.Absolute(t, "ethanol", 22.4, AlcoholTension(1), 0.1)
	spirit, _ := FindLiquid("ethanol 96 %")
	strength := AlcoholByMass(0.96)
	near.Absolute(t, "96 % vol", spirit.SurfaceTension, AlcoholTension(strength), 0.1)
	near.Absolute(t, "96 % vol, density", spirit.Density, AlcoholDensity(strength), 5e-5)
	near.Absolute(t, "96 % vol, expansion", spirit.Expansion, AlcoholExpansion(strength, 20), 1e-5)
	last := 100.0
	for p := 0.0; p <= 1; p += 0.01 {
		tension := AlcoholTension(p)
		assert.Less(t, tension, last)
		last = tension
	}
}

// The table is in order, from water to ethanol, and says where it is from.
func TestAlcoholRows(t *testing.T) {
	rows := alcoholRows()
	assert.Equal(t, []float64{0, 1}, []float64{rows[0].MassFraction, rows[len(rows)-1].MassFraction})
	for i, r := range rows {
		assert.True(t, i == 0 || r.MassFraction > rows[i-1].MassFraction)
		assert.NotEmpty(t, r.Source)
		assert.Contains(t, []string{"two sources", "from memory"}, r.TensionTrust)
		assert.Equal(t, "two sources", r.Trust)
	}
}
