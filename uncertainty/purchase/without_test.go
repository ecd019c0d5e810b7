package purchase

import (
	"context"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"minim/uncertainty/plan"
	"minim/uncertainty/smallbench"
)

// What the bench comes to without a piece is told of each that its best route measures by, and of no other: what
// plan recommends without it; nothing where no vessel is left (constructed).
func TestWithoutEach(t *testing.T) {
	if !smallbench.Thorough {
		t.Skip("searches many benches")
	}
	p := smallbench.On(t, smallbench.Prep, `
[[balance]]
name = "scale"
capacity = "100 g"
readability = "0.01 g"
repeatability = "0.01 g"
[[cylinder]]
name = "small cylinder"
capacity = "50 mL"
class = "A"
[[cylinder]]
name = "large cylinder"
capacity = "250 mL"
class = "A"
[[pipette]]
name = "pipette"
kind = "graduated"
capacity = "5 mL"
class = "A"
`)
	b, err := Buy(context.Background(), p, quick(1))
	require.NoError(t, err)
	used := make(map[string]bool)
	for _, s := range b.Choices[b.Verdict.Present].Best.Route.Steps {
		if s.Measure != nil {
			used[s.Measure.Name] = true
		}
	}
	require.NotEmpty(t, used)
	require.Len(t, b.Without, len(used))
	for _, o := range b.Without {
		assert.True(t, used[o.Name], o.Name)
		for _, s := range o.Best.Route.Steps {
			assert.True(t, s.Measure == nil || s.Measure.Name != o.Name, o.Name)
		}
		q := *p
		q.Kit = p.Kit.Without(o.Name)
		best, _, err := plan.Best(context.Background(), &q, quick(1))
		require.NoError(t, err)
		assert.Equal(t, best.Route, o.Best.Route, "what plan recommends without the %s", o.Name)
	}

	p = smallbench.On(t, smallbench.Prep, smallbench.Kit)
	b, err = Buy(context.Background(), p, quick(0))
	require.NoError(t, err)
	require.Len(t, b.Without, 1)
	assert.Equal(t, "cylinder", b.Without[0].Name)
	assert.False(t, b.Without[0].Meets, "nothing else holds 20 mL")
}
