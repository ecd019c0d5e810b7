package uncertainty

import (
	"errors"
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"minim/uncertainty/near"
	"minim/uncertainty/portable"
)

var infinitely = math.Inf(1)

// TestGuarded: JCGM 106, 8.2, 8.3.2 and 8.3.3: A = T ∓ w.
func TestGuarded(t *testing.T) {
	for _, c := range []struct {
		tolerance Limits
		w         float64
		want      Limits
	}{
		{Limits{1, 2}, 0, Limits{1, 2}},
		{Limits{1, 2}, 0.25, Limits{1.25, 1.75}},
		{Limits{1, 2}, 0.5, Limits{1.5, 1.5}},
		{Limits{1, 2}, -0.25, Limits{0.75, 2.25}},
		{Limits{noLower, 2}, 5, Limits{noLower, -3}},
		{Limits{1, noUpper}, 5, Limits{6, noUpper}},
		{Limits{1, noUpper}, -5, Limits{-4, noUpper}},
		{Limits{noLower, noUpper}, 5, Limits{noLower, noUpper}},
	} {
		got, err := c.tolerance.guarded(c.w)
		require.NoError(t, err)
		assert.Equal(t, c.want, got, "%v guarded by %v", c.tolerance, c.w)
	}
}

// TestNothingAcceptable: what comes with the error accepts nothing.
func TestNothingAcceptable(t *testing.T) {
	refused := func(l Limits, err error) {
		t.Helper()
		assert.Equal(t, true, errors.Is(err, errNothingAcceptable))
		for _, y := range []float64{noLower, -1, 0, 0.5, 1, noUpper} {
			assert.Equal(t, false, l.Permits(y), "%v in %v", y, l)
		}
		assert.Equal(t, 0.0, chanceOf(Normal{Mu: 0.5, Sigma: 1}, l))
	}
	refused(Limits{0, 1}.guarded(math.Nextafter(0.5, 1)))
	refused(Limits{0, 1}.guarded(1e9))
	refused(Limits{0, 0}.AcceptanceLimits(0.95, 0.1, infinitely))
	refused(Limits{0, 1}.AcceptanceLimits(0.95, 0.5, infinitely))
	// JCGM 106, A.3: 0.9544997361 at C_m = 1. Just above it nothing is left.
	refused(Limits{0, 1}.AcceptanceLimits(0.9544997362, 0.25, infinitely))
	// With nine degrees of freedom the same tolerance is too narrow.
	refused(Limits{0, 1}.AcceptanceLimits(0.95, 0.25, 9))
}

// TestLeastAcceptance: just below the largest conformance probability, the
// acceptance limits close round the middle.
func TestLeastAcceptance(t *testing.T) {
	a, err := Limits{0, 1}.AcceptanceLimits(0.9544997361, 0.25, infinitely)
	require.NoError(t, err)
	near.Absolute(t, "lower", 0.5, a.Lower, 1e-5)
	near.Absolute(t, "upper", 0.5, a.Upper, 1e-5)
	assert.Equal(t, true, a.Lower <= a.Upper)
}

// TestAcceptanceLimits holds the conformance probability at the acceptance
// limits, and a little within and without, against p.
func TestAcceptanceLimits(t *testing.T) {
	for _, l := range []Limits{{-1, 1}, {490, 510}, {0.0368, 0.0432}, {noLower, 2}, {-3, noUpper}} {
		for _, nu := range []float64{1, 4, 9, 30, infinitely} {
			for _, p := range []float64{0.001, 0.2, 0.5, 0.9, 0.95, 0.999} {
				u := 0.01
				if portable.IsFinite(l.Upper - l.Lower) {
					u *= l.Upper - l.Lower
				}
				meetsAtTheEnds(t, l, p, u, nu)
			}
		}
	}
}

func meetsAtTheEnds(t *testing.T, l Limits, p, u, nu float64) {
	t.Helper()
	a, err := l.AcceptanceLimits(p, u, nu)
	if nu == 1 && p == 0.999 && portable.IsFinite(l.Upper-l.Lower) {
		assert.Equal(t, errNothingAcceptable, err)
		return
	}
	require.NoError(t, err)
	what := fmt.Sprintf("%v, p = %v, u = %v, ν = %v", l, p, u, nu)
	for _, end := range []struct{ tolerance, acceptance, outwards float64 }{{l.Lower, a.Lower, -1}, {l.Upper, a.Upper, 1}} {
		assert.Equal(t, portable.IsFinite(end.tolerance), portable.IsFinite(end.acceptance), what)
		if !portable.IsFinite(end.tolerance) {
			continue
		}
		step := end.outwards * 1e-4 * u
		near.Relative(t, what, p, l.conformanceProbability(end.acceptance, u, nu), 1e-8)
		assert.Equal(t, true, l.conformanceProbability(end.acceptance-step, u, nu) > p, what)
		assert.Equal(t, true, l.conformanceProbability(end.acceptance+step, u, nu) < p, what)
	}
}

