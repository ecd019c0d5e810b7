package uncertainty

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"
)

// calibration of a thermometer, JCGM 100, table H.6: temperatures in °C, and the corrections
// found there.
var calibration = [2][]float64{
	{21.521, 22.012, 22.512, 23.003, 23.507, 23.999, 24.513, 25.002, 25.503, 26.010, 26.511},
	{-0.171, -0.169, -0.166, -0.159, -0.164, -0.165, -0.156, -0.157, -0.159, -0.161, -0.160},
}

// line fits b = y1 + y2 (t - 20 °C), with the standard uncertainties of y1 and y2, their
// correlation coefficient and the standard deviation of one b, as in H.3.2.
func fittedLine() (y1, y2, u1, u2, r, s float64) {
	var n, sum, squares, b, mixed, rest float64
	for i, t := range calibration[0] {
		x, y := t-20, calibration[1][i]
		n, sum, squares, b, mixed = n+1, sum+x, squares+x*x, b+y, mixed+x*y
	}
	d := n*squares - sum*sum
	y1, y2 = (b*squares-mixed*sum)/d, (n*mixed-b*sum)/d
	for i, t := range calibration[0] {
		e := calibration[1][i] - y1 - y2*(t-20)
		rest += e * e
	}
	s = math.Sqrt(rest / (n - 2))
	return y1, y2, s * math.Sqrt(squares/d), s * math.Sqrt(n/d), -sum / math.Sqrt(n*squares), s
}

// correctionAt30 is the model of the correction at 30 °C (H.3.4).
func correctionAt30(t testing.TB) (*Model, Node) {
	y1, y2, u1, u2, r, _ := fittedLine()
	m := new(Model)
	nu := float64(len(calibration[0]) - 2)
	a, b := known(m, "y1", Normal{Mu: y1, Sigma: u1}, nu), known(m, "y2", Normal{Mu: y2, Sigma: u2}, nu)
	require.NoError(t, m.Correlate([]Node{a, b}, pair(r)))
	return m, m.Add(a, m.Multiply(m.Constant(10), b))
}

func thermometer(t testing.TB) quantities {
	y1, y2, u1, u2, r, s := fittedLine()
	m, out := correctionAt30(t)
	a := propagate(t, m, out, 0.95)
	return exactly(map[string]float64{
		"y1/°C": y1, "s(y1)/°C": u1, "y2": y2, "s(y2)": u2, "r(y1, y2)": r, "s/°C": s,
		"b(30 °C)/°C": a.Value, "u/°C": a.StandardUncertainty, "ν": a.DegreesOfFreedom, "k": a.CoverageFactor,
	})
}

func thermometerSimulated(t testing.TB) quantities {
	m, out := correctionAt30(t)
	mc := simulate(t, m, out, Settings{Trials: trials, Seed: 23})
	return meanAndSD(&mc).with(ends(&mc))
}
