package equipment

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"minim/uncertainty"
	"minim/uncertainty/near"
)

// between weighs in a step, from a tare that was read in another.
func between(t testing.TB, b *Balance, u Use, step string, reading float64, tareIn string, tare Pan) uncertainty.Node {
	t.Helper()
	m, err := b.WeighBetween(u.next(step), reading, useNamed(tareIn), tare)
	require.NoError(t, err)
	return m
}

// EURACHEM/CITAC CG 4, A2: a linearity of ±0.15 mg is 0.09 mg a reading and counts
// for tare and gross as two independent terms, 0.13 mg in all, which is √2 times the rounded
// 0.09; the guide's net mass is 388.8 mg. That law is stated: by the other the two are
// correlated. It holds for a zeroed boat as well.
func TestTareAndGrossApart(t *testing.T) {
	b := parseKit(t, "[[balance]]\nname = \"x\"\ncapacity = \"200 g\"\nreadability = \"0.01 mg\"\nrepeatability = \"0 g\"\nlinearity = \"0.15 mg\"\nlinearity-law = \"independent\"\n").Balances[0]
	u := alone()
	apart := propagate(t, u, between(t, b, u, "gross", 0.3888, "tare", b.PanWith(Stated{60.1562, true}, true)))
	near.Absolute(t, "one reading, mg", 0.09, 1000*term(apart, "linearity, x").StandardUncertainty, 0.005)
	near.Absolute(t, "net, mg", 0.13, 1000*apart.StandardUncertainty, 0.01)
	near.Relative(t, "√2", math.Sqrt2*0.15/math.Sqrt(3), 1000*math.Sqrt(squares(apart, "linearity, x")), 1e-12)
	near.Relative(t, "g", 0.3888, apart.Value, 1e-12)
	zeroed, err := b.Weigh(u.next("zeroed"), 0.3888, u.next("zeroed").Step, onBoat)
	require.NoError(t, err)
	of := propagate(t, u, zeroed)
	near.Relative(t, "zeroed", math.Sqrt2*0.15/math.Sqrt(3), 1000*math.Sqrt(squares(of, "linearity, x")+squares(of, "linearity at zero, x")), 1e-12)
	assert.Empty(t, u.Notes.Assumed)
}

// squares adds up the squared contributions of one name.
func squares(a uncertainty.Analytic, name string) float64 {
	sum := 0.0
	for _, c := range a.Budget {
		if nameOf(c) == name {
			sum += c.Contribution * c.Contribution
		}
	}
	return sum
}

// Of portions weighed one after the other onto one boat, each gross is the next
// tare. In their sum these cancel: only the first tare and the last gross are left,
// with the roundings of two readings and their linearities.
func TestGrossThatIsTheNextTare(t *testing.T) {
	b := scale()
	b.Linearity, b.Law = Stated{0.02, true}, Independent
	u := alone()
	first := between(t, b, u, "step 1", 10, "tare", onBoat)
	second := between(t, b, u, "step 2", 5, "step 1", b.Under(onBoat, 10))
	third := between(t, b, u, "step 3", 2, "step 2", b.Under(b.Under(onBoat, 10), 5))
	sum := propagate(t, u, u.Model.Add(first, second, third))
	near.Relative(t, "sum", 17, sum.Value, 1e-12)
	near.Relative(t, "u", math.Sqrt(2*(0.01*0.01/6+0.02*0.02/3)), sum.StandardUncertainty, 1e-12)
	for _, c := range sum.Budget {
		end := c.Owner.Name == "tare" || c.Owner.Name == "step 3"
		assert.Equal(t, end || nameOf(c) == "repeatability, scale", c.Contribution != 0 || c.StandardUncertainty == 0, "%s of %s", nameOf(c), c.Owner)
	}
	// Neighbours share one reading of two, with unlike signs.
	near.Relative(t, "neighbours", -0.5, correlation(t, u, first, second), 1e-9)
	near.Absolute(t, "others", 0, correlation(t, u, first, third), 1e-12)
}

