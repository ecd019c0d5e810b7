package uncertainty

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"minim/uncertainty/near"
)

// randomModels is the number of random models that a property is tried on.
const randomModels = 2000

// forRandomModels calls a test with random models, all different. The race
// detector, which learns little from them, gets a tenth.
func forRandomModels(t *testing.T, models int, check func(what string, random *rand.Rand, m *Model, out Node)) {
	t.Helper()
	if raceDetector {
		models /= 10
	}
	for i := range models {
		random := rand.New(rand.NewPCG(uint64(i), 1))
		m, out := randomModel(t, random)
		check(fmt.Sprint("model ", i), random, m, out)
	}
}

// TestDerivativesAlongDirections compares derivatives of first, second and third
// order along random directions, in which every influence moves by up to one u,
// with central differences.
func TestDerivativesAlongDirections(t *testing.T) {
	skipUnderRace(t)
	forRandomModels(t, randomModels, func(what string, random *rand.Rand, m *Model, out Node) {
		s, d := m.randomDirection(random), m.randomDirection(random)
		p := newPlane(m, out, s, d)
		needed, v := m.reachable(out), m.values(out, mean)
		end, most := m.jetAt(out, needed, s, d, make([]jet, out+1)), m.majorant(out, needed, v, s, d)
		within(t, what+", value", toFloat(p.at(0, 0)), v[out], most.f)
		within(t, what+", gradient", p.difference(alongS, 1), dot(m.gradient(out, v), s), most.s)
		within(t, what+", Hessian", p.difference(alongST, 2), dot(m.hessianTimes(out, v, s, newSweep(out)), d), 2*most.ss)
		within(t, what+", jet s", p.difference(alongS, 1), end.s, most.s)
		within(t, what+", jet s²", p.difference(alongSS, 2), 2*end.ss, 2*most.ss)
		within(t, what+", jet st", p.difference(alongST, 2), end.st, 2*most.ss)
		within(t, what+", jet s³", p.difference(alongSSS, 3), 6*end.sss, 6*most.sss)
		within(t, what+", jet s²t", p.difference(alongSST, 3), 2*end.sst, 6*most.sss)
	})
}

// TestDerivativesAlongAxes does so along one axis at a time, so that a small
// influence cannot hide behind a large one. Along t all axes move by g.
func TestDerivativesAlongAxes(t *testing.T) {
	forRandomModels(t, randomModels/40, func(what string, random *rand.Rand, m *Model, out Node) {
		needed, v := m.reachable(out), m.values(out, mean)
		gradient := m.gradient(out, v)
		axes, scale := m.axes(needed, gradient)
		m.setCurvatures(out, needed, axes, scale)
		d := make([]float64, len(m.influences))
		for i := range axes {
			for _, p := range axes[i].parts {
				d[p.influence] += axes[i].g * p.amount
			}
		}
		for i := range axes {
			a := &axes[i]
			s := make([]float64, len(m.influences))
			a.write(s)
			p := newPlane(m, out, s, d)
			// Only a bound along s tells how small the derivatives along it are.
			along, both := m.majorant(out, needed, v, s, nil), m.majorant(out, needed, v, s, d)
			within(t, what+", g", p.difference(alongS, 1), a.g*scale, along.s)
			within(t, what+", h", p.difference(alongSS, 2), a.h*scale, 2*along.ss)
			within(t, what+", third", p.difference(alongSSS, 3), a.third*scale, 6*along.sss)
			within(t, what+", others", p.difference(alongSST, 3), a.others*scale, 6*both.sss)
		}
	})
}

// within holds a derivative of the engine against a difference, which is exact
// to a double. The engine may be off by the rounding of some hundred
// operations, none of which cancels more than a digit, on terms that are no
// larger than the same derivative of the majorant: 1000 times 2^-53, which is
// five times what is found.
func within(t *testing.T, what string, want, got, majorant float64) {
	t.Helper()
	near.Absolute(t, what, want, got, 1e-13*majorant)
}

// randomDirection moves each influence by up to one u.
func (m *Model) randomDirection(random *rand.Rand) []float64 {
	d := make([]float64, len(m.influences))
	for i := range d {
		d[i] = (2*random.Float64() - 1) * m.influences[i].Distribution.Summary().StandardUncertainty
	}
	return d
}

// majorant bounds the terms that derivatives along s, t and s + t are added up
// from: it evaluates the model with the sizes of values and of Taylor
// coefficients along |s| + |t| instead of themselves, so that nothing cancels.
func (m *Model) majorant(out Node, needed []bool, v, s, t []float64) jet {
	jets := make([]jet, out+1)
	for i := range jets {
		n := &m.nodes[i]
		switch {
		case !needed[i]:
		case n.op == opConstant:
			jets[i] = jet{f: math.Abs(n.value)}
		case n.op == opInfluence:
			step := math.Abs(s[n.left])
			if t != nil {
				step += math.Abs(t[n.left])
			}
			jets[i] = jet{f: math.Abs(mean(&m.influences[n.left])), s: step}
		default:
			jets[i] = n.majorant(jets[n.left], jets[n.right], math.Abs(v[n.right]))
		}
	}
	return jets[out]
}

func (n *node) majorant(a, b jet, divisor float64) jet {
	switch n.op {
	case opSine, opCosine: // |f'|, |f''| and |f'''| are 1 at most
		return jet{1, a.s, a.ss + a.s*a.s/2, a.sss + a.s*a.ss + a.s*a.s*a.s/6, 0, 0, 0}
	case opAdd, opSubtract:
		return jet{a.f + b.f, a.s + b.s, a.ss + b.ss, a.sss + b.sss, 0, 0, 0}
	case opMultiply:
		return jet{a.f * b.f, a.f*b.s + a.s*b.f, a.f*b.ss + a.s*b.s + a.ss*b.f, a.f*b.sss + a.s*b.ss + a.ss*b.s + a.sss*b.f, 0, 0, 0}
	}
	c := jet{f: a.f / divisor}
	c.s = (a.s + c.f*b.s) / divisor
	c.ss = (a.ss + c.f*b.ss + c.s*b.s) / divisor
	c.sss = (a.sss + c.f*b.sss + c.s*b.ss + c.ss*b.s) / divisor
	return c
}
