package route

import (
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"minim/report/words/note"
	"minim/uncertainty/near"
)

// A stock in % w/w has the concentration w ρ, with the density ρ of its label, from a table or
// stated (densities of CRC, but for peroxide: 18 °C from memory, 0.0008 less at 20 °C). What is
// not known of ρ is in the budget.
func TestStockByMass(t *testing.T) {
	for _, c := range []struct {
		name, solute, strength, more string
		gramsPerL, u                 float64 // of the stock; u relative, of the density
	}{
		{"ammonia", `name = "ammonia"`, "25 % w/w", "", 250 * 0.9071, 0.002 / 0.9071},
		{"acetic acid", "name = \"acetic acid\"\ndensity = \"1.049 g/mL\"", "80 % w/w", "", 800 * 1.0680, 0.0015 / 1.0680},
		{"peroxide", `name = "hydrogen peroxide"`, "30 % w/w", "", 300 * 1.1114, 0.003 / 1.1114},
		{"hydrochloric acid", `name = "HCl"`, "10 % w/w", "", 100 * 1.0476, 0.0015 / 1.0476},
		{"sulphuric acid", `name = "sulfuric acid"`, "96 % w/w", "", 960 * 1.8355, 0.003 / 1.8355},
		{"by the name of the stock", `name = "the base"`, "50 % w/w", "", 0, 0},
		{"stated without more", `name = "x"`, "25 % w/w", `density = "0.910 g/mL"`, 250 * 0.910, 0},
		{"stated and known", `name = "ammonia"`, "25 % w/w", `density = { from = "0.905 g/mL", to = "0.909 g/mL" }`, 250 * 0.907, 0.002 / 0.907},
		{"stated of an oil", `name = "x"`, "25 % w/w", "density = \"0.910 g/mL\"\nsolvent = \"oil\"", 250 * 0.910, 0},
		{"aged", `name = "ammonia"`, "25 % w/w", `loss = "10 % of strength"`, 250 * 0.9071 * 0.95, 0.002 / 0.9071},
		{"apparent specific volume", "name = \"x\"\nspecific-volume = \"1.39 mL/g\"", "25 % w/w", "", 250 * 0.99821 / (1 - 0.25*(1-1.39*0.99821)), 0},
	} {
		x := recipe{target: "20 g/L", solute: c.solute, more: stockOf(c.strength, c.more), steps: tenth}
		if c.gramsPerL == 0 {
			x.more = "[[stock]]\nname = \"Caustic soda\"\nstrength = \"50 % w/w\"\n"
			x.steps = `{ start = "Caustic soda" }, { take = "10 mL", with = "cylinder" }, ` + toMark
			c.gramsPerL, c.u = 500*1.5253, 0.003/1.5253
		}
		r := x.run(t)
		near.Relative(t, c.name, c.gramsPerL/10, r.Analytic.Value, 1e-9)
		contribution := 0.0
		for _, line := range r.Analytic.Budget {
			if line.Code == density {
				contribution += math.Abs(line.Contribution) / r.Analytic.Value
			}
		}
		near.Equal(t, c.name+", u", c.u/math.Sqrt(3), contribution, 1e-12, 1e-9)
	}
}

// What the assumed specific volume of a solid had as the "95 %" interval of liquids excluded
// what is right: 25 % w/w ammonia, 1 to 20, is 1.134 % w/v, between 1.13 and 1.14; the same of
// 80 % acetic acid 4.27 (CRC).
func TestStocksHoldTheTruth(t *testing.T) {
	for name, c := range map[string]struct{ strength, truth float64 }{
		"ammonia": {25, 25 * 0.9071}, "acetic acid": {80, 80 * 1.068}, "hydrochloric acid": {10, 10 * 1.0476}, "hydrogen peroxide": {11, 11 * 1.038},
	} {
		x := recipe{target: "1 % w/v", solute: fmt.Sprintf("name = %q", name), more: stockOf(fmt.Sprintf("%v %% w/w", c.strength)), steps: tenth}
		r := x.run(t)
		assert.InDelta(t, c.truth/10, r.Analytic.Value, r.Analytic.ExpandedUncertainty, name)
		assert.Less(t, r.Analytic.ExpandedUncertainty/r.Analytic.Value, 0.005, name)
		noted(t, note.Texts(r.Notes.Assumed), "stock has", "g/mL at 20 °C, within", "as "+name+" of its strength has in the table of stocks")
	}
	r := recipe{target: "1 % w/v", solute: `name = "hydrogen peroxide"`, more: stockOf("11 % w/w"), steps: tenth}.run(t)
	noted(t, note.Texts(r.Notes.FromMemory), "the density of stock")
}

