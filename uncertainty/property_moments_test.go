package uncertainty

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"

	"minim/uncertainty/near"
)

// moments of a node whose mean and variance follow in closed form from
// those of the influences, because they are made from independent parts.
type moments struct {
	node           Node
	mean, variance float64
}

// composer makes random models with their moments; the relative u of an
// influence is up to spread.
type composer struct {
	*Model
	random *rand.Rand
	spread float64
}

// quantity is made from about n influences.
func (c *composer) quantity(n int) moments {
	if n <= 1 {
		return c.influence()
	}
	part := 1 + c.random.IntN(n-1)
	switch c.random.IntN(6) {
	case 0:
		return c.over(c.quantity(n - 1))
	case 1:
		return c.square(c.quantity(part), c.quantity(n-part))
	case 2, 3:
		return c.times(c.quantity(part), c.quantity(n-part))
	case 4:
		return c.plus(c.quantity(part), c.quantity(n-part), 1)
	default:
		return c.plus(c.quantity(part), c.quantity(n-part), -1)
	}
}

// influence has a mean between 1 and 2, and any of the distributions.
func (c *composer) influence() moments {
	mean := 1 + c.random.Float64()
	u := mean * c.spread * c.random.Float64()
	d := randomDistribution(c.random, mean, u)
	if t, student := d.(StudentT); student {
		// Error estimates rest on fourth moments, of squares on eighth ones.
		t.Nu += 20
		d = t
	}
	return c.add(d)
}

func (c *composer) add(d Distribution) moments {
	n := c.Influence(Influence{Code: Code(fmt.Sprint(len(c.influences))), Distribution: d})
	return moments{n, d.Summary().Mean, variance(d)}
}

// plus: means and variances add.
func (c *composer) plus(a, b moments, sign float64) moments {
	n := c.Add(a.node, b.node)
	if sign < 0 {
		n = c.Subtract(a.node, b.node)
	}
	return moments{n, a.mean + sign*b.mean, a.variance + b.variance}
}

// times: Var[ab] = Var a Var b + Var a E[b]² + Var b E[a]².
func (c *composer) times(a, b moments) moments {
	return moments{c.Multiply(a.node, b.node), a.mean * b.mean, a.variance*b.variance + a.variance*b.mean*b.mean + b.variance*a.mean*a.mean}
}

// over divides by a rectangular quantity x between 1 - h and 1 + h, for which
// E[1/x] = artanh(h)/h and E[1/x²] = 1/(1 - h²).
func (c *composer) over(a moments) moments {
	h := min(0.5, c.spread*c.random.Float64())
	x := c.add(Rectangular{Low: 1 - h, High: 1 + h})
	inverse := math.Atanh(h) / h
	variance := 1/(1-h*h) - inverse*inverse
	if h < 0.02 { // its Taylor series, since the difference cancels
		variance = h * h * (1./3 + h*h*(22./45+h*h*61./105))
	}
	m := c.times(a, moments{x.node, inverse, variance})
	m.node = c.Divide(a.node, x.node)
	return m
}

// square is a x + b x², with an influence x that both terms share. Given a and
// b at their means, with d = x - E[x] and s = a + 2 b E[x]:
//
//	Var[a x + b x²] = s² E[d²] + 2 s b E[d³] + b² (E[d⁴] - E[d²]²)
//
// and what a and b scatter adds Var a E[x²] + Var b E[x⁴].
func (c *composer) square(a, b moments) moments {
	x := c.influence()
	in := c.influences[c.nodes[x.node].left].Distribution
	m, d2 := x.mean, x.variance
	d3, d4 := in.Summary().Skewness*math.Pow(d2, 1.5), in.Summary().Kurtosis*d2*d2
	x4 := m*m*m*m + 6*m*m*d2 + 4*m*d3 + d4
	s := a.mean + 2*b.mean*m
	x2 := c.Multiply(x.node, x.node)
	return moments{
		c.Add(c.Multiply(a.node, x.node), c.Multiply(b.node, x2)),
		a.mean*m + b.mean*(m*m+d2),
		s*s*d2 + 2*s*b.mean*d3 + b.mean*b.mean*(d4-d2*d2) + a.variance*(m*m+d2) + b.variance*x4,
	}
}

// TestSimulatedMoments holds mean and standard deviation of simulations against
// exact ones. Over many models the differences, in units of the standard errors
// that the simulation states, must be those of honest standard errors: of mean
// square 1, within five times the scatter √(2/n) of that.
func TestSimulatedMoments(t *testing.T) {
	skipUnderRace(t)
	for _, spread := range []float64{0.003, 0.1, 0.3} {
		t.Run(fmt.Sprint("relative u up to ", spread), func(t *testing.T) {
			means, deviations := &differences{}, &differences{}
			for i := range 300 {
				c := &composer{new(Model), rand.New(rand.NewPCG(uint64(i), uint64(1000*spread))), spread}
				q := c.quantity(2 + c.random.IntN(6))
				mc := simulate(t, c.Model, q.node, Settings{Trials: fewestTrials, Seed: uint64(i)})
				u := math.Sqrt(q.variance)
				what := fmt.Sprint("model ", i)
				means.add(t, what+", mean", q.mean, mc.Mean, mc.MeanError, u)
				deviations.add(t, what+", SD", u, mc.StandardDeviation, mc.DeviationError, u)
			}
			means.check(t, "mean")
			deviations.check(t, "SD")
		})
	}
}

// differences collects them in units of their standard errors.
type differences struct{ n, sum, squares float64 }

// add holds a figure against the exact one. Where the model is linear the figure
// is exact up to rounding.
func (d *differences) add(t *testing.T, what string, want, got, standardError, u float64) {
	t.Helper()
	if standardError < 1e-10*u {
		near.Absolute(t, what, want, got, 1e-9*u)
		return
	}
	z := (got - want) / standardError
	near.Absolute(t, what+" in standard errors", 0, z, 6)
	d.n++
	d.sum += z
	d.squares += z * z
}

func (d *differences) check(t *testing.T, what string) {
	t.Helper()
	assert.Equal(t, true, d.n > 200, "%s: enough that are not exact", what)
	near.Absolute(t, what+", mean difference", 0, d.sum/d.n, 5/math.Sqrt(d.n))
	near.Absolute(t, what+", mean square difference", 1, d.squares/d.n, 5*math.Sqrt(2/d.n))
}
