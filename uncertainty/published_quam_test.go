package uncertainty

import (
	"fmt"
	"math"
	"testing"
)

// quamExamples are those of the EURACHEM/CITAC guide CG 4 (QUAM), and the 10 mL
// pipette of a course that follows it.
var quamExamples = map[string]example{
	"A1 unrounded":           a1Unrounded,
	"A1 from table values":   a1FromTable,
	"A1 simulated":           a1Simulated,
	"A2 molar mass":          molarMass,
	"1.6 conversion recipes": recipes,
	"Tartu pipette":          tartuPipette,
}

// calibrationStandard is example A1, in mg/L: c = 1000 m P/V.
func calibrationStandard(m *Model) Node {
	return cadmium(m, Rectangular{Low: 0.9998, High: 1.0000}, flask(m))
}

func cadmium(m *Model, purity Distribution, volume Node) Node {
	amount := m.Multiply(add(m, "mass", Normal{Mu: 100.28, Sigma: 0.05}), add(m, "purity", purity))
	return m.Divide(m.Multiply(m.Constant(1000), amount), volume)
}

// flask is the volume of A1 in mL.
func flask(m *Model) Node {
	return m.Add(m.Constant(100), add(m, "calibration", Peaked(0.1)),
		add(m, "filling", Normal{Mu: 0, Sigma: 0.02}), add(m, "temperature", PlusMinus(0.084)))
}

func a1Unrounded(t testing.TB) quantities {
	m := new(Model)
	volume := flask(m)
	c := cadmium(m, Rectangular{Low: 0.9998, High: 1.0000}, volume)
	a := propagate(t, m, c, 0.95)
	f := exactly(map[string]float64{
		"u(V) from 0.04, 0.02 and 0.05": standardUncertainty(t, m, m.Add(
			add(m, "rounded calibration", Normal{Mu: 0, Sigma: 0.04}), add(m, "rounded filling", Normal{Mu: 0, Sigma: 0.02}), add(m, "rounded temperature", Normal{Mu: 0, Sigma: 0.05}))),
		"u(V) without repeatability": standardUncertainty(t, m, m.Add(add(m, "calibration", Peaked(0.1)), add(m, "temperature", PlusMinus(0.084)))),
	})
	return f.with(ofCadmium(t, m, volume, c), sharesOf(t, a, "calibration", "filling", "temperature"))
}

// a1FromTable takes the rounded u of purity and volume.
func a1FromTable(t testing.TB) quantities {
	m := new(Model)
	volume := add(m, "volume", Normal{Mu: 100, Sigma: 0.07})
	return ofCadmium(t, m, volume, cadmium(m, Normal{Mu: 0.9999, Sigma: 0.000058}, volume))
}

// ofCadmium are the lines of the table of A1. The volume is what is not mass or
// purity.
func ofCadmium(t testing.TB, m *Model, volume, c Node) quantities {
	a, v := propagate(t, m, c, 0.95), propagate(t, m, volume, 0.95)
	u, mass, purity := a.StandardUncertainty, line(t, a, "mass"), line(t, a, "purity")
	ofVolume := 1 - mass.Share - purity.Share
	f := exactly(map[string]float64{
		"c": a.Value, "u(c)": u, "u(c)/c": u / a.Value, "U for k = 2": 2 * u,
		"u(m)": mass.StandardUncertainty, "u(m)/m": mass.StandardUncertainty / mass.Distribution.Summary().Mean,
		"u(P)": purity.StandardUncertainty, "u(P)/P": purity.StandardUncertainty / purity.Distribution.Summary().Mean,
		"u(V)": v.StandardUncertainty, "u(V)/V": v.StandardUncertainty / v.Value,
		"contribution of V": u * math.Sqrt(ofVolume), "share of V": 100 * ofVolume,
	})
	return f.with(contributionsOf(t, a, "mass", "purity"), sharesOf(t, a, "mass", "purity"))
}

func a1Simulated(t testing.TB) quantities {
	m := new(Model)
	mc := simulate(t, m, calibrationStandard(m), Settings{Trials: trials, Seed: 3})
	return meanAndSD(&mc).with(ends(&mc))
}

