package uncertainty

import (
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"minim/uncertainty/independent"
	"minim/uncertainty/near"
)

// errorsRead are the readings of testdata/independent/posterior.py (invented), and priorsRead the
// priors.
var (
	errorsRead = map[string][]float64{
		"4":   {0.011, 0.004, 0.013, 0.008},
		"6":   {0.011, 0.004, 0.013, 0.008, -0.002, 0.009},
		"10":  {0.011, 0.004, 0.013, 0.008, -0.002, 0.009, 0.015, 0.001, 0.007, 0.010},
		"far": {0.0212, 0.0204, 0.0216, 0.0208, 0.0210},
	}
	priorsRead = map[string]Distribution{"triangular": Peaked(0.012), "rectangular": PlusMinus(0.012), "normal": Normal{Sigma: 0.006}}
)

// What a prior and readings come to is what a rendering in numpy has, which shares no code.
func TestPosteriorRendering(t *testing.T) {
	posteriorsAgree(t, independent.Read(t, "../testdata/independent", "posterior.csv"))
}

// The rendering run again.
func TestPosteriorRenderingAgain(t *testing.T) {
	posteriorsAgree(t, independent.Run(t, "../testdata/independent", "posterior.py", 1))
}

func posteriorsAgree(t *testing.T, rendering []independent.Figure) {
	t.Helper()
	require.Len(t, rendering, 3*(3*5+1))
	for _, f := range rendering {
		shape, n, _ := strings.Cut(f.Of, " ")
		require.Contains(t, errorsRead, n)
		mean, s, nu := Readings(errorsRead[n])
		prior, m := Prior{Of: priorsRead[shape]}, Measured{Mean: mean, Scale: s / math.Sqrt(float64(len(errorsRead[n]))), Nu: nu}
		if f.Quantity == "chance" {
			near.Relative(t, f.Of+", chance", f.Value, prior.Chance(m), 1e-5)
			continue
		}
		d := prior.Given(m)
		about := d.Summary()
		value := map[string]func() float64{
			"mean": func() float64 { return about.Mean }, "u": func() float64 { return about.StandardUncertainty },
			"2.5 %": func() float64 { return quantileOf(d, 0.025) }, "97.5 %": func() float64 { return quantileOf(d, 0.975) },
		}[f.Quantity]
		near.Absolute(t, f.Of+", "+f.Quantity, f.Value, value(), 2e-5*about.StandardUncertainty)
	}
}
