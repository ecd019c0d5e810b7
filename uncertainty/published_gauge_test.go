package uncertainty

import (
	"math"
	"testing"
)

// gaugeInputs are the input quantities of the end gauge, in nm and °C.
type gaugeInputs struct{ standard, difference, alpha, theta, deltaAlpha, deltaTheta Node }

// length is JCGM 100, H.1 in its first-order form:
//
//	l = l_S + d - l_S (δα θ + α_S δθ)
func (g gaugeInputs) length(m *Model) Node {
	strain := m.Add(m.Multiply(g.deltaAlpha, g.theta), m.Multiply(g.alpha, g.deltaTheta))
	return m.Subtract(m.Add(g.standard, g.difference), m.Multiply(g.standard, strain))
}

// gaugeOf is H.1 with u as it follows from what is stated: 75 nm for k = 3, s =
// 13 nm and five readings, 0.01 µm at 95 % with t = 2.57, 0.02 µm for 3 σ.
func gaugeOf(m *Model) gaugeInputs {
	return gaugeInputs{
		standard: known(m, "l_S", Normal{Mu: 50_000_623, Sigma: 25}, 18),
		difference: m.Add(known(m, "d", Normal{Mu: 215, Sigma: 13 / math.Sqrt(5)}, 24),
			known(m, "d1", Normal{Mu: 0, Sigma: 10 / 2.57}, 5), known(m, "d2", Normal{Mu: 0, Sigma: 20.0 / 3}, 8)),
		alpha:      add(m, "α_S", Rectangular{Low: 9.5e-6, High: 13.5e-6}),
		theta:      m.Add(add(m, "θ", Normal{Mu: -0.1, Sigma: 0.2}), add(m, "Δ", Arcsine{-0.5, 0.5})),
		deltaAlpha: known(m, "δα", PlusMinus(1e-6), 50),
		deltaTheta: known(m, "δθ", PlusMinus(0.05), 2),
	}
}

func endGauge(t testing.TB) quantities {
	m := new(Model)
	g := gaugeOf(m)
	l := g.length(m)
	a, d, theta := propagate(t, m, l, 0.99), propagate(t, m, g.difference, 0.95), standardUncertainty(t, m, g.theta)
	truncated := math.Floor(a.DegreesOfFreedom)
	expanded := CoverageFactor(0.99, truncated) * a.StandardUncertainty
	f := exactly(map[string]float64{
		"u(d1) with the exact t": 10 / CoverageFactor(0.95, 5), "u(α_S)": line(t, a, "α_S").StandardUncertainty,
		"u(δα)": line(t, a, "δα").StandardUncertainty, "u(δθ)": line(t, a, "δθ").StandardUncertainty,
		"u(d combined)": d.StandardUncertainty, "u²(d combined)": math.Pow(d.StandardUncertainty, 2), "ν(d combined)": d.DegreesOfFreedom,
		"u(θ combined)": theta, "u²(θ combined)": theta * theta, "t99 for the truncated ν": CoverageFactor(0.99, truncated),
		"U99 for the truncated ν": expanded, "U99": a.ExpandedUncertainty, "U99 relative": expanded / a.Value,
		"lower end over 50 mm": a.Value - expanded - 50e6, "upper end over 50 mm": a.Value + expanded - 50e6,
	})
	alone := contributionsOf(t, a, "d", "d1", "d2", "α_S", "θ", "Δ")
	return f.with(ofGauge(t, m, g, l, a), alone)
}

// endGaugeFromTable takes the rounded u of table H.1 for the combined inputs.
func endGaugeFromTable(t testing.TB) quantities {
	m := new(Model)
	g := gaugeInputs{
		standard:   known(m, "l_S", Normal{Mu: 50_000_623, Sigma: 25}, 18),
		difference: known(m, "d", Normal{Mu: 215, Sigma: 9.7}, 25.6),
		alpha:      add(m, "α_S", Normal{Mu: 11.5e-6, Sigma: 1.2e-6}),
		theta:      add(m, "θ", Normal{Mu: -0.1, Sigma: 0.41}),
		deltaAlpha: known(m, "δα", Normal{Mu: 0, Sigma: 0.58e-6}, 50),
		deltaTheta: known(m, "δθ", Normal{Mu: 0, Sigma: 0.029}, 2),
	}
	l := g.length(m)
	a := propagate(t, m, l, 0.99)
	f := exactly(map[string]float64{"U99 for the truncated ν": CoverageFactor(0.99, math.Floor(a.DegreesOfFreedom)) * a.StandardUncertainty})
	return f.with(ofGauge(t, m, g, l, a))
}

