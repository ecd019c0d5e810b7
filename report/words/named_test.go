package words

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"minim/equipment"
	"minim/report/words/verb"
	"minim/uncertainty/record"
	"minim/uncertainty/route"
)

// A name that looks like the program's own words is written as it stands (constructed).
func TestNamesAreNotRewritten(t *testing.T) {
	q := new(route.Prep)
	q.Solute.Name, q.Solvent.Name = "jug of solvent", "water of solute"
	pipette, scale := &equipment.Measure{Name: "jug of solvent"}, &equipment.Balance{Name: "boat of solute", Readability: 0.01}
	for want, s := range map[string]route.Step{
		"adding 5 mL of water of solute with the jug of solvent":         {Verb: route.Add, Amount: 5, Measure: pipette},
		"weighing 1.00 g of jug of solvent on the boat of solute":        {Verb: route.Weigh, Amount: 1, Balance: scale},
		"adding 1.00 g of jug of solvent, weighed on the boat of solute": {Verb: route.AddSolute, Amount: 1, Balance: scale},
		"measuring 5 mL of jug of solvent with the jug of solvent":       {Verb: route.Measured, Amount: 5, Measure: pipette},
		"taking 5 mL with the jug of solvent":                            {Verb: route.Take, Amount: 5, Measure: pipette},
		"adding 5 mL of a stock of solvent with the jug of solvent":      {Verb: route.Strengthen, Amount: 5, Measure: pipette, Stock: &route.Stock{Name: "a stock of solvent"}},
		"making up to 5 mL in the jug of solvent":                        {Verb: route.MakeUpTo, Amount: 5, Measure: pipette},
		"weighing out 1.00 g of the solution on the boat of solute":      {Verb: route.WeighAliquot, Amount: 1, Balance: scale},
		"dissolving in 5 mL with the jug of solvent":                     {Verb: route.DissolveIn, Amount: 5, Measure: pipette},
		"pouring out 5 mL from the jug of solvent":                       {Verb: route.Pour, Amount: 5, Measure: pipette},
		"starting from not stated":                                       {Verb: route.Start, Stock: &route.Stock{Name: "not stated"}},
		"using the whole of the solvent of solute":                       {Verb: route.UsePacket, Packet: &route.Packet{Name: "solvent of solute"}},
		"going on with all of the solution":                              {Verb: route.TakeAll},
		"making up to 1.00 g on the boat of solute":                      {Verb: route.WeighUpTo, Amount: 1, Balance: scale},
	} {
		assert.Equal(t, want, verb.Doing(&s, q.Solute.Weighed(), q.Solvent.Name))
	}
	r := &record.Record{File: "entrys.toml", Entries: make([]record.Entry, 2)}
	assert.Equal(t, "entrys.toml, 2 entries", recorded(r))
}
