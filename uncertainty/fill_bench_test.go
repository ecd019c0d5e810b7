package uncertainty

import (
	"fmt"
	"math/rand/v2"
	"strings"
	"testing"

	"gonum.org/v1/gonum/stat/distuv"

	"minim/uncertainty/distribution"
	"minim/uncertainty/random"
)

// BenchmarkFill draws blocks of every distribution; where gonum's distuv has
// the same one, its draws stand beside for comparison.
func BenchmarkFill(b *testing.B) {
	pcg := rand.NewPCG(1, 2)
	for _, c := range []struct {
		d     Distribution
		gonum distuv.Rander
	}{
		{Rectangular{Low: 0, High: 1}, distuv.Uniform{Max: 1, Src: pcg}},
		{InexactRectangular{0, 1, 0.1}, nil},
		{Trapezoidal{0, 1, 0.5}, nil},
		{distribution.Triangular{Low: 0, High: 1}, distuv.NewTriangle(0, 1, 0.5, pcg)},
		{Arcsine{0, 1}, distuv.Beta{Alpha: 0.5, Beta: 0.5, Src: pcg}},
		{Normal{Mu: 0, Sigma: 1}, distuv.Normal{Sigma: 1, Src: pcg}},
		{Gamma{Mu: 1, Sigma: 0.5}, distuv.Gamma{Alpha: 4, Beta: 4, Src: pcg}},
		{Gamma{Mu: 1, Sigma: 2}, distuv.Gamma{Alpha: 0.25, Beta: 0.25, Src: pcg}},
		{StudentT{Mu: 0, Sigma: 1, Nu: 5}, distuv.StudentsT{Sigma: 1, Nu: 5, Src: pcg}},
		{StudentT{Mu: 0, Sigma: 1, Nu: 1}, distuv.StudentsT{Sigma: 1, Nu: 1, Src: pcg}},
	} {
		name := strings.ReplaceAll(fmt.Sprintf("%#v", c.d), "uncertainty.", "")
		x := make([]float64, random.BlockSize)
		s := new(random.Source)
		s.Key(1, 2, 3)
		b.Run(name, func(b *testing.B) {
			for b.Loop() {
				c.d.Fill(x, s)
			}
			perValue(b)
		})
		if c.gonum == nil {
			continue
		}
		b.Run(name+"/gonum", func(b *testing.B) {
			for b.Loop() {
				for i := range x {
					x[i] = c.gonum.Rand()
				}
			}
			perValue(b)
		})
	}
}

func perValue(b *testing.B) {
	b.ReportMetric(float64(b.Elapsed().Nanoseconds())/float64(b.N)/random.BlockSize, "ns/value")
}
