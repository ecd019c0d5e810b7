package equipment

import (
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"minim/uncertainty"
	"minim/uncertainty/near"
)

// checked is a balance of 200 g with d = 0.001 g and a linearity of 0.01 g, read with a weight.
func checked(t *testing.T, more, values, weight string) *Balance {
	t.Helper()
	kit, err := ParseKit("k", []byte("[[balance]]\nname = \"x\"\ncapacity = \"200 g\"\nreadability = \"0.001 g\"\nlinearity = \"0.01 g\"\n"+more+
		"readings = { values = ["+values+"], check-weight = { "+weight+" } }\n"))
	require.NoError(t, err)
	return kit.Balance("x")
}

const (
	fiveOf100 = `"100.004 g", "100.003 g", "100.005 g", "100.004 g", "100.004 g"`
	certified = `value = "100 g", expanded = "0.0002 g", k = 2`
)

// weighed is a mass on a pan.
func weighed(t *testing.T, b *Balance, u Use, reading float64, tare Pan) uncertainty.Node {
	t.Helper()
	m, err := b.Weigh(u, reading, u.Step, tare)
	require.NoError(t, err)
	return m
}

// linearVariance is what all that the piece owns brings to the variance of a mass.
func linearVariance(a uncertainty.Analytic) (sum float64) {
	for _, line := range a.Budget {
		if IsLinearity(line.Code) || line.Code == sensitivity {
			sum += line.Contribution * line.Contribution
		}
	}
	return sum
}

// Limits of error by class (OIML R 111-1:2004, table 1), rectangular.
func TestWeightsOfClasses(t *testing.T) {
	for class, limit := range map[string]float64{"E2": 0.16, "F1": 0.5, "F2": 1.6, "M1": 5, "M2": 16, "M3": 50} {
		w, found := WeightOfClass(100, class)
		assert.True(t, found, class)
		near.Relative(t, class, limit/1000/math.Sqrt(3), w.Uncertainty, 1e-12)
	}
	_, found := WeightOfClass(0.1, "M3")
	assert.False(t, found)
	_, found = WeightOfClass(3, "F1")
	assert.False(t, found)
	// Each class is worse than the one before it by about √10, as the recommendation has it, within its rounding.
	for _, row := range weights() {
		limits := row.Limits()
		for i := range limits[1:] {
			if limits[i+1] > 0 {
				near.Relative(t, "to the next class", math.Sqrt(10), limits[i+1]/limits[i], 0.1)
			}
		}
	}
}

// At the load itself the error is that which was found, and nothing else of the linearity: the
// error between nothing and 100 g, which is triangular within 0.02 g, and readings with a normal
// reference have nearly 1/u² = 1/u0² + 1/um² (JCGM 106, A.14). Zeroed again the load has the same error.
func TestCheckWeightAtItsLoad(t *testing.T) {
	b := checked(t, "", fiveOf100, certified)
	c := &b.Checks[0]
	require.Equal(t, Combined, c.Standing)
	near.Relative(t, "before", 4*0.01*0.01/6, c.variance, 1e-12)
	near.Relative(t, "s", math.Sqrt(0.5e-6), c.S, 1e-9)
	e := uncertainty.SummaryOf(c.error)
	near.Relative(t, "error", -0.004, e.Mean, 0.01)
	u, pan := quiet(), b.bare(c).tare
	first, again := weighed(t, b, u.next("a"), 100, pan), weighed(t, b, u.next("b"), 100, pan)
	a := propagate(t, u, first)
	near.Relative(t, "mass", 100+e.Mean, a.Value, 1e-12)
	near.Relative(t, "variance", e.StandardUncertainty*e.StandardUncertainty, linearVariance(a), 1e-9)
	near.Absolute(t, "one error", 0, linearVariance(propagate(t, u, u.Model.Subtract(first, again))), 1e-20)
	assert.Contains(t, strings.Join(worded(u.Notes).Assumed, "\n"), "what the x errs by at the check weight of 100 g counts at other loads as far as its curve and its sensitivity carry it")
}

// Elsewhere the error is what the correlation carries: of the four parts with the variance L²/6
// that 100 g and nothing have, another load has two in a boat, and one where only the zero of the
// curve is common (constructed: e' = e + G (found - e), G the covariance over the variance, so that
// the variance is V (1 - G C/V) + G² u²).
func TestCheckWeightElsewhere(t *testing.T) {
	b := checked(t, "", fiveOf100, certified)
	e := uncertainty.SummaryOf(b.Checks[0].error)
	for load, gain := range map[float64]float64{100: 0.5, 10: 0.25} {
		u := quiet()
		a := propagate(t, u, weighed(t, b, u, load, onBoat))
		near.Relative(t, "mass", load+gain*e.Mean, a.Value, 1e-9)
		v := 4 * 0.01 * 0.01 / 6
		near.Relative(t, "variance", v*(1-gain*gain)+gain*gain*e.StandardUncertainty*e.StandardUncertainty, linearVariance(a), 1e-9)
	}
}

// A heavy weight tells the sensitivity, where the kit has a limit of it.
func TestCheckWeightTellsTheSensitivity(t *testing.T) {
	b := checked(t, "span = \"0.1 % of reading\"\n", `"200.100 g", "200.101 g", "200.099 g", "200.100 g", "200.100 g"`, `nominal = "200 g", class = "F1"`)
	require.Equal(t, Combined, b.Checks[0].Standing)
	near.Relative(t, "class F1", 0.001/math.Sqrt(3), b.Checks[0].Weight.Uncertainty, 1e-12)
	u := quiet()
	a := propagate(t, u, weighed(t, b, u, 100, onBoat))
	near.Absolute(t, "half of it at half the load", 100-0.05, a.Value, 0.002)
	assert.Less(t, math.Sqrt(linearVariance(a)), 0.02)
	b.Checks = nil
	u = quiet()
	assert.Greater(t, math.Sqrt(linearVariance(propagate(t, u, weighed(t, b, u, 100, onBoat)))), 0.05)
}

