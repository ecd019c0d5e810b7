package uncertainty

import (
	"maps"
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"minim/uncertainty/statistics"
)

// exactly makes figures of numbers without standard errors.
func exactly(values map[string]float64) quantities {
	f := make(quantities)
	for name, value := range values {
		f[name] = figure{value: value}
	}
	return f
}

// with adds more figures.
func (f quantities) with(more ...quantities) quantities {
	for _, m := range more {
		maps.Copy(f, m)
	}
	return f
}

// times gives all figures in another unit.
func (f quantities) times(by float64) quantities {
	for name, x := range f {
		f[name] = figure{x.value * by, x.err * math.Abs(by)}
	}
	return f
}

// prefixed puts words before all names.
func (f quantities) prefixed(words string) quantities {
	g := make(quantities)
	for name, x := range f {
		g[words+name] = x
	}
	return g
}

// meanAndSD are "mean" and "SD" of a simulation.
func meanAndSD(mc *MonteCarlo) quantities {
	return quantities{"mean": {mc.Mean, mc.MeanError}, "SD": {mc.StandardDeviation, mc.DeviationError}}
}

// ends are "lower" and "upper" of the symmetric interval.
func ends(mc *MonteCarlo) quantities {
	return quantities{"lower": {mc.Lower, mc.LowerError}, "upper": {mc.Upper, mc.UpperError}}
}

// shortestLength is the "length of the shortest interval". Its ends scatter several
// times more than those of the symmetric one, but together: the length scatters
// about as the length of that one.
func shortestLength(mc *MonteCarlo) quantities {
	return quantities{"length of the shortest interval": {mc.ShortestUpper - mc.ShortestLower, math.Hypot(mc.LowerError, mc.UpperError)}}
}

// quantile of a simulation; its standard error is found as that of an end.
func quantile(mc *MonteCarlo, p float64) figure {
	return figure{mc.Quantile(p), statistics.QuantileError(mc.tally, int(p*float64(mc.Trials)))}
}

// contributionsOf are those of some influences, "contribution of …", without sign.
func contributionsOf(t testing.TB, a Analytic, names ...string) quantities {
	f := make(quantities)
	for _, name := range names {
		f["contribution of "+name] = figure{value: math.Abs(line(t, a, name).Contribution)}
	}
	return f
}

// sharesOf are their shares of the variance in per cent, "share of …".
func sharesOf(t testing.TB, a Analytic, names ...string) quantities {
	f := make(quantities)
	for _, name := range names {
		f["share of "+name] = figure{value: 100 * line(t, a, name).Share}
	}
	return f
}

// standardUncertainty of one node.
func standardUncertainty(t testing.TB, m *Model, out Node) float64 {
	t.Helper()
	return propagate(t, m, out, 0.95).StandardUncertainty
}

func secondOrder(t testing.TB, m *Model, out Node) SecondOrder {
	t.Helper()
	s, err := m.PropagateSecondOrder(out)
	require.NoError(t, err)
	return s
}

// truth is 1 where something holds, and 0 where not.
func truth(holds bool) float64 {
	if holds {
		return 1
	}
	return 0
}
