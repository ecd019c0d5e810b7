package uncertainty

import (
	"context"
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"minim/uncertainty/statistics"
)

// add puts an influence of its own into the model.
func add(m *Model, name string, d Distribution) Node {
	return m.Influence(Influence{Code: Code(name), Distribution: d})
}

// known puts an influence with degrees of freedom into the model.
func known(m *Model, name string, d Distribution, degreesOfFreedom float64) Node {
	return m.Influence(Influence{Code: Code(name), Distribution: d, DegreesOfFreedom: degreesOfFreedom})
}

func propagate(t testing.TB, m *Model, out Node, coverage float64) Analytic {
	t.Helper()
	a, err := m.Propagate(out, coverage)
	require.NoError(t, err)
	return a
}

func simulate(t testing.TB, m *Model, out Node, s Settings) MonteCarlo {
	t.Helper()
	mc, err := m.Simulate(context.Background(), out, s)
	require.NoError(t, err)
	return mc
}

// standardDivisor is the error of a division by a standard normal influence.
func standardDivisor(code Code) error {
	return &ZeroDivisorError{&Influence{Code: code, Distribution: Normal{Mu: 0, Sigma: 1}}, -4, 4}
}

// codeOf is the code of an influence, "" of none.
func codeOf(in *Influence) string {
	if in == nil {
		return ""
	}
	return string(in.Code)
}

// line finds the budget line of an influence.
func line(t testing.TB, a Analytic, name string) Contribution {
	t.Helper()
	for _, c := range a.Budget {
		if string(c.Code) == name {
			return c
		}
	}
	require.NoError(t, fmt.Errorf("no influence %q in the budget", name))
	return Contribution{}
}

// brackets tells whether the exact p-quantile lies within five standard errors
// of the simulated one. The standard error √(p(1-p)/M) is taken in p, so that
// no density is needed.
func brackets(t testing.TB, what string, mc *MonteCarlo, p, exact float64) {
	t.Helper()
	step := 5 * math.Sqrt(p*(1-p)/float64(mc.Trials))
	low, high := mc.Quantile(p-step), mc.Quantile(p+step)
	if !(low <= exact && exact <= high) {
		t.Errorf("%s: the exact %v-quantile %v is outside %v to %v", what, p, exact, low, high)
	}
}

// panics tells whether f panics with the message.
func panics(t testing.TB, message string, f func()) {
	t.Helper()
	defer func() {
		t.Helper()
		assert.Equal(t, message, recover())
	}()
	f()
}

// skipUnderRace leaves out what is slow there and finds no race, drawing on one processor or
// simulating in the way of other tests. The continuous integration runs it without the race
// detector, where products can be fused.
func skipUnderRace(t *testing.T) {
	t.Helper()
	if raceDetector {
		t.Skip("run without the race detector")
	}
}

// ranked is the tally of all values.
func ranked(t *testing.T, values []float64) *statistics.Ranking {
	t.Helper()
	r, err := statistics.NewRanking(t.Context(), values)
	require.NoError(t, err)
	return r
}
