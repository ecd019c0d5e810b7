package uncertainty

import (
	"context"
	"errors"
	"fmt"
	"math"
	"math/rand/v2"
	"sync/atomic"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"minim/uncertainty/near"
	"minim/uncertainty/sharp"
)

// TestProgramAgain: what is taken over in a program is to the last bit what would be compiled, for each change of one
// influence of random models, with a smooth influence and without.
func TestProgramAgain(t *testing.T) {
	tried, taken := 0, 0
	forRandomModels(t, randomModels/20, func(what string, random *rand.Rand, m *Model, out Node) {
		r := m.Ready(out)
		for _, smooth := range []int{-1, random.IntN(len(m.influences))} {
			for range 4 {
				i := random.IntN(len(m.influences))
				_, err := r.Change([]Change{{Only: m.influences[i].Identity(), Factor: 0.5 + random.Float64()}})
				require.NoError(t, err, what)
				v := m.values(out, mean)
				slopes := uncut(m.gradient(out, v), m.cuts(r.needed))
				var as *sharp.Sharpening
				if smooth >= 0 {
					as = &sharp.Sharpening{Linear: &sharp.Linear{Slopes: slopes}, Smooth: smooth, Mean: random.Float64(), Size: random.Float64()}
				}
				had := len(r.compiled)
				tried++
				p := r.program(alone, m.ownStreams(), slopes, as)
				if len(r.compiled) == had {
					taken++
				}
				require.Equal(t, m.compileWith(out, slopes, m.ownStreams(), as), p, what)
			}
		}
	})
	assert.Greater(t, taken, tried/4)
}

// TestReadyAsFresh: what a changed model gives is what one gives that begins anew, through changes of width and kind,
// widths of zero that become others, and back.
func TestReadyAsFresh(t *testing.T) {
	s := Settings{Trials: 10_000, Seed: 3}
	m, out := dilutionModel()
	r := m.Ready(out)
	of := func(name string) Identity { return (&Influence{Owner: Owner{Name: name}}).Identity() }
	first := m.influences[0].Identity()
	assert.NotEqual(t, of(""), first)
	for k, changes := range [][]Change{
		nil,
		{{Only: first, Factor: 3}},
		{{Only: first, Distribution: Rectangular{Low: 0, High: 0}}},
		{{Only: first, Factor: 3}, {Only: m.influences[7].Identity(), Distribution: Normal{Mu: 0, Sigma: 0.02}}},
		{{Only: first, Distribution: Normal{Mu: 0, Sigma: 0.001}}},
		{{Only: m.influences[2].Identity(), Distribution: StudentT{Mu: 0, Sigma: 0.01, Nu: 5}}},
		nil,
	} {
		_, err := r.Change(changes)
		require.NoError(t, err)
		updated, err := r.Simulate(context.Background(), s)
		require.NoError(t, err)
		require.NoError(t, updated.Thin(context.Background(), 10))
		again, same := dilutionModel()
		_, err = again.Change(0, changes)
		require.NoError(t, err)
		fresh := simulate(t, again, same, s)
		require.NoError(t, fresh.Thin(context.Background(), 10))
		assert.Equal(t, fresh, updated, "change %d", k)
	}
}

// TestReadyOfAnother takes over a model of the same structure, and one of another.
func TestReadyOfAnother(t *testing.T) {
	s := Settings{Trials: 10_000, Seed: 3}
	m, y := sumOf(Normal{Mu: 1e6, Sigma: 1}, Gamma{Mu: 1, Sigma: 2}, PlusMinus(3))
	r := m.Ready(y)
	_, err := r.Simulate(context.Background(), s)
	require.NoError(t, err)
	for k, other := range [][]Distribution{{Normal{Mu: 7, Sigma: 2}, Rectangular{Low: 0, High: 1}, PlusMinus(1)}, {Normal{Mu: 0, Sigma: 1}, PlusMinus(2)}, {Normal{Mu: 0, Sigma: 1}, PlusMinus(2), Normal{Mu: 0, Sigma: 3}, Normal{Mu: 0, Sigma: 4}}} {
		m, y := sumOf(other...)
		r.Take(m, y)
		mc, err := r.Simulate(context.Background(), s)
		require.NoError(t, err)
		m, y = sumOf(other...)
		fresh := simulate(t, m, y, s)
		require.NoError(t, mc.Thin(context.Background(), 10))
		require.NoError(t, fresh.Thin(context.Background(), 10))
		assert.Equal(t, fresh, mc, "other %d", k)
	}
}

