package uncertainty

import (
	"context"
	"runtime"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"minim/uncertainty/near"
)

// TestProcessors: no digit depends on the number of processors.
func TestProcessors(t *testing.T) {
	run := func(n int) MonteCarlo {
		defer runtime.GOMAXPROCS(runtime.GOMAXPROCS(n))
		m := new(Model)
		return simulate(t, m, dilute(m, 3, true, same), Settings{Trials: 100_001, Seed: 8})
	}
	one := run(1)
	for _, n := range []int{2, 3, 8} {
		assert.Equal(t, true, sameRun(one, run(n)), "%d processors", n)
	}
}

// sameRun compares all but the values of the trials, of which every 97th will do.
func sameRun(a, b MonteCarlo) bool {
	for i := 0; i < a.Trials; i += 97 {
		if a.tally.At(i) != b.tally.At(i) {
			return false
		}
	}
	a.tally, b.tally = nil, nil
	return assert.ObjectsAreEqual(a, b)
}

// TestCompany: unrelated nodes change no digit, not even by their order.
func TestCompany(t *testing.T) {
	settings := Settings{Trials: 50_000, Seed: 2}
	alone, out := ratio(new(Model))
	want := simulate(t, alone, out, settings)
	m := new(Model)
	m.Divide(add(m, "z", Gamma{Mu: 1, Sigma: 1}), m.Constant(0))
	among, out := ratio(m)
	assert.Equal(t, true, sameRun(want, simulate(t, among, out, settings)))
}

// TestOrderOfConstruction: only the rounding of the sum depends on it.
func TestOrderOfConstruction(t *testing.T) {
	settings := Settings{Trials: 50_000, Seed: 2}
	build := func(names ...string) MonteCarlo {
		m := new(Model)
		y := m.Constant(0)
		for _, name := range names {
			y = m.Add(y, add(m, name, map[string]Distribution{"a": Normal{Mu: 1, Sigma: 0.1}, "b": PlusMinus(1), "c": Gamma{Mu: 1, Sigma: 0.5}}[name]))
		}
		return simulate(t, m, y, settings)
	}
	a, b := build("a", "b", "c"), build("c", "a", "b")
	near.Relative(t, "mean", a.Mean, b.Mean, 1e-14)
	near.Relative(t, "SD", a.StandardDeviation, b.StandardDeviation, 1e-13)
	near.Relative(t, "lower", a.Lower, b.Lower, 1e-13)
	near.Relative(t, "upper", a.Upper, b.Upper, 1e-13)
}

// TestSharedDraws: two models that hold one influence see its draws, so their
// difference is the rest alone, trial by trial.
func TestSharedDraws(t *testing.T) {
	in := Influence{Code: "bias", Owner: Owner{Name: "flask"}, Distribution: Normal{Mu: 0, Sigma: 1}}
	draw := func(rest float64) []float64 {
		m := new(Model)
		add(m, "company", Normal{Mu: 0, Sigma: rest + 1})
		out := m.Add(m.Influence(in), m.Constant(rest))
		return sample(t, m, out, 6, 10_000)
	}
	// The draws are below 8 in size: adding 1024 and taking it away rounds at 2^-43.
	a, b := draw(0), draw(1024)
	for i := range a {
		near.Absolute(t, "the rest", 1024, b[i]-a[i], 0x1p-42)
	}
}

// TestTrialsAreAPrefix: more trials add to the same ones.
func TestTrialsAreAPrefix(t *testing.T) {
	m, y := sumOf(Normal{Mu: 0, Sigma: 1}, Gamma{Mu: 1, Sigma: 2}, StudentT{Mu: 0, Sigma: 1, Nu: 3})
	few, many := sample(t, m, y, 1, 10_001), sample(t, m, y, 1, 30_000)
	assert.Equal(t, true, assert.ObjectsAreEqual(few, many[:10_001]))
}

// sample draws trials without putting them in order.
func sample(t *testing.T, m *Model, out Node, seed uint64, trials int) []float64 {
	t.Helper()
	values := make([]float64, trials)
	err := m.Ready(out).newSampler(context.Background(), Settings{Seed: seed}).fill(context.Background(), values, 0)
	require.NoError(t, err)
	return values
}

func TestSeedsDiffer(t *testing.T) {
	m, y := sumOf(Normal{Mu: 0, Sigma: 1})
	a := simulate(t, m, y, Settings{Trials: 10_000, Seed: 1})
	b := simulate(t, m, y, Settings{Trials: 10_000, Seed: 2})
	assert.Equal(t, false, a.Lower == b.Lower)
	assert.Equal(t, uint64(2), b.Seed)
}
