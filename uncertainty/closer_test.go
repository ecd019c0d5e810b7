package uncertainty

import (
	"context"
	"fmt"
	"math"
	"runtime"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"minim/uncertainty/near"
)

// quantityOf is a model of its own: shift plus errors, each with its owner.
func quantityOf(shift float64, errors ...Influence) Quantity {
	m := new(Model)
	n := m.Constant(shift)
	for _, in := range errors {
		n = m.Add(n, m.Influence(in))
	}
	return Quantity{Model: m, Node: n}
}

// errorOf is a normal error of mean 0.
func errorOf(owner string, u float64) Influence {
	return Influence{Code: "error", Owner: Owner{Name: owner}, Distribution: Normal{Mu: 0, Sigma: u}}
}

func closer(t *testing.T, target float64, quantities ...Quantity) []float64 {
	t.Helper()
	chances, err := CloserTo(context.Background(), target, quantities, Settings{Trials: 100_000, Seed: 2})
	require.NoError(t, err)
	return chances
}

// atChance is five standard errors √(p(1-p)/M).
func atChance(t *testing.T, what string, p, got float64) {
	t.Helper()
	near.Absolute(t, what, p, got, 5*math.Sqrt(p*(1-p)/100_000))
}

// TestCloserNormals: the ratio of two independent normal errors is Cauchy
// distributed, so that the second is the smaller with the chance
// (2/π) arctan(u_1/u_2) (closed form).
func TestCloserNormals(t *testing.T) {
	for _, u := range []float64{0.1, 0.5, 1, 3, 20} {
		p := closer(t, 7, quantityOf(7, errorOf("one", u)), quantityOf(7, errorOf("other", 1)))
		assert.Equal(t, 0.5, p[0])
		atChance(t, fmt.Sprint("u = ", u), 2/math.Pi*math.Atan(u), p[1])
	}
}

// TestCloserTies: the same quantity again, or its mirror image about the target,
// is as close in every trial, and a better one is closer in every trial.
func TestCloserTies(t *testing.T) {
	m := new(Model)
	x := add(m, "x", Normal{Mu: 0, Sigma: 1})
	half := m.Multiply(x, m.Constant(0.5))
	chances := closer(t, 0, Quantity{Model: m, Node: x}, Quantity{Model: m, Node: x}, Quantity{Model: m, Node: m.Subtract(m.Constant(0), x)}, Quantity{Model: m, Node: half}, Quantity{Model: m, Node: m.Add(x, x)}, Quantity{Model: m, Node: m.Constant(0)})
	assert.Equal(t, []float64{0.5, 0.5, 0.5, 1, 0, 1}, chances)
	assert.Equal(t, []float64{0.5, 0.5}, closer(t, 3, quantityOf(5), quantityOf(1)), "constants")
	assert.Equal(t, []float64{0.5, 0, 1}, closer(t, 3, quantityOf(5), quantityOf(0), quantityOf(4.5)), "constants")
}

// TestCloserSharedBias: a large error that both share cancels: 100 above the
// target the lower one is closer, with the chance Φ(d/√(u_1² + u_2²)) for a
// difference d of means, here Φ(2); drawn apart, the large error decides:
// Φ(1/√(0.25 + 2·9)).
func TestCloserSharedBias(t *testing.T) {
	one, other := errorOf("one", 0.3), errorOf("other", 0.4)
	bias := Influence{Code: "bias", Owner: Owner{Name: "flask"}, Distribution: Normal{Mu: 0, Sigma: 3}}
	p := closer(t, 0, quantityOf(101, bias, one), quantityOf(100, bias, other))
	atChance(t, "shared", 0.97724987, p[1])
	another := bias
	another.Owner.Name = "another flask"
	p = closer(t, 0, quantityOf(101, bias, one), quantityOf(100, another, other))
	atChance(t, "apart", 0.5*math.Erfc(-1/math.Sqrt(18.25)/math.Sqrt2), p[1])
}

// TestCloserOrder: the chances of two against each other add to 1 but for what few trials
// leave open, and company changes none.
func TestCloserOrder(t *testing.T) {
	a, b := quantityOf(1, errorOf("a", 0.2)), quantityOf(0.9, errorOf("b", 0.3))
	c := quantityOf(1.1, Influence{Code: "c", Distribution: Gamma{Mu: 0.1, Sigma: 0.1}})
	ab, ba, abc := closer(t, 1, a, b), closer(t, 1, b, a), closer(t, 1, a, c, b)
	near.Absolute(t, "sum", 1, ab[1]+ba[1], 2e-4)
	assert.Equal(t, ab[1], abc[2])
	defer runtime.GOMAXPROCS(runtime.GOMAXPROCS(1))
	assert.Equal(t, abc, closer(t, 1, a, c, b), "one processor")
}

