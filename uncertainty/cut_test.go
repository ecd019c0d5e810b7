package uncertainty

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"gonum.org/v1/gonum/stat/distuv"

	"minim/uncertainty/near"
	"minim/uncertainty/statistics"
)

// divided is 1/(1 + e) and the error e alone, with a Student t that is cut.
func divided(nu, s, most float64) (m *Model, quotient, alone Node) {
	m = new(Model)
	e := m.Influence(Influence{Code: "e", Distribution: StudentT{Mu: 0, Sigma: s, Nu: nu}, DegreesOfFreedom: nu, Most: most})
	return m, m.Divide(m.Constant(1), m.Add(m.Constant(1), e)), e
}

// TestCutInDivisors: where a divisor depends on it, an error of two readings is at most as
// large as what is measured, and one of four at most 28 times s (t_99.99(3), whose tables
// have 28.00); elsewhere nothing is cut.
func TestCutInDivisors(t *testing.T) {
	skipUnderRace(t)
	m, quotient, alone := divided(1, 0.01, 1)
	for _, v := range sample(t, m, quotient, 1, 200_000) {
		assert.True(t, v >= 0.5 && !math.IsInf(v, 1), "1/%v", 1/v)
	}
	beyond := 0
	for _, v := range sample(t, m, alone, 1, 200_000) {
		if math.Abs(v) > 1 {
			beyond++
		}
	}
	want := 2 * distuv.StudentsT{Sigma: 0.01, Nu: 1}.CDF(-1)
	near.Absolute(t, "part beyond", want, float64(beyond)/200_000, 5*math.Sqrt(want/200_000))
	assert.Empty(t, m.Cut(alone))
	assert.Len(t, m.Cut(quotient), 1)

	near.Absolute(t, "t_99.99(3)", 28.00, CutFactor(3), 0.005)
	m, quotient, _ = divided(3, 0.01, 1)
	least := math.Inf(1)
	for _, v := range sample(t, m, quotient, 1, 2_000_000) {
		least = min(least, v)
	}
	assert.Greater(t, least, 1/(1+28.001*0.01))
	assert.Less(t, least, 1/1.2)
	m, quotient, _ = divided(3, 0.01, 0)
	assert.Empty(t, m.Cut(quotient), "nothing is known of the greatest error")
}

// TestCutIsTruncated: what is left is Student's t between the cuts as it was, but for the
// little that a scale with hardly any room is more likely: quartiles and the 95 % ends.
func TestCutIsTruncated(t *testing.T) {
	m, quotient, _ := divided(2, 0.01, 1)
	mc := simulate(t, m, quotient, Settings{Trials: 400_000, Seed: 2})
	d := distuv.StudentsT{Sigma: 0.01, Nu: 2}
	for _, p := range []float64{0.025, 0.25, 0.5, 0.75, 0.975} {
		f := quantile(&mc, 1-p)
		near.Absolute(t, "quantile", 1/(1+d.Quantile(p)), f.value, 5*f.err+0.002*0.01)
	}
	assert.True(t, math.IsNaN(mc.StandardDeviation))
}

// TestMomentsOfACut: the standard deviation of a quotient that is cut agrees with its
// trials, since the control variates leave out what is cut.
func TestMomentsOfACut(t *testing.T) {
	skipUnderRace(t)
	m, quotient, _ := divided(3, 0.02, 1)
	out := m.Multiply(quotient, add(m, "x", Normal{Mu: 1, Sigma: 0.02}))
	mc := simulate(t, m, out, Settings{Trials: 1_000_000, Seed: 5})
	_, variance := statistics.MeanAndVariance(sample(t, m, out, 5, 1_000_000))
	near.Relative(t, "SD", math.Sqrt(variance), mc.StandardDeviation, 0.005)
}

// TestNormalWithin: the quantiles of a normal distribution between two cuts.
func TestNormalWithin(t *testing.T) {
	for _, c := range []float64{1e-9, 1e-4, 0.0011, 0.3, 2, 9} {
		for _, u := range []float64{0.001, 0.3, 0.5, 0.9999} {
			n := distuv.UnitNormal
			p := n.CDF(-c) + u*(n.CDF(c)-n.CDF(-c))
			near.Absolute(t, "quantile", n.Quantile(p), normalWithin(c, u), 1e-5*c)
		}
	}
}
