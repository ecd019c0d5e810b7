package equipment

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"

	"minim/uncertainty"
	"minim/uncertainty/near"
)

const oneDropper = "[[dropper]]\nname = \"x\"\n"

func drops(t testing.TB, k *Measure, u Use, n float64) outcome {
	t.Helper()
	v, err := k.Drops(u, n)
	return outcomeOf(t, u, v, err)
}

// USP <1101>: a drop of water is 0.05 ± 0.005 mL. n drops of one dropper err
// together by n times that; their scatter, 5 % of a drop, grows as √n.
func TestDropsOfWater(t *testing.T) {
	k := one(t, oneDropper)
	for _, n := range []float64{1, 4, 20} {
		u := alone()
		got := drops(t, k, u, n)
		near.Relative(t, "volume", 0.05*n, got.Value, 1e-12)
		near.Relative(t, "intended", 0.05*n, got.Intended, 1e-12)
		bias, scatter := term(got.Analytic, "bias of the x, relative to its limit"), term(got.Analytic, "scatter of the drops of the x")
		near.Relative(t, "bias", 0.005/math.Sqrt(3)*n, bias.Contribution, 1e-12)
		near.Relative(t, "scatter", 0.0025*math.Sqrt(n), scatter.Contribution, 1e-12)
		assert.Equal(t, []bool{false, true}, []bool{bias.Assumed, scatter.Assumed})
		assert.Equal(t, said{Assumed: []string{"the x has the limits of USP <1101>, edition 32, standard", "the drops of the x scatter by 5 %"}}, worded(u.Notes))
	}
	// Ph. Eur. 2.1.1 (from memory): twenty drops weigh 1.000 ± 0.050 g.
	european := drops(t, one(t, oneDropper+"standard = \"Ph. Eur.\""), alone(), 20)
	near.Relative(t, "twenty drops", 0.05/math.Sqrt(3), term(european.Analytic, "bias of the x, relative to its limit").Contribution, 1e-12)
}

// One dropper twice errs alike.
func TestDropsShareTheDropper(t *testing.T) {
	k, u := one(t, oneDropper+"repeatability = \"0 mL\""), alone()
	a, err := k.Drops(u.next("a"), 3)
	assert.Equal(t, nil, err)
	b, err := k.Drops(u.next("b"), 7)
	assert.Equal(t, nil, err)
	near.Relative(t, "correlation", 1, correlation(t, u, a, b), 1e-9)
}

// By Tate's law a drop of alcohol has 0.39 of the volume of one of water; an early dental
// handbook
// (http://www.museum.dent.uoa.gr/documents/flip-books/dentalmedicinema00gorgiala/files/basic-html/page27.html)
// counts 60 drops of water and 146 of alcohol to 60 minims, 0.41.
// The others: the same law by hand, two decimals; glycerol's drops, counted at 67,
// are fuller than that, as slow drops are.
func TestDropsOfOtherLiquids(t *testing.T) {
	k := one(t, oneDropper+"tolerance = \"0 mL\"\nrepeatability = \"0 mL\"\n")
	for liquid, ratio := range map[string]float64{"ethanol": 0.39, "acetone": 0.41, "isopropanol": 0.37, "white spirit": 0.42, "glycerol": 0.70} {
		u := of(alone(), liquid)
		got := drops(t, k, u, 20)
		near.Absolute(t, liquid, ratio, got.Value, 0.005) // 20 drops of water are 1 mL
		near.Relative(t, "intended", got.Value, got.Intended, 1e-12)
		near.Relative(t, "15 %", 0.15/math.Sqrt(3), got.StandardUncertainty/got.Value, 1e-12)
	}
	ethanol := drops(t, k, of(alone(), "ethanol"), 20)
	counted := 60.0 / 146
	near.Absolute(t, "counted", 0.41, counted, 0.002)
	s := uncertainty.SummaryOf(term(ethanol.Analytic, "size of a drop of ethanol beside one of water").Distribution)
	low, high := s.Low, s.High
	assert.Equal(t, true, low < counted && counted < high)
}