func TestCloserErrors(t *testing.T) {
	m := new(Model)
	x := add(m, "x", Normal{Mu: 0, Sigma: 1})
	large := m.Multiply(m.Constant(1e300), m.Multiply(m.Constant(1e300), x))
	for _, c := range []struct {
		out  Node
		s    Settings
		want error
	}{
		{m.Divide(x, x), Settings{}, standardDivisor("x")},
		{large, Settings{Trials: fewestTrials}, ErrNotFinite},
		{m.Subtract(large, large), Settings{Trials: fewestTrials}, ErrNotFinite},
		{x, Settings{Trials: 3}, Settings{Trials: 3}.Check()},
	} {
		for _, quantities := range [][]Quantity{{{Model: m, Node: x}, {Model: m, Node: c.out}}, {{Model: m, Node: c.out}, {Model: m, Node: x}}} {
			chances, err := CloserTo(context.Background(), 1, quantities, c.s)
			assert.Equal(t, c.want, err)
			assert.Equal(t, []float64(nil), chances)
		}
	}
	none, err := CloserTo(context.Background(), 1, nil, Settings{})
	require.NoError(t, err)
	assert.Equal(t, 0, len(none))
}

// TestCloserSharper: two dilutions that share their stock and an instrument, of which the second has
// few readings: 10^4 trials tell the chance ten times as well as they would by counting, and the
// same that 10^6 give, and as well as they say.
func TestCloserSharper(t *testing.T) {
	skipUnderRace(t)
	route := func(name string, target, u float64, n int) Quantity {
		m := new(Model)
		owned := func(owner Owner, code Code, d Distribution) Node {
			return m.Influence(Influence{Code: code, Owner: owner, Distribution: d})
		}
		use := Owner{Kind: OneUse, Name: name, Step: 1}
		stock := owned(Owner{Kind: Stock, Name: "stock"}, "strength", Rectangular{Low: 0.97, High: 1.03})
		pipette := owned(Owner{Kind: Instrument, Name: "pipette"}, "bias", Peaked(0.01))
		var reading Node
		if nu := float64(n - 1); n == 0 {
			reading = owned(use, "reading", Normal{Mu: 0, Sigma: u})
		} else {
			reading = m.Influence(Influence{Code: "reading", Owner: use, Distribution: StudentT{Mu: 0, Sigma: u, Nu: nu}, DegreesOfFreedom: nu, Set: Set{Owner: use}})
		}
		taken := m.Add(m.Constant(1), pipette, reading)
		return Quantity{Model: m, Node: m.Divide(m.Multiply(stock, taken), m.Add(m.Constant(target), owned(use, "flask", Rectangular{Low: -0.01, High: 0.01})))}
	}
	for _, n := range []int{0, 4} {
		both := []Quantity{route("one", 1, 0.01, 0), route("other", 1.005, 0.02, n)}
		many, err := CloserTo(context.Background(), 1, both, Settings{Trials: 1_000_000, Seed: 5, Plain: true})
		require.NoError(t, err)
		var chances []float64
		squares := 0.0
		const seeds = 24
		for seed := range uint64(seeds) {
			settings := Settings{Trials: fewestTrials, Seed: seed}.WithDefaults()
			few, err := CloserTo(context.Background(), 1, both, settings)
			require.NoError(t, err)
			chances = append(chances, few[1])
			e, ok := newDuel(context.Background(), 1, newChampion(both[0], settings), both[1], settings, nil).chance(context.Background(), fewestTrials)
			assert.True(t, ok)
			assert.Equal(t, few[1], e.Value)
			squares += e.Err * e.Err / seeds
		}
		average, scatter, _ := Readings(chances)
		near.Absolute(t, "chance", many[1], average, 5*math.Hypot(0.0005, scatter/math.Sqrt(seeds)))
		ratio := math.Sqrt(squares) / scatter
		assert.True(t, 0.67 < ratio && ratio < 1.5, "stated over scatter is %v", ratio)
		assert.Less(t, scatter, 0.0005, "by counting it would be 0.005")
	}
}
