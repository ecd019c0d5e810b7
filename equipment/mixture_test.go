package equipment

import (
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"

	"minim/uncertainty"
	"minim/uncertainty/near"
)

// What is known of mixtures lies within the bounds that are taken for those of which nothing is:
// ethanol and water by their table, at every strength.
func TestAlcoholLiesWithinBounds(t *testing.T) {
	of := func(water, ethanol float64) func(string) (float64, bool) {
		return func(name string) (float64, bool) {
			return map[string]float64{"water": water, "ethanol": ethanol}[name], true
		}
	}
	for q := 0.01; q < 1; q += 0.01 {
		p := AlcoholByMass(q)
		parts := []Part{{"water", 1 - q}, {"ethanol", q}}
		for _, at := range []float64{15, 25} {
			low, high, known := ExpansionBounds(parts, of(AlcoholExpansion(0, at), AlcoholExpansion(1, at)))
			x := AlcoholExpansion(p, at)
			assert.True(t, known && low-3e-6 <= x && x <= high, "%v vol at %v °C: %v in %v to %v", q, at, x, low, high)
		}
		low, high, _ := amid(parts, reachOfTension, of(AlcoholTension(0), AlcoholTension(1)))
		assert.True(t, low <= AlcoholTension(p) && AlcoholTension(p) <= high, "tension, %v vol", q)
	}
}

// Surface tensions of isopropanol and of acetone in water (Vázquez 1995 and handbooks, from
// memory) by mass, whose share of the volume is near m/ρ over the sum.
func TestOtherMixturesLieWithinBounds(t *testing.T) {
	for _, test := range []struct {
		density, water, pure float64
		tensions             map[float64]float64
	}{
		{0.7855, 72.75, 21.74, map[float64]float64{0.1: 41.16, 0.2: 31.16, 0.3: 27.40, 0.4: 25.86, 0.6: 24.04, 0.8: 22.69}},
		{0.7905, 72.0, 23.0, map[float64]float64{0.05: 55.5, 0.1: 48.9, 0.2: 41.1, 0.5: 30.4, 0.75: 26.8, 0.95: 24.2}},
	} {
		for mass, tension := range test.tensions {
			share := mass / test.density / (mass/test.density + (1-mass)/0.9982)
			low, high, _ := amid([]Part{{"water", 1 - share}, {"x", share}}, reachOfTension, func(name string) (float64, bool) {
				if name == "x" {
					return test.pure, true
				}
				return test.water, true
			})
			assert.True(t, low <= tension && tension <= high, "%v: %v in %v to %v", mass, tension, low, high)
		}
	}
}

// Bounds of one, of none, of two and of three (constructed).
func TestBoundsOfMixtures(t *testing.T) {
	of := func(name string) (float64, bool) {
		x, known := map[string]float64{"a": 1, "b": 3, "c": -1}[name]
		return x, known
	}
	for _, test := range []struct {
		parts     []Part
		low, high float64
		known     bool
	}{
		{nil, 0, 0, false},
		{[]Part{{"a", 1}}, 1, 1, true},
		{[]Part{{"a", 0.9}, {"b", 0.1}}, 1, 1.4, true},
		{[]Part{{"a", 0.1}, {"b", 0.9}}, 2.6, 3, true},
		{[]Part{{"a", 0.5}, {"b", 0.5}}, 1, 3, true},
		{[]Part{{"a", 0.6}, {"b", 0.2}, {"c", 0.2}}, 0.2, 1.8, true},
	} {
		low, high, known := amid(test.parts, 2, of)
		near.Absolute(t, "low", test.low, low, 1e-12)
		near.Absolute(t, "high", test.high, high, 1e-12)
		assert.Equal(t, test.known, known)
	}
	_, _, known := amid([]Part{{"a", 0.9}, {"d", 0.1}}, 2, of)
	assert.False(t, known)
}

// A mixture of which no more is known counts as anything between its parts, one for the bench: the
// meniscus of acetone and water half and half lies anywhere from that of water to that of acetone,
// 0.091 mL less in a bore of 15.2 mm (Young-Laplace, solved apart from this code).
func TestMeniscusOfMixture(t *testing.T) {
	k := one(t, bareTen+"bore = \"15.2 mm\"\n")
	u := mixed(quiet(), Part{"water", 0.5}, Part{"acetone", 0.5})
	got := contained(t, k, u, 10)
	near.Absolute(t, "half of it", -0.091/2, got.Value-10, 0.001)
	assert.Equal(t, 10.0, got.Intended)
	where := term(got.Analytic, "where the meniscus of mixture lies between those of its parts")
	assert.Equal(t, []any{true, uncertainty.Bench, uncertainty.Rectangular{Low: 0, High: 1}}, []any{where.Assumed, where.Owner.Kind, where.Distribution})
	near.Absolute(t, "u of it", 0.091/math.Sqrt(12), math.Abs(where.Contribution), 0.0005)
	assert.Contains(t, worded(u.Notes).Assumed, "the meniscus of mixture is somewhere between those of its parts")
	u = mixed(quiet(), Part{"water", 0.5}, Part{"turpentine", 0.5})
	assert.Equal(t, 10.0, contained(t, k, u, 10).Value, "of one part nothing is known")
	assert.Equal(t, []string{"height of the meniscus of mixture in glass that is adjusted with water (surface tension not known)"}, worded(u.Notes).NotCounted)
	// A little of what no table has hardly counts in ethanol, 0.096 mL less; in water it may.
	near.Absolute(t, "a little oil", 10-0.096, contained(t, k, mixed(quiet(), Part{"ethanol", 0.95}, Part{"oil", 0.05}), 10).Value, 0.001)
	u = mixed(quiet(), Part{"water", 0.95}, Part{"oil", 0.05})
	assert.Equal(t, 10.0, contained(t, k, u, 10).Value)
	assert.Len(t, u.Notes.NotCounted, 1)
}

// The expansion of a mixture counts likewise: 10 mL at 25 °C, of something that expands by
// 0.0002 to 0.0014 /°C.
func TestExpansionOfMixture(t *testing.T) {
	k := one(t, bareTen)
	u := mixed(on(quiet(), 25, 0, 0.0002), Part{"water", 0.5}, Part{"acetone", 0.5})
	u.Day.ExpansionSpan, u.Day.MeniscusIgnored = 0.0012, true
	got := contained(t, k, u, 10)
	near.Absolute(t, "in the middle", 10*(1-0.0008*5), got.Value, 1e-9)
	near.Absolute(t, "u", 10*0.0006*5/math.Sqrt(3), got.StandardUncertainty, 1e-9)
	assert.Equal(t, "where the thermal expansion of mixture lies between those of its parts", nameOf(got.Budget[0]), fmt.Sprint(got.Budget))
}
