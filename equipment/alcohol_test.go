package equipment

import (
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"

	"minim/uncertainty/near"
)

// OIML R 22 at 20 °C, published: 789.24 kg/m³ for ethanol; 948.05, 930.14, 885.56
// and 807.42 kg/m³ at 40, 50, 70 and 96 % vol (these four from memory).
func TestAlcoholPublished(t *testing.T) {
	near.Absolute(t, "ethanol", 0.78924, AlcoholDensity(1), 0.5e-5)
	for percent, density := range map[float64]float64{40: 948.05, 50: 930.14, 70: 885.56, 96: 807.42} {
		what := fmt.Sprintf("density at %v %% vol", percent)
		near.Absolute(t, what, density/1000, AlcoholDensity(AlcoholByMass(percent/100)), 0.5e-5)
	}
	// Without ethanol it is water: Tanaka et al. 2001, 0.006 kg/m³ off (R 22 is older).
	near.Absolute(t, "water", WaterDensity(20), AlcoholDensity(0), 6e-6)
}

// The formula of OIML R 22 evaluated elsewhere: % vol, % mass, kg/m³, and the water
// (mL) that with the ethanol makes 100 mL.
var alcoholTable = []struct{ volume, mass, density, water float64 }{
	{5, 3.9818122, 991.05517, 95.3308}, {10, 8.0149362, 984.71043, 90.741875},
	{20, 16.213511, 973.55733, 81.717942}, {30, 24.607062, 962.21052, 72.674603},
	{40, 33.299643, 948.04515, 63.3489}, {50, 42.425739, 930.14187, 53.648733},
	{60, 52.088426, 909.11458, 43.635601}, {70, 62.386109, 885.56153, 33.369439},
	{80, 73.480003, 859.26956, 22.82889}, {90, 85.664612, 829.18161, 11.90806},
	{95, 92.40761, 811.38033, 6.1714171}, {96, 93.838387, 807.41963, 4.9839724},
}

func TestAlcoholTable(t *testing.T) {
	for _, row := range alcoholTable {
		what := fmt.Sprintf(" at %v %% vol", row.volume)
		p := AlcoholByMass(row.volume / 100)
		near.Relative(t, "mass"+what, row.mass/100, p, 5e-8)
		near.Relative(t, "density"+what, row.density/1000, AlcoholDensity(p), 1e-8)
		volume, q := MixAlcohol(row.volume, 1, row.water, 0)
		near.Relative(t, "volume"+what, 100, volume, 1e-7)
		near.Relative(t, "strength"+what, row.volume/100, q, 1e-7)
	}
}

// The water lacking in 100 mL of 50 % vol: 3.65 mL of contraction per 100 mL of
// mixture, by the formula of OIML R 22.
func TestAlcoholContractionAtHalf(t *testing.T) {
	mixture, _ := MixAlcohol(50, 1, 53.648733, 0)
	epsilon := alcoholContraction(50, 1, 53.648733, 0)
	near.Absolute(t, "contraction per 100 mL of mixture", 3.648733, epsilon*103.648733/mixture*100, 1e-5)
}

func TestAlcoholMixingExamples(t *testing.T) {
	// A worked example on the web (jiskha.com 1292292284) has 97 mL and 49 %; the
	// formula of OIML R 22 gives the decimals.
	volume, q := MixAlcohol(50, 0.95, 50, 0)
	near.Absolute(t, "95 % and water, published", 97, volume, 0.5)
	near.Absolute(t, "95 % and water", 97.059152, volume, 1e-6)
	near.Absolute(t, "95 % and water, strength", 0.48939228, q, 1e-8)
	// A school page (chim.lu/ech1106.php) has 96.26 mL, temperature and method not
	// said. By the formula of OIML R 22 it is 96.46 mL: 0.2 mL, the known mismatch.
	volume, q = MixAlcohol(50, 1, 50, 0)
	near.Absolute(t, "ethanol and water, published", 96.26, volume, 0.21)
	near.Absolute(t, "ethanol and water", 96.462696, volume, 1e-6)
	near.Absolute(t, "ethanol and water, strength", 0.51833509, q, 1e-8)
}

