package uncertainty

import (
	"math"
	"strconv"
	"testing"

	"github.com/stretchr/testify/require"
	"gonum.org/v1/gonum/mat"
	"gonum.org/v1/gonum/stat"
)

// Five sets of readings of JCGM 100, H.2: V in V, I in A, φ in rad.
var impedanceSets = [3][]float64{
	{5.007, 4.994, 5.005, 4.990, 4.999},
	{19.663e-3, 19.639e-3, 19.640e-3, 19.685e-3, 19.678e-3},
	{1.0456, 1.0438, 1.0468, 1.0428, 1.0433},
}

var impedanceNames = [3]string{"V", "I", "φ"}

// impedance appends R = (V/I) cos φ, X = (V/I) sin φ and Z = V/I, in Ω.
func impedance(m *Model, v, i, phi Node) [3]Node {
	z := m.Divide(v, i)
	return [3]Node{m.Multiply(z, m.Cosine(phi)), m.Multiply(z, m.Sine(phi)), z}
}

// measured is the model of the means of the readings with these u and r, with their degrees
// of freedom or as if these were infinitely many.
func measured(t testing.TB, u [3]float64, r mat.Symmetric, few bool) (*Model, [3]Node) {
	m := new(Model)
	var in [3]Node
	for i, values := range impedanceSets {
		mean, _, nu := Readings(values)
		if !few {
			nu = 0
		}
		in[i] = known(m, impedanceNames[i], Normal{Mu: mean, Sigma: u[i]}, nu)
	}
	require.NoError(t, m.Correlate(in[:], r))
	return m, impedance(m, in[0], in[1], in[2])
}

// fromReadings returns u and r of the means of three sets of readings.
func fromReadings(sets [3][]float64) (u [3]float64, r *mat.SymDense) {
	r = mat.NewSymDense(3, nil)
	for i := range sets {
		_, s, nu := Readings(sets[i])
		u[i] = s / math.Sqrt(nu+1)
		for j := range sets {
			r.SetSym(i, j, stat.Correlation(sets[i], sets[j], nil))
		}
	}
	return u, r
}

func impedanceReadings(testing.TB) quantities {
	u, r := fromReadings(impedanceSets)
	f := exactly(map[string]float64{"r(V, I)": r.At(0, 1), "r(V, φ)": r.At(0, 2), "r(I, φ)": r.At(1, 2)})
	for i, unit := range []float64{1, 1e3, 1} {
		mean, _, nu := Readings(impedanceSets[i])
		f.with(exactly(map[string]float64{"mean of " + impedanceNames[i]: mean * unit, "u of " + impedanceNames[i]: u[i] * unit, "ν of " + impedanceNames[i]: nu}))
	}
	return f
}

// impedanceOf propagates the means with these u and r.
func impedanceOf(t testing.TB, u [3]float64, r mat.Symmetric) quantities {
	m, out := measured(t, u, r, true)
	j, err := m.PropagateJointly(out[:]...)
	require.NoError(t, err)
	f := exactly(map[string]float64{"r(R, X)": j.Correlation(0, 1), "r(R, Z)": j.Correlation(0, 2), "r(X, Z)": j.Correlation(1, 2)})
	for i, name := range []string{"R", "X", "Z"} {
		f[name] = figure{value: j.Values[i]}
		f["u("+name+")"] = figure{value: j.StandardUncertainty(i)}
		f["u("+name+") relative/%"] = figure{value: 100 * j.StandardUncertainty(i) / j.Values[i]}
	}
	return f
}

func impedanceFromMeans(t testing.TB) quantities {
	u, r := fromReadings(impedanceSets)
	return impedanceOf(t, u, r)
}

// impedanceFromTable takes the rounded u and r as printed.
func impedanceFromTable(t testing.TB) quantities {
	r := mat.NewSymDense(3, []float64{1, -0.36, 0.86, -0.36, 1, -0.65, 0.86, -0.65, 1})
	return uncertaintiesOnly(impedanceOf(t, [3]float64{0.0032, 0.0095e-3, 0.00075}, r))
}

// impedanceUncorrelated is table H.5, the wrong answer.
func impedanceUncorrelated(t testing.TB) quantities {
	u, _ := fromReadings(impedanceSets)
	return uncertaintiesOnly(impedanceOf(t, u, mat.NewDiagDense(3, []float64{1, 1, 1})))
}

func uncertaintiesOnly(f quantities) quantities {
	for _, name := range []string{"R", "X", "Z"} {
		delete(f, name)
		delete(f, "u("+name+") relative/%")
	}
	return f
}

// impedanceBySets is approach 2: the three quantities of each set, then their
// means, u and r.
func impedanceBySets(testing.TB) quantities {
	var sets [3][]float64
	f := make(quantities)
	for k := range 5 {
		m := new(Model)
		out := impedance(m, m.Constant(impedanceSets[0][k]), m.Constant(impedanceSets[1][k]), m.Constant(impedanceSets[2][k]))
		for i, name := range []string{"R", "X", "Z"} {
			value := m.Expected(out[i])
			sets[i] = append(sets[i], value)
			f[name+" of set "+strconv.Itoa(k+1)] = figure{value: value}
		}
	}
	u, r := fromReadings(sets)
	for i, name := range []string{"R", "X", "Z"} {
		mean, _, _ := Readings(sets[i])
		f.with(exactly(map[string]float64{name: mean, "u(" + name + ")": u[i]}))
	}
	return f.with(exactly(map[string]float64{"r(R, X)": r.At(0, 1), "r(R, Z)": r.At(0, 2), "r(X, Z)": r.At(1, 2)}))
}

// impedanceSimulated draws the means from a trivariate normal distribution.
func impedanceSimulated(t testing.TB) quantities {
	u, r := fromReadings(impedanceSets)
	m, out := measured(t, u, r, false)
	f := make(quantities)
	for i, name := range []string{"R", "X", "Z"} {
		mc := simulate(t, m, out[i], Settings{Trials: trials, Seed: 22})
		one := meanAndSD(&mc).with(ends(&mc))
		delete(one, "mean")
		f.with(one.prefixed(name + " "))
	}
	return f
}