// By the law of two parts as well the sum is that of one weighing of all, of 17 g.
func TestPortionsAreOneWeighing(t *testing.T) {
	b := scale()
	b.Linearity = Stated{0.02, true}
	u := alone()
	first := between(t, b, u, "step 1", 10, "tare", onBoat)
	second := between(t, b, u, "step 2", 7, "step 1", b.Under(onBoat, 10))
	sum := propagate(t, u, u.Model.Add(first, second))
	near.Relative(t, "linearity", math.Sqrt(netVariance(b, 0, 17, 0.02)), linearOf(sum), 1e-9)
}

// A difference of two readings holds the scatter and the roundings of both: s √2, where a
// zeroed weighing holds s, and the linearity of two loads as that does. (Constructed.)
func TestTwoReadingsScatterTwice(t *testing.T) {
	b := scale()
	b.Repeatability, b.Linearity = Spread{S: 0.03, Known: true}, Stated{0.02, true}
	u := alone()
	two := propagate(t, u, between(t, b, u, "gross", 3, "tare", onBoat))
	near.Relative(t, "u", math.Sqrt(2*0.03*0.03+netVariance(b, 0, 3, 0.02)), two.StandardUncertainty, 1e-9)
	near.Relative(t, "zeroed", math.Sqrt(0.03*0.03+netVariance(b, 0, 3, 0.02)), weigh(t, b, 3).StandardUncertainty, 1e-9)
}

// With nothing stated the assumed linearity of a reading is that of its load in
// both weighings that use it; the notes stand once.
func TestTareOfAnUnknownScale(t *testing.T) {
	b := &Balance{Name: "scale", Capacity: 200, Readability: 0.01, Law: Independent}
	u := alone()
	first := between(t, b, u, "step 1", 100, "tare", onBoat)
	second := between(t, b, u, "step 2", 50, "step 1", b.Under(onBoat, 100))
	sum := propagate(t, u, u.Model.Add(first, second))
	// ±0.02 g of the empty boat and ±0.15 g at 150 g (0.1 %): the 0.1 g at 100 g cancel.
	near.Relative(t, "linearity", (0.02*0.02+0.15*0.15)/3, squares(sum, "linearity, scale"), 1e-9)
	assert.Equal(t, 2, len(u.Notes.Assumed))
}

// A certificate's standard uncertainty of a weighing holds its two readings.
func TestTareWithCertificate(t *testing.T) {
	b := parseKit(t, oneBalance+"weighing-uncertainty = \"8 mg\"").Balances[0]
	u := alone()
	near.Relative(t, "u", 0.008, propagate(t, u, between(t, b, u, "a", 1, "tare", onBoat)).StandardUncertainty, 1e-12)
	_, err := b.WeighBetween(u, 0.001, useNamed("tare"), onBoat)
	impossible(t, "0.001 g shows as 0.00 g on the x; the least it can show is 0.01 g", err)
}

// 1 to 2 mg can stay on a weighing paper (a balance maker's text on exact weight
// measurements, torbalscales.com; one source): with at most 2 mg
// left, 1 mg less arrives on average, u = 2/√12 mg, and what was meant is the reading.
func TestLeftOnTheBoat(t *testing.T) {
	b := scale()
	b.Weighing = Stated{0, true}
	u := alone()
	m, err := b.Weigh(u, 0.1, u.Step, onBoat)
	require.NoError(t, err)
	got := outcomeOf(t, u, u.Model.Subtract(m, b.LeftBehind(u, 0.002)), nil)
	near.Relative(t, "arrives", 0.099, got.Value, 1e-12)
	near.Relative(t, "intended", 0.1, got.Intended, 1e-12)
	near.Relative(t, "u", 0.002/math.Sqrt(12), got.StandardUncertainty, 1e-12)
	assert.Equal(t, uncertainty.Rectangular{Low: 0, High: 0.002}, term(got.Analytic, "left on the boat, scale").Distribution)
}
