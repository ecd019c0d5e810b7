package plan

import (
	"context"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"minim/uncertainty/route"
	"minim/uncertainty/smallbench"
)

// The tightest route is that of which what is shown is the least: of two scales, one known from two
// readings and one of which a greater scatter is stated, the second, though the first has the
// smaller give or take to first order (constructed).
func TestTightestAsShown(t *testing.T) {
	p := smallbench.On(t, smallbench.Prep, smallbench.TwoReadings+`
[[balance]]
name = "stated"
capacity = "100 g"
readability = "0.001 g"
repeatability = "0.009 g"
linearity = "0.01 g"
`+smallbench.Cylinder)
	p.Tolerances = nil
	o := quick(0)
	o.Prefer = route.Tightest
	found := searched(t, p, o)
	chosen := found.chosen()
	assert.Equal(t, "stated", chosen.Route.Steps[0].Balance.Name)
	own := func(name string) route.Result {
		r := *chosen.Route
		r.Steps = append([]route.Step(nil), r.Steps...)
		for _, k := range p.Kit.Balances {
			if k.Name == name {
				r.Steps[0].Balance = k
			}
		}
		c, err := route.Evaluate(context.Background(), p, []*route.Route{&r}, o.Settings)
		require.NoError(t, err)
		return c.Results[0]
	}
	few, stated := own("two readings"), own("stated")
	assert.Less(t, few.Analytic.Relative(), stated.Analytic.Relative())
	assert.Greater(t, few.GiveOrTake(), stated.GiveOrTake())
	for i := range found.Front {
		assert.GreaterOrEqual(t, found.Front[i].GiveOrTake(), chosen.GiveOrTake())
	}
}