// ofGauge are the quantities that both have. The terms of second order are those of
// models of one product each.
func ofGauge(t testing.TB, m *Model, g gaugeInputs, l Node, a Analytic) quantities {
	nominal := m.Constant(50_000_623)
	second := secondOrder(t, m, l)
	onTheta := secondOrder(t, m, m.Multiply(nominal, m.Multiply(g.deltaAlpha, g.theta)))
	onAlpha := secondOrder(t, m, m.Multiply(nominal, m.Multiply(g.alpha, g.deltaTheta)))
	ofDifference := 100 - sum(sharesOf(t, a, "l_S", "δα", "δθ"))
	f := exactly(map[string]float64{
		"l/mm": a.Value / 1e6, "u": a.StandardUncertainty, "u²": math.Pow(a.StandardUncertainty, 2), "u relative": a.StandardUncertainty / a.Value,
		"ν_eff": a.DegreesOfFreedom, "contribution of d combined": standardUncertainty(t, m, g.difference), "share of d combined": ofDifference,
		"second-order term of δα and θ": math.Sqrt(onTheta.Variance), "second-order term of α_S and δθ": math.Sqrt(onAlpha.Variance),
		"u of second order": second.StandardUncertainty,
	})
	return f.with(contributionsOf(t, a, "l_S", "δα", "δθ"), sharesOf(t, a, "l_S", "δα", "δθ"))
}

func sum(f quantities) float64 {
	total := 0.0
	for _, x := range f {
		total += x.value
	}
	return total
}

// endGaugeSimulated: since the inputs are independent, have mean 0 and enter
// bilinearly, the standard deviation is exactly the u of second order.
func endGaugeSimulated(t testing.TB) quantities {
	m := new(Model)
	mc := simulate(t, m, m.Subtract(gaugeOf(m).length(m), m.Constant(50e6)), Settings{Trials: trials, Seed: 1, Coverage: 0.99})
	return meanAndSD(&mc).with(ends(&mc))
}

// fullLength is model (36) of JCGM 101, 9.5, whose first-order form is length:
//
//	l = (l_S (1 + α_S (θ - δθ)) + d) / (1 + (α_S + δα) θ)
func (g gaugeInputs) fullLength(m *Model) Node {
	one := m.Constant(1)
	standard := m.Multiply(g.standard, m.Add(one, m.Multiply(g.alpha, m.Subtract(g.theta, g.deltaTheta))))
	return m.Divide(m.Add(standard, g.difference), m.Add(one, m.Multiply(m.Add(g.alpha, g.deltaAlpha), g.theta)))
}

// gaugeBlockInputs are those of JCGM 101, 9.5.
func gaugeBlockInputs(m *Model) gaugeInputs {
	return gaugeInputs{
		standard: add(m, "L_s", StudentT{Mu: 50_000_623, Sigma: 25, Nu: 18}),
		difference: m.Add(add(m, "D", StudentT{Mu: 215, Sigma: 6, Nu: 24}),
			add(m, "d1", StudentT{Mu: 0, Sigma: 4, Nu: 5}), add(m, "d2", StudentT{Mu: 0, Sigma: 7, Nu: 8})),
		alpha:      add(m, "α_s", Rectangular{Low: 9.5e-6, High: 13.5e-6}),
		theta:      m.Add(add(m, "θ0", Normal{Mu: -0.1, Sigma: 0.2}), add(m, "Δ", Arcsine{-0.5, 0.5})),
		deltaAlpha: add(m, "δα", InexactRectangular{-1.0e-6, 1.0e-6, 0.1e-6}),
		deltaTheta: add(m, "δθ", InexactRectangular{-0.050, 0.050, 0.025}),
	}
}

// gaugeBlock is the excess over 50 mm with 99 % intervals.
func gaugeBlock(length func(gaugeInputs, *Model) Node) example {
	return func(t testing.TB) quantities {
		mc := gaugeBlockSimulated(t, length, 0.99)
		return meanAndSD(&mc).with(ends(&mc), shortestLength(&mc))
	}
}

func gaugeBlock95(t testing.TB) quantities {
	mc := gaugeBlockSimulated(t, gaugeInputs.length, 0.95)
	return ends(&mc)
}

func gaugeBlockSimulated(t testing.TB, length func(gaugeInputs, *Model) Node, coverage float64) MonteCarlo {
	m := new(Model)
	excess := m.Subtract(length(gaugeBlockInputs(m), m), m.Constant(50e6))
	return simulate(t, m, excess, Settings{Trials: trials, Seed: 27, Coverage: coverage})
}
