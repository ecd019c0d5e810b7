package uncertainty

import (
	"math/big"
	"testing"

	"minim/uncertainty/near"
)

// digitsKept is the precision in bits of the evaluation of a model with long
// numbers: differences of third order, with steps of 2^-40 u, lose 120 bits and
// what the derivative itself is smaller than the value.
const digitsKept = 320

func long(x float64) *big.Float { return new(big.Float).SetPrec(digitsKept).SetFloat64(x) }

// plane evaluates a model with long numbers at mean + 2^-40 (a s + b t), where s
// and t have one entry for each influence. It is an implementation of its own:
// nothing of the engine but its list of nodes.
type plane struct {
	m      *Model
	out    Node
	needed []bool
	s, t   []float64
	seen   map[[2]int]*big.Float
}

func newPlane(m *Model, out Node, s, t []float64) *plane {
	return &plane{m, out, m.reachable(out), s, t, make(map[[2]int]*big.Float)}
}

func (p *plane) at(a, b int) *big.Float {
	if v, ok := p.seen[[2]int{a, b}]; ok {
		return v
	}
	v := make([]*big.Float, p.out+1)
	for i, needed := range p.needed {
		if needed {
			v[i] = p.evaluate(&p.m.nodes[i], v, a, b)
		}
	}
	p.seen[[2]int{a, b}] = v[p.out]
	return v[p.out]
}

func (p *plane) evaluate(n *node, v []*big.Float, a, b int) *big.Float {
	result := new(big.Float).SetPrec(digitsKept)
	switch n.op {
	case opConstant:
		return result.SetFloat64(n.value)
	case opInfluence:
		// a and b are small and s and t doubles: two products fit into 320 bits.
		step := result.Add(product(float64(a), p.s[n.left]), product(float64(b), p.t[n.left]))
		return result.Add(step.SetMantExp(step, -40), long(p.m.influences[n.left].Distribution.Summary().Mean))
	case opSine:
		return longSine(v[n.left], 1)
	case opCosine:
		return longSine(v[n.left], 0)
	case opAdd:
		return result.Add(v[n.left], v[n.right])
	case opSubtract:
		return result.Sub(v[n.left], v[n.right])
	case opMultiply:
		return result.Mul(v[n.left], v[n.right])
	default:
		return result.Quo(v[n.left], v[n.right])
	}
}

func product(a, b float64) *big.Float { return new(big.Float).Mul(long(a), long(b)) }

// longSine adds up Σ ± x^k/k! over odd k, or over even k for the cosine.
func longSine(x *big.Float, k int64) *big.Float {
	square := new(big.Float).SetPrec(digitsKept).Mul(x, x)
	term := long(1)
	if k == 1 {
		term.Set(x)
	}
	sum := long(0)
	for term.Sign() != 0 && term.MantExp(nil) > -digitsKept {
		sum.Add(sum, term)
		term.Mul(term, square)
		term.Quo(term, long(float64(-(k+1)*(k+2))))
		k += 2
	}
	return sum
}

// stencil gives the weights of a central difference at the points (a, b).
type stencil map[[2]int]float64

// The derivatives along s and t, constructed: each is exact for polynomials of
// its order and the next, so that steps of 2^-40 u leave 2^-80 of it.
var (
	alongS   = stencil{{1, 0}: 0.5, {-1, 0}: -0.5}
	alongSS  = stencil{{1, 0}: 1, {0, 0}: -2, {-1, 0}: 1}
	alongST  = stencil{{1, 1}: 0.25, {1, -1}: -0.25, {-1, 1}: -0.25, {-1, -1}: 0.25}
	alongSSS = stencil{{2, 0}: 0.5, {1, 0}: -1, {-1, 0}: 1, {-2, 0}: -0.5}
	alongSST = stencil{{1, 1}: 0.5, {0, 1}: -1, {-1, 1}: 0.5, {1, -1}: -0.5, {0, -1}: 1, {-1, -1}: -0.5}
)

// difference is the derivative of the given order by a stencil; 0 for what is
// left of long numbers that cancel.
func (p *plane) difference(w stencil, order int) float64 {
	sum := long(0)
	for point, weight := range w {
		sum.Add(sum, new(big.Float).Mul(long(weight), p.at(point[0], point[1])))
	}
	if sum.MantExp(nil) < p.at(0, 0).MantExp(nil)-digitsKept+30 {
		return 0
	}
	return toFloat(sum.SetMantExp(sum, 40*order))
}

// TestLongSine: sin 1 and cos 1 from Abramowitz and Stegun, table 4.6, to 23
// decimals; the sum of squares to all digits.
func TestLongSine(t *testing.T) {
	near.Relative(t, "sin 1", 0.84147098480789650665250, toFloat(longSine(long(1), 1)), 1e-16)
	near.Relative(t, "cos 1", 0.54030230586813971740094, toFloat(longSine(long(1), 0)), 1e-16)
	sin, cos := longSine(long(0.7), 1), longSine(long(0.7), 0)
	rest := new(big.Float).Add(sin.Mul(sin, sin), cos.Mul(cos, cos))
	rest.Sub(rest, long(1))
	near.Absolute(t, "sin² + cos² - 1", 0, toFloat(rest), 0x1p-310)
}

func toFloat(x *big.Float) float64 {
	f, _ := x.Float64()
	return f
}
