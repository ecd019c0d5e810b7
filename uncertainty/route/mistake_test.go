package route

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"minim/equipment/benchfile"
)

// Every mistake of the newer keys and verbs: what is marked in the file, the
// message and the hint.
func TestPrepMistakes(t *testing.T) {
	kit, err := ParseKit("bench.toml", []byte(exactKit))
	require.NoError(t, err)
	stock, packet := stockOf("10 g/L"), "[[packet]]\nname = \"sachet\"\ncontent = \"10 g\"\n"
	end := takeTen + toMark
	for _, c := range []struct {
		recipe                recipe
		marked, message, hint string
	}{
		// strengths
		{recipe{target: "1 %", steps: weighTen + toMark}, `"1 %"`, `target: "%" does not say of what: by weight in a volume, by weight, or by volume`,
			"write % w/v for grams in 100 mL of solution, % w/w for grams in 100 g, % v/v for mL in 100 mL"},
		{recipe{target: "5 ppm", steps: weighTen + toMark}, `"5 ppm"`, `target: "ppm" does not say of what`,
			"write mg/L for milligrams in a litre; for milligrams in a kilogram write 0.0001 % w/w"},
		{recipe{target: "5 G/L", steps: weighTen + toMark}, `"5 G/L"`, `target: "G/L" is not a unit of strength`, "write g/L"},
		{recipe{target: "5 MM", steps: weighTen + toMark}, `"5 MM"`, `target: "MM" is not a unit of strength`, "write mM or mmol/L"},
		{recipe{target: "102 % w/w", steps: weighTen + toMark}, `"102 % w/w"`, `target: "102 % w/w" is more than 100 %`, ""},
		{recipe{target: "101 % v/v", solute: "name = \"x\"\ndensity = \"1 g/mL\"", steps: weighTen + toMark}, `"101 % v/v"`, `target: "101 % v/v" is more than 100 %`, ""},
		{recipe{target: "1 mol/L", steps: weighTen + toMark}, `"10.00 g"`, "weigh: a mass of solute needs the molar mass of the solute, since the target is in mol/L",
			`state it in the table [solute]: molar-mass = "58.44 g/mol"`},
		{recipe{target: "1 U/mL", steps: weighTen + toMark}, `"10.00 g"`, "weigh: a mass of solute needs the activity of the solute, since the target is in U/mL",
			`state it in the table [solute]: activity = "30 U/mg"`},
		{recipe{target: "1 % v/v", steps: weighTen + toMark}, `"10.00 g"`, "weigh: a mass of solute needs the density of the solute, since the target is in % v/v",
			`state it in the table [solute]: density = "0.789 g/mL"`},
		{recipe{target: "1 % w/w", solvent: `name = "oil"`, steps: weighTen + toMark}, `"1 % w/w"`, "target: % w/w needs the density of the solvent",
			`state it in the table [solvent]: density = "0.998 g/mL"`},
		{recipe{head: `tolerance = "1 mmol/L"`, steps: weighTen + toMark}, `"1 mmol/L"`, "tolerance: mmol/L needs the molar mass of the solute",
			`state it in the table [solute]: molar-mass = "58.44 g/mol"`},
		{recipe{head: `not-above = "9 g/L"`, steps: weighTen + toMark}, `"9 g/L"`, "not-above: the target, 10 g/L, is above it", ""},

		// solute and solvent
		{recipe{solute: "name = \"x\"\ndensity = { value = \"1.2 g/mL\", expanded = \"1.3 g/mL\", k = 2 }", steps: weighTen + toMark}, `"1.3 g/mL"`,
			"expanded: the expanded uncertainty is not smaller than the value", ""},
		{recipe{solute: "name = \"x\"\ndensity = { value = \"1.2 g/mL\", expanded = \"-0.1 g/mL\", k = 2 }", steps: weighTen + toMark}, `"-0.1 g/mL"`,
			"expanded: an expanded uncertainty must not be below 0", ""},
		{recipe{solute: "name = \"x\"\nmolar-mass = { value = \"58 g/mol\", expanded = \"1 g/mol\" }", steps: weighTen + toMark}, "{ value = \"58 g/mol\", expanded = \"1 g/mol\" }",
			"the molar-mass needs `k`", ""},
		{recipe{solute: "name = \"x\"\nactivity = \"30 U\"", steps: weighTen + toMark}, `"30 U"`, `activity: "30 U" is not an activity`, `write units in a mass, "30 U/mg"`},
		{recipe{solute: "name = \"x\"\nform-factor = 12", steps: weighTen + toMark}, "12", "form-factor: a form factor is a ratio of molar masses, from 0.001 to 10",
			"write 0.903 for 0.903 g of the substance in 1 g of what is weighed"},
		{recipe{solute: "name = \"x\"\nspecific-volume = \"9 mL/g\"", steps: weighTen + toMark}, `"9 mL/g"`, `specific-volume: "9 mL/g" is not likely`,
			"common solids have between -0.15 and 0.9 mL/g"},
		{recipe{solute: "name = \"x\"\nsolubility = \"3 ppm\"", steps: weighTen + toMark}, `"3 ppm"`, `solubility: "ppm" does not say of what`,
			"write mg/L for milligrams in a litre; for milligrams in a kilogram write 0.0001 % w/w"},
		{recipe{solvent: "name = \"x\"\nevaporation = \"2 %\"", steps: weighTen + toMark}, `"2 %"`, `evaporation: "2 %" does not say of what`,
			`write it as "2 % of volume"`},
		{recipe{solvent: "name = \"x\"\nevaporation = \"2 % of mass\"", steps: weighTen + toMark}, `"2 % of mass"`, `evaporation: "2 % of mass" is not a share of the volume from 0 to 50 %`,
			`write it as "2 % of volume"`},
		{recipe{head: `bench = { meniscus = "none" }`, steps: weighTen + toMark}, `"none"`, `meniscus: "none" is not one of counted, ignored`, ""},

		// stocks and packets
		{recipe{more: stockOf(`{ from = "1 g/L", to = "1 % w/v" }`), steps: fromStock + end}, `"1 % w/v"`, "to: g/L and % w/v are mixed", "state one strength in one unit"},
		{recipe{more: stockOf(`{ value = "1 g/L", expanded = "1 mg/L", k = 2 }`), steps: fromStock + end}, `"1 mg/L"`, "expanded: g/L and mg/L are mixed", "state one strength in one unit"},
		{recipe{more: stockOf("1 mol/L"), steps: fromStock + end}, `"1 mol/L"`, "strength: mol/L needs the molar mass of the solute",
			`state it in the table [solute]: molar-mass = "58.44 g/mol"`},
		{recipe{more: stockOf("1 g/L", `loss = "5 % of volume"`), steps: fromStock + end}, `"5 % of volume"`, `loss: "5 % of volume" is not a share of the strength from 0 to 50 %`,
			`write it as "2 % of strength"`},
		{recipe{more: packet + packet, steps: weighTen + toMark}, `"sachet"`, `name: there are two packets called "sachet"`, "give each its own name"},
		{recipe{more: "[[packet]]\nname = \"sachet\"\ncontent = \"5 mL\"\n", steps: weighTen + toMark}, `"5 mL"`, `content: "5 mL" is a volume, not a mass`, "a mass is written in g, mg, µg or kg"},
		{recipe{more: "[[packet]]\nname = \"sachet\"\ncontent = \"0 g\"\n", steps: weighTen + toMark}, `"0 g"`, `content: no packet holds "0 g"`, "state a mass between 1 µg and 1000 kg, or units of activity as in \"5000 U\""},
		{recipe{more: "[[stock]]\nname = \"s\"\nstrength = \"5 % w/v\"\nvolume = \"1e7 mL\"\n", steps: weighTen + toMark}, `"1e7 mL"`, `volume: no stock has a volume of "1e7 mL"`, "state one between 0.001 µL and 1000 L"},
		{recipe{more: packet, steps: `{ packet = "sache" }, ` + toMark}, `"sache"`, `packet: there is no [[packet]] called "sache"`, `perhaps "sachet" is meant`},
		{recipe{steps: `{ packet = "sachet" }, ` + toMark}, `"sachet"`, "packet: the prep has no [[packet]]", "add one, with its name"},

		// verbs and their order
		{recipe{steps: `{ measure = "1 mL", with = "pipette" }, ` + weighTen + toMark}, "weigh", "weigh: the solute is measured by volume in one step and by mass in another", "use one of the two for all of it"},
		{recipe{more: stock, steps: fromStock + `{ dissolve-in = "10 mL", with = "cylinder" }, `}, "dissolve-in", "dissolve-in: cannot come here, where there is a stock", "it can follow measured solute"},
		{recipe{steps: weighTen + toMark + `{ pour = "50 mL", from = "pipette" }, ` + toMark}, `"pipette"`, "from: the pipette is not a vessel to pour from", "choose from cylinder, flask"},
		{recipe{steps: weighTen + toMark + `{ take = "1 mL", with = "flask" }, ` + toMark}, `"flask"`, "with: the flask holds a volume but does not measure one out", "choose from cylinder, pipette, 10 mL pipette, syringe, dropper"},
		{recipe{steps: weighTen + toMark + `{ pour = "50 mL", with = "cylinder" }, ` + toMark}, "with", "with: pour does not say with what, but from what", "write from"},
		{recipe{more: stock, steps: fromStock + `{ take = "1 mL", with = "dropper" }, ` + toMark}, `"1 mL"`, `take: a dropper counts drops, found "1 mL"`, `write "3 drops"`},
		{recipe{more: stock, steps: fromStock + `{ take = "2.5 drops", with = "dropper" }, ` + toMark}, `"2.5 drops"`, `take: a dropper counts drops, found "2.5 drops"`, `write "3 drops"`},
		{recipe{more: stock, steps: fromStock + `{ take = "3 drops", with = "pipette" }, ` + toMark}, `"3 drops"`, `take: "3 drops" has the unit "drops", which is not a unit of volume`, "a volume is written in mL, µL, L or cm3"},
		{recipe{solvent: "name = \"water\"", more: stock, steps: fromStock + `{ weigh-aliquot = "1.00 g", on = "balance" }, { weigh-up-to = "9.00 g", on = "balance", piece = 2 }, `},
			`"balance"`, "on: the vessel was zeroed on another balance", "weigh the aliquot and the total on one balance"},

		// options
		{recipe{more: stock, steps: fromStock + `{ take = "1 mL", with = "pipette", rinsed = true }, { add = "9 mL", with = "cylinder" }, `}, "rinsed",
			"rinsed: the solvent of the rinse is not measured", "rinse only into what is then made up to a mark or weighed up"},
		{recipe{solute: "name = \"x\"\ndensity = \"1 g/mL\"", steps: `{ measure = "1 mL", with = "pipette", rinsed = true }, { dissolve-in = "9 mL", with = "cylinder" }, `}, "rinsed",
			"rinsed: the solvent of the rinse is not measured", "rinse only into what is then made up to a mark or weighed up"},
		{recipe{more: stock, steps: fromStock + `{ take = "1 mL", with = "pipette", rinsed = true, blown-out = true }, ` + toMark}, "true",
			"blown-out: rinsed and blown out are both stated", "state what is done last"},
		{recipe{more: stock, steps: fromStock + `{ take = "1 mL", with = "syringe", blown-out = true }, ` + toMark}, "blown-out",
			"blown-out: the syringe has no last drop to blow out", "only a glass pipette has one, one-mark or graduated"},
		{recipe{more: stock, steps: fromStock + `{ take = "3 drops", with = "dropper", rinsed = true }, ` + toMark}, "rinsed",
			"rinsed: what is left in the dropper does not belong to what was measured", "leave rinsed out"},
		{recipe{more: stock, steps: fromStock + `{ take = "1 mL", with = "pipette", state = "used" }, ` + toMark}, "state",
			"state: the pipette has not been used before this step", `leave state out, or say "wet"`},
		{recipe{more: stock, steps: fromStock + `{ take = "1 mL", with = "syringe" }, ` + toMark + `{ take = "1 mL", with = "syringe", state = "used" }, ` + toMark}, "state",
			"state: the syringe is single-use, a new one each time", "leave state out"},
		{recipe{more: stock, steps: fromStock + `{ take = "1 mL", with = "pipet", state = "used" }, ` + toMark}, `"pipet"`,
			`with: there is no vessel or pipette in the kit called "pipet"`, "choose from cylinder, pipette, 10 mL pipette, syringe, dropper"},
		{recipe{more: stock, steps: fromStock + `{ take = "1 mL", with = "pipette", state = "clean" }, ` + toMark}, `"clean"`,
			`state: "clean" is not one of conditioned, dry, wet, used`, ""},
		{recipe{steps: `{ weigh = "1.00 g", on = "balance", weighed-back = true, left-behind = "1 mg" }, ` + toMark}, `"1 mg"`,
			"left-behind: the boat is weighed back, so nothing is left on it unknown", "state one of the two"},
		{recipe{steps: `{ weigh = "1.00 g", on = "balance", left-behind = "1 g" }, ` + toMark}, `"1 g"`, "left-behind: more than was weighed cannot be left behind", ""},
		{recipe{steps: `{ weigh = "1.00 g", on = "balance", tare = "seperate" }, ` + toMark}, `"seperate"`, `tare: "seperate" is not one of zeroed, separate`, `write "separate"`},
		{recipe{steps: `{ weigh = "1.00 g", on = "balance", weighed-back = "yes" }, ` + toMark}, `"yes"`, `weighed-back: found the text "yes", expected true or false without quotes`, "write it without quotes, as in true"},
		{recipe{steps: `{ weigh = "1.00 g", on = "balance", piece = 3 }, ` + toMark}, "3", "piece: there is no piece 3 of it on the bench", "the kit says count = 2, or nothing for one"},
		{recipe{more: stockOf("10 g/L", `solvent = "acetone"`), steps: fromStock + takeTen + `{ add = "9 mL", with = "cylinder" }, `}, `{ add = "9 mL", with = "cylinder" }`,
			"acetone and water contract on mixing by an amount that is not stated", `state contraction = "2 % of volume", or make up to a mark`},
		{recipe{more: stockOf("10 g/L", `solvent = "acetone"`), steps: fromStock + takeTen + `{ add = "9 mL", with = "cylinder", contraction = "60 % of volume" }, `}, `"60 % of volume"`,
			`contraction: "60 % of volume" is not a share of the volume from 0 to 50 %`, `write it as "2 % of volume"`},
		{recipe{steps: weighTen + `{ dissolve-in = "90 mL", with = "cylinder", contraction = "1 % of volume" }, `}, "contraction",
			"contraction: is stated for a solid, which takes up its specific volume", "state specific-volume in the table [solute]"},
		{recipe{steps: weighTen + `{ dissolve-in = "90.00 g", on = "balance", contraction = "1 % of volume" }, `}, "contraction",
			"unknown key `contraction` in a step", "the keys of a step are dissolve-in, piece, on, vessel, open, mouth"},
		{recipe{steps: weighTen + toMark + `{ pour = "50 mL", from = "cylinder", blown-out = true }, ` + toMark}, "blown-out",
			"unknown key `blown-out` in a step", "the keys of a step are pour, of, piece, from, reading, rinsed, state"},
		{recipe{more: stock, steps: fromStock + `{ take = "1 mL", with = "pipette", left-behind = "1 mg" }, ` + toMark}, "left-behind",
			"unknown key `left-behind` in a step", "the keys of a step are take, of, piece, with, reading, rinsed, blown-out, state"},
	} {
		text := c.recipe.text()
		_, err := ParsePrep("prep.toml", []byte(text), kit)
		m, alone := err.(*benchfile.Mistake)
		if !assert.True(t, alone, "%v: %s", err, text) {
			continue
		}
		source := []rune(m.Source)
		assert.Equal(t, c.marked, string(source[m.Column-1:m.Column-1+m.Width]), m.Message)
		assert.Equal(t, c.message, m.Message)
		assert.Equal(t, c.hint, m.Hint, m.Message)
	}
}
