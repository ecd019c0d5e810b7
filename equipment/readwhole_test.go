package equipment

import (
	"errors"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"minim/equipment/benchfile"
)

// Kits with one mistake each: where it stands, what is wrong, and the cure.
func TestMistakesOfTheWholeBench(t *testing.T) {
	const (
		measure   = "[[cylinder]]\nname = \"c\"\ncapacity = \"50 mL\"\nclass = \"B\"\n"
		lineless  = measure + "[[jar]]\nname = \"j\"\n"
		lined     = lineless + "line = \"50 mL\"\n"
		syringe   = "[[syringe]]\nname = \"x\"\n"
		piston    = "[[pipette]]\nname = \"x\"\nkind = \"piston\"\n"
		beaker    = "[[beaker]]\nname = \"x\"\ncapacity = \"100 mL\"\n"
		own       = oneFlask + "tolerance = \"0.1 mL\"\n"
		certified = oneFlask + `correction = { value = "0.02 mL", `
		twice     = "how good the x is, is stated twice"
		ofThree   = "state one of tolerance, standard-uncertainty and correction"
	)
	for _, test := range []struct{ text, first, hint string }{
		// A jar and its line.
		{lineless, "5:1: a jar needs `line`", ""},
		{lined, "5:1: nothing says how good the line of the j is", `state what it was set with, set-with = "50 mL cylinder", or its tolerance`},
		{lined + `set-with = "d"`, `8:12: set-with: there is no measure in this kit called "d"`, "choose from c"},
		{lined + `set-with = "j"`, `8:12: set-with: there is no measure in this kit called "j"`, "choose from c"},
		{lined + `set-with = ""`, "8:12: set-with: the text is empty", "write something between the quotes, or leave the key out"},
		{lined + "set-with = \"c\"\ntolerance = \"1 mL\"", "8:12: set-with: how good the j is, is stated twice",
			"state one of tolerance, standard-uncertainty, correction and set-with"},
		{lined + "set-with = \"c\"\nbore = \"600 mm\"", "9:8: bore: one millimetre of so wide a neck holds more than the capacity",
			`state the inside width at the mark, as in "13 mm"`},
		{lined + "tolerance = \"1 mL\"\nclass = \"B\"", "9:1: unknown key `class` in a jar", "the keys of a jar are name, material, expansion, " +
			"clinging, retained, readings, repeatability, count, single-use, price, line, bore, set-with, marked, vessel, reading, tolerance, standard-uncertainty, correction, shape"},
		{lineless + "line = \"50\"\nset-with = \"c\"", `7:8: line: "50" has no unit`, "add the unit: mL, µL, L or cm3"},
		{lineless + "line = \"0 mL\"\nset-with = \"c\"", `7:8: line: must be above 0, found "0 mL"`, ""},
		{lineless + "line = \"1e12 mL\"\nset-with = \"c\"", "7:8: line: no jar of a bench holds this volume", ""},
		{lineless + "line = \"10 L\"\nset-with = \"c\"", "8:12: set-with: the line would take 200 fills", "set it with a larger measure"},
		{lineless + "line = \"0.5 mL\"\nset-with = \"c\"", "8:12: set-with: 0.5 mL is less than one division of the c: 1 mL",
			"set it with a measure that reads 0.5 mL, or draw the line elsewhere"},
		{onePipette + "[[jar]]\nname = \"j\"\nline = \"25 mL\"\nset-with = \"x\"", "9:12: set-with: the x has one mark, at 10 mL, and cannot measure 8.333333 mL",
			"set it with a measure that reads 8.333333 mL, or draw the line elsewhere"},
		{own + "[[jar]]\nname = \"j\"\nline = \"25 mL\"\nset-with = \"x\"", `8:12: set-with: there is no measure in this kit called "x"`, "there is none to choose from"},
		{oneDropper + "[[jar]]\nname = \"j\"\nline = \"5 mL\"\nset-with = \"x\"", `6:12: set-with: there is no measure in this kit called "x"`, "there is none to choose from"},

		// Syringes, pistons, transfer pipettes.
		{syringe, "1:1: a syringe needs `capacity`", ""},
		{syringe + `capacity = "7 mL"`, `1:1: the class table for kind "syringe", standard "ISO" has no capacity 7 mL`,
			"capacity can be 1 mL, 2 mL, 2.5 mL, 3 mL, 5 mL, 10 mL, 20 mL, 30 mL, 50 mL, 60 mL, or state an own tolerance"},
		{tenSyringe + `standard = "ASTM"`, `1:1: the class table for kind "syringe" has no standard "ASTM"`, `standard can be "ISO", or state an own tolerance`},
		{tenSyringe + `standard = "BS"`, `4:12: standard: "BS" is not one of ISO, ASTM, DIN, GOST, USP, Ph. Eur.`, ""},
		{tenSyringe + `single-use = "yes"`, `4:14: single-use: found the text "yes", expected true or false without quotes`, "write it without quotes, as in true"},
		{tenSyringe + `single-use = 1`, "4:14: single-use: found the number 1, expected true or false without quotes", ""},
		{tenSyringe + `marked = "Ex"`, "4:1: unknown key `marked` in a syringe", "the keys of a syringe are name, material, expansion, clinging, retained, " +
			"readings, repeatability, count, single-use, price, capacity, standard, tolerance, standard-uncertainty, correction, numbered, between-marks, shape"},
		{piston + `capacity = "25 mL"`, `1:1: the class table for kind "piston", standard "ISO", form "air" has no capacity 25 mL`,
			"capacity can be 0.001 mL, 0.002 mL, 0.005 mL, 0.01 mL, 0.02 mL, 0.05 mL, 0.1 mL, 0.2 mL, 0.5 mL, 1 mL, 2 mL, 5 mL, 10 mL, 20 mL, or state an own tolerance"},
		{onePiston + `form = "multichannel"`, `5:8: form: "multichannel" is not one of air, direct reusable, direct single-use, dispenser`, ""},
		{onePiston + `repeatability = "3 UL"`, `5:17: repeatability: "3 UL" has the unit "UL", which is not a unit of volume`, "write µL"},
		{onePiston + `repeatability = "1 mL"`, "5:17: repeatability: must be smaller than the capacity", ""},
		{"[[pipette]]\nname = \"x\"\nkind = \"transfer\"\ncapacity = \"7 mL\"", `1:1: the class table for kind "transfer" has no capacity 7 mL`,
			"capacity can be 1 mL, 3 mL, 5 mL, or state an own tolerance"},
		{"[[pipette]]\nname = \"x\"\nkind = \"syringe\"\ncapacity = \"1 mL\"", `3:8: kind: "syringe" is not one of one-mark, graduated, piston, transfer`, ""},

		// Droppers.
		{oneDropper + `drop = "5 mL"`, "3:8: drop: no drop has this volume", "a drop of water from a common dropper is about 0.05 mL"},
		{oneDropper + `drop = "0 mL"`, `3:8: drop: must be above 0, found "0 mL"`, ""},
		{oneDropper + `drop = 0.05`, "3:8: drop: found the number 0.05, expected a volume in quotes", `write it in quotes with its unit, as in "0.05 mL"`},
		{oneDropper + `drop = "1 drop"`, `3:8: drop: "1 drop" has the unit "drop", which is not a unit of volume`, "a volume is written in mL, µL, L or cm3"},
		{oneDropper + `standard = "ISO"`, `1:1: the class table for kind "dropper" has no standard "ISO"`, `standard can be "USP", "Ph. Eur.", or state an own tolerance`},
		{oneDropper + `repeatability = "0.05 mL"`, "3:17: repeatability: must be smaller than the capacity", ""},

		// Printed scales, burettes, cylinders.
		{"[[beaker]]\nname = \"x\"\ncapacity = \"75 mL\"", `1:1: the class table for kind "beaker", form "marked" has no capacity 75 mL`,
			"capacity can be 10 mL, 25 mL, 50 mL, 100 mL, 150 mL, 250 mL, 400 mL, 500 mL, 600 mL, 800 mL, 1000 mL, 2000 mL, or state an own tolerance"},
		{beaker + `form = "plastic"`, `4:8: form: "plastic" is not one of marked, unmarked`, ""},
		{beaker + `division = "200 mL"`, "4:12: division: the division is larger than the capacity", ""},
		{beaker + `marked = "TD"`, `4:10: marked: "TD" is not one of In, Ex`, `write "Ex", which is the same`},
		{beaker + `marked = "TC"`, `4:10: marked: "TC" is not one of In, Ex`, `write "In", which is the same`},
		{beaker + `marked = "in"`, `4:10: marked: "in" is not one of In, Ex`, `write "In"`},
		{"[[conical-measure]]\nname = \"x\"\ncapacity = \"20 mL\"", `1:1: the class table for kind "conical-measure", standard "GOST" has no capacity 20 mL`,
			"capacity can be 50 mL, 100 mL, 250 mL, 500 mL, 1000 mL, or state an own tolerance"},
		{"[[burette]]\nname = \"x\"\ncapacity = \"25 mL\"\nclass = \"B\"",
			`4:9: class: the class table for kind "burette", standard "ISO", class "B", capacity 25 mL has several divisions`, "state which: 0.05 mL, 0.1 mL"},
		{"[[burette]]\nname = \"x\"\ncapacity = \"25 mL\"\ntolerance = \"0.1 mL\"", "1:1: the x has a scale, but its division is not stated", "state division, or the class that fixes it"},
		{"[[burette]]\nname = \"x\"\ncapacity = \"25 mL\"", "1:1: nothing says how good the x is", `state its class ("A" or "B"), or its own tolerance`},
		{oneCylinder + "form = \"plastic\"\nclass = \"A\"", `5:9: class: the class table for kind "cylinder", standard "ISO", form "plastic" has no class "A"`,
			`class can be "B", or state an own tolerance and division instead of the class`},

		// How good a piece is.
		{oneFlask + `correction = "0.02 mL"`, `4:14: correction: found the text "0.02 mL", expected a table`, "write correction = { … }"},
		{oneFlask + `correction = { value = "0.02 mL" }`, "4:14: the correction needs `expanded`", ""},
		{certified + `expanded = "0.01 mL" }`, "4:14: the correction needs `k`", ""},
		{certified + `expanded = "0.01 mL", k = 0.5 }`, "4:61: k: this coverage factor is not likely", "certificates mostly state k = 2"},
		{certified + `expanded = "0.01 mL", k = 0 }`, "4:61: k: this coverage factor is not likely", "certificates mostly state k = 2"},
		{certified + `expanded = "0.01 mL", k = "2" }`, `4:61: k: found the text "2", expected a number without quotes`, "write it without quotes, as in 1.5"},
		{certified + `expanded = "10 mL", k = 2 }`, "4:46: expanded: must be smaller than the capacity", ""},
		{certified + `expanded = "-1 mL", k = 2 }`, `4:46: expanded: must not be below 0, found "-1 mL"`, ""},
		{certified + `U = "0.01 mL", k = 2 }`, "4:35: `U`: keys are in lower case", "write `u`"},
		{oneFlask + `correction = { value = "-10 mL", expanded = "0.01 mL", k = 2 }`, "4:24: value: must be smaller than the capacity", ""},
		{oneFlask + `correction = { value = "0.02 g", expanded = "0.01 mL", k = 2 }`, `4:24: value: "0.02 g" is a mass, not a volume`, "a volume is written in mL, µL, L or cm3"},
		{own + `correction = { value = "0.02 mL", expanded = "0.01 mL", k = 2 }`, "5:14: correction: " + twice, ofThree},
		{own + `standard-uncertainty = "0.01 mL"`, "5:24: standard-uncertainty: " + twice, ofThree},
		{oneFlask + `tolerance = "2 %"`, `4:13: tolerance: "2 %" does not say of what`, `say of what it is a share, as in "8 % of target" or "2 % of capacity"`},
		{oneFlask + `tolerance = "2 % of"`, `4:13: tolerance: "2 % of" does not say of what`, `say of what it is a share, as in "8 % of target" or "2 % of capacity"`},
		{oneFlask + `tolerance = "2 % of target"`, "4:13: tolerance: is stated as a share of target", "write it as a volume, as a share of capacity, or of reading"},
		{oneFlask + `tolerance = "100 % of capacity"`, "4:13: tolerance: must lie between 0 and 100 %", ""},
		{oneFlask + `tolerance = "-1 % of reading"`, "4:13: tolerance: must lie between 0 and 100 %", ""},
		{oneFlask + `tolerance = 0.1`, "4:13: tolerance: found the number 0.1, expected a volume in quotes", `write it in quotes with its unit, as in "0.1 mL"`},
		{oneFlask + `tolerance = "2,5 % of reading"`, `4:13: tolerance: "2,5 % of reading" has a comma in its number`, "write 2.5 % of reading: a decimal point, not a comma"},

		// What stays, prices, counts.
		{own + `retained = ["0.1 mL"]`, "5:12: retained: found a list, expected a volume in quotes", `write it in quotes with its unit, as in "1 mL"`},
		{own + `retained = { mean = "0.1 mL", sd = "0.1 mL" }`, "5:31: unknown key `sd` in the retained", "the keys of the retained are mean, spread"},
		{own + `retained = { mean = "10 mL" }`, "5:12: retained: must be smaller than the capacity", ""},
		{own + `price = 12`, "5:9: price: found the number 12, expected a text in quotes", `put quotes round it: "12"`},
		{own + `price = ""`, "5:9: price: the text is empty", "write something between the quotes, or leave the key out"},
		{own + `count = 1.5`, "5:9: count: found the number 1.5, expected a whole number", ""},
		{"[[syringes]]\nname = \"x\"", "1:3: unknown key `syringes` in the file", "write `syringe`; the keys of the file are title, note, shape, balance, cylinder, " +
			"flask, pipette, burette, syringe, dropper, beaker, conical-flask, conical-measure, jar, candidate"},
	} {
		_, err := ParseKit("b.toml", []byte(test.text))
		mistake := (*benchfile.Mistake)(nil)
		if !errors.As(err, &mistake) {
			t.Errorf("%s\ngave %v", test.text, err)
			continue
		}
		first, _, _ := strings.Cut(mistake.Error(), "\n")
		assert.Equal(t, "b.toml:"+test.first, first)
		assert.Equal(t, test.hint, mistake.Hint, test.text)
	}
}

