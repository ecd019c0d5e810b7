package route

import (
	"context"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"testing"

	"minim/uncertainty"
)

func TestCloserTable(t *testing.T) {
	if os.Getenv("SHARP") == "" {
		t.Skip()
	}
	preps, _ := filepath.Glob("../../cmd/minim/demo/*.toml")
	more, _ := filepath.Glob("../../testdata/benches/*/*.toml")
	for _, path := range append(preps, more...) {
		p, err := LoadPrep(path, "")
		if err != nil {
			continue
		}
		var q []uncertainty.Quantity
		var names []string
		for _, r := range p.Routes {
			_, c, err := p.assess(r, 0.95)
			if err == nil && c != nil {
				q, names = append(q, uncertainty.Quantity{Model: c.model, Node: c.strength}), append(names, r.Name)
			}
		}
		const seeds = 12
		sum, sq := make([]float64, len(q)), make([]float64, len(q))
		for seed := range seeds {
			s, err := uncertainty.CloserTo(context.Background(), p.Target.Value, q, uncertainty.Settings{Trials: 100000, Seed: uint64(seed)})
			if err != nil {
				t.Fatal(err)
			}
			for i := range s {
				sum[i] += s[i] / seeds
				sq[i] += s[i] * s[i] / seeds
			}
		}
		plain, _ := uncertainty.CloserTo(context.Background(), p.Target.Value, q, uncertainty.Settings{Trials: 1000000, Seed: 77, Plain: true})
		for i := range q {
			pl := plain[i]
			sd := math.Sqrt(max(0, sq[i]-sum[i]*sum[i]) * seeds / (seeds - 1))
			fmt.Printf("%-40.40s %-30.30s %.5f±%.5f plain 1e6 %.5f  z %.1f\n", path[20:], names[i], sum[i], sd, pl, (sum[i]-pl)/math.Hypot(sd/3.5, math.Sqrt(pl*(1-pl)/1e6)))
		}
	}
}