// TestAcceptanceLimitsOfCauchy: constructed, closed form. With one degree of
// freedom and half-width H of the tolerance, atan((H-d)/u) + atan((H+d)/u) = πp
// gives the distance d from the middle:
//
//	d² = H² - u² + 2 H u / tan πp
func TestAcceptanceLimitsOfCauchy(t *testing.T) {
	for _, u := range []float64{0.01, 0.1, 0.3} {
		for _, p := range []float64{0.1, 0.5, 0.7, 0.8} {
			a, err := Limits{4, 6}.AcceptanceLimits(p, u, 1)
			require.NoError(t, err)
			d := math.Sqrt(1 - u*u + 2*u/math.Tan(math.Pi*p))
			near.Relative(t, fmt.Sprintf("lower, u = %v, p = %v", u, p), 5-d, a.Lower, 1e-14)
			near.Relative(t, fmt.Sprintf("upper, u = %v, p = %v", u, p), 5+d, a.Upper, 1e-14)
		}
	}
}

func TestAcceptanceWithoutUncertainty(t *testing.T) {
	for _, l := range []Limits{{1, 2}, {3, 3}, {noLower, 2}, {1, noUpper}, {noLower, noUpper}} {
		a, err := l.AcceptanceLimits(0.95, 0, infinitely)
		require.NoError(t, err)
		assert.Equal(t, l, a)
	}
	a, err := Limits{noLower, noUpper}.AcceptanceLimits(0.95, 7, 3)
	require.NoError(t, err)
	assert.Equal(t, Limits{noLower, noUpper}, a)
}

// TestMeasurementCapability: JCGM 106, 7.6.2, and the conformance probability
// that 7.7.2 derives from it for ỹ = (y - T_L)/T.
func TestMeasurementCapability(t *testing.T) {
	l := Limits{490, 510}
	for _, u := range []float64{0.5, 1, 5, 8.6} {
		c, ok := l.MeasurementCapability(u)
		assert.Equal(t, true, ok)
		near.Relative(t, "T/4u", 20/(4*u), c, 1e-15)
		for _, relative := range []float64{-0.1, 0, 0.3, 0.5, 0.9} {
			phi := func(z float64) float64 { return math.Erfc(-z/math.Sqrt2) / 2 }
			want := phi(4*c*(1-relative)) - phi(-4*c*relative)
			got := chanceOf(Normal{Mu: 490 + 20*relative, Sigma: u}, l)
			near.Equal(t, fmt.Sprintf("u = %v, ỹ = %v", u, relative), want, got, 1e-15, 1e-12)
		}
	}
	for _, l := range []Limits{{noLower, 2}, {1, noUpper}, {noLower, noUpper}} {
		c, ok := l.MeasurementCapability(1)
		assert.Equal(t, false, ok || c != 0, "%v", l)
	}
	for _, l := range []Limits{{1, 2}, {1, 1}} {
		c, ok := l.MeasurementCapability(0)
		assert.Equal(t, false, ok || c != 0, "u = 0")
	}
}

func TestGuardBandPanics(t *testing.T) {
	nan, inf := math.NaN(), math.Inf(1)
	for _, l := range []Limits{{2, 1}, {nan, 1}, {1, nan}, {inf, inf}, {-inf, -inf}, {inf, -inf}} {
		message := fmt.Sprintf("uncertainty: %v to %v are not tolerance limits", l.Lower, l.Upper)
		panics(t, message, func() { _, _ = l.guarded(0) })
		panics(t, message, func() { _, _ = l.AcceptanceLimits(0.95, 1, inf) })
		panics(t, message, func() { _, _ = l.MeasurementCapability(1) })
	}
	for _, w := range []float64{nan, inf, -inf} {
		panics(t, fmt.Sprintf("uncertainty: guard band %v is not finite", w), func() { _, _ = Limits{1, 2}.guarded(w) })
	}
	for _, p := range []float64{0, 1, -0.1, 1.1, nan} {
		message := fmt.Sprintf("uncertainty: conformance probability %v is not between 0 and 1", p)
		panics(t, message, func() { _, _ = Limits{1, 2}.AcceptanceLimits(p, 0, inf) })
	}
	for _, c := range []struct{ u, nu float64 }{{-1, 5}, {nan, 5}, {inf, 5}, {1, 0}, {1, nan}} {
		message := fmt.Sprintf("uncertainty: value 0 with u = %v and %v degrees of freedom", c.u, c.nu)
		panics(t, message, func() { _, _ = Limits{1, 2}.AcceptanceLimits(0.95, c.u, c.nu) })
	}
	panics(t, "uncertainty: value 0 with u = -1 and +Inf degrees of freedom", func() { _, _ = Limits{1, 2}.MeasurementCapability(-1) })
}
