package uncertainty

import (
	"context"
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"gonum.org/v1/gonum/stat"

	"minim/uncertainty/near"
)

// ofReadings adds an influence of a set of n readings with the scatter s.
func ofReadings(m *Model, name string, mean, s float64, n int, set Set) Node {
	nu := float64(n - 1)
	return m.Influence(Influence{Code: Code(name), Distribution: StudentT{Mu: mean, Sigma: s, Nu: nu}, DegreesOfFreedom: nu, Set: set})
}

// table95 are t_95(ν) for ν = 1 to 4, from JCGM 100, table G.2.
var table95 = []float64{12.71, 4.30, 3.18, 2.78}

// TestFewReadingsByTable: two to five readings, used once or nine times, have the factor of
// the table for n - 1 degrees of freedom, analytic and simulated: a sum of influences of one
// set is a Student t again, of √9 times the scale.
func TestFewReadingsByTable(t *testing.T) {
	skipUnderRace(t)
	for n := 2; n <= 5; n++ {
		for _, uses := range []int{1, 9} {
			m := new(Model)
			set := Set{Owner: Owner{Name: "pipette"}, At: 1}
			y := ofReadings(m, "use 0", 1, 0.01, n, set)
			for i := 1; i < uses; i++ {
				y = m.Add(y, ofReadings(m, fmt.Sprint("use ", i), 1, 0.01, n, set))
			}
			what := fmt.Sprintf("%d readings, %d uses", n, uses)
			k, u := table95[n-2], 0.01*math.Sqrt(float64(uses))
			a := propagate(t, m, y, 0.95)
			near.Relative(t, what+", u", u, a.StandardUncertainty, 1e-14)
			near.Relative(t, what+", ν", float64(n-1), a.DegreesOfFreedom, 1e-14)
			near.Absolute(t, what+", k", k, a.CoverageFactor, 0.005)
			mc := simulate(t, m, y, Settings{Trials: 400_000, Seed: 4})
			near.Absolute(t, what+", lower", float64(uses)-k*u, mc.Lower, 5*mc.LowerError+0.005*u)
			near.Absolute(t, what+", upper", float64(uses)+k*u, mc.Upper, 5*mc.UpperError+0.005*u)
			assert.Equal(t, n <= 3, math.IsNaN(mc.StandardDeviation), what)
			assert.Equal(t, n <= 2, math.IsNaN(mc.Mean), what)
			if n > 3 {
				near.Relative(t, what+", SD", u*math.Sqrt(float64(n-1)/float64(n-3)), mc.StandardDeviation, 1e-9)
			}
		}
	}
}

// TestUsesOfASet: uses of one set are uncorrelated, and far out together: of two that are
// Student t with 5 degrees of freedom, E[a²b²] is σ⁴ ν²/((ν-2)(ν-4)) (constructed). Those of two sets are independent.
func TestUsesOfASet(t *testing.T) {
	const nu, n = 12.0, 400_000
	squares := func(same bool) float64 {
		m := new(Model)
		first, second := Set{Owner: Owner{Name: "one"}}, Set{Owner: Owner{Name: "two"}}
		if same {
			second = first
		}
		a, b := ofReadings(m, "a", 0, 1, nu+1, first), ofReadings(m, "b", 0, 1, nu+1, second)
		values := sample(t, m, m.Multiply(a, b), 3, n)
		near.Absolute(t, "covariance", 0, stat.Mean(values, nil), 5*1.6/math.Sqrt(n))
		return stat.Moment(2, values, nil)
	}
	near.Relative(t, "one set", nu*nu/((nu-2)*(nu-4)), squares(true), 0.06)
	near.Relative(t, "two sets", nu*nu/((nu-2)*(nu-2)), squares(false), 0.04)
}

