package equipment

import (
	"context"
	"fmt"
	"testing"

	"github.com/stretchr/testify/require"

	"minim/uncertainty"
	"minim/uncertainty/near"
)

// A least mass of a balance that is known from few readings is the one of which the simulated
// interval is as wide as was asked for, whatever its other errors (constructed). To first order
// with effective degrees of freedom it would be much too small for two and three readings.
func TestLeastMassOfFewReadings(t *testing.T) {
	skipIfSlow(t)
	for n := 2.0; n <= 6; n++ {
		b := &Balance{Name: "scale", Capacity: 200, Readability: 0.001, Repeatability: Spread{S: 0.01, DegreesOfFreedom: n - 1, Known: true}, Linearity: Stated{0.03, true}}
		grams, ok := b.Least(0.05)
		require.True(t, ok)
		u := alone()
		mass, err := b.Weigh(u, grams, u.Step, b.PanWith(Stated{}, true))
		require.NoError(t, err)
		mc, err := u.Model.Simulate(context.Background(), mass, uncertainty.Settings{Trials: 400_000})
		require.NoError(t, err)
		near.Relative(t, fmt.Sprintf("%v readings, %v g", n, grams), 0.05, (mc.Upper-mc.Lower)/2/grams, 0.03)
	}
}

// What runs out of a pipette marked In stays short of its mark, which is said with what to do;
// rinsed out it does not, nor does one marked Ex.
func TestMarkedInThatRunsOut(t *testing.T) {
	said := func(ex bool, emptying Emptying) bool {
		k, u := pipetteWithADrop(), oneUse()
		k.Ex, u.Emptying = ex, emptying
		_, err := k.Deliver(u, k.Capacity)
		require.NoError(t, err)
		for _, n := range u.Notes.Warnings {
			if n.Code == "in-runs-out" {
				return true
			}
		}
		return false
	}
	require.True(t, said(false, drained))
	require.False(t, said(false, Rinsed))
	require.False(t, said(true, drained))
}

// pipetteWithADrop has one mark and a last drop.
func pipetteWithADrop() *Measure {
	return &Measure{Name: "pipette", Kind: "one-mark", Capacity: 10, Ex: true, Bore: 5, Bias: bias{Limit: 0.02, Shape: triangle}}
}
