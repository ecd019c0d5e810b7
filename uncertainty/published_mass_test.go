package uncertainty

import (
	"math"
	"testing"

	"minim/uncertainty/rounding"
)

// weight is a weight calibrated against a reference, JCGM 101, 9.3: influences in
// mg and kg/m³.
type weight struct{ reference, addition, air, density, standard Node }

func weightOf(m *Model) weight {
	return weight{
		reference: add(m, "m_Rc", Normal{Mu: 100_000, Sigma: 0.050}), addition: add(m, "δm_Rc", Normal{Mu: 1.234, Sigma: 0.020}),
		air: add(m, "ρa", Rectangular{Low: 1.1, High: 1.3}), density: add(m, "ρW", Rectangular{Low: 7000, High: 9000}), standard: add(m, "ρR", Rectangular{Low: 7950, High: 8050}),
	}
}

// approximate is (m_Rc + δm_Rc) (1 + (ρa - 1.2) (1/ρW - 1/ρR)) - 100 g.
func (w weight) approximate(m *Model) Node {
	one := m.Constant(1)
	bulk := m.Subtract(m.Divide(one, w.density), m.Divide(one, w.standard))
	factor := m.Add(one, m.Multiply(m.Subtract(w.air, m.Constant(1.2)), bulk))
	return m.Subtract(m.Multiply(m.Add(w.reference, w.addition), factor), m.Constant(100_000))
}

// full is model (23), (m_Rc + δm_Rc) (ρa - ρR)/(1.2 - ρR) × (1.2 - ρW)/(ρa - ρW) - 100 g.
func (w weight) full(m *Model) Node {
	a, b := m.Subtract(w.air, w.standard), m.Subtract(m.Constant(1.2), w.standard)
	c, d := m.Subtract(m.Constant(1.2), w.density), m.Subtract(w.air, w.density)
	factor := m.Multiply(m.Divide(a, b), m.Divide(c, d))
	return m.Subtract(m.Multiply(m.Add(w.reference, w.addition), factor), m.Constant(100_000))
}

// massCalibration: GUF1 is of first and GUF2 of second order, both with k = 1.96.
func massCalibration(t testing.TB) quantities {
	m := new(Model)
	w := weightOf(m)
	y := w.approximate(m)
	a, second := propagate(t, m, y, 0.95), secondOrder(t, m, y)
	f := make(quantities)
	for name, u := range map[string]float64{"GUF1 ": a.StandardUncertainty, "GUF2 ": second.StandardUncertainty} {
		f.with(exactly(map[string]float64{"y": a.Value, "u": u, "lower": a.Value - 1.96*u, "upper": a.Value + 1.96*u}).prefixed(name))
	}
	for _, c := range a.Budget {
		f["sensitivity to "+string(c.Code)] = figure{value: c.Sensitivity}
	}
	f["shift of second order"] = figure{value: second.Shift}
	w.standard = m.Constant(8000)
	ofDensity := secondOrder(t, m, w.approximate(m))
	w = weightOf(m)
	w.density = m.Constant(8000)
	ofStandard := secondOrder(t, m, w.approximate(m))
	return f.with(exactly(map[string]float64{
		"second-order term of ρa and ρW": math.Sqrt(ofDensity.Variance), "second-order term of ρa and ρR": math.Sqrt(ofStandard.Variance),
	}))
}

func massCalibrationSimulated(t testing.TB) quantities {
	m := new(Model)
	y := weightOf(m).approximate(m)
	a, second := propagate(t, m, y, 0.95), secondOrder(t, m, y)
	mc := simulate(t, m, y, Settings{Trials: trials, Seed: 23})
	const delta = 0.005 // one digit
	valid := func(u float64) float64 {
		return truth(math.Abs(a.Value-1.96*u-mc.Lower) <= delta && math.Abs(a.Value+1.96*u-mc.Upper) <= delta)
	}
	f := exactly(map[string]float64{
		"δ": rounding.Tolerance(a.StandardUncertainty, 1), "GUF1 valid": valid(a.StandardUncertainty), "GUF2 valid": valid(second.StandardUncertainty),
	})
	return f.with(meanAndSD(&mc), ends(&mc), shortestLength(&mc))
}

func massCalibrationInFull(t testing.TB) quantities {
	m := new(Model)
	mc := simulate(t, m, weightOf(m).full(m), Settings{Trials: trials, Seed: 24})
	f := meanAndSD(&mc).with(ends(&mc))
	delete(f, "mean")
	return f
}
