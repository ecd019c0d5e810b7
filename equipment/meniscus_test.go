package equipment

import (
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"

	"minim/uncertainty/near"
)

// meniscusRadii in capillary lengths: a bore of 0.3 mm to one of 136 mm for water.
var meniscusRadii = []float64{0.05, 0.1, 0.2, 0.5, 1, 1.5, 2, 3, 4, 6, 8, 11, 15, 20, 25}

// An independent solution of the same equation, three decimals, for the bores of
// ASTM E1272 cylinders, a burette (11), a graduated pipette (8) and flask necks (9,
// 13): water, and beyond it ethanol, acetone, detergent in water, ethanol 50 % vol.
func TestMeniscusTable(t *testing.T) {
	liquids := []struct{ tension, density float64 }{{22.4, 0.7893}, {23.7, 0.7905}, {30, 0.9982}, {29.5, 0.9301}}
	for _, row := range []struct {
		bore, water float64
		others      [4]float64
	}{
		{11.2, 0.112, [4]float64{-0.040, -0.038, -0.037, -0.035}},
		{15.2, 0.216, [4]float64{-0.096, -0.091, -0.091, -0.086}},
		{18.9, 0.325, [4]float64{-0.164, -0.156, -0.156, -0.148}},
		{23.0, 0.450, [4]float64{-0.246, -0.236, -0.235, -0.224}},
		{29.6, 0.644, [4]float64{-0.376, -0.362, -0.361, -0.345}},
		{11.0, 0.107, [4]float64{-0.038, -0.035, -0.035, -0.033}},
		{8.0, 0.050, [4]float64{-0.013, -0.012, -0.012, -0.011}},
		{9.0, 0.067, [4]float64{-0.020, -0.018, -0.018, -0.017}},
		{13.0, 0.156, [4]float64{-0.062, -0.059, -0.059, -0.055}},
	} {
		water := meniscusVolume(row.bore, 72.8, 0.9982)
		near.Absolute(t, fmt.Sprintf("water, bore %v mm", row.bore), row.water, water, 0.00055)
		for i, l := range liquids {
			what := fmt.Sprintf("liquid %d, bore %v mm", i, row.bore)
			near.Absolute(t, what, row.others[i], meniscusVolume(row.bore, l.tension, l.density)-water, 0.00055)
		}
	}
}

func TestMeniscusCorrection(t *testing.T) {
	// The same table; its water is 72.8 mN/m, that of the liquid table 72.74.
	near.Absolute(t, "ethanol in 10 mL", -0.096, MeniscusCorrection(15.2, 22.4, 0.7893), 0.001)
	water, _ := FindLiquid("water")
	assert.Equal(t, 0.0, MeniscusCorrection(15.2, water.SurfaceTension, water.Density))
}

// The balance of forces is exact: the wall carries σ for each unit of its girth, and
// that is the weight of what stands above the wide level, the meniscus and the
// column of height h beneath it. With ρg = σ/a² and in units of a:
//
//	V + πR²h = 2πR
//
// In a narrow tube V is the small difference of two large terms.
func TestMeniscusForceBalance(t *testing.T) {
	for _, radius := range meniscusRadii {
		h := meniscusRise(radius, upright)
		near.Relative(t, "radius", radius, meniscusAtWall(h, radius, upright).x, 1e-8)
		near.Relative(t, fmt.Sprintf("weight, R = %v", radius),
			2*math.Pi*radius, scaledMeniscus(radius, upright)+math.Pi*radius*radius*h, 1e-7)
	}
}

// A very narrow tube has a hemisphere for a meniscus: V is the cylinder less half a
// sphere, πR³/3.
func TestMeniscusHemisphere(t *testing.T) {
	for _, radius := range []float64{1e-9, 4.9e-4, 5e-4, 1e-3} {
		near.Relative(t, fmt.Sprintf("R = %v", radius), math.Pi/3*math.Pow(radius, 3), scaledMeniscus(radius, upright), 4e-7)
	}
	near.Relative(t, "bore 0.1 mm", math.Pi/3*0.05*0.05*0.05/1000, meniscusVolume(0.1, 72.74, 0.99821), 1e-4)
}

