package uncertainty

import (
	"context"
	"errors"
	"fmt"
	"math"
	"strconv"
	"testing"

	"github.com/stretchr/testify/require"

	"minim/uncertainty/portable"
	"minim/uncertainty/rounding"
)

// FuzzModel: any model with finite inputs, however extreme, is either refused
// with an error that says so or answered with numbers. The bytes are read as
// postfix, see [script]: "N10 N21 *" is the product of two normal influences.
func FuzzModel(f *testing.F) {
	for _, seed := range []string{
		"N10", "N21 R01 +", "N2a dd*", "N2a G11 / N1b -", "T01 s N12 c *", "N1a N1b r9 - N2a *", "N11 N11 r- + d *",
		"c2 R12 /", "N0a N0a *", "S019 N1a +", "S012 S013 *", "S01e S01z +", "D1 N1a D9 N1b + D3 N1a *",
		"R00 c5 +", "N10 N10 *", "c5", "c0 c0 -", "N1a d /", "N1a d -", "Nzy Nzy +", "Nzy N1a *", "Nea Nea *", "Nfe Nfe +", "NFE d *",
		"G1z", "Gz1", "Ge1", "G1e", "Gee", "Gzz", "Rwz N11 +", "RZz", "Rfe s", "Nz1 s", "N1a cz * o", "N1e N1f + N1a *",
		"N1a cE + cE -", "cz N1a + cz -", "N1a cz * cz /", "G1a d * d * d * d *", "Na1 d * d * d *", "R12 d * d * d * d * d * /",
		"Z12a Z129 * I12a + A12 /", "Zze1 I0e0 + A0k -", "IZz1 d *", "N11 N22 r5 * N33 r5 + N1a r9 -", "Nze Nze r- +", "Z9",
	} {
		f.Add([]byte(seed))
	}
	// A gamma of which the squares are too large.
	f.Add([]byte("2 \xfaG\vэ\xde\f\xda\xd6\x06\"i]\x81\xb6\xf1v)鿷j\xfc\xa1m\x9d\x00\x00\xfa N3j+"))
	// Many degrees of freedom, and limits that are open on one side.
	f.Add([]byte("Na 9 N11a a b + D3 N1a *"))
	// A quotient whose linear part is 10⁶⁰ times as wide as itself, so that nothing can be sharpened.
	f.Add([]byte("TTTTTTTT\x9a\x9a\x9a\x9a\x9a\x9a\"\x16\x16\x16\x1a\x17\xb2'\xcb\x16\x80~\xdfz\x8e\t\xf8\x7f\xe4o\xbc\xeaz\x8e\t\xf8\x7f\xe4o"))
	f.Fuzz(func(t *testing.T, data []byte) {
		if m, out, ok := (&script{data: data}).model(); ok {
			checkAnswers(t, m, out)
		}
	})
}

func checkAnswers(t *testing.T, m *Model, out Node) {
	a, err := m.Propagate(out, 0.95)
	mayFail(t, err)
	analytic := err == nil
	if analytic {
		checkAnalytic(t, a)
	}
	second, err := m.PropagateSecondOrder(out)
	mayFail(t, err)
	mustBeNumbers(t, "second order", second.Shift, second.Variance)
	if u := second.StandardUncertainty; !math.IsNaN(u) && (u < 0 || math.IsInf(u, 0)) {
		t.Errorf("second order: u = %v", u)
	}
	mc, err := m.Simulate(context.Background(), out, Settings{Trials: fewestTrials, Seed: 1})
	mayFail(t, err)
	if err != nil {
		return
	}
	checkSimulated(t, &mc, m.leastDegrees(m.reachable(out)))
	if !analytic {
		return
	}
	c, err := m.CrossCheck(out, a, &mc)
	mayFail(t, err)
	mustBeNumbers(t, "cross-check", c.Tolerance, c.DLow, c.DHigh, c.OfExpanded)
}

// mayFail passes the errors that the documentation names.
func mayFail(t *testing.T, err error) {
	t.Helper()
	var zero *ZeroDivisorError
	if err != nil && !errors.Is(err, ErrNotFinite) && !errors.As(err, &zero) {
		t.Errorf("an error of another kind: %v", err)
	}
}

func mustBeNumbers(t *testing.T, what string, numbers ...float64) {
	t.Helper()
	for i, x := range numbers {
		if !portable.IsFinite(x) {
			t.Errorf("%s: number %d is %v", what, i, x)
		}
	}
}

