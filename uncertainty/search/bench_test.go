package search

import (
	"context"
	"testing"

	"github.com/stretchr/testify/require"

	read "minim/uncertainty/bench"
)

// BenchmarkSearch shows how a search grows with dilutions, instruments and marks: on
// the nine instruments of the demo, without some of them, at every graduation, and on
// the fifteen instruments of testdata/benches/conservation-lab.
// It reports the candidates that the rules allow by volume, and the share of them that
// was never worked out.
func BenchmarkSearch(b *testing.B) {
	const demo, lab = "../../cmd/minim/demo/dye.toml", "../../testdata/benches/conservation-lab/biocide.toml"
	for _, c := range []struct {
		name, file string
		steps      int
		fine       bool
		without    []string
		tolerance  float64
	}{
		{"demo/1-dilution", demo, 1, false, nil, 0.07},
		{"demo/2-dilutions", demo, 2, false, nil, 0.07},
		{"demo/3-dilutions", demo, 3, false, nil, 0.07},
		{"demo/3-dilutions-6-instruments", demo, 3, false, []string{"0.1 g scale", "100 mL cylinder", "5 mL pipette"}, 0.07},
		{"demo/1-dilution-every-graduation", demo, 1, true, nil, 0.07},
		{"fifteen/2-dilutions", lab, 2, false, nil, 0.05},
	} {
		b.Run(c.name, func(b *testing.B) {
			if testing.Short() && (c.steps > 2 || c.fine) {
				b.Skip("takes half a minute")
			}
			p, err := read.LoadPrep(context.Background(), c.file, "")
			require.NoError(b, err)
			limits := &p.Tolerances[0].Limits
			limits.Lower, limits.Upper = p.Target.Value*(1-c.tolerance), p.Target.Value*(1+c.tolerance)
			o := quick(c.steps)
			o.Fine, o.Without = c.fine, c.without
			p = o.Limited(p)
			b.ReportAllocs()
			for range b.N {
				bench, err := NewBench(p, o)
				require.NoError(b, err)
				s := newSearch(bench, o, newJudge(p, bench.coverage, tooLittle, enough))
				_, err = s.result(context.Background())
				require.NoError(b, err)
				all := bench.Candidates()
				b.ReportMetric(all, "candidates")
				b.ReportMetric(1-float64(s.counts.finished)/all, "never-built")
			}
		})
	}
}