// Each kind stands in its own table, and the traits that others rest on.
func TestKindsOfTheWholeBench(t *testing.T) {
	kit := parseKit(t, wholeBench)
	for name, want := range map[string]Measure{
		"burette":       {Kind: "burette", Ex: true, Capacity: 50, Division: 0.1, Bore: 11},
		"syringe":       {Kind: "syringe", Ex: true, Capacity: 20, SingleUse: true},
		"dropper":       {Kind: "dropper", Ex: true, Capacity: 0.05},
		"beaker":        {Kind: "beaker", Capacity: 250, Division: 50},
		"conical flask": {Kind: "conical-flask", Capacity: 250},
		"measure":       {Kind: "conical-measure", Ex: true, Capacity: 100, Division: 5},
		"piston":        {Kind: "piston", Ex: true, Capacity: 0.2, Random: 0.0006},
		"transfer":      {Kind: "transfer", Ex: true, Capacity: 3, Division: 0.5},
		"jar":           {Kind: "jar", Capacity: 250, Bore: 65},
	} {
		k := kit.Measure(name)
		got := Measure{Kind: k.Kind, Ex: k.Ex, Capacity: k.Capacity, Division: k.Division, SingleUse: k.SingleUse, Random: k.Random, Bore: k.Bore}
		assert.Equal(t, want, got, name)
		assert.Equal(t, !k.Kind.Traits().PenLine, k.Kind.Traits().Delivers, name)
	}
	jar := kit.Measure("jar")
	assert.Equal(t, line{With: kit.Measure("measure"), Fills: 3, Each: 250.0 / 3}, jar.Line)
}

// wholeBench is an invented kit with one of each kind.
const wholeBench = `[[balance]]
name = "balance"
capacity = "200 g"
readability = "0.01 g"
price = "30 EUR"

[[burette]]
name = "burette"
capacity = "50 mL"
class = "B"
division = "0.1 mL"
bore = "11 mm"

[[syringe]]
name = "syringe"
capacity = "20 mL"
single-use = true

[[dropper]]
name = "dropper"

[[beaker]]
name = "beaker"
capacity = "250 mL"
division = "50 mL"

[[conical-flask]]
name = "conical flask"
capacity = "250 mL"

[[conical-measure]]
name = "measure"
capacity = "100 mL"
division = "5 mL"
count = 2

[[pipette]]
name = "piston"
kind = "piston"
capacity = "200 µL"
correction = { value = "0.5 µL", expanded = "0.4 µL", k = 2 }

[[pipette]]
name = "transfer"
kind = "transfer"
capacity = "3 mL"

[[jar]]
name = "jar"
line = "250 mL"
set-with = "measure"
bore = "65 mm"
count = 2
`
