package equipment

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"minim/uncertainty"
	"minim/uncertainty/near"
)

// scale is an invented 200 g scale, d = 0.01 g, with nothing stated but s = 0
// and no error of linearity: only its roundings count.
func scale() *Balance {
	return &Balance{
		Name: "scale", Capacity: 200, Readability: 0.01, Count: 1,
		Repeatability: Spread{Known: true}, Linearity: Stated{Known: true},
	}
}

func weigh(t testing.TB, b *Balance, reading float64) uncertainty.Analytic {
	t.Helper()
	u := oneUse()
	m, err := b.Weigh(u, reading, u.Step, onBoat)
	require.NoError(t, err)
	return propagate(t, u, m)
}

// GUM F.2.2.1: a resolution of δx has the standard uncertainty 0.29 δx; here
// one such at zero and one at the load.
func TestRounding(t *testing.T) {
	b := scale()
	b.Readability = 1
	a := weigh(t, b, 10)
	near.Absolute(t, "resolution 1 g", 0.29, term(a, "rounding at load, scale").StandardUncertainty, 0.005)
	same(t, a, "rounding at load, scale", 1/math.Sqrt(12))
	same(t, a, "rounding at zero, scale", 1/math.Sqrt(12))
	assert.Equal(t, uncertainty.PlusMinus(0.5), term(a, "rounding at zero, scale").Distribution)
	near.Relative(t, "both", 1/math.Sqrt(6), a.StandardUncertainty, 1e-12)
	assert.Equal(t, 10.0, a.Value)
}

// USP <41>: a standard deviation under 0.41 d counts as 0.41 d. The two
// roundings alone come to d/√6 = 0.408 d, whatever smaller s is stated.
func TestRepeatabilityFloor(t *testing.T) {
	for _, s := range []float64{0, 0.1, 0.4} {
		b := scale()
		b.Repeatability = Spread{S: s * b.Readability, Known: true}
		near.Absolute(t, "in d", 0.41, weigh(t, b, 10).StandardUncertainty/b.Readability, 0.002)
	}
}

// Above the floor a stated s is what comes out: it holds the roundings already.
func TestRepeatabilityStated(t *testing.T) {
	for _, s := range []float64{0.41, 1, 3} {
		b := scale()
		b.Repeatability = Spread{S: s * b.Readability, Known: true}
		a := weigh(t, b, 10)
		near.Relative(t, "u in d", s, a.StandardUncertainty/b.Readability, 1e-12)
		same(t, a, "repeatability, scale", b.Readability*math.Sqrt(s*s-1.0/6))
		assert.Equal(t, false, term(a, "repeatability, scale").Assumed)
	}
}

// Student t from two readings on, and only where something is left of s; the
// degrees of freedom are counted at any number of readings.
func TestRepeatabilityFromReadings(t *testing.T) {
	pure := 0.01 * math.Sqrt(4-1.0/6)
	for _, test := range []struct {
		s, nu float64
		want  uncertainty.Distribution
	}{
		{0.02, 1, uncertainty.StudentT{Sigma: pure, Nu: 1}},
		{0.02, 2, uncertainty.StudentT{Sigma: pure, Nu: 2}},
		{0.02, 3, uncertainty.StudentT{Sigma: pure, Nu: 3}},
		{0.02, 9, uncertainty.StudentT{Sigma: pure, Nu: 9}},
		{0.004, 9, uncertainty.Normal{}},
		{0.02, 0, uncertainty.Normal{Sigma: pure}}, // stated, not computed
	} {
		b := scale()
		b.Repeatability = Spread{S: test.s, DegreesOfFreedom: test.nu, Known: true, Mean: 10}
		c := term(weigh(t, b, 10), "repeatability, scale")
		assert.Equal(t, test.want, c.Distribution)
		assert.Equal(t, test.nu, c.DegreesOfFreedom)
	}
}

// A scale of which only d is known: s = d (common practice for inexpensive
// scales, no source) and ±max(2 d, 0.1 % of the load), both assumed and said.
func TestWeighingAssumed(t *testing.T) {
	b := &Balance{Name: "scale", Capacity: 200, Readability: 0.01}
	for load, limit := range map[float64]float64{0.01: 0.02, 1: 0.02, 20: 0.02, 50: 0.05, 200: 0.2} {
		u := oneUse()
		m, err := b.Weigh(u, load, u.Step, onBoat)
		require.NoError(t, err)
		a := propagate(t, u, m)
		same(t, a, "repeatability, scale", 0.01*math.Sqrt(5.0/6))
		near.Relative(t, "linearity", math.Sqrt(netVariance(b, 0, load, limit)), linearOf(a), 1e-9)
		for _, c := range a.Budget {
			assumed := nameOf(c) == "repeatability, scale" || IsLinearity(c.Code)
			assert.Equal(t, assumed, c.Assumed, nameOf(c))
		}
		assert.Equal(t, said{
			Assumed: []string{
				"the scale repeats within s = 0.01 g (one digit)",
				"the scale is linear within the larger of two digits and 0.1 % of the load",
				"the linearity of the scale errs by a curve over the range and by a part local to each load, each within the limit and equal in variance, together with the variance of a rectangle within it (so that about 8 errors in 100 lie beyond it), one and the same at equal loads (judgement)", "a vessel of unstated mass counts as no load of a balance",
			},
			NotCounted: []string{"error of the sensitivity of the scale (span not stated)"},
		}, worded(u.Notes))
		rest := 0.01 * 0.01 / 6 // the roundings
		near.Relative(t, "assumed share", 1-rest/math.Pow(a.StandardUncertainty, 2), a.AssumedShare(), 1e-9)
	}
}

