package verb

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"minim/equipment"
	"minim/uncertainty/route"
)

// What stands on a balance is all that it carries: 99.00 g on one of 200 g leave 101 g for the bottle (constructed). It
// is rounded down, so that no bottle which it allows is too much.
func TestEmptyMost(t *testing.T) {
	scale := &equipment.Balance{Name: "scale", Capacity: 200, Readability: 0.01}
	for _, test := range []struct {
		step   route.Step
		liquid bool
		want   string
	}{
		{route.Step{Verb: route.WeighUpTo, Amount: 99}, false, ", empty at most 101 g"},
		{route.Step{Verb: route.WeighUpTo, Amount: 60.46}, false, ", empty at most 139 g"},
		{route.Step{Verb: route.Weigh, Amount: 99}, false, ""},
		{route.Step{Verb: route.Weigh, Amount: 195.54}, false, ", empty at most 4.46 g"},
		{route.Step{Verb: route.Weigh, Amount: 160}, false, ""},
		{route.Step{Verb: route.Weigh, Amount: 160}, true, ", empty at most 40 g"},
		{route.Step{Verb: route.WeighUpTo, Amount: 99, Vessel: equipment.Stated{Value: 50, Known: true}}, false, ""},
	} {
		test.step.Balance = scale
		assert.Equal(t, test.want, EmptyMost(&test.step, test.liquid), test.step.Amount)
	}
	assert.Empty(t, EmptyMost(&route.Step{Verb: route.MakeUpTo, Amount: 20, Measure: &equipment.Measure{}}, false))
	scale.Capacity = 5000
	assert.Empty(t, EmptyMost(&route.Step{Verb: route.WeighUpTo, Amount: 99, Balance: scale}, false))
}
