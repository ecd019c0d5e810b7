package words

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"minim/equipment"
	"minim/equipment/quantity"
	"minim/uncertainty"
	"minim/uncertainty/route"
)

func TestInHundred(t *testing.T) {
	for p, want := range map[float64]string{
		0: "under 0.1", 0.0009: "under 0.1", 0.001: "0.1", 0.787: "78.7", 0.9494: "94.9", 0.94999: "94.99", 0.7866: "78.7", 0.95: "95.0",
		0.996: "99.6", 0.999: "99.9", 0.9991: "over 99.9", 1: "over 99.9",
	} {
		assert.Equal(t, want, inHundred(p, 0.95))
	}
}

// What moves a strength is told in per cent of what the marks alone would give, as it is where readings
// are judged: 5 % low is −5 %, and not 0.05 of 0.95.
func TestShiftsAreOfTheMarks(t *testing.T) {
	shifted := func(value, by float64) string {
		in := uncertainty.Influence{Code: "bias", Group: uncertainty.Group{Kind: uncertainty.Instrument, Name: "p1"}, Distribution: uncertainty.Normal{Mu: by, Sigma: 1}}
		return shifts(&route.Result{Analytic: uncertainty.Analytic{Value: value, Budget: []uncertainty.Contribution{{Influence: in, Sensitivity: 1}}}})
	}
	assert.Equal(t, "by p1 -5.0 %", shifted(0.95, -0.05))
	assert.Equal(t, "by p1 +5.0 %", shifted(1.05, 0.05))
	assert.Equal(t, "by p1 +66.7 %", shifted(3, 2)) // of the marks next to nothing is left
}

func TestPercent(t *testing.T) {
	for x, want := range map[float64]string{0: "0 %", 0.95: "95 %", 0.0456: "4.6 %", 0.00123: "0.12 %", 1.5: "150 %", 0.0999: "10 %", 0.0402: "4 %"} {
		assert.Equal(t, want, quantity.Percent(x))
	}
}

func TestPercentNeverPromisesTooMuch(t *testing.T) {
	for _, test := range []struct {
		share, least float64
		want         string
	}{
		{1, 0.95, "over 99.9"}, {0.9991, 0.95, "over 99.9"}, {0.999, 0.95, "99.9"}, {0.961, 0.95, "96.1"},
		{0.95, 0.95, "95.0"}, {0.94999, 0.95, "94.99"}, {0.9896, 0.99, "98.96"}, {0.989, 0.99, "98.9"}, {0.99, 0.99, "99.0"}, {0.9994, 0.9995, "99.94"}, {0.99996, 0.99997, "99.99"}, {0.9995, 0.9995, "over 99.9"}, {0.94949, 0.95, "94.9"}, {0.23046, 0.95, "23.0"},
		{0.001, 0.95, "0.1"}, {0.00099, 0.95, "under 0.1"}, {0, 0.95, "under 0.1"},
	} {
		assert.Equal(t, test.want, inHundred(test.share, test.least))
	}
}

// What is quoted from the simulation is printed as an interval, what is not as
// value and give or take; both to the digits of GUM 7.2.6.
func TestState(t *testing.T) {
	r := &route.Result{
		Analytic: uncertainty.Analytic{Value: 10.0564, ExpandedUncertainty: 1.047},
		Quoted:   uncertainty.Quoted{Lower: 9.0094, Upper: 11.1034},
	}
	assert.Equal(t, "10.1 g/L, give or take 1.1", state(r).sentence("g/L"))
	// The mean of the simulation, to the digits of its own interval and not to those of U.
	r.Quoted = uncertainty.Quoted{Lower: 9.7094, Upper: 10.9034, Simulated: true, Value: 10.3164, StandardUncertainty: 0.3}
	assert.Equal(t, "10.32 g/L, between 9.71 and 10.90", state(r).sentence("g/L"))
}