// Published figures for inexpensive scales, in digits: the standard deviations
// of repeated weighings 0.84, 0.45 and 0 (teaching laboratory,
// https://es.scribd.com/document/633727040/informe) and 0.83 (powder scale, separated from two
// others that weighed the same charges,
// http://rstudio-pubs-static.s3.amazonaws.com/6962_dcce546090514a5eb5cf59da77e9f9cc.html)
// lie at or under s = d. Errors of a 200 g pocket scale against a 0.1 mg balance
// (https://www.electronics-lab.com/forums/threads/my-4-precision-weights.263339/): within 2
// digits up to 50 g, but +7.3 at 106 g, which the 0.1 % of the load covers (±10.6).
func TestAssumptionsAgainstMeasuredScales(t *testing.T) {
	b := &Balance{Name: "scale", Capacity: 200, Readability: 0.01}
	errors := map[float64]float64{1: -0.7, 5: -0.9, 10: -0.6, 20: -0.1, 50: 1.9, 106: 7.3} // digits by g
	for load, digits := range errors {
		assert.Equal(t, true, math.Abs(digits) <= b.limitAt(load)/b.Readability, "%v g", load)
	}
	a := weigh(t, b, 50)
	rounding := term(a, "rounding at load, scale").StandardUncertainty
	s := math.Hypot(term(a, "repeatability, scale").StandardUncertainty, math.Sqrt2*rounding)
	for _, digits := range []float64{0.84, 0.45, 0, 0.83} {
		assert.Equal(t, true, digits <= s/b.Readability, "%v digits", digits)
	}
}

// A standard uncertainty of a weighing, as from a certificate (CG 4, A1: 0.05
// mg), takes the place of everything that happens anew.
func TestWeighingUncertaintyReplaces(t *testing.T) {
	b := &Balance{Name: "balance", Capacity: 200, Readability: 1e-5, Weighing: Stated{0.05e-3, true}, Span: 1e-6}
	u := oneUse()
	m, err := b.Weigh(u, 0.10028, u.Step, onBoat)
	require.NoError(t, err)
	a := propagate(t, u, m)
	assert.Equal(t, set("weighing, balance", "sensitivity of the balance"), names(a))
	assert.Equal(t, uncertainty.Normal{Sigma: 0.05e-3}, term(a, "weighing, balance").Distribution)
	assert.Equal(t, said{}, worded(u.Notes))
	near.Relative(t, "A1, mg", 0.05, 1e3*a.StandardUncertainty, 1e-5)
}

// The error of sensitivity is relative: u = R span/√3.
func TestSpan(t *testing.T) {
	b := scale()
	b.Span = 0.001
	for _, reading := range []float64{1, 100} {
		c := term(weigh(t, b, reading), "sensitivity of the scale")
		near.Relative(t, "span", reading*0.001/math.Sqrt(3), c.Contribution, 1e-12)
		assert.Equal(t, "", c.Unit)
	}
}

// Two weighings on one piece share the sensitivity and nothing else: it leaves
// a ratio. On two pieces it does not.
func TestSpanIsThePieces(t *testing.T) {
	b := scale()
	b.Weighing, b.Span, b.Count = Stated{0, true}, 0.01, 2
	u := oneUse()
	weighOn := func(step string, piece int) uncertainty.Node {
		v := u.next(step)
		v.Piece = piece
		m, err := b.Weigh(v, 10, v.Step, onBoat)
		require.NoError(t, err)
		return m
	}
	first, again, other := weighOn("a", 0), weighOn("b", 1), weighOn("c", 2)
	near.Relative(t, "one piece", 1, correlation(t, u, first, again), 1e-12)
	near.Absolute(t, "two pieces", 0, correlation(t, u, first, other), 1e-12)
	ratio := propagate(t, u, u.Model.Divide(first, again))
	near.Absolute(t, "ratio", 0, ratio.StandardUncertainty, 1e-15)
	ratio = propagate(t, u, u.Model.Divide(first, other))
	near.Relative(t, "ratio of two", 0.01*math.Sqrt2/math.Sqrt(3), ratio.StandardUncertainty, 1e-12)
}

