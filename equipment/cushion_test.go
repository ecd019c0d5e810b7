package equipment

import (
	"math"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"minim/uncertainty/near"
)

const airPiston = "[[pipette]]\nname = \"x\"\nkind = \"piston\"\ncapacity = \"1 mL\"\nbetween-marks = 0.5\ntolerance = \"0 mL\"\nrepeatability = \"0 mL\"\n"

// mixed is a use of a mixture of liquids by shares of the volume.
func mixed(u Use, parts ...Part) Use {
	u.Day.Solvent = Solvent{Name: "mixture", Parts: parts}
	return u
}

// Ethanol and isopropanol: 5 % either way (a judgement), the half-width of a rectangle; half of
// the swelling of air that becomes saturated, p/(P - p), is no more than that: 6.1 and 4.2 % with 5.85
// and 4.12 kPa at 20 °C.
func TestPistonWithAlcohols(t *testing.T) {
	for _, name := range []string{"ethanol", "absolute ethanol", "isopropanol", "ethanol 96 %"} {
		u := of(alone(), name)
		got := delivered(t, one(t, airPiston), u, 0.8)
		near.Relative(t, name, 0.8*0.05/math.Sqrt(3), got.StandardUncertainty, 1e-12)
		assert.Equal(t, []float64{0.8, 0.8}, []float64{got.Value, got.Intended}, name)
		require.Len(t, worded(u.Notes).Assumed, 1, name)
		assert.Contains(t, worded(u.Notes).Assumed[0], "delivers "+name+" within 5 % of what it is set to, more or less", name)
		near.Relative(t, "all of it is assumed", 1, got.AssumedShare(), 1e-12)
	}
	for _, p := range []float64{5.85, 4.12} {
		assert.Less(t, p/(101.325-p)/2, mostOfCushion)
	}
}

// Acetone, 24.7 kPa, swells the air by 32 %; it is refused, and what to use instead is said.
func TestPistonWithAcetone(t *testing.T) {
	acetone, _ := FindLiquid("acetone")
	near.Absolute(t, "p/(P - p)", 24.7/(101.325-24.7), acetone.Cushion, 0.003)
	_, err := one(t, airPiston).Deliver(of(alone(), "propanone"), 0.8)
	impossible(t, "the x is a piston over a cushion of air, into which propanone gives off so much vapour that it drips and what it delivers is not known; use a glass pipette, a syringe, or a piston that displaces the liquid directly", err)
}

// What displaces the liquid directly, what holds no piston, and water, are off by nothing more.
func TestPistonWithoutCushion(t *testing.T) {
	for _, form := range []string{"direct reusable", "direct single-use", "dispenser"} {
		for _, name := range []string{"ethanol", "acetone", "white spirit"} {
			u := of(alone(), name)
			assert.Equal(t, 0.0, delivered(t, one(t, airPiston+"form = \""+form+"\"\n"), u, 0.8).StandardUncertainty, form)
			assert.Equal(t, said{}, worded(u.Notes), form)
		}
	}
	assert.Equal(t, 0.0, delivered(t, one(t, airPiston+"form = \"air\"\n"), alone(), 0.8).StandardUncertainty)
	assert.False(t, one(t, tenSyringe).Cushion)
	assert.True(t, one(t, onePiston).Cushion)
}

