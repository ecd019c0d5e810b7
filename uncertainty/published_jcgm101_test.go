package uncertainty

import (
	"maps"
	"math"
	"strconv"
	"testing"

	"minim/uncertainty/rounding"
)

// jcgm101Examples are those of JCGM 101:2008.
var jcgm101Examples = func() map[string]example {
	one, normal := PlusMinus(math.Sqrt(3)), Normal{Mu: 0, Sigma: 1}
	examples := map[string]example{
		"7.9.2":               tolerances,
		"7.9.4":               leastTrials,
		"9.2.2":               additive(normal, normal),
		"9.2.3":               additive(one, one),
		"9.2.4":               additive(one, PlusMinus(10*math.Sqrt(3))),
		"8.1 and 9.2":         validations,
		"9.3 analytic":        massCalibration,
		"9.3 simulated":       massCalibrationSimulated,
		"9.3 model (23)":      massCalibrationInFull,
		"9.5 model (37)":      gaugeBlock(gaugeInputs.length),
		"9.5 model (36)":      gaugeBlock(gaugeInputs.fullLength),
		"9.5 model (37) 95 %": gaugeBlock95,
		"F.2.7 and F.2.8":     lossIntervals,
	}
	maps.Copy(examples, lossExamples())
	return examples
}()

// tolerances are δ = ½ 10^l.
func tolerances(testing.TB) quantities {
	return exactly(map[string]float64{
		"u = 0.00035 g, two digits": rounding.Tolerance(0.00035, 2),
		"u = 0.00035 g, one digit":  rounding.Tolerance(0.00035, 1),
		"u = 2 K, one digit":        rounding.Tolerance(2, 1),
	})
}

func leastTrials(testing.TB) quantities {
	f := make(quantities)
	for _, p := range []float64{0.95, 0.99, 0.995} {
		f["M for p = "+strconv.FormatFloat(p, 'g', -1, 64)] = figure{value: float64(Settings{Coverage: p}.leastTrials())}
	}
	return f
}

// additive is the sum of three equal influences and a fourth.
func additive(x, fourth Distribution) example {
	return func(t testing.TB) quantities {
		m, y := sumOf(x, x, x, fourth)
		a := propagate(t, m, y, 0.95)
		mc := simulate(t, m, y, Settings{Trials: trials, Seed: 9})
		f := quantities{"d_low": {math.Abs(a.Lower() - mc.Lower), mc.LowerError}, "d_high": {math.Abs(a.Upper() - mc.Upper), mc.UpperError}}
		f.with(exactly(map[string]float64{
			"u": a.StandardUncertainty, "U": a.ExpandedUncertainty,
			"δ for one digit": rounding.Tolerance(a.StandardUncertainty, 1), "δ for two digits": rounding.Tolerance(a.StandardUncertainty, 2),
		}))
		return f.with(meanAndSD(&mc), ends(&mc))
	}
}

// validations are the decisions of the additive models, 1 for yes. That of 9.2.3
// with two digits is left out: d is so close to δ that trials cannot tell.
func validations(t testing.TB) quantities {
	f := make(quantities)
	for _, c := range []struct {
		name      string
		x, fourth Distribution
		digits    int
	}{
		{"9.2.2, two digits", Normal{Mu: 0, Sigma: 1}, Normal{Mu: 0, Sigma: 1}, 2},
		{"9.2.3, one digit", PlusMinus(math.Sqrt(3)), PlusMinus(math.Sqrt(3)), 1},
		{"9.2.4, one digit", PlusMinus(math.Sqrt(3)), PlusMinus(10 * math.Sqrt(3)), 1},
		{"9.2.4, two digits", PlusMinus(math.Sqrt(3)), PlusMinus(10 * math.Sqrt(3)), 2},
	} {
		m, y := sumOf(c.x, c.x, c.x, c.fourth)
		a := propagate(t, m, y, 0.95)
		mc := simulate(t, m, y, Settings{Trials: trials, Seed: 10})
		d := max(math.Abs(a.Lower()-mc.Lower), math.Abs(a.Upper()-mc.Upper))
		f[c.name] = figure{value: truth(d <= rounding.Tolerance(a.StandardUncertainty, c.digits))}
	}
	return f
}
