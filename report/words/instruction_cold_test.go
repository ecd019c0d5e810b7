package words

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
)

// What the sheet cools is cooled on the screen as well, which is all that there is of a
// correction; what is strong is added little by little.
func TestScreenSaysColdBath(t *testing.T) {
	for steps, want := range map[string]string{
		routesOfOrders[1]: "take 8 mL with the pipette, into some of the water in a beaker in a cold bath",
		routesOfOrders[3]: "bring it in portions into some of the water in a beaker in a cold bath",
		routesOfOrders[7]: "take 5 mL with the pipette, into what steps 3 and 4 measured first, in a cold bath",
		`{ start = "weak" }, { take = "10 mL", with = "pipette" }, { add-solute = "0.20 g", on = "scale" }`:                         "dissolve it in the solution, little by little, in a cold bath",
		`{ start = "weak" }, { take = "5 mL", with = "pipette" }, { strengthen = "10 mL", of = "strong", with = "small cylinder" }`: "add 10 mL of strong with the small cylinder, little by little, in a cold bath",
		`{ start = "weak" }, { take = "10 mL", with = "pipette" }, { strengthen = "2 mL", of = "strong", with = "pipette" }`:        "add 2 mL of strong with the pipette, little by little",
	} {
		b := sheetOf(t, `, hazards = ["acid"]`, "", "", steps)
		said := strings.Join(Instructions(b.prep(), b.route), "; ")
		assert.Contains(t, said, want)
		cold := false
		for i := range b.route.Steps {
			cold = cold || strings.Contains(b.do(i), "cold bath")
		}
		assert.Equal(t, cold, strings.Contains(said, "cold bath"), said)
		b = sheetOf(t, `, hazards = ["none known"]`, "", "", steps)
		assert.NotContains(t, strings.Join(Instructions(b.prep(), b.route), "; "), "bath")
	}
}
