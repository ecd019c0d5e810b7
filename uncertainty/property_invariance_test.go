package uncertainty

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"minim/uncertainty/near"
)

// results are all answers about one quantity.
type results struct {
	analytic Analytic
	second   SecondOrder
	mc       MonteCarlo
}

// answers propagates a quantity, and simulates it when asked to.
func answers(t *testing.T, m *Model, out Node, simulated bool) results {
	t.Helper()
	second, err := m.PropagateSecondOrder(out)
	require.NoError(t, err)
	r := results{analytic: propagate(t, m, out, 0.95), second: second}
	if simulated {
		r.mc = simulate(t, m, out, Settings{Trials: fewestTrials})
		r.mc.tally = nil
	}
	return r
}

// TestOrderChangesNothing: the same model with its nodes in another topological
// order, and with operands of sums and products changed about, gives the same
// digits up to rounding.
func TestOrderChangesNothing(t *testing.T) {
	skipUnderRace(t)
	forRandomModels(t, randomModels/2, func(what string, random *rand.Rand, m *Model, out Node) {
		other, otherOut := shuffled(t, random, m, out)
		simulated := random.IntN(20) == 0
		want, got := answers(t, m, out, simulated), answers(t, other, otherOut, simulated)
		sameUpToRounding(t, what, m.roundings(out), want, got)
	})
}

// TestUnitsChangeNothing: influences in units that are a power of two larger or
// smaller, which rounds nothing, give the same digits, but for the order in which
// the terms of the linear part are added up; in units a thousand or a millionth
// as large the same up to rounding.
func TestUnitsChangeNothing(t *testing.T) {
	skipUnderRace(t)
	forRandomModels(t, randomModels/2, func(what string, random *rand.Rand, m *Model, out Node) {
		simulated := random.IntN(20) == 0
		want := answers(t, m, out, simulated)
		other, otherOut := rescaled(t, m, out, func() float64 { return math.Ldexp(1, random.IntN(81)-40) })
		got := answers(t, other, otherOut, simulated)
		assert.Equal(t, shares(want.analytic), shares(got.analytic), what)
		want.analytic.Budget, got.analytic.Budget = nil, nil
		for _, s := range []*SecondOrder{&want.second, &got.second} { // which are in other units
			s.First, s.Second = &Influence{Code: Code(codeOf(s.First))}, &Influence{Code: Code(codeOf(s.Second))}
		}
		assert.Equal(t, [2]*Influence{want.second.First, want.second.Second}, [2]*Influence{got.second.First, got.second.Second}, what)
		got.second.First, got.second.Second = want.second.First, want.second.Second
		u := want.analytic.StandardUncertainty
		a, b := want.mc.controlled(), got.mc.controlled()
		for i := range a {
			near.Absolute(t, what+", with the linear part", *a[i], *b[i], 1e-11*u+1e-15*math.Abs(want.analytic.Value))
			*b[i] = *a[i]
		}
		// As texts, which tell all digits and make NaN equal to itself.
		assert.Equal(t, fmt.Sprint(want), fmt.Sprint(got), what)

		other, otherOut = rescaled(t, m, out, func() float64 { return []float64{1, 1000, 1e-6}[random.IntN(3)] })
		sameUpToRounding(t, what, m.roundings(out), want, answers(t, other, otherOut, simulated))
	})
}

// controlled are the figures that rest on the linear part as well.
func (mc *MonteCarlo) controlled() []*float64 {
	return []*float64{&mc.Mean, &mc.StandardDeviation, &mc.MeanError, &mc.DeviationError}
}

// shares by name.
func shares(a Analytic) map[string]float64 {
	shares := make(map[string]float64)
	for i := range a.Budget {
		shares[string(a.Budget[i].Code)] = a.Budget[i].Share
	}
	return shares
}

// roundings bounds what rounding may change: a value by the first, its spread by
// the second, squares of the spread, in the terms of second order, by the third.
func (m *Model) roundings(out Node) [3]float64 {
	u := make([]float64, len(m.influences))
	for i := range u {
		u[i] = m.influences[i].Distribution.Summary().StandardUncertainty
	}
	most := m.majorant(out, m.reachable(out), m.values(out, mean), u, nil)
	square := most.s*most.s + most.ss*most.ss + most.s*most.sss
	return [3]float64{1e-13 * most.f, 1e-13 * most.s, 1e-12 * square}
}

func sameUpToRounding(t *testing.T, what string, within [3]float64, want, got results) {
	t.Helper()
	value, spread, square := within[0], within[1], within[2]
	near.Absolute(t, what+", value", want.analytic.Value, got.analytic.Value, value)
	near.Absolute(t, what+", u", want.analytic.StandardUncertainty, got.analytic.StandardUncertainty, spread)
	near.Absolute(t, what+", shift", want.second.Shift, got.second.Shift, square/want.analytic.StandardUncertainty)
	near.Absolute(t, what+", variance of second order", want.second.Variance, got.second.Variance, square)
	near.Absolute(t, what+", mean", want.mc.Mean, got.mc.Mean, 10*value)
	near.Absolute(t, what+", SD", want.mc.StandardDeviation, got.mc.StandardDeviation, 10*value)
	near.Absolute(t, what+", lower", want.mc.Lower, got.mc.Lower, 10*value)
	near.Absolute(t, what+", upper", want.mc.Upper, got.mc.Upper, 10*value)
}
