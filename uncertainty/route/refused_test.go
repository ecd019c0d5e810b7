package route

import (
	"context"
	"fmt"
	"math"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"minim/uncertainty"
)

// A route that may not be used is not recommended, however good it is; once it was made its
// strength is known all the same.
func TestRefusedRouteIsNotRecommended(t *testing.T) {
	const tooStrong = `{ start = "strong" }, { weigh-aliquot = "5.00 g", on = "balance" }, { weigh-up-to = "14.00 g", on = "balance" }`
	text := func(hazards string) string {
		return `target = "10.3 % w/v"
volume = "5 mL"
tolerance = "20 % of target"
solute = { name = "solute", density = "1.1 g/mL"` + hazards + ` }
solvent = { name = "water" }
stock = [ { name = "strong", strength = "30 % w/v" } ]
route = [ { name = "refused", steps = [ ` + tooStrong + ` ] },
 { name = "by volume", steps = [ { start = "strong" }, { take = "9 mL", with = "pipette" }, { take = "9 mL", with = "pipette" }, { make-up-to = "50 mL", in = "flask" } ] } ]
`
	}
	settings := uncertainty.Settings{Trials: 10000, Seed: 1, Coverage: 0.95}
	for hazards, use := range map[string]int{`, hazards = ["none known"]`: 0, `, hazards = ["acid"]`: 1, `, hazards = ["alkali"]`: 1, `, hazards = ["corrosive"]`: 1, "": 1} {
		p := parse(t, orderKit, text(hazards))
		c, err := Compare(context.Background(), p, "", settings)
		require.NoError(t, err)
		assert.Equal(t, use, c.Verdict.Use, hazards)
		assert.Equal(t, use == 1, c.Results[0].Refused, hazards)
		chance, err := p.ChanceOf(context.Background(), p.Routes[0], settings)
		require.NoError(t, err)
		assert.Equal(t, use == 1, chance == 0, hazards)
		made := &Route{Name: "refused", Steps: p.Routes[0].Steps, Made: 3}
		r, err := p.Assess(made.With(1, 4), 0.95)
		require.NoError(t, err)
		assert.True(t, r.Possible, hazards)
	}
}

// A weak solution of which only nothing is stated needs no cold bath, and its order on a
// balance is as planned; one with words, a stronger one, one in another solvent and one of
// which no mass is known do.
func TestWeakSolutionsWarmNothing(t *testing.T) {
	const byVolume = `{ start = "stock" }, { take = "10 mL", with = "pipette" }, { take = "9 mL", with = "pipette" }, { make-up-to = "50 mL", in = "flask" }`
	const byMass = `{ start = "stock" }, { weigh-aliquot = "8.00 g", on = "balance" }, { weigh-up-to = "20.00 g", on = "balance" }`
	for _, row := range []struct {
		hazards, target, strength, solvent string
		warms                              bool
	}{
		{"", "0.1 % w/v", `"0.9 % w/v"`, "water", false},
		{"", "0.1 % w/v", `"0.01 % w/v"`, "water", false},
		{"", "0.1 % w/v", `"1 % w/v"`, "water", true},
		{"", "0.1 % w/v", `"30 % w/v"`, "water", true},
		{"", "0.1 % w/v", `{ value = "0.9 % w/v", expanded = "0.2 % w/v", k = 2 }`, "water", true},
		{"", "0.1 % w/v", `"0.9 % w/v"`, "ethanol", true},
		{"", "0.001 mol/L", `"0.01 mol/L"`, "water", true},
		{`hazards = ["acid"]`, "0.1 % w/v", `"0.9 % w/v"`, "water", true},
		{`hazards = ["alkali"]`, "0.1 % w/v", `"0.9 % w/v"`, "water", true},
		{`hazards = ["corrosive"]`, "0.1 % w/v", `"0.9 % w/v"`, "water", true},
	} {
		for _, steps := range []string{byVolume, byMass} {
			if steps == byMass && (strings.Contains(row.target, "mol") || row.solvent != "water") {
				continue // a mass of it is not known
			}
			p := parse(t, orderKit, fmt.Sprintf(`target = %q
volume = "5 mL"
[solute]
name = "solute"
%s
[solvent]
name = "water"
density = "0.998 g/mL"
[[stock]]
name = "stock"
strength = %s
solvent = %q
[[route]]
name = "one"
steps = [ %s ]
`, row.target, row.hazards, row.strength, row.solvent, steps))
			orders, err := p.Orders(p.Routes[0])
			require.NoError(t, err)
			o := orders[len(orders)-1]
			assert.True(t, o.IntoSolvent, row)
			assert.Equal(t, row.warms, o.Bath || !o.Refused.None(), "%v %s", row, steps)
			if steps == byVolume {
				assert.Positive(t, o.Ahead, row)
			} else if !row.warms {
				assert.Zero(t, o.Ahead, row)
			}
		}
	}
}

// A stock that may have lost strength counts as fresh: its words hold for the order as they
// stand on the sheet.
func TestOrderOfAStockThatLosesStrength(t *testing.T) {
	p := parse(t, orderKit, `target = "1 % w/v"
volume = "5 mL"
solute = { name = "solute", hazards = ["none known"] }
solvent = { name = "water" }
stock = [ { name = "stock", strength = { value = "10 % w/v", expanded = "2 % w/v", k = 2 }, loss = "50 % of strength" } ]
hazard = [ { from = "11.5 % w/v", words = ["corrosive"] } ]
route = [ { name = "one", steps = [ { start = "stock" }, { take = "5 mL", with = "pipette" }, { make-up-to = "50 mL", in = "flask" } ] } ]
`)
	orders, err := p.Orders(p.Routes[0])
	require.NoError(t, err)
	h := orders[1].Parts[1]
	assert.True(t, h.Any("corrosive"))
	assert.True(t, orders[1].IntoSolvent)
	r, err := p.Assess(p.Routes[0], 0.95)
	require.NoError(t, err)
	list, err := p.Handled(&r, 0.95)
	require.NoError(t, err)
	assert.Equal(t, list[0].Hazards, h)
}

// Words hold from their strength on in whatever unit it is written: the last digits of a
// conversion take none away.
func TestWordsHoldFromTheirStrengthOn(t *testing.T) {
	skipIfSlow(t)
	for n := 1; n < 300; n++ {
		perCent := strconv.FormatFloat(float64(n)/100, 'g', -1, 64)
		perLitre := strconv.FormatFloat(math.Round(float64(n)*100)/1000, 'g', -1, 64)
		p := parse(t, orderKit, fmt.Sprintf(`target = "%s %% w/v"
volume = "5 mL"
solute = { name = "solute" }
solvent = { name = "water" }
hazard = [ { from = "%s g/L", words = ["toxic"] }, { from = "%s mg/mL", words = ["acid"] } ]
`, perCent, perLitre, perLitre))
		h := p.HazardsAt(p.Target.Value, p.Target.Value)
		assert.ElementsMatch(t, []string{"toxic", "acid"}, h.Solution, perCent)
		assert.Empty(t, h.Straddled, perCent)
		c, err := p.Concentration(perLitre + " g/L")
		require.NoError(t, err)
		assert.Len(t, p.HazardsAt(p.StrengthOf(c), p.StrengthOf(c)).Solution, 2, perCent)
	}
}