// Rayleigh, Proc. R. Soc. A 92 (1916) 184, narrow tubes, from memory:
//
//	2a²/R = h + R/3 - 0.1288 R²/h + 0.1312 R³/h²
//
// and so, by the balance of forces, V is πR² times what follows h.
func TestMeniscusNarrow(t *testing.T) {
	for _, radius := range []float64{0.005, 0.02, 0.05, 0.1, 0.2, 0.3} {
		h := 2/radius - radius/3 // to the order that the small terms need
		mean := radius/3 - 0.1288*radius*radius/h + 0.1312*radius*radius*radius/(h*h)
		near.Relative(t, fmt.Sprintf("R = %v", radius), math.Pi*radius*radius*mean, scaledMeniscus(radius, upright), 2e-7+1e-3*radius*radius)
	}
}

// A wide tube has the profile of a flat wall, and V is 2πR (see the balance of
// forces). Derived: along a flat wall u = 2 sin(ψ/2), and so far from it
//
//	u = 4 tan(π/8) e^(√2-2-d)
//
// at the distance d; in the middle u = h I0(x), and the two meet in
//
//	ln h = -R + ln(2πR)/2 + ln(4 tan(π/8)) + √2 - 2 + O(1/R)
func TestMeniscusWide(t *testing.T) {
	for _, radius := range []float64{8, 11, 15, 20, 25} {
		flat := math.Log(2*math.Pi*radius)/2 + math.Log(4*math.Tan(math.Pi/8)) + math.Sqrt2 - 2 - radius
		near.Absolute(t, fmt.Sprintf("ln h, R = %v", radius), flat, math.Log(meniscusRise(radius, upright)), 0.4/radius)
		near.Relative(t, "V", 2*math.Pi*radius, scaledMeniscus(radius, upright), radius*math.Exp(flat)+2e-8)
	}
	near.Relative(t, "V beyond", 2*math.Pi*25, scaledMeniscus(25.000001, upright), 1e-7)
	// Height at a flat wall is √2 a (u = 2 sin(ψ/2) at π/2), a little more in a tube.
	near.Relative(t, "height", math.Sqrt2, meniscusAtWall(meniscusRise(25, upright), 25, upright).z, 0.02)
}

// Sizes and the square root of the tension go together: V(kR, k²σ) = k³ V(R, σ).
func TestMeniscusScales(t *testing.T) {
	for _, bore := range []float64{0.5, 2, 8, 15.2, 40, 100} {
		near.Relative(t, fmt.Sprintf("bore %v mm", bore), 27*meniscusVolume(bore, 30, 0.9),
			meniscusVolume(3*bore, 270, 0.9), 1e-7)
	}
}

// A wider tube has more meniscus, and so has a liquid of more tension.
func TestMeniscusGrows(t *testing.T) {
	skipIfSlow(t)
	last := 0.0
	for bore := 0.5; bore <= 160; bore *= 1.02 {
		v := meniscusVolume(bore, 72.74, 0.99821)
		assert.Equal(t, true, v > last && MeniscusCorrection(bore, 22.4, 0.7893) < 0, "bore %v mm", bore)
		last = v
	}
}

func TestMeniscusMalformed(t *testing.T) {
	const want = "equipment: a meniscus needs a bore, surface tension and density above zero"
	for _, bad := range []float64{0, -1, math.NaN(), math.Inf(1)} {
		assert.PanicsWithValue(t, want, func() { meniscusVolume(bad, 72.74, 0.99821) })
		assert.PanicsWithValue(t, want, func() { MeniscusCorrection(10, bad, 0.99821) })
		assert.PanicsWithValue(t, want, func() { meniscusVolume(10, 72.74, bad) })
	}
}
