package report

import (
	"context"
	"fmt"
	"os"
	"testing"

	"github.com/stretchr/testify/require"

	"minim/equipment"
	"minim/uncertainty"
	"minim/uncertainty/route"
)

// All preps of these tests are invented.
const benchOfOrders = `
[[balance]]
name = "scale"
capacity = "200 g"
readability = "0.01 g"
[[pipette]]
name = "pipette"
kind = "graduated"
capacity = "10 mL"
class = "B"
[[cylinder]]
name = "cylinder"
capacity = "100 mL"
class = "B"
[[cylinder]]
name = "small cylinder"
capacity = "10 mL"
class = "B"
[[dropper]]
name = "dropper"
[[flask]]
name = "10 mL flask"
capacity = "10 mL"
class = "A"
[[flask]]
name = "25 mL flask"
capacity = "25 mL"
class = "A"
[[flask]]
name = "50 mL flask"
capacity = "50 mL"
class = "A"
[[flask]]
name = "100 mL flask"
capacity = "100 mL"
class = "A"
`

// sheetOf is the bench of a prep with one route, of a solute and a solvent with hazards.
func sheetOf(t *testing.T, solute, solvent, more, steps string) *bench {
	t.Helper()
	kit, err := equipment.ParseKit("bench.toml", []byte(benchOfOrders))
	require.NoError(t, err)
	text := fmt.Sprintf(`target = "1 %% w/v"
volume = "5 mL"
solute = { name = "solute", density = "1.2 g/mL"%s }
solvent = { name = "water"%s }
packet = [ { name = "sachet", content = "0.5 g" } ]
stock = [ { name = "strong", strength = "37 %% w/v" }, { name = "weak", strength = "2 %% w/v" } ]
%s
route = [ { name = "one", steps = [ %s ] } ]
`, solute, solvent, more, steps)
	p, err := route.ParsePrep("prep.toml", []byte(text), kit)
	require.NoError(t, err, text)
	c, err := route.Compare(context.Background(), p, "", uncertainty.Settings{Trials: 10000, Seed: 1, Coverage: 0.95})
	require.NoError(t, err)
	require.True(t, c.Results[0].Possible, "%s: %s", steps, c.Results[0].Reason)
	c.Verdict.Use = 0
	return newBench(&Paper{Comparison: c})
}

var routesOfOrders = []string{
	`{ start = "strong" }, { take = "2 mL", with = "pipette" }, { make-up-to = "25 mL", in = "25 mL flask" }`,
	`{ start = "strong" }, { take = "8 mL", with = "pipette" }, { make-up-to = "25 mL", in = "25 mL flask" }`,
	`{ start = "strong" }, { pour = "9.4 mL", from = "small cylinder" }, { make-up-to = "25 mL", in = "25 mL flask" }`,
	`{ weigh = "0.50 g", on = "scale" }, { make-up-to = "25 mL", in = "25 mL flask" }`,
	`{ packet = "sachet" }, { make-up-to = "25 mL", in = "25 mL flask" }`,
	`{ measure = "2 mL", with = "pipette" }, { make-up-to = "25 mL", in = "25 mL flask" }`,
	`{ start = "strong" }, { take = "2 mL", with = "pipette" }, { add = "20 mL", with = "cylinder" }`,
	`{ start = "strong" }, { take = "5 mL", with = "pipette" }, { add = "5 mL", with = "pipette" }, { add = "20 drops", with = "dropper" }`,
	`{ weigh = "0.50 g", on = "scale", weighed-back = true }, { dissolve-in = "20 mL", with = "cylinder" }`,
	`{ measure = "2 mL", with = "pipette" }, { dissolve-in = "20.00 g", on = "scale" }`,
	`{ weigh = "0.50 g", on = "scale" }, { weigh-up-to = "20.00 g", on = "scale" }`,
	`{ weigh = "0.50 g", on = "scale", weighed-back = true }, { weigh-up-to = "20.00 g", on = "scale" }`,
	`{ weigh = "0.50 g", on = "scale" }, { packet = "sachet" }, { weigh-up-to = "20.00 g", on = "scale" }`,
	`{ measure = "2 mL", with = "pipette" }, { weigh-up-to = "20.00 g", on = "scale" }`,
	`{ start = "strong" }, { weigh-aliquot = "2.00 g", on = "scale" }, { weigh-up-to = "20.00 g", on = "scale" }`,
	`{ start = "weak" }, { take = "10 mL", with = "pipette" }, { strengthen = "2 mL", of = "strong", with = "pipette" }, { add = "5 mL", with = "pipette" }`,
	`{ start = "strong" }, { take = "2 mL", with = "pipette" }, { strengthen = "10 mL", of = "weak", with = "pipette" }`,
	`{ start = "weak" }, { take = "10 mL", with = "pipette" }, { add-solute = "0.20 g", on = "scale" }`,
	`{ weigh = "0.50 g", on = "scale" }, { make-up-to = "25 mL", in = "25 mL flask" }, { take = "all" }, { make-up-to = "100 mL", in = "100 mL flask" }`,
	`{ weigh = "0.50 g", on = "scale" }, { make-up-to = "25 mL", in = "25 mL flask" }, { take = "all" }, { add = "5 mL", with = "pipette" }`,
	`{ weigh = "0.50 g", on = "scale" }, { make-up-to = "25 mL", in = "25 mL flask" }, { take = "2 mL", with = "pipette" }, { make-up-to = "25 mL", in = "25 mL flask" }`,
}

func TestPrintOrders(t *testing.T) {
	if os.Getenv("SHOW") == "" {
		t.Skip()
	}
	for _, h := range []string{`, hazards = ["alkali"]`, `, hazards = ["toxic"]`, `, hazards = ["gives off gas"]`, ``} {
		for _, r := range routesOfOrders {
			b := sheetOf(t, h, "", "", r)
			fmt.Println("\n###", h, r)
			lines := Instructions(b.prep(), b.route)
			for i := range b.route.Steps {
				fmt.Printf("%d %s\n      [%v]\n      screen: %s\n", i+1, b.do(i), b.care(i), lines[i])
			}
			for _, w := range b.Results[0].Notes.Warnings {
				fmt.Println("   WARN", w)
			}
		}
	}
}