// The largest contraction of 100 mL of ethanol and water, 3.54582 mL, is at 52.472 mL
// of ethanol: formula of OIML R 22; about 52 mL is the known figure of handbooks.
func TestAlcoholLargestContraction(t *testing.T) {
	most, at := 0.0, 0.0
	for ethanol := 1.0; ethanol < 100; ethanol += 0.004 {
		if epsilon := alcoholContraction(ethanol, 1, 100-ethanol, 0); epsilon > most {
			most, at = epsilon, ethanol
		}
	}
	near.Absolute(t, "ethanol", 52.472, at, 0.01)
	near.Absolute(t, "contraction", 3.54582, 100*most, 1e-5)
}

// Ethanol and mass are conserved, the order does not matter, and scale does not.
func TestAlcoholMixingConserves(t *testing.T) {
	for _, c := range [][4]float64{{3, 0.96, 7, 0.1}, {20, 0.4, 1, 0.4}, {1, 1, 5, 0.2}, {2, 0, 3, 0.7}, {0, 0.3, 5, 1}} {
		v1, q1, v2, q2 := c[0], c[1], c[2], c[3]
		volume, q := MixAlcohol(v1, q1, v2, q2)
		near.Relative(t, "ethanol", v1*q1+v2*q2, volume*q, 1e-11)
		mass := func(v, q float64) float64 { return v * AlcoholDensity(AlcoholByMass(q)) }
		near.Relative(t, "mass", mass(v1, q1)+mass(v2, q2), mass(volume, q), 1e-11)
		swapped, _ := MixAlcohol(v2, q2, v1, q1)
		near.Relative(t, "swapped", volume, swapped, 1e-14)
		large, _ := MixAlcohol(1000*v1, q1, 1000*v2, q2)
		near.Relative(t, "scaled", 1000*volume, large, 1e-14)
	}
	near.Absolute(t, "same strength", 0, alcoholContraction(20, 0.4, 1, 0.4), 1e-15)
}

func TestAlcoholByMassIsTheInverse(t *testing.T) {
	for i := range 1001 {
		p := float64(i) / 1000
		near.Absolute(t, "mass fraction", p, AlcoholByMass(alcoholByVolume(p)), 1e-12)
	}
	assert.Equal(t, []float64{0, 1, 0, 1},
		[]float64{alcoholByVolume(0), alcoholByVolume(1), AlcoholByMass(0), AlcoholByMass(1)})
	// Rounding must not make a strength beyond 1, which would not be taken again.
	p := 1.0
	for range 100 {
		p = math.Nextafter(p, 0)
		assert.Equal(t, true, alcoholByVolume(p) <= 1, "mass fraction %v", p)
	}
}

func TestAlcoholOutOfRange(t *testing.T) {
	const range01 = "equipment: a fraction of alcohol of %v is not within 0 to 1"
	assert.PanicsWithValue(t, fmt.Sprintf(range01, -0.1), func() { AlcoholDensity(-0.1) })
	assert.PanicsWithValue(t, fmt.Sprintf(range01, 40), func() { AlcoholByMass(40) })
	assert.PanicsWithValue(t, fmt.Sprintf(range01, "NaN"), func() { alcoholByVolume(math.NaN()) })
	const volumes = "equipment: a mixture needs volumes above zero"
	assert.PanicsWithValue(t, volumes, func() { MixAlcohol(0, 1, 0, 0) })
	assert.PanicsWithValue(t, volumes, func() { MixAlcohol(-1, 1, 2, 0) })
	assert.PanicsWithValue(t, volumes, func() { MixAlcohol(math.NaN(), 1, 2, 0) })
}

// alcoholContraction is the contraction ε on mixing, negative where the volume grows:
// volume = (v1 + v2)(1 - ε).
func alcoholContraction(v1, q1, v2, q2 float64) float64 {
	volume, _ := MixAlcohol(v1, q1, v2, q2)
	return 1 - volume/(v1+v2)
}