// Own readings of the liquid end it, of another liquid they do not.
func TestPistonReadOfTheLiquid(t *testing.T) {
	const readings = "[[pipette]]\nname = \"x\"\nkind = \"piston\"\ncapacity = \"1 mL\"\ntolerance = \"0 mL\"\n"
	rests := func(more, liquid, solution string) bool {
		u := of(alone(), liquid)
		u.Solution = solution
		delivered(t, one(t, readings+"readings = { "+more+"values = [\"1.001 mL\", \"1.000 mL\", \"0.999 mL\", \"1.000 mL\"] }\n"), u, 1)
		return slices.ContainsFunc(worded(u.Notes).Assumed, func(s string) bool { return strings.Contains(s, "within 5 %") })
	}
	assert.True(t, rests("", "ethanol", ""))
	assert.False(t, rests("liquid = \"Absolute ethanol\", ", "ethanol", ""))
	assert.False(t, rests("liquid = \"ethanol\", ", "ethanol", "dye in ethanol"))
	assert.False(t, rests("liquid = \"dye in ethanol\", ", "ethanol", "dye in ethanol"))
	assert.True(t, rests("liquid = \"dye in ethanol\", ", "ethanol", ""))
	assert.True(t, rests("liquid = \"isopropanol\", ", "ethanol", ""))
	assert.False(t, rests("liquid = \"acetone\", ", "acetone", ""), "not refused")
}

// Of other liquids nothing is known, which is said and not counted.
func TestPistonWithOtherLiquids(t *testing.T) {
	for _, name := range []string{"white spirit", "glycerol", "tea"} {
		u := of(alone(), name)
		assert.Equal(t, 0.0, delivered(t, one(t, airPiston), u, 0.8).StandardUncertainty, name)
		assert.Equal(t, said{NotCounted: []string{"how far off the x is with " + name + ", of which there is no figure (it is a piston over a cushion of air, and its limits hold for water alone)"}}, worded(u.Notes))
	}
}

// A mixture in proportion to twice the share of each part, which bounds its vapour; no more than
// the part that is worst, and refused where it comes to more than 5 %.
func TestPistonWithMixtures(t *testing.T) {
	k := one(t, airPiston)
	for _, test := range []struct {
		name         string
		share, limit float64
	}{
		{"ethanol", 0.1, 0.01}, {"ethanol", 0.4, 0.04}, {"ethanol", 0.5, 0.05}, {"ethanol", 0.9, 0.05}, {"acetone", 0.05, 0.032}, {"isopropanol", 0, 0},
	} {
		u := mixed(alone(), Part{"water", 1 - test.share}, Part{test.name, test.share})
		near.Absolute(t, test.name, test.limit/math.Sqrt(3), delivered(t, k, u, 1).StandardUncertainty, 1e-12)
		assert.Empty(t, u.Notes.NotCounted)
	}
	near.Absolute(t, "two that are volatile", 0.05/math.Sqrt(3), delivered(t, k, mixed(alone(), Part{"ethanol", 0.5}, Part{"isopropanol", 0.5}), 1).StandardUncertainty, 1e-12)
	_, err := k.Deliver(mixed(alone(), Part{"water", 0.9}, Part{"acetone", 0.1}), 1)
	_, no := WhyNot(err)
	assert.True(t, no)
	u := mixed(alone(), Part{"ethanol", 0.5}, Part{"tea", 0.5})
	near.Absolute(t, "with one that is not known", 0.05/math.Sqrt(3), delivered(t, k, u, 1).StandardUncertainty, 1e-12)
	assert.Len(t, u.Notes.NotCounted, 1)
}

// One piece errs alike in each use at one mark; at two marks by half, as with water.
func TestPistonIsOffAlike(t *testing.T) {
	k := one(t, airPiston)
	u := of(alone(), "ethanol")
	near.Relative(t, "one mark", 1, correlation(t, u, node(t, k, u, "a", 1), node(t, k, u, "b", 1)), 1e-9)
	u = of(alone(), "ethanol")
	u.Marks = 2
	a, b := node(t, k, u, "a", 1), node(t, k, u, "b", 0.5)
	near.Relative(t, "two marks", 0.5, correlation(t, u, a, b), 1e-9)
	near.Relative(t, "u", 0.05/math.Sqrt(3), propagate(t, u, a).StandardUncertainty, 1e-12)
	again := node(t, k, u, "c", 1)
	near.Relative(t, "the first again", 1, correlation(t, u, a, again), 1e-9)
}