// A mean too far off is a finding, and the t interval stands at that load; one that is hardly likely
// is a hint; three readings are shown, and what leaves no room for an error of the piece is said.
func TestCheckWeightThatIsOff(t *testing.T) {
	values := func(mean string) string { return strings.ReplaceAll(fiveOf100, "100.00", mean) }
	b := checked(t, "", values("100.05"), certified)
	c := &b.Checks[0]
	assert.Equal(t, Alone, c.Standing)
	assert.Less(t, c.Chance, 0.01)
	u := quiet()
	a := propagate(t, u, weighed(t, b, u, 100, b.bare(c).tare))
	near.Relative(t, "mass", 100-0.054, a.Value, 1e-9)
	near.Relative(t, "s/√n and the weight", c.S*c.S/5+1e-8, linearVariance(a), 1e-6)
	assert.Contains(t, strings.Join(worded(u.Notes).Warnings, "\n"), "the 5 readings of the x with a check weight of 100 g have the mean 100.054 g, 0.054 g high: of balances as good as the kit says fewer than 0.01 in 100 would err")
	odd := checked(t, "", values("100.01"), certified)
	odd.Checks[0].Mean, odd.Checks[0].Weight.Mass = 100.017, 100
	odd.Judge()
	assert.Equal(t, Combined, odd.Checks[0].Standing)
	near.Absolute(t, "chance", 0.0225, odd.Checks[0].Chance, 0.002) // (1 - 0.017/0.02)²
	for more, want := range map[string]Standing{"count = 2\n": OfOthers, "linearity-law = \"independent\"\n": Unused, "weighing-uncertainty = \"0.01 g\"\n": Unused} {
		b := checked(t, more, fiveOf100, certified)
		assert.Equal(t, want, b.Checks[0].Standing, more)
		u := oneUse()
		a := propagate(t, u, weighed(t, b, u, 100, onBoat))
		near.Relative(t, "nothing changes", 100, a.Value, 1e-12)
		assert.Contains(t, strings.Join(worded(u.Notes).NotCounted, "\n"), "the mean 100.004 g of the readings of the x with a check weight of 100 g", more)
	}
	few := checked(t, "", `"100.004 g", "100.003 g", "100.005 g"`, certified)
	assert.Equal(t, Few, few.Checks[0].Standing)
	u = oneUse()
	near.Relative(t, "nothing changes", 100, propagate(t, u, weighed(t, few, u, 100, onBoat)).Value, 1e-12)
	assert.Contains(t, strings.Join(worded(u.Notes).NotCounted, "\n"), "the mean 100.004 g of the 3 readings of the x with a check weight of 100 g, 0.004 g high: it counts from four readings on")
}

// Sets at several loads that scatter alike have their degrees of freedom together.
func TestCheckWeightsTogether(t *testing.T) {
	kit, err := ParseKit("k", []byte("[[balance]]\nname = \"x\"\ncapacity = \"200 g\"\nreadability = \"0.001 g\"\nlinearity = \"0.01 g\"\nreadings = [\n"+
		"{ values = [\"100.004 g\", \"100.002 g\", \"100.003 g\"], check-weight = { "+certified+" } },\n"+
		"{ values = [\"50.003 g\", \"50.005 g\"], check-weight = { nominal = \"50 g\", class = \"F1\" } } ]\n"))
	require.NoError(t, err)
	b := kit.Balance("x")
	for i := range b.Checks {
		c := &b.Checks[i]
		assert.Equal(t, Combined, c.Standing)
		near.Relative(t, "pooled", math.Sqrt((2e-6+2e-6)/3), c.scatter.S, 1e-6)
		assert.Equal(t, 3.0, c.scatter.DegreesOfFreedom)
	}
	u := quiet()
	near.Absolute(t, "by the nearest", 50-0.004*0.97, propagate(t, u, weighed(t, b, u, 50, b.bare(&b.Checks[1]).tare)).Value, 2e-4)
	assert.Contains(t, strings.Join(worded(u.Notes).Assumed, "\n"), "the readings of the x scatter alike at all loads that were read")
}

// A slip of ten in one reading of a check weight is a mistake, as the mean of readings is that is half of
// the weight; a digit or two are not.
func TestSlipOfACheckWeight(t *testing.T) {
	read := func(values, weight string) error {
		_, err := ParseKit("k", []byte("[[balance]]\nname = \"x\"\ncapacity = \"200 g\"\nreadability = \"0.001 g\"\nreadings = { values = ["+values+"], check-weight = { "+weight+" } }\n"))
		return err
	}
	assert.ErrorContains(t, read(`"100.004 g", "100.003 g", "100.005 g", "10.004 g"`, certified), `"10.004 g" is not about the 100 g of the check weight`)
	assert.ErrorContains(t, read(`"100.004 g", "100.003 g", "100.005 g", "10.004 g"`, `value = "20 g", expanded = "0.0002 g", k = 2`), "state the weight that they were taken with")
	assert.NoError(t, read(fiveOf100, certified))
	assert.NoError(t, read(`"0.000 g", "0.002 g", "0.001 g"`, `value = "0.001 g", expanded = "0.0002 g", k = 2`))
}
