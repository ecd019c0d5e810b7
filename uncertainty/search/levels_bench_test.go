package search

import (
	"context"
	"fmt"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	read "minim/uncertainty/bench"
	"minim/uncertainty/route"
)

// BenchmarkLevels shows what the search takes for what is recommended, at tolerances easy and
// hard, on the demo and the fifteen instruments of testdata/benches/conservation-lab.
func BenchmarkLevels(b *testing.B) {
	const demo, lab = "../../cmd/minim/demo/dye.toml", "../../testdata/benches/conservation-lab/biocide.toml"
	for _, c := range []struct {
		file        string
		steps       int
		tolerance   float64
		instruments int // 0 for all
	}{
		{demo, 3, 0.07, 0}, {lab, 3, 0.12, 0}, {lab, 3, 0.08, 0}, {lab, 3, 0.05, 0}, {lab, 3, 0.04, 0}, {lab, 3, 0.03, 0}, {lab, 3, 0.02, 0},
		{lab, 1, 0.05, 0}, {lab, 2, 0.05, 0}, {lab, 4, 0.05, 0}, {lab, 3, 0.05, 6}, {lab, 3, 0.05, 9}, {lab, 3, 0.05, 12},
	} {
		name := strings.TrimSuffix(filepath.Base(c.file), ".toml")
		b.Run(fmt.Sprintf("%s/%d-dilutions/within-%v/instruments-%d", name, c.steps, c.tolerance, c.instruments), func(b *testing.B) {
			if testing.Short() && c.steps > 3 {
				b.Skip("takes half a minute")
			}
			p, err := read.LoadPrep(context.Background(), c.file, "")
			require.NoError(b, err)
			if names := p.Kit.Names(); c.instruments > 0 {
				p = (&Options{Limits: route.Limits{Without: names[c.instruments:]}}).Limited(p)
			}
			limits := &p.Tolerances[0].Limits
			limits.Lower, limits.Upper = p.Target.Value*(1-c.tolerance), p.Target.Value*(1+c.tolerance)
			for range b.N {
				bench, err := NewBench(p, quick(c.steps))
				require.NoError(b, err)
				s := newSearch(bench, quick(c.steps), levelled(p, bench.coverage))
				list, err := s.result(context.Background())
				require.NoError(b, err)
				b.ReportMetric(float64(s.counts.tried)/1e6, "Mtried")
				b.ReportMetric(float64(s.counts.built)/1e6, "Mbuilt")
				b.ReportMetric(float64(len(list)), "found")
			}
		})
	}
}
