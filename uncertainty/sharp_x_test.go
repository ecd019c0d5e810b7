package uncertainty

import (
	"context"
	"fmt"
	"math"
	"testing"
	"time"
)

func scatterOf(t *testing.T, name string, m *Model, out Node, seeds int) {
	var figs [2][7]struct{ sum, sq, err float64 }
	var el [2]time.Duration
	sharper := 0.0
	a := propagate(t, m, out, 0.95)
	lim := Limits{a.Value - 1.5*a.StandardUncertainty, a.Value + 2.2*a.StandardUncertainty}
	for mode := range 2 {
		for seed := range seeds {
			t0 := time.Now()
			mc, err := m.Simulate(context.Background(), out, Settings{Trials: 10000, Seed: uint64(seed), Plain: mode == 0})
			if err != nil {
				t.Fatal(name, err)
			}
			if mode == 1 {
				sharper += math.Log(mc.Sharper) / float64(seeds)
			}
			v := []float64{mc.Mean, mc.Lower, mc.Upper, mc.ShortestLower, mc.ShortestUpper, mc.ConformanceProbability(lim), mc.Within(a.Value, .95)}
			e := []float64{mc.MeanError, mc.LowerError, mc.UpperError, 0, 0, mc.ChanceError(lim), 0}
			el[mode] += time.Since(t0)
			for i := range v {
				x := v[i] - a.Value
				if i >= 5 {
					x = v[i]
				}
				f := &figs[mode][i]
				f.sum += x
				f.sq += x * x
				f.err += e[i] * e[i]
			}
		}
	}
	fmt.Printf("%-34s x%-7.0f", name, math.Exp(sharper))
	for i := range 7 {
		var sd, mean [2]float64
		var es [2]float64
		for mode := range 2 {
			f := figs[mode][i]
			n := float64(seeds)
			mean[mode] = f.sum / n
			sd[mode] = math.Sqrt(max(0, f.sq/n-mean[mode]*mean[mode]) * n / (n - 1))
			es[mode] = math.Sqrt(f.err / n)
		}
		bias := (mean[1] - mean[0]) / (sd[0]/math.Sqrt(float64(seeds)) + 1e-300)
		fmt.Printf(" %5.1f(%4.2f,z%4.1f)", sd[0]/sd[1], es[1]/sd[1], bias)
	}
	fmt.Printf("  %v %v\n", (el[0] / time.Duration(seeds)).Round(10000), (el[1] / time.Duration(seeds)).Round(10000))
}

func TestSharpX(t *testing.T) {
	m, y := sumOf(Normal{3, 2})
	scatterOf(t, "normal", m, y, 30)
	one := PlusMinus(math.Sqrt(3))
	m, y = sumOf(one, one, one, one)
	scatterOf(t, "9.2.3", m, y, 30)
	m, y = sumOf(one, one, one, PlusMinus(10*math.Sqrt(3)))
	scatterOf(t, "9.2.4", m, y, 30)
	m, y = dilutionModel()
	scatterOf(t, "dilution", m, y, 30)
	m = new(Model)
	y = m.Divide(add(m, "x", Rectangular{97, 103}), add(m, "y", Rectangular{49, 51}))
	scatterOf(t, "rect/rect", m, y, 30)
	m = new(Model)
	y = m.Divide(add(m, "x", Rectangular{97, 103}), add(m, "y", Normal{50, .5}))
	scatterOf(t, "rect/normal", m, y, 30)
	for nu := 1.0; nu < 6; nu++ {
		m = new(Model)
		set := Set{Owner: Owner{Name: "p"}}
		y = m.Multiply(ofReadings(m, "a", 1, .01, int(nu)+1, set), ofReadings(m, "b", 2, .02, int(nu)+1, set))
		y = m.Divide(y, add(m, "v", Rectangular{.99, 1.01}))
		scatterOf(t, fmt.Sprint("sets nu ", nu), m, y, 30)
		_ = y
	}
}