// phthalate is potassium hydrogen phthalate with the atomic weights of 1995 and
// their limits.
var phthalate = []struct {
	symbol        string
	atoms         int
	weight, limit float64
}{{"C", 8, 12.0107, 0.0008}, {"H", 5, 1.00794, 0.00007}, {"O", 4, 15.9994, 0.0003}, {"K", 1, 39.0983, 0.0001}}

// molarMass: the atoms of an element share their error.
func molarMass(t testing.TB) quantities {
	m := new(Model)
	total, independent := m.Constant(0), m.Constant(0)
	f := make(quantities)
	for _, e := range phthalate {
		d := Rectangular{Low: e.weight - e.limit, High: e.weight + e.limit}
		sum := m.Constant(0)
		for i := range e.atoms {
			atom := add(m, e.symbol, d)
			sum = m.Add(sum, atom)
			own := m.Influence(Influence{Code: Code(e.symbol), Owner: Owner{Name: fmt.Sprint("atom ", i)}, Distribution: d})
			independent = m.Add(independent, own)
		}
		total = m.Add(total, sum)
		a := propagate(t, m, sum, 0.95)
		f.with(exactly(map[string]float64{
			"u(" + e.symbol + ")": d.Summary().StandardUncertainty, "n A for " + e.symbol: a.Value, "n u for " + e.symbol: a.StandardUncertainty,
		}))
	}
	a := propagate(t, m, total, 0.95)
	return f.with(exactly(map[string]float64{
		"M": a.Value, "u(M)": a.StandardUncertainty, "u of independent atoms": standardUncertainty(t, m, independent),
	}))
}

func recipes(t testing.TB) quantities {
	m := new(Model)
	linearity := m.Subtract(add(m, "gross", PlusMinus(0.15)), add(m, "tare", PlusMinus(0.15)))
	warming := m.Multiply(m.Constant(100*2.1e-4), add(m, "Δt", PlusMinus(4)))
	return exactly(map[string]float64{
		"7 to 10":                Rectangular{Low: 7, High: 10}.Summary().StandardUncertainty,
		"flask ±0.1 mL, peaked":  Peaked(0.1).Summary().StandardUncertainty,
		"factor for 95 %":        CoverageFactor(0.95, math.Inf(1)),
		"100 mL, ±4 °C":          standardUncertainty(t, m, warming),
		"linearity ±0.15, twice": standardUncertainty(t, m, linearity),
	})
}

// tartuPipette is V = V_tol + V_rep + V_tol γ Δt, in mL.
func tartuPipette(t testing.TB) quantities {
	pipette := func(m *Model, repeatability Distribution) Node {
		tolerance := add(m, "tolerance", Rectangular{Low: 9.97, High: 10.03})
		scatter := known(m, "repeatability", repeatability, 50)
		warmth := m.Multiply(m.Constant(0.00021), add(m, "temperature", PlusMinus(4)))
		return m.Add(m.Add(tolerance, scatter), m.Multiply(tolerance, warmth))
	}
	m := new(Model)
	a := propagate(t, m, pipette(m, Normal{Mu: 0, Sigma: 0.04}), 0.95)
	m = new(Model)
	mc := simulate(t, m, pipette(m, StudentT{Mu: 0, Sigma: 0.04, Nu: 50}), Settings{Trials: trials, Seed: 4})
	f := exactly(map[string]float64{
		"V": a.Value, "u(V)": a.StandardUncertainty, "ν_eff": a.DegreesOfFreedom,
		"t95 for the truncated ν": CoverageFactor(0.95, math.Floor(a.DegreesOfFreedom)),
		"u of the tolerance":      line(t, a, "tolerance").StandardUncertainty,
		"u of the temperature":    line(t, a, "temperature").Contribution,
	})
	simulated := meanAndSD(&mc).with(ends(&mc))
	delete(simulated, "mean")
	return f.with(sharesOf(t, a, "tolerance", "repeatability", "temperature"), simulated)
}