// TestDegreesOfSets: several sets and other influences in the Welch-Satterthwaite formula.
func TestDegreesOfSets(t *testing.T) {
	m := new(Model)
	one, two := Set{Owner: Owner{Name: "one"}}, Set{Owner: Owner{Name: "one"}, At: 5}
	y := m.Add(ofReadings(m, "a", 0, 3, 4, one), ofReadings(m, "b", 0, 4, 4, one),
		ofReadings(m, "c", 0, 12, 9, two), known(m, "d", Normal{Mu: 0, Sigma: 1}, 7), add(m, "e", Normal{Mu: 0, Sigma: 2}))
	a := propagate(t, m, y, 0.95)
	near.Relative(t, "ν", 174*174/(625./3+20736./8+1./7), a.DegreesOfFreedom, 1e-13)
	near.Relative(t, "by themselves", CoverageFactor(0.95, 3)*5, a.ByReadings(one), 1e-12)
	near.Absolute(t, "of no readings", 0, a.ByReadings(Set{}), 0)
}

// TestSetPanics: readings have one number of degrees of freedom.
func TestSetPanics(t *testing.T) {
	m, set := new(Model), Set{Owner: Owner{Name: "pipette"}}
	ofReadings(m, "a", 0, 1, 4, set)
	panics(t, `uncertainty: influence "b" with 4 degrees of freedom, of readings with 3`, func() { ofReadings(m, "b", 0, 1, 5, set) })
	panics(t, `uncertainty: influence "c" with 0 degrees of freedom, of readings with 3`, func() {
		m.Influence(Influence{Code: "c", Distribution: StudentT{Mu: 0, Sigma: 1, Nu: 3}, Set: set})
	})
}

// TestFewReadingsAreTheCause: where a Student t of few readings and a rectangle make the
// formula of Welch and Satterthwaite fail, the check names the readings, those of one set
// together; and where their tails reach so far that a quotient bends.
func TestFewReadingsAreTheCause(t *testing.T) {
	m, set := new(Model), Set{Owner: Owner{Name: "pipette"}}
	y := add(m, "flat", PlusMinus(2))
	for i := range 9 {
		y = m.Add(y, ofReadings(m, fmt.Sprint("use ", i), 1, 0.3, 2, set))
	}
	_, mc, c := check(t, m, y)
	assert.Equal(t, fewReadings, c.Cause)
	assert.Equal(t, "use 0", codeOf(c.Influence))
	assert.True(t, math.IsNaN(mc.StandardDeviation))
	m = new(Model)
	v := m.Influence(Influence{Code: "volume", Distribution: StudentT{Mu: 1, Sigma: 0.01, Nu: 1}, DegreesOfFreedom: 1, Most: 1})
	_, _, c = check(t, m, m.Divide(m.Constant(1), v))
	assert.Equal(t, fewReadings, c.Cause)
	assert.Equal(t, "volume", codeOf(c.Influence))
}

// TestCloserWithSets: two routes that use one pipette have its σ in common, whichever
// instrument each of them counts first; what comes closer when both have the same is a matter of their draws.
func TestCloserWithSets(t *testing.T) {
	pipette := Owner{Kind: Instrument, Name: "pipette"}
	quantity := func(first string, s float64) Quantity {
		m := new(Model)
		m.Number(Instrument, first)
		use := Influence{Code: "use", Owner: Owner{Kind: OneUse, Name: first, Step: 1}, Distribution: StudentT{Mu: 0, Sigma: s, Nu: 1}, DegreesOfFreedom: 1, Set: Set{Owner: pipette}}
		return Quantity{Model: m, Node: m.Influence(use)}
	}
	chances, err := CloserTo(context.Background(), 0, []Quantity{quantity("pipette", 1), quantity("flask", 100)}, Settings{Trials: 100_000})
	require.NoError(t, err)
	// |z1| < 100 |z2| for two normal values: 2/π arctan(1/100) of the time the other is closer.
	near.Absolute(t, "chance", 2/math.Pi*math.Atan(0.01), chances[1], 5*math.Sqrt(0.0064/100_000))
}

// TestDigitsWithoutVariance: digits can be asked for, of the ends of the interval.
func TestDigitsWithoutVariance(t *testing.T) {
	m := new(Model)
	y := ofReadings(m, "a", 1, 0.01, 2, Set{Owner: Owner{Name: "pipette"}})
	mc := simulate(t, m, y, Settings{Digits: 1})
	assert.False(t, mc.AtCeiling)
	near.Absolute(t, "upper end", 1+0.127062, mc.Upper, 5*mc.UpperError+1e-6)
	mc = simulate(t, m, y, Settings{Trials: 1_000_000})
	assert.GreaterOrEqual(t, mc.Digits, 1)
}