// TestChangeConstant changes what has a name, and nothing else.
func TestChangeConstant(t *testing.T) {
	m := new(Model)
	mark := m.Name(m.Constant(10), Influence{Code: "mark"})
	out := m.Multiply(mark, add(m, "x", Normal{Mu: 2, Sigma: 0.1}))
	r := m.Ready(out)
	for want, change := range map[float64]Change{24: {Code: "mark", Value: 12}, 30: {Code: "mark", Factor: 1.5}} {
		found, err := r.Change([]Change{change})
		require.NoError(t, err)
		assert.Equal(t, []bool{true}, found)
		assert.Equal(t, want, m.Expected(out))
		mc, err := r.Simulate(context.Background(), Settings{Trials: 10_000})
		require.NoError(t, err)
		near.Relative(t, "mean", want, mc.Mean, 1e-12)
	}
	found, err := r.Change([]Change{{Code: "none", Value: 1}})
	require.NoError(t, err)
	assert.Equal(t, []bool{false}, found)
	assert.Equal(t, 20.0, m.Expected(out))
}

// TestChangeRefused: what would have to be another model, after which it is as it was.
func TestChangeRefused(t *testing.T) {
	m := new(Model)
	of := Set{Owner: Owner{Name: "readings"}}
	x := m.Influence(Influence{Code: "x", Distribution: StudentT{Mu: 0, Sigma: 1, Nu: 4}, DegreesOfFreedom: 4, Set: of})
	out := m.Add(m.Name(m.Constant(3), Influence{Code: "mark"}), x)
	r := m.Ready(out)
	for _, c := range []Change{
		{Code: "x", Distribution: StudentT{Mu: 0, Sigma: 1, Nu: 5}}, {Code: "x", Distribution: Normal{Mu: 0, Sigma: 1}}, {Code: "x", Factor: -1}, {Code: "x", Factor: math.Inf(1)},
		{Code: "x", Value: 4}, {Code: "x", Distribution: Normal{Mu: 0, Sigma: math.NaN()}}, {Code: "mark", Distribution: Normal{Mu: 0, Sigma: 1}}, {Code: "mark", Value: math.NaN()},
	} {
		_, err := r.Change([]Change{{Code: "x", Factor: 2}, c})
		var other *StructureError
		assert.ErrorAs(t, err, &other)
		assert.Equal(t, StudentT{Mu: 0, Sigma: 1, Nu: 4}, m.influences[0].Distribution)
		assert.NotEmpty(t, fmt.Sprint(err))
	}
}