// Where the label gives a range of strengths the density goes with the strength: γ = w ρ(w),
// dγ/dw = ρ + w ρ', with ρ' = -0.0030 g/mL for each % of ammonia from 28 to 30 % (CRC, 0.8980
// and 0.8920).
func TestDensityGoesWithStrength(t *testing.T) {
	r := recipe{target: "20 g/L", solute: `name = "ammonia"`, more: stockOf(`{ from = "28 % w/w", to = "30 % w/w" }`), steps: tenth}.run(t)
	const rho, slope = 0.8950, -0.30
	near.Relative(t, "value", 29*rho, r.Analytic.Value, 1e-4)
	near.Relative(t, "u of the strength", (rho+0.29*slope)/math.Sqrt(3), math.Abs(lineOf(t, r, "strength of stock").Contribution), 0.01)
}

// Of a solid, said or known by its name, the assumed specific volume stays, and is said; of
// anything else a stock in % w/w is refused, with what would be right.
func TestRefusedWithoutDensity(t *testing.T) {
	kit, err := ParseKit("bench.toml", []byte(exactKit))
	require.NoError(t, err)
	for _, solid := range []string{"name = \"urea\"\nstate = \"solid\"", "name = \"gum\"\nnon-volatile = true", `name = "sodium chloride"`} {
		r := recipe{solute: solid, more: stockOf("10 % w/w"), steps: tenth}.run(t)
		noted(t, note.Texts(r.Notes.Assumed), "takes up between -0.15 and 0.9 mL in solution")
		assert.True(t, lineOf(t, r, "specific volume of the "+parse(t, exactKit, recipe{solute: solid, steps: weighTen + toMark}.text()).Solute.Name).Assumed)
	}
	for _, c := range []struct{ solute, solvent, strength, more, says string }{
		{`name = "urea"`, "", "10 % w/w", "", `strength: % w/w needs the density of the stock: the table of stocks does not have "urea"`},
		{"name = \"urea\"\nstate = \"liquid\"", "", "10 % w/w", "", `the table of stocks does not have "urea"`},
		{`name = "ammonia"`, "", "40 % w/w", "", "the table of stocks has ammonia only up to 33.1 % w/w"},
		{`name = "ammonia"`, "", "10 % w/w", `solvent = "ethanol"`, "the table of stocks is of solutions in water, not in ethanol"},
		{`name = "urea"`, "", `{ value = "10 % w/w", expanded = "1 % w/w", k = 2 }`, "", "needs the density of the stock"},
	} {
		x := recipe{solute: c.solute, more: stockOf(c.strength, c.more), steps: tenth}
		_, err := ParsePrep("prep.toml", []byte(x.text()), kit)
		if assert.Error(t, err, c.says) {
			assert.Contains(t, err.Error(), c.says)
			assert.Contains(t, err.Error(), `state density in the [[stock]], as its label has it; or, of a solid that is dissolved, state = "solid" in the table [solute]`)
		}
	}
}

