package equipment

import (
	"encoding/csv"
	"math"
	"os"
	"strconv"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"minim/uncertainty"
	"minim/uncertainty/near"
	"minim/uncertainty/portable"
)

// A table of what is held beyond the mark by bore, liquid and wall, from a solution of the equation
// of Young and Laplace apart from this code, with contact angles by the equation of state (water: 98
// degrees on polypropylene, 105 on polymethylpentene). Of 20 % it takes rounded angles.
func TestMenisciByWall(t *testing.T) {
	skipIfSlow(t)
	file, err := os.Open("../testdata/menisci.csv")
	require.NoError(t, err)
	defer file.Close()
	rows, err := csv.NewReader(file).ReadAll()
	require.NoError(t, err)
	spirit := func(p float64) Solvent { return Solvent{Tension: AlcoholTension(p), Density: AlcoholDensity(p)} }
	liquids := map[string]Solvent{"ethanol 20 % w/w": spirit(0.2), "ethanol 50 % w/w": spirit(0.5)}
	for _, name := range []string{"ethanol", "isopropanol", "acetone"} {
		l, _ := FindLiquid(name)
		liquids[name] = Solvent{Tension: l.SurfaceTension, Density: l.Density}
	}
	pp, _ := FindGlass("polypropylene")
	pmp, _ := FindGlass("polymethylpentene")
	checked := 0
	for _, row := range rows[1:] {
		l, known := liquids[row[2]]
		if !known {
			continue
		}
		number := func(i int) float64 {
			x, err := strconv.ParseFloat(row[i], 64)
			require.NoError(t, err)
			return x
		}
		what, bore := row[2]+", bore "+row[1], number(1)
		within := 0.002 + 0.02*math.Abs(number(4)) // the tensions of the table are up to 3 % others
		near.Absolute(t, what+", glass", number(4), MeniscusCorrection(bore, l.Tension, l.Density), within)
		near.Absolute(t, what+", polypropylene", number(5), plasticCorrection(pp, bore, l.Tension, l.Density), within)
		near.Absolute(t, what+", polymethylpentene", number(6), plasticCorrection(pmp, bore, l.Tension, l.Density), within)
		checked++
	}
	assert.Equal(t, 65, checked)
}

// The wall carries σ cos θ for each unit of its girth (compare TestMeniscusForceBalance), at every
// angle.
func TestMeniscusForceBalanceAtAnAngle(t *testing.T) {
	for _, pull := range []float64{0.02, 0.2, 0.5, 0.9, 0.99, 1} {
		psi := inclination(pull)
		sin, _ := portable.Sincos(psi)
		near.Absolute(t, "the sine", pull, sin, 1e-11)
		for _, radius := range []float64{0.05, 0.5, 1, 3, 6, 11, 20} {
			h := meniscusRise(radius, psi)
			near.Relative(t, "weight", 2*math.Pi*radius*pull, scaledMeniscus(radius, psi)+math.Pi*radius*radius*h, 1e-6)
		}
		// A narrow tube has part of a sphere for a meniscus, whichever way it is worked out.
		near.Relative(t, "narrow", sphericalMeniscus(1e-3, psi), scaledMeniscus(1e-3, psi), 1e-3)
	}
	near.Relative(t, "hemisphere", math.Pi/3, sphericalMeniscus(1, upright-1e-9), 1e-6)
	// A liquid that is repelled bends the other way; one that meets the wall square lies flat.
	assert.Equal(t, -pulledMeniscus(14, 72.74, 0.99821, 0.3), pulledMeniscus(14, 72.74, 0.99821, -0.3))
	assert.Equal(t, 0.0, pulledMeniscus(14, 72.74, 0.99821, 0))
	assert.Equal(t, meniscusVolume(14, 72.74, 0.99821), pulledMeniscus(14, 72.74, 0.99821, 1))
}

// Angles by the equation of state: water 98 and 89 degrees on solids of 24 and 30 mN/m by the same
// formula elsewhere, 20 % spirit 58 and 42; what is below the solid wets.
func TestContactAngles(t *testing.T) {
	for name, angles := range map[string][2]float64{"polymethylpentene": {98, 58}, "polypropylene": {89, 42}, "polystyrene": {84, 33}} {
		g, _ := FindGlass(name)
		for i, tension := range []float64{72.75, 38.56} {
			near.Absolute(t, name, angles[i], math.Acos(g.pull(tension))*180/math.Pi, 0.7)
		}
		assert.Equal(t, 1.0, g.pull(22.4), name)
	}
	borosilicate, _ := FindGlass("borosilicate")
	assert.Equal(t, 1.0, borosilicate.pull(72.75))
	for _, name := range GlassNames() {
		g, _ := FindGlass(name)
		assert.Equal(t, g.Plastic, g.WaterAngle > 0 && g.Tension > 0, name)
	}
}

// Ethanol in plastic: half of what the same table has for polypropylene, 0.129 mL more in a bore of
// 14.0 mm, give or take that half; polymethylpentene 0.149. A liquid that is read between two marks, and
// water, are not concerned.
func TestMeniscusInPlastic(t *testing.T) {
	for material, more := range map[string]float64{"form = \"plastic\"": 0.129, "material = \"pp\"": 0.129, "material = \"pmp\"": 0.149} {
		k := one(t, "[[cylinder]]\nname = \"x\"\ncapacity = \"10 mL\"\ndivision = \"0.2 mL\"\ntolerance = \"0 mL\"\nclinging = \"0 mL\"\nretained = \"0 mL\"\nbore = \"14 mm\"\n"+material+"\n")
		u := of(quiet(), "ethanol")
		got := contained(t, k, u, 10)
		near.Absolute(t, material, more/2, got.Value-10, 0.001)
		near.Absolute(t, material, more/2/math.Sqrt(3), got.StandardUncertainty, 0.001)
		assert.Equal(t, 10.0, got.Intended)
		c := term(got.Analytic, "how far ethanol rises in the plastic of the x")
		assert.Equal(t, []any{uncertainty.Instrument, true, uncertainty.Rectangular{Low: 0, High: 1}}, []any{c.Owner.Kind, c.Assumed, c.Distribution})
		require.Len(t, worded(u.Notes).Assumed, 1)
		assert.Contains(t, worded(u.Notes).Assumed[0], "half of that is taken, give or take that half")
		assert.Equal(t, 10.0, contained(t, k, quiet(), 10).Value)
		// With another liquid in the same piece as well (two influences, which are not one).
		other := u.next("b")
		other.Day.Solvent = of(quiet(), "isopropanol").Day.Solvent
		assert.NotPanics(t, func() { contained(t, k, other, 10) })
	}
}