func TestInstructions(t *testing.T) {
	flask := &equipment.Measure{Name: "flask", Kind: "flask", Count: 2}
	pipette := &equipment.Measure{Name: "pipette", Kind: "one-mark"}
	scale := &equipment.Balance{Name: "scale", Readability: 0.01}
	p := &route.Prep{Solute: route.Solute{Name: "urea"}, Solvent: route.Solvent{Name: "water"}}
	r := &route.Route{Steps: []route.Step{
		{Verb: route.Weigh, Amount: 1, Balance: scale},
		{Verb: route.MakeUpTo, Amount: 25, Measure: flask},
		{Verb: route.Take, Amount: 1, Measure: pipette},
		{Verb: route.MakeUpTo, Amount: 25, Measure: flask},
		{Verb: route.Take, Amount: 1, Measure: pipette},
		{Verb: route.MakeUpTo, Amount: 25, Measure: flask, Piece: 2},
		{Verb: route.Take, Amount: 1, Measure: pipette},
		{Verb: route.Add, Amount: 1, Measure: pipette},
		{Verb: route.Add, Amount: 1, Measure: pipette},
		{Verb: route.WeighAliquot, Amount: 0.5, Balance: scale},
		{Verb: route.WeighUpTo, Amount: 20, Balance: scale},
	}}
	assert.Equal(t, []string{
		"weigh 1.00 g of urea on the scale",
		"make up to 25 mL in the flask; mix; pour into a clean dry bottle and rinse the flask",
		"take 1 mL with the pipette",
		"make up to 25 mL in the flask; mix",
		"take 1 mL with the pipette",
		"make up to 25 mL in the flask (piece 2); mix",
		"take 1 mL with the pipette",
		"add 1 mL of water with the pipette",
		"add 1 mL of water with the pipette; mix",
		"zero a vessel on the scale and put 0.50 g of the solution in it",
		"add water up to 20.00 g in all on the scale; mix",
	}, Instructions(p, r))
}

func TestInstructionsOfTheRestOfABench(t *testing.T) {
	pipette := &equipment.Measure{Name: "pipette", Kind: "one-mark"}
	cylinder := &equipment.Measure{Name: "cylinder", Kind: "cylinder"}
	dropper := &equipment.Measure{Name: "dropper", Kind: "dropper"}
	scale := &equipment.Balance{Name: "scale", Readability: 0.1}
	p := &route.Prep{Solute: route.Solute{Name: "urea"}, Solvent: route.Solvent{Name: "water"}}
	r := &route.Route{Steps: []route.Step{
		{Verb: route.UsePacket, Packet: &route.Packet{Name: "sachet"}},
		{Verb: route.Weigh, Amount: 1, Balance: scale, WeighedBack: true, SeparateTare: true},
		{Verb: route.Measured, Amount: 3, Measure: dropper},
		{Verb: route.Measured, Amount: 1, Measure: dropper},
		{Verb: route.DissolveIn, Amount: 25, Measure: cylinder, State: route.Wet},
		{Verb: route.DissolveIn, Amount: 20, Balance: scale},
		{Verb: route.Take, Amount: 1, Measure: pipette, Emptying: equipment.Rinsed, State: route.Used},
		{Verb: route.Take, Amount: 1, Measure: pipette, Emptying: equipment.BlownOut},
		{Verb: route.Pour, Amount: 5, Measure: cylinder},
	}}
	assert.Equal(t, []string{
		"use the whole of the sachet of urea",
		"weigh 1.0 g of urea on the scale, between a tare and a gross reading; weigh the emptied boat back",
		"measure 3 drops of urea with the dropper",
		"measure 1 drop of urea with the dropper",
		"with the cylinder still wet: dissolve in 25 mL of water, measured with the cylinder; mix",
		"dissolve in 20.0 g of water, weighed on the scale; mix",
		"without rinsing the pipette: take 1 mL with the pipette; rinse it into the receiver",
		"take 1 mL with the pipette; blow the last drop out",
		"fill the cylinder to 5 mL with the solution and pour it out",
	}, Instructions(p, r))
}