// Of one label that can be read in two ways both are named; said, the factor between them
// counts: 28 % NH4OH are 13.61 % NH3, of which the density is 0.9444 (CRC, between 12 and 14 %).
func TestTwoReadingsOfALabel(t *testing.T) {
	x := recipe{target: "20 g/L", solute: `name = "ammonia"`, more: stockOf("28 % w/w"), steps: tenth}
	r := x.run(t)
	noted(t, note.Texts(r.Notes.Assumed), "the strength of stock counts NH3; its label may count NH4OH instead, of which 1 g holds 0.486 g of NH3")
	near.Relative(t, "as NH3", 28*0.8980, r.Analytic.Value, 1e-9)

	x.solute, x.more = "name = \"ammonia\"\nas = \"NH3\"", stockOf("28 % w/w", `as = "NH4OH"`)
	r = x.run(t)
	near.Relative(t, "as NH4OH", 28*0.4860*0.9444, r.Analytic.Value, 5e-4)
	noted(t, note.Texts(r.Notes.Assumed), "1 g of what the label of stock counts, NH4OH, is counted as 0.486 g of NH3")

	x.solute = "name = \"ammonia\"\nas = \"nh4oh\""
	near.Relative(t, "both as NH4OH", 28*0.9444, x.run(t).Analytic.Value, 5e-4)

	x.solute, x.more = "name = \"ammonia\"\nas = \"NH3\"", stockOf("100 g/L", `as = "NH4OH"`)
	near.Relative(t, "g/L", 10*0.4860, x.run(t).Analytic.Value, 1e-12)

	kit, err := ParseKit("bench.toml", []byte(exactKit))
	require.NoError(t, err)
	for _, c := range []struct{ solute, stock, says string }{
		{`name = "ammonia"`, `as = "NH4OH"`, "as: the prep does not say what its own strengths count"},
		{"name = \"ammonia\"\nas = \"N\"", "", `as: "N" is not what labels of ammonia count`},
		{"name = \"nitric acid\"\nas = \"HNO3\"", "", "as: labels count nitric acid in one way"},
	} {
		x := recipe{solute: c.solute, more: stockOf("10 % w/w", c.stock), steps: tenth}
		_, err := ParsePrep("prep.toml", []byte(x.text()), kit)
		assert.ErrorContains(t, err, c.says)
	}
}

// Volumes of oxygen: 20 volumes are 6.07 % w/v, 110 are 33.4 % (a pharmacopoeia's 1.701 mg to
// 0.56 mL of oxygen gives 3.038 g/L for each, the gas law 3.035); weighed, 10 volumes are 3.0 %
// w/w.
func TestVolumesOfPeroxide(t *testing.T) {
	solute := `name = "hydrogen peroxide"`
	for text, want := range map[string]float64{"20 volumes": 6.07, "20 vol": 6.07, "110 vols": 33.4, "10 volume": 3.04} {
		r := recipe{target: "1 % w/v", solute: solute, more: stockOf(text), steps: tenth}.run(t)
		near.Relative(t, text, want/10, r.Intended, 2e-3)
	}
	r := recipe{target: "0.3 % w/w", solute: solute, more: stockOf("10 volumes"),
		steps: fromStock + `{ weigh-aliquot = "10.00 g", on = "balance" }, { weigh-up-to = "100.00 g", on = "balance", vessel = "50 g" }, `}.run(t)
	near.Relative(t, "% w/w", 0.3035/1.0086, r.Analytic.Value, 1e-3)
	r = recipe{target: "2 volumes", solute: solute, more: stockOf("3 % w/w"), steps: tenth}.run(t)
	near.Relative(t, "as a target", 3*1.0086/3.035, r.Intended, 1e-3)
	kit, err := ParseKit("bench.toml", []byte(exactKit))
	require.NoError(t, err)
	_, err = ParsePrep("prep.toml", []byte(recipe{more: stockOf("20 volumes"), steps: tenth}.text()), kit)
	assert.ErrorContains(t, err, "volumes are volumes of oxygen that hydrogen peroxide gives off")
}

