package route

import (
	"context"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"sort"
	"testing"
	"time"

	"minim/uncertainty"
)

func TestSharpTable(t *testing.T) {
	if os.Getenv("SHARP") == "" {
		t.Skip()
	}
	preps, _ := filepath.Glob("../../testdata/benches/*/*.toml")
	more, _ := filepath.Glob("../../cmd/minim/demo/*.toml")
	preps = append(more, preps...)
	if os.Getenv("SHARP") != "1" {
		preps, _ = filepath.Glob(os.Getenv("SHARP"))
	}
	const seeds = 50
	var all [8][]float64
	for _, path := range preps {
		p, err := LoadPrep(path, "")
		if err != nil {
			continue
		}
		for _, r := range p.Routes {
			if os.Getenv("ROUTE") != "" && r.Name != os.Getenv("ROUTE") {
				continue
			}
			res, c, err := p.assess(r, 0.95)
			if err != nil || c == nil {
				continue
			}
			var sum, sq, es [2][8]float64
			var sharper float64
			var el [2]time.Duration
			within := false
			for mode := range 2 {
				for seed := range seeds {
					t0 := time.Now()
					mc, err := c.model.Simulate(context.Background(), c.strength, uncertainty.Settings{Trials: 10000, Seed: uint64(seed), Plain: mode == 0})
					if err != nil {
						t.Fatal(err)
					}
					el[mode] += time.Since(t0)
					u, y := res.Analytic.ExpandedUncertainty/2, res.Analytic.Value
					v := [8]float64{(mc.Mean - y) / u, (mc.Lower - y) / u, (mc.Upper - y) / u, (mc.ShortestLower - y) / u, (mc.ShortestUpper - y) / u, 0, 0, 0}
					e := [8]float64{mc.MeanError / u, mc.LowerError / u, mc.UpperError / u}
					if len(p.Tolerances) > 0 {
						v[5], e[5] = mc.ConformanceProbability(p.Tolerances[0].Limits), mc.ChanceError(p.Tolerances[0].Limits)
						within = v[5] > .001 && v[5] < .999
					}
					v[6] = mc.Within(p.Target.Value, .95) / u
					if mode == 1 {
						sharper += math.Log(mc.Sharper) / seeds
					}
					for i := range v {
						sum[mode][i] += v[i]
						sq[mode][i] += v[i] * v[i]
						es[mode][i] += e[i] * e[i]
					}
				}
			}
			fmt.Printf("%-20.20s %-30.30s x%-6.0f", filepath.Base(filepath.Dir(path)), r.Name, math.Exp(sharper))
			for i := range 7 {
				sd := [2]float64{}
				for mode := range 2 {
					m := sum[mode][i] / seeds
					sd[mode] = math.Sqrt(max(0, sq[mode][i]/seeds-m*m) * seeds / (seeds - 1))
				}
				gain := sd[0] / sd[1]
				if i == 5 && !within {
					gain = math.NaN()
				} else {
					all[i] = append(all[i], gain)
				}
				fmt.Printf(" %5.0f(%.2f,%4.1f)", gain, math.Sqrt(es[1][i]/seeds)/sd[1], (sum[1][i]-sum[0][i])/seeds/sd[0]*math.Sqrt(seeds))
			}
			fmt.Printf(" %v %v\n", (el[0] / seeds).Round(10000), (el[1] / seeds).Round(10000))
		}
	}
	for i := range all {
		sort.Float64s(all[i])
		if n := len(all[i]); n > 0 {
			fmt.Printf("%d: n=%d least %.1f median %.1f\n", i, n, all[i][0], all[i][n/2])
		}
	}
}