// TestByLaw: of a sum the law is the whole: what is known at once is what a long simulation shows.
func TestByLaw(t *testing.T) {
	m, y := sumOf(Normal{Mu: 1e3, Sigma: 1}, Gamma{Mu: 1, Sigma: 2}, PlusMinus(3))
	a, err := m.Propagate(y, 0.95)
	require.NoError(t, err)
	r := m.Ready(y)
	at, err := r.ByLaw(a)
	require.NoError(t, err)
	assert.True(t, at.ByLaw && at.Trials == 0)
	mc := simulate(t, m, y, Settings{Trials: 1_000_000})
	near.Absolute(t, "lower", mc.Lower, at.Lower, 5*mc.LowerError)
	near.Absolute(t, "upper", mc.Upper, at.Upper, 5*mc.UpperError)
	near.Absolute(t, "length", mc.ShortestUpper-mc.ShortestLower, at.ShortestUpper-at.ShortestLower, 0.02)
	near.Relative(t, "SD", mc.StandardDeviation, at.StandardDeviation, 1e-9)
	near.Relative(t, "mean", mc.Mean, at.Mean, 1e-12)
	limits := Limits{999, 1004}
	p, off := at.Chance(limits)
	near.Absolute(t, "chance", mc.ConformanceProbability(limits), p, 0.002)
	assert.Equal(t, 0.0, off)
	near.Absolute(t, "within", mc.Within(1001, 0.9), at.Within(1001, 0.9), 0.02)
	require.NoError(t, at.Thin(context.Background(), 10))
	near.Absolute(t, "quantile", mc.Quantile(0.3), at.Quantile(0.3), 0.02)

	// Nothing that varies, and no variance.
	m, y = sumOf(Normal{Mu: 5, Sigma: 0})
	a, err = m.Propagate(y, 0.95)
	require.NoError(t, err)
	at, err = m.Ready(y).ByLaw(a)
	require.NoError(t, err)
	assert.Equal(t, [4]float64{5, 5, 5, 0}, [4]float64{at.Mean, at.Lower, at.ShortestUpper, at.StandardDeviation})
	assert.Equal(t, 1.0, at.ConformanceProbability(Limits{5, 6}))
	assert.Equal(t, 0.0, at.ConformanceProbability(Limits{5.1, 6}))
	m, y = sumOf(StudentT{Mu: 0, Sigma: 1, Nu: 1})
	a, err = m.Propagate(y, 0.95)
	require.NoError(t, err)
	at, err = m.Ready(y).ByLaw(a)
	require.NoError(t, err)
	assert.True(t, math.IsNaN(at.Mean) && math.IsNaN(at.StandardDeviation))
	near.Relative(t, "t with one degree of freedom", 12.706, at.Upper, 0.01)
}

// TestStopped: a simulation is stopped wherever it is, also on one processor, within 20 ms of work.
func TestStopped(t *testing.T) {
	m, out := dilutionModel()
	r := m.Ready(out)
	for looks := range 60 {
		ctx := &after{Context: context.Background()}
		ctx.left.Store(int64(looks))
		_, err := r.Simulate(ctx, Settings{Trials: 10_000, Seed: 1})
		if err == nil {
			assert.Greater(t, looks, 24, "it looks at the context at each block")
			return
		}
		require.True(t, errors.Is(err, context.Canceled))
	}
}

// after is done once it has been looked at so often.
type after struct {
	context.Context
	left atomic.Int64
}

func (c *after) Err() error {
	if c.left.Add(-1) < 0 {
		return context.Canceled
	}
	return nil
}

// TestReadyAllocates bounds what is allocated again: for the first figure the law that is kept and little else, for
// a simulation nothing that grows with the trials.
func TestReadyAllocates(t *testing.T) {
	if raceDetector {
		t.Skip("which allocates")
	}
	m, out := dilutionModel()
	r := m.Ready(out)
	a, err := m.Propagate(out, 0.95)
	require.NoError(t, err)
	changes := []Change{{Only: m.influences[0].Identity(), Factor: 3}}
	first := testing.AllocsPerRun(20, func() {
		if _, err := r.Change(changes); err != nil {
			t.Error(err)
		}
		if _, err := r.ByLaw(a); err != nil {
			t.Error(err)
		}
	})
	assert.LessOrEqual(t, first, 40.0)
	few, many := 0.0, 0.0
	for trials, to := range map[int]*float64{10_000: &few, 50_000: &many} {
		*to = testing.AllocsPerRun(5, func() {
			if _, err := r.Simulate(context.Background(), Settings{Trials: trials}); err != nil {
				t.Error(err)
			}
		})
	}
	t.Logf("%v allocations for the first figure, %v for a simulation, %v for one of five times as many trials", first, few, many)
	assert.LessOrEqual(t, many, few+20)
	assert.LessOrEqual(t, few, 300.0)
}
