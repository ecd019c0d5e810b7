package uncertainty

import (
	"fmt"
	"math"
	"strconv"
	"testing"
)

// dilutionExamples are those of weighing in air and of dilution in steps.
var dilutionExamples = func() map[string]example {
	examples := map[string]example{
		"Harvey 5.1":           pipetteByWeighing,
		"Harris, buoyancy":     trisInAir,
		"Harvey 4.9":           harveyDilutions,
		"Harvey 4.9 simulated": harveySimulated,
		"Harvey problem 11":    deliveries,
		"product, 10 factors":  productOfFactors(0.01, 10),
		"product, 4 factors":   productOfFactors(0.05, 4),
		"product, 5 factors":   productOfFactors(0.10, 5),

		"nine aliquots":           nineAliquots,
		"nine aliquots simulated": nineAliquotsSimulated,
	}
	for _, n := range []int{1, 2, 4} {
		for name, toTheMark := range map[string]bool{"to the mark": true, "with diluent": false} {
			examples[fmt.Sprintf("%d steps %s, fresh pieces", n, name)] = steps(n, toTheMark, fresh)
			examples[fmt.Sprintf("%d steps %s, one piece", n, name)] = steps(n, toTheMark, same)
		}
	}
	return examples
}()

// aliquots is nine times 1 mL in 10 mL, by a pipette whose s of 0.01 mL is from four readings.
func aliquots() (*Model, Node) {
	m := new(Model)
	sum := m.Constant(0)
	for i := range 9 {
		sum = m.Add(sum, ofReadings(m, fmt.Sprint("aliquot ", i), 1, 0.01, 4, Set{Owner: Owner{Name: "pipette"}}))
	}
	return m, m.Divide(sum, m.Constant(10))
}

func nineAliquots(t testing.TB) quantities {
	m, y := aliquots()
	a := propagate(t, m, y, 0.95)
	return exactly(map[string]float64{"k": a.CoverageFactor, "u": a.StandardUncertainty})
}

func nineAliquotsSimulated(t testing.TB) quantities {
	m, y := aliquots()
	mc := simulate(t, m, y, Settings{Trials: trials, Seed: 24})
	return ends(&mc)
}

// pipetteByWeighing: 9.9736 g of water at 25 °C, in air of 0.0012 g/mL against
// weights of 8.40 g/mL, by the usual approximation and in full.
func pipetteByWeighing(testing.TB) quantities {
	m := new(Model)
	one, air, weights, water := m.Constant(1), m.Constant(0.0012), m.Constant(8.40), m.Constant(0.99705)
	reading := m.Constant(9.9736)
	lift := m.Multiply(m.Subtract(m.Divide(one, water), m.Divide(one, weights)), air)
	mass := m.Multiply(reading, m.Add(one, lift))
	full := m.Multiply(reading, inAir(m, weights, water))
	plain := m.Divide(reading, water)
	volume := m.Divide(mass, water)
	short := m.Divide(m.Subtract(plain, volume), volume)
	return exactly(map[string]float64{
		"mass/g": m.Expected(mass), "volume/mL": m.Expected(volume), "volume without correction/mL": m.Expected(plain),
		"error without correction/%": 100 * m.Expected(short), "mass in full/g": m.Expected(full), "volume in full/mL": m.Expected(m.Divide(full, water)),
	})
}

// inAir is the correction (1 - ρa/ρ_weights)/(1 - ρa/ρ), ρa = 0.0012 g/mL.
func inAir(m *Model, weights, density Node) Node {
	one, air := m.Constant(1), m.Constant(0.0012)
	return m.Divide(m.Subtract(one, m.Divide(air, weights)), m.Subtract(one, m.Divide(air, density)))
}

func trisInAir(testing.TB) quantities {
	m := new(Model)
	mass := m.Multiply(m.Constant(100), inAir(m, m.Constant(8.0), m.Constant(1.33)))
	return exactly(map[string]float64{"mass/g": m.Expected(mass)})
}

// harvey appends both ways from 1.0 M to 0.0010 M: 1 mL to 1000 mL, or 20 mL to
// 1000 mL and 25 mL of that to 500 mL. The book takes tolerances as u.
func harvey(m *Model) map[string]Node {
	glass := func(name string, v, u float64) Node { return add(m, name, Normal{Mu: v, Sigma: u}) }
	first := m.Divide(glass("pipette 20 mL", 20, 0.03), glass("flask 1000 mL", 1000, 0.30))
	second := m.Divide(glass("pipette 25 mL", 25, 0.03), glass("flask 500 mL", 500, 0.20))
	return map[string]Node{
		"one step":  m.Divide(glass("pipette 1 mL", 1, 0.006), glass("other flask 1000 mL", 1000, 0.30)),
		"two steps": m.Multiply(first, second),
	}
}

func harveyDilutions(t testing.TB) quantities {
	m := new(Model)
	f := make(quantities)
	for name, out := range harvey(m) {
		a := propagate(t, m, out, 0.95)
		f.with(exactly(map[string]float64{"c": a.Value, "u relative": a.StandardUncertainty / a.Value}).prefixed(name + ", "))
	}
	return f
}

func harveySimulated(t testing.TB) quantities {
	m := new(Model)
	f := make(quantities)
	for name, out := range harvey(m) {
		mc := simulate(t, m, out, Settings{Trials: trials, Seed: 28})
		f[name] = figure{1e3 * mc.StandardDeviation, 1e3 * mc.DeviationError}
	}
	return f
}

// deliveries of 100 mL in parts, each with an error of its own.
func deliveries(t testing.TB) quantities {
	f := make(quantities)
	for _, c := range []struct {
		n    int
		v, u float64
	}{{2, 50, 0.05}, {4, 25, 0.03}, {10, 10, 0.02}} {
		m := new(Model)
		total := m.Constant(0)
		for i := range c.n {
			total = m.Add(total, add(m, strconv.Itoa(i), Normal{Mu: c.v, Sigma: c.u}))
		}
		f[fmt.Sprintf("u/mL of %d deliveries", c.n)] = figure{value: standardUncertainty(t, m, total)}
	}
	return f
}

// steps of one to ten with u of 1 % and 0.5 %, relative to the nominal strength,
// of first and second order and simulated.
func steps(n int, toTheMark bool, owner func(int) string) example {
	return func(t testing.TB) quantities {
		m := new(Model)
		out := m.Multiply(m.Constant(math.Pow10(n)), dilute(m, n, toTheMark, owner))
		a, second := propagate(t, m, out, 0.95), secondOrder(t, m, out)
		mc := simulate(t, m, out, Settings{Trials: trials, Seed: 11})
		f := exactly(map[string]float64{"c": a.Value, "u": a.StandardUncertainty, "mean of second order": 1 + second.Shift, "u of second order": second.StandardUncertainty})
		return f.with(meanAndSD(&mc).prefixed("simulated "))
	}
}

// productOfFactors 1 ± u, each independent.
func productOfFactors(u float64, n int) example {
	return func(t testing.TB) quantities {
		m := new(Model)
		y := m.Constant(1)
		for i := range n {
			y = m.Multiply(y, add(m, strconv.Itoa(i), Normal{Mu: 1, Sigma: u}))
		}
		mc := simulate(t, m, y, Settings{Trials: trials, Seed: 5})
		f := exactly(map[string]float64{"u": standardUncertainty(t, m, y), "u of second order": secondOrder(t, m, y).StandardUncertainty})
		return f.with(meanAndSD(&mc))
	}
}