// Two readings from one zero have one of their two roundings each in common:
// correlation 1/2, and the difference rests on the two at the load.
func TestOneZero(t *testing.T) {
	b := scale()
	u := oneUse()
	part, err := b.Weigh(u.next("step 1"), 10, u.next("step 1").Step, inVessel)
	require.NoError(t, err)
	whole, err := b.Weigh(u.next("step 2"), 50, useNamed("step 1"), inVessel)
	require.NoError(t, err)
	added := propagate(t, u, u.Model.Subtract(whole, part))
	near.Relative(t, "difference", 0.01*math.Sqrt(2.0/12), added.StandardUncertainty, 1e-12)
	near.Relative(t, "correlation", 0.5, correlation(t, u, part, whole), 1e-9)
	fresh, err := b.Weigh(u.next("step 3"), 50, u.next("step 3").Step, inVessel)
	require.NoError(t, err)
	near.Absolute(t, "another zero", 0, correlation(t, u, part, fresh), 1e-12)
}

// With everything stated, the zero, and the linearity of a balance, are all that two readings
// from it share.
func TestOneZeroSharesNothingElse(t *testing.T) {
	b := scale()
	b.Repeatability, b.Linearity = Spread{S: 0.02, Known: true}, Stated{0.03, true}
	u := oneUse()
	part, err := b.Weigh(u.next("step 1"), 10, u.next("step 1").Step, inVessel)
	require.NoError(t, err)
	whole, err := b.Weigh(u.next("step 2"), 50, useNamed("step 1"), inVessel)
	require.NoError(t, err)
	for _, c := range propagate(t, u, u.Model.Add(whole, part)).Budget {
		shared := nameOf(c) == "rounding at zero, scale" || c.Code == linearCurve || c.Code == linearInVessel && c.At == 0
		assert.True(t, c.Uses == 1 || shared, nameOf(c))
		assert.True(t, c.Uses > 1 || c.Code != zeroRounded, nameOf(c))
	}
}

func TestShows(t *testing.T) {
	for _, test := range []struct {
		capacity, d, reading float64
		want                 string
	}{
		// Decimal fractions that are no whole multiples in binary.
		{200, 0.1, 0.3, ""},
		{200, 0.1, 0.7, ""},
		{200, 0.01, 0.07, ""},
		{200, 0.01, 1.15, ""},
		{200, 0.01, 199.99, ""},
		{200, 0.01, 200, ""},
		{200, 1e-4, 0.1003, ""},
		{200, 1e-4, 123.4567, ""},
		{200, 1e-5, 0.10028, ""}, // CG 4, A1
		{0.3, 0.1, 3 * 0.1, ""},  // 0.30000000000000004
		{5000, 0.5, 2.5, ""},
		{2000, 5, 15, ""},
		{200, 0.01, 0.015, "0.015 g shows as 0.02 g on the scale"},
		{200, 0.01, 1.001, "1.001 g shows as 1.00 g on the scale"},
		{200, 1e-4, 0.10028, "0.10028 g shows as 0.1003 g on the scale"},
		{5000, 0.5, 2.7, "2.7 g shows as 2.5 g on the scale"},
		{2000, 5, 12, "12 g shows as 10 g on the scale"},
		{200, 0.01, 0.004, "0.004 g shows as 0.00 g on the scale; the least it can show is 0.01 g"},
		{200, 0.1, 0, "0 g shows as 0.0 g on the scale; the least it can show is 0.1 g"},
		{200, 0.01, 1e-12, "0.000000000001 g shows as 0.00 g on the scale; the least it can show is 0.01 g"},
		{200, 0.01, 200.01, "200.01 g is more than the scale carries: 200 g"},
		{200, 0.01, 1000, "1000 g is more than the scale carries: 200 g"},
	} {
		b := &Balance{Name: "scale", Capacity: test.capacity, Readability: test.d}
		err := b.Shows(test.reading)
		if test.want == "" {
			assert.Equal(t, nil, err, "%v", test.reading)
			continue
		}
		impossible(t, test.want, err)
		_, err = b.Weigh(oneUse(), test.reading, oneUse().Step, onBoat)
		impossible(t, test.want, err)
	}
}

// Every multiple of d up to the capacity shows, and nothing halfway does.
func TestShowsEveryMultiple(t *testing.T) {
	for _, d := range []float64{1, 0.5, 0.1, 0.05, 0.02, 0.01, 0.001, 1e-4} {
		b := &Balance{Name: "scale", Capacity: 5000 * d, Readability: d}
		for n := 1; n <= 5000; n++ {
			on, between := b.Shows(float64(n)*d) == nil, b.Shows((float64(n)-0.5)*d) == nil
			if !on || between {
				t.Fatalf("d = %v g, n = %d: on a digit %v, between %v", d, n, on, between)
			}
		}
	}
}

func TestDisplay(t *testing.T) {
	for _, test := range []struct {
		d, reading float64
		want       string
	}{
		{1, 12, "12 g"}, {0.1, 0.7, "0.7 g"}, {0.01, 1, "1.00 g"}, {0.001, 0.07, "0.070 g"},
		{1e-4, 0.1003, "0.1003 g"}, {1e-5, 0.10028, "0.10028 g"}, {0.5, 2, "2.0 g"}, {0.05, 0.1, "0.10 g"},
		{0.02, 0.1, "0.10 g"}, {5, 15, "15 g"}, {0.1, 0.1 + 0.7, "0.8 g"}, {1e-7, 1, "1.0000000 g"},
	} {
		b := &Balance{Readability: test.d}
		assert.Equal(t, test.want, b.Display(test.reading))
	}
}
