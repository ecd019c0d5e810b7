package words

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"minim/equipment"
	"minim/report/words/verb"
	"minim/uncertainty"
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

// Whose an influence is, in words.
func TestOwnerWords(t *testing.T) {
	for want, o := range map[string]uncertainty.Owner{
		"step 3 of two dilutions":                 {Kind: uncertainty.OneUse, Name: "two dilutions", Step: 3, With: "pipette"},
		"step 3 of two dilutions, tare":           {Kind: uncertainty.Tare, Name: "two dilutions", Step: 3},
		"rung 1 of two dilutions":                 {Kind: uncertainty.Rung, Name: "two dilutions", Step: 1},
		"fill 2 for the line of the jar, piece 1": {Kind: uncertainty.Fill, Name: "jar", Step: 2, Piece: 1},
		"day of two dilutions":                    {Kind: uncertainty.Day, Name: "two dilutions"},
		"the bench":                               {Kind: uncertainty.Bench, Name: "ethanol"},
		"flask, piece 2":                          {Kind: uncertainty.Instrument, Name: "flask", Piece: 2},
		"flask":                                   {Kind: uncertainty.Instrument, Name: "flask"},
		"urea":                                    {Kind: uncertainty.Substance, Name: "urea"},
		"urea in water":                           {Kind: uncertainty.Dropped, Name: "urea in water"},
	} {
		assert.Equal(t, want, ownerWords(o))
	}
}
