package words

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"minim/equipment"
	"minim/report/page"
	"minim/uncertainty/route"
)

// There is a box for each reading: one of what is zeroed, two of a difference, three where the boat is
// weighed empty, full and emptied.
func TestABoxForEachReading(t *testing.T) {
	scale := &equipment.Balance{Name: "scale", Readability: 0.01}
	step := func(separate, back bool) *route.Step {
		return &route.Step{Verb: route.Weigh, Balance: scale, Amount: 1.5, SeparateTare: separate, WeighedBack: back}
	}
	box := func(of string) page.WriteBox { return page.WriteBox{Of: of, Unit: "g"} }
	assert.Equal(t, []page.WriteBox{box("")}, boxes(step(false, false)))
	assert.Equal(t, []page.WriteBox{box("full"), box("emptied")}, boxes(step(false, true)))
	assert.Equal(t, []page.WriteBox{box("empty"), box("full")}, boxes(step(true, false)))
	assert.Equal(t, []page.WriteBox{box("empty"), box("full"), box("emptied")}, boxes(step(true, true)))
	drops := &equipment.Measure{Kind: "dropper"}
	assert.Equal(t, []page.WriteBox{{Unit: "drops"}}, boxes(&route.Step{Verb: route.Take, Measure: drops, Amount: 12}))
}
