package search

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"minim/equipment"
	"minim/uncertainty/route"
)

// Only what may be refused is asked for, which is all that a search by volume makes and that
// leaves no room for solvent, or brings another solvent.
func TestMayBeRefused(t *testing.T) {
	flask := &equipment.Measure{}
	up := route.Step{Verb: route.MakeUpTo, Amount: 25, Measure: flask}
	for _, row := range []struct {
		first route.Step
		want  bool
	}{
		{route.Step{Verb: route.Weigh, Amount: 24.9}, false},
		{route.Step{Verb: route.Weigh, Amount: 25}, true},
		{route.Step{Verb: route.UsePacket, Packet: &route.Packet{Content: route.Estimate{Value: 30}}}, true},
		{route.Step{Verb: route.UsePacket, Packet: &route.Packet{Content: route.Estimate{Value: 3}}}, false},
		{route.Step{Verb: route.Start, Stock: &route.Stock{Solvent: "ethanol"}}, true},
		{route.Step{Verb: route.Start, Stock: &route.Stock{}}, false},
	} {
		assert.Equal(t, row.want, mayBeRefused(&route.Route{Steps: []route.Step{row.first, up}}), row.first)
	}
}