// A weighed aliquot of a stock of which a density is stated, or known, is its mass over that
// density: 10 g of 100 g/L at 1.25 g/mL are 0.8 g; of a stock by mass its strength alone counts.
// What is made of it has the density that the table has at that strength.
func TestWeighedOutOfAStock(t *testing.T) {
	weighed := fromStock + `{ weigh-aliquot = "10.00 g", on = "balance" }, { weigh-up-to = "100.00 g", on = "balance", vessel = "50 g" }, `
	r := recipe{target: "0.8 % w/w", solute: "name = \"urea\"\nstate = \"solid\"", more: stockOf("100 g/L", `density = "1.25 g/mL"`), steps: weighed}.run(t)
	near.Relative(t, "by its density", 0.8, r.Analytic.Value, 1e-9)

	r = recipe{target: "2.5 % w/w", solute: `name = "ammonia"`, more: stockOf("25 % w/w"), steps: weighed}.run(t)
	near.Relative(t, "by mass", 2.5, r.Analytic.Value, 1e-9)
	assert.Zero(t, count(r, "density of the stock"))

	// 5 % w/w ammonia has 0.9770 g/mL (CRC): 48.85 g/L, within 0.002 g/mL
	r = recipe{target: "48.85 g/L", solute: `name = "ammonia"`, more: stockOf("25 % w/w"),
		steps: fromStock + `{ weigh-aliquot = "10.00 g", on = "balance" }, { weigh-up-to = "50.00 g", on = "balance", vessel = "50 g" }, `}.run(t)
	near.Relative(t, "g/L", 48.85, r.Analytic.Value, 1e-4)
	near.Relative(t, "u", 50*0.002/math.Sqrt(3), math.Abs(lineOf(t, r, "specific volume of the ammonia").Contribution), 0.01)
	noted(t, note.Texts(r.Notes.Assumed), "1 g of ammonia takes up between 1.4 and 1.5 mL in solution, by the table of stocks")

	// of what no table has, the density of its stock tells about how much it takes up
	r = recipe{target: "48.85 g/L", solute: `name = "x"`, more: stockOf("25 % w/w", `density = "0.9071 g/mL"`), steps: weighed}.run(t)
	near.Absolute(t, "of something else", 25*0.988, r.Analytic.Value, r.Analytic.ExpandedUncertainty)
	noted(t, note.Texts(r.Notes.Assumed), "about what it does by the density of stock")
}

// A density that is stated and that the strength does not have is told, and counts.
func TestDensityUnlikeTheTable(t *testing.T) {
	x := recipe{target: "20 g/L", solute: `name = "ammonia"`, more: stockOf("25 % w/w", `density = "0.880 g/mL"`), steps: tenth}
	r := x.run(t)
	near.Relative(t, "as stated", 25*0.880, r.Analytic.Value, 1e-9)
	noted(t, note.Texts(r.Notes.Warnings), "stock is stated to have 0.88 g/mL, and ammonia of its strength has 0.9071 g/mL in the table of stocks: look at the label")
	x.more = stockOf("25 % w/w", `density = "0.91 g/mL"`)
	assert.NotContains(t, fmt.Sprint(note.Texts(x.run(t).Notes.Warnings)), "is stated to have")
	x.more = stockOf(`{ from = "20 % w/w", to = "30 % w/w" }`, `density = "0.90 g/mL"`)
	assert.NotContains(t, fmt.Sprint(note.Texts(x.run(t).Notes.Warnings)), "is stated to have")
}

// Hazard words from a strength by mass hold for a stock of that strength, whatever density its
// bottle has: lighter, heavier, or of another form.
func TestHazardsOfStocksByMass(t *testing.T) {
	for _, more := range []string{"", `density = "0.89 g/mL"`, `density = "0.93 g/mL"`, `density = { from = "0.88 g/mL", to = "0.90 g/mL" }`, `loss = "10 % of strength"`} {
		for _, target := range []string{"10 g/L", "1 % w/w"} {
			text := recipe{target: target, solute: `name = "ammonia"`, more: stockOf("25 % w/w", more) + "\n[[hazard]]\nfrom = \"25 % w/w\"\nwords = [\"corrosive\"]\n", steps: tenth}.text()
			p := parse(t, exactKit, text)
			r := only(t, p)
			list, err := p.Handled(r, 0.95)
			require.NoError(t, err)
			assert.Equal(t, "stock", list[0].Name)
			assert.Contains(t, list[0].Hazards.Solution, "corrosive", "%s, %s", more, target)
		}
	}
}
