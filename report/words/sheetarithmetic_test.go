package words

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"minim/uncertainty/near"
)

// The solvent of a route is all that is made less what goes into it of other liquids, by
// hand (constructed; water is of 1 g/mL where its density is looked up, to 0.2 %).
func TestSolventNeeded(t *testing.T) {
	for steps, want := range map[string]float64{
		routesOfOrders[0]:  25 - 2,
		routesOfOrders[2]:  25 - 9.4,
		routesOfOrders[3]:  25,
		routesOfOrders[5]:  25 - 2,
		routesOfOrders[18]: 100, // all of the 25 mL goes on
		routesOfOrders[20]: 25 + 25 - 2,
		`{ start = "weak" }, { take = "10 mL", with = "pipette" }, { strengthen = "2 mL", of = "strong", with = "pipette" }, { add = "5 mL", with = "pipette" }`: 5,
	} {
		b := sheetOf(t, `, hazards = ["none known"]`, "", "", steps)
		near.Absolute(t, steps, want, b.solventNeeded(), 1e-9)
	}
	b := sheetOf(t, "", "", "", routesOfOrders[14])
	near.Absolute(t, "an aliquot by mass", b.solutions[0].MadeML-2/b.prep().Solvent.Density.Value, b.solventNeeded(), 1e-9)
}

// A step is repeated by itself where a fifth more than it takes is left, a graduated pipette
// counting up to its top line of 10 mL; else its solution is made again (constructed).
func TestEnoughForASecondAliquot(t *testing.T) {
	const weighed = `{ weigh = "0.50 g", on = "scale" }, { make-up-to = "25 mL", in = "25 mL flask" }, `
	const toMark = `, { make-up-to = "100 mL", in = "100 mL flask" }`
	for take, want := range map[string]bool{
		`{ take = "2 mL", with = "pipette" }`:         true,  // 23 mL left, 12 mL needed
		`{ pour = "10 mL", from = "small cylinder" }`: true,  // 15 mL left, 12 mL needed
		`{ pour = "12 mL", from = "cylinder" }`:       false, // 13 mL left, 14.4 mL needed
		`{ weigh-aliquot = "11.00 g", on = "scale" }`: true,
		`{ weigh-aliquot = "12.00 g", on = "scale" }`: false,
	} {
		end := toMark
		if take[2:7] == "weigh" {
			end = `, { weigh-up-to = "60.00 g", on = "scale" }`
		}
		b := sheetOf(t, `, hazards = ["none known"]`, "", "", weighed+take+end)
		assert.Equal(t, want, b.enough(2), take)
		assert.Equal(t, map[bool]int{true: 3, false: 1}[want], b.again(2), take)
	}
	const ten = `{ weigh = "0.50 g", on = "scale" }, { make-up-to = "10 mL", in = "10 mL flask" }, `
	b := sheetOf(t, `, hazards = ["none known"]`, "", "", ten+`{ take = "1 mL", with = "pipette" }`+toMark)
	assert.False(t, b.enough(2), "9 mL do not fill a pipette of 10 mL")
	assert.True(t, sheetOf(t, "", "", "", routesOfOrders[0]).enough(1), "a stock")
}