// What is wrong with the size of a drop of ethanol is wrong for every dropper.
func TestTwoDroppersOfOneLiquid(t *testing.T) {
	kit := parseKit(t, "[[dropper]]\nname = \"x\"\n[[dropper]]\nname = \"y\"\ndrop = \"0.04 mL\"\n")
	u := of(alone(), "ethanol")
	a, err := kit.Measure("x").Drops(u.next("a"), 1)
	assert.Equal(t, nil, err)
	b, err := kit.Measure("y").Drops(u.next("b"), 1)
	assert.Equal(t, nil, err)
	assert.Equal(t, true, correlation(t, u, a, b) > 0.5)
	near.Relative(t, "sizes", 0.8, u.Model.Expected(b)/u.Model.Expected(a), 1e-12)
}

// A counted drop of one's own keeps the 10 % of USP <1101>, unless its limit is
// stated; a measured scatter brings its degrees of freedom along.
func TestDropperOwnValues(t *testing.T) {
	own := drops(t, one(t, oneDropper+"drop = \"40 µL\""), alone(), 5)
	near.Relative(t, "volume", 0.2, own.Value, 1e-12)
	near.Relative(t, "bias", 5*0.004/math.Sqrt(3), term(own.Analytic, "bias of the x, relative to its limit").Contribution, 1e-12)
	u := alone()
	stated := drops(t, one(t, oneDropper+"drop = \"40 µL\"\ntolerance = \"1 µL\"\nrepeatability = \"2 µL\""), u, 4)
	near.Relative(t, "u", math.Hypot(4*0.001/math.Sqrt(3), 2*0.002), stated.StandardUncertainty, 1e-12)
	assert.Equal(t, said{}, worded(u.Notes))
	tolerance := drops(t, one(t, oneDropper+"tolerance = \"1 µL\""), alone(), 1) // still a standard drop
	near.Relative(t, "volume", 0.05, tolerance.Value, 1e-12)
	// Weighed drops (invented): s = 0.001 mL with three degrees of freedom.
	read := drops(t, one(t, oneDropper+`readings = ["0.049 mL", "0.050 mL", "0.051 mL", "0.050 mL"]`), alone(), 4)
	scatter := term(read.Analytic, "scatter of the drops of the x")
	assert.Equal(t, 3.0, scatter.DegreesOfFreedom)
	near.Relative(t, "s/√n", 0.001*math.Sqrt(2.0/3)/2, scatter.StandardUncertainty, 1e-9)
	_, isT := scatter.Distribution.(uncertainty.StudentT)
	assert.Equal(t, true, isT)
}

func TestDropsThatCannotBe(t *testing.T) {
	k := one(t, oneDropper)
	for n, want := range map[float64]string{
		0: "0 drops cannot be counted", -1: "-1 drops cannot be counted", 2.5: "2.5 drops cannot be counted",
		math.Inf(1): "+Inf drops cannot be counted",
	} {
		_, err := k.Drops(alone(), n)
		impossible(t, want, err)
	}
	_, err := k.Drops(alone(), math.NaN())
	impossible(t, "NaN drops cannot be counted", err)
}

// `minim kit` shows one drop: its bias and its scatter. No other volume is in it.
func TestDropperCapability(t *testing.T) {
	k := one(t, oneDropper)
	near.Relative(t, "u", math.Hypot(0.005/math.Sqrt(3), 0.0025), k.Uncertainty(k.Capacity), 1e-12)
	mL, ok := k.Least(0.2)
	assert.Equal(t, []any{0.05, true}, []any{mL, ok})
	_, ok = k.Least(0.05)
	assert.Equal(t, false, ok)
}

// The least volume of what is set to any volume, in thousandths of its capacity. By
// hand: U = 1.96 √(8²/3 + 3²) µL = 10.80 µL is 10 % of 108 µL. A 10 mL syringe
// has 1.96 √((0.15 mL + 1 %)²/3 + (0.025 mL)²) = 10 % of V at 1.984 mL, so 1.99.
func TestLeastVolumeOfAPiston(t *testing.T) {
	for text, want := range map[string]float64{onePiston: 0.108, tenSyringe: 1.99} {
		mL, ok := one(t, text).Least(0.1)
		assert.Equal(t, true, ok)
		near.Relative(t, text, want, mL, 0.005)
	}
}
