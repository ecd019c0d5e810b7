package route

import (
	"context"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"gonum.org/v1/gonum/stat"

	"minim/uncertainty"
)

// TestSharperStandardUncertainty: at equal trials, the linear part of the model
// as a control variate lowers the standard error of u for every route of the
// demo at least 20 times below that of the standard deviation of the trials,
// u √((κ - 1)/4M) for a kurtosis κ (constructed).
func TestSharperStandardUncertainty(t *testing.T) {
	skipIfSlow(t)
	c, err := Compare(context.Background(), load(t, demoPrep), "", uncertainty.Settings{Trials: 100_000, Seed: 1})
	require.NoError(t, err)
	tried := 0
	for i := range c.Results {
		r := &c.Results[i]
		if !r.Possible {
			continue
		}
		tried++
		values := make([]float64, drawn)
		for k := range values {
			values[k] = r.MonteCarlo.Quantile((float64(k) + 0.5) / drawn)
		}
		kurtosis := stat.ExKurtosis(values, nil) + 3
		plain := r.MonteCarlo.StandardDeviation * math.Sqrt((kurtosis-1)/4/100_000)
		assert.Equal(t, true, plain > 20*r.MonteCarlo.DeviationError, r.Route.Name)
	}
	assert.Equal(t, 7, tried)
}