func mustBeChance(t *testing.T, what string, p float64) {
	t.Helper()
	if !(0 <= p && p <= 1) {
		t.Errorf("%s: a chance of %v", what, p)
	}
}

func checkAnalytic(t *testing.T, a Analytic) {
	t.Helper()
	mustBeNumbers(t, "analytic", a.Value, a.StandardUncertainty, a.CoverageFactor, a.ExpandedUncertainty, a.Lower(), a.Upper())
	if !(a.StandardUncertainty >= 0 && a.CoverageFactor > 0 && a.DegreesOfFreedom > 0) { // may be +Inf
		t.Errorf("u %v, k %v, ν %v", a.StandardUncertainty, a.CoverageFactor, a.DegreesOfFreedom)
	}
	sum, size := 0.0, 0.0
	for i := range a.Budget {
		line := &a.Budget[i]
		mustBeNumbers(t, string(line.Code), line.Sensitivity, line.StandardUncertainty, line.Contribution, line.Share)
		sum += line.Share
		size += math.Abs(line.Share)
	}
	// Numbers below 2e-308 have few digits.
	if a.StandardUncertainty > 1e-300 && size > 0 && math.Abs(sum-1) > 1e-9*size {
		t.Errorf("shares add to %v", sum)
	}
	for _, l := range []Limits{{math.Inf(-1), a.Value}, {a.Value, math.Inf(1)}, {a.Lower(), a.Upper()}, {a.Value, a.Value}, {math.Inf(-1), math.Inf(1)}} {
		mustBeChance(t, fmt.Sprint("analytic, ", l), a.ConformanceProbability(l))
	}
	checkRounded(t, a.Value, a.ExpandedUncertainty)
}

// checkRounded reads back what is printed, which may be rounded up
// beyond the greatest number.
func checkRounded(t *testing.T, value, expanded float64) {
	t.Helper()
	v, u := rounding.Expanded(value, expanded)
	for text, x := range map[string]float64{v: value, u: expanded} {
		rounded, err := strconv.ParseFloat(text, 64)
		if errors.Is(err, strconv.ErrRange) && math.Abs(x) > 1e308 {
			continue
		}
		require.NoError(t, err)
		if by := expanded/10 + 1e-323; math.Abs(rounded-x) > by {
			t.Errorf("%v ± %v is rounded to %s ± %s", value, expanded, v, u)
		}
	}
}

func checkSimulated(t *testing.T, mc *MonteCarlo, leastDegrees float64) {
	t.Helper()
	mustBeNumbers(t, "simulated", mc.Lower, mc.Upper, mc.ShortestLower, mc.ShortestUpper, mc.LowerError, mc.UpperError, mc.Resolution)
	if leastDegrees > 1 {
		mustBeNumbers(t, "mean", mc.Mean)
	} else if !math.IsNaN(mc.Mean) {
		t.Errorf("a mean of %v where there is none", mc.Mean)
	}
	if leastDegrees > 2 {
		mustBeNumbers(t, "simulated", mc.StandardDeviation, mc.MeanError, mc.DeviationError)
	} else if !math.IsNaN(mc.StandardDeviation) {
		t.Errorf("a standard deviation of %v without a variance", mc.StandardDeviation)
	}
	if mc.StandardDeviation < 0 || mc.MeanError < 0 || mc.DeviationError < 0 || mc.LowerError < 0 || mc.UpperError < 0 || mc.Lower > mc.Upper || mc.ShortestLower > mc.ShortestUpper {
		t.Errorf("out of order: %+v", mc)
	}
	if mc.ShortestUpper-mc.ShortestLower > mc.Upper-mc.Lower {
		t.Errorf("the shortest interval is longer: %+v", mc)
	}
	for _, l := range []Limits{{math.Inf(-1), mc.Lower}, {mc.Upper, math.Inf(1)}, {mc.Lower, mc.Lower}} {
		mustBeChance(t, fmt.Sprint("simulated, ", l), mc.ConformanceProbability(l))
	}
	if p := mc.ConformanceProbability(Limits{mc.Lower, mc.Upper}); p < mc.CoverageProbability-float64(3*mc.ChanceError(Limits{mc.Lower, mc.Upper}))-1e-6 {
		t.Errorf("the interval holds %v", p)
	}
}
