package plan

import (
	"context"
	"fmt"
	"testing"

	"github.com/stretchr/testify/require"

	read "minim/uncertainty/bench"
)

// BenchmarkLevels shows what the search takes for what is recommended, at tolerances easy and
// hard, on the demo and the fifteen instruments of testdata/benches/conservation-lab.
func BenchmarkLevels(b *testing.B) {
	const demo, lab = "../../cmd/minim/demo/dye.toml", "../../testdata/benches/conservation-lab/biocide.toml"
	for _, c := range []struct {
		file      string
		steps     int
		tolerance float64
	}{{demo, 3, 0.08}, {lab, 2, 0.05}, {lab, 3, 0.12}, {lab, 3, 0.08}, {lab, 3, 0.05}, {lab, 3, 0.04}, {lab, 3, 0.03}, {lab, 3, 0.02}} {
		b.Run(fmt.Sprintf("%s/%d/%v", c.file[len(c.file)-12:], c.steps, c.tolerance), func(b *testing.B) {
			p, err := read.LoadPrep(context.Background(), c.file, "")
			require.NoError(b, err)
			limits := &p.Tolerances[0].Limits
			limits.Lower, limits.Upper = p.Target.Value*(1-c.tolerance), p.Target.Value*(1+c.tolerance)
			for range b.N {
				bench, err := newBench(p, quick(c.steps))
				require.NoError(b, err)
				s := newSearch(bench, quick(c.steps), levelled(p, bench.coverage))
				list, err := s.result(context.Background())
				require.NoError(b, err)
				b.ReportMetric(float64(s.counts.tried)/1e6, "Mtried")
				b.ReportMetric(float64(s.counts.built)/1e6, "Mbuilt")
				b.ReportMetric(float64(len(list)), "found")
				if testing.Verbose() {
					for _, f := range list {
						fmt.Println(f.merit.operations, f.merit.leftOver, f.merit.level, f.merit.worth)
					}
				}
			}
		})
	}
}
