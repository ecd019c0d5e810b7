package equipment

import (
	"errors"
	"reflect"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"minim/equipment/benchfile"
	"minim/uncertainty"
	"minim/uncertainty/near"
)

// An invented bench: the two examples of the project's design, one with the
// readings that the other mentions.
const statedKit = `# bench.toml
[[balance]]
name = "0.01 g scale"
capacity = "200 g"
readability = "0.01 g"
repeatability = "0.01 g"          # or readings = ["0.50 g", "0.51 g", "0.50 g", "0.49 g"]

[[pipette]]
name = "1 mL graduated"
kind = "graduated"                # one-mark, graduated
capacity = "1 mL"
class = "B"                       # tolerance and graduation from the class table
standard = "ISO"                  # or "ASTM"; never mixed silently

[[cylinder]]
name = "10 mL cylinder"
capacity = "10 mL"
class = "B"
clinging = "0.03 mL"
retained = { mean = "0.04 mL", spread = "0.02 mL" }
`

const readingsKit = `[[balance]]
name = "0.01 g scale"
capacity = "200 g"
readability = "0.01 g"
readings = ["0.50 g", "0.51 g", "0.50 g", "0.49 g"]
`

// parseKit reads a kit that is right.
func parseKit(t testing.TB, text string) *Kit {
	t.Helper()
	kit, err := ParseKit("bench.toml", []byte(text))
	require.NoError(t, err)
	return kit
}

func TestKitAsDesigned(t *testing.T) {
	kit := parseKit(t, statedKit)
	assert.Equal(t, "bench.toml", kit.File)
	assert.Equal(t, []string{"0.01 g scale", "10 mL cylinder", "1 mL graduated"}, kit.Names())
	assert.Equal(t, &Balance{
		Name: "0.01 g scale", Capacity: 200, Readability: 0.01, Repeatability: Spread{S: 0.01, Known: true}, Count: 1,
	}, kit.Balance("0.01 g scale"))
	// ISO 835 class B, 1 mL: division 0.01 mL, ±0.01 mL (from memory).
	pipette := kit.Measure("1 mL graduated")
	assert.Equal(t, "ISO 835:2007 class B", pipette.Class.String())
	assert.Equal(t, &Measure{
		Name: "1 mL graduated", Kind: "graduated", Ex: true, Capacity: 1, Division: 0.01, Numbered: 0.1, Count: 1, Class: pipette.Class,
		Bias: bias{Shape: triangle, Limit: 0.01, ClassLimit: true, ShapeAssumed: true, BetweenMarks: 0.5},
	}, pipette)
	// ISO 4788 class B, 10 mL: division 0.2 mL, ±0.2 mL.
	cylinder := kit.Measure("10 mL cylinder")
	assert.Equal(t, &Measure{
		Name: "10 mL cylinder", Kind: "cylinder", Capacity: 10, Division: 0.2, Numbered: 1, Bore: 12.65, bores: cylinder.bores, Count: 1,
		Class: cylinder.Class, StandardAssumed: true, Clinging: Stated{0.03, true},
		Retained: Retained{Mean: 0.04, Spread: Stated{0.02, true}, Known: true},
		Bias:     bias{Shape: triangle, Limit: 0.2, ClassLimit: true, ShapeAssumed: true, BetweenMarks: 0.5},
	}, cylinder)
	assert.Equal(t, (*Balance)(nil), kit.Balance("10 mL cylinder"))
	assert.Equal(t, (*Measure)(nil), kit.Measure("0.01 g scale"))
}

// s of 0.50, 0.51, 0.50, 0.49: deviations 0, 1, 0, -1 hundredths, so √(2/3)
// hundredths with n - 1 = 3.
func TestKitReadings(t *testing.T) {
	s := parseKit(t, readingsKit).Balances[0].Repeatability
	near.Relative(t, "s", 0.01*0.816496580927726, s.S, 1e-9)
	assert.Equal(t, Spread{S: s.S, DegreesOfFreedom: 3, Known: true, Mean: s.Mean, Digit: 0.01}, s)
	near.Relative(t, "mean", 0.5, s.Mean, 1e-12)
	// 9.98, 10.00, 10.02 mL (invented) have s = 0.02 mL.
	pipette := one(t, onePipette+`readings = ["9.98 mL", "10.00 mL", "10.02 mL"]`)
	near.Relative(t, "s", 0.02, pipette.Repeatability.S, 1e-9)
	assert.Equal(t, 2.0, pipette.Repeatability.DegreesOfFreedom)
}

// Heads of one instrument of each kind, to which a test adds keys.
const (
	oneBalance  = "[[balance]]\nname = \"x\"\ncapacity = \"200 g\"\nreadability = \"0.01 g\"\n"
	oneCylinder = "[[cylinder]]\nname = \"x\"\ncapacity = \"10 mL\"\n"
	oneFlask    = "[[flask]]\nname = \"x\"\ncapacity = \"10 mL\"\n"
	onePipette  = "[[pipette]]\nname = \"x\"\nkind = \"one-mark\"\ncapacity = \"10 mL\"\ntolerance = \"0.02 mL\"\n"
)

func one(t testing.TB, text string) *Measure {
	t.Helper()
	return parseKit(t, text).Measures[0]
}

// Each key changes what it should, and only that: the instrument with the key
// is the one without it, changed as said.
func TestKitKeys(t *testing.T) {
	balance := func(change func(*Balance)) func(*Kit) { return func(k *Kit) { change(k.Balances[0]) } }
	measure := func(change func(*Measure)) func(*Kit) { return func(k *Kit) { change(k.Measures[0]) } }
	own := oneCylinder + "division = \"0.2 mL\"\ntolerance = \"0.2 mL\"\n"
	for _, test := range []struct {
		head, key string
		change    func(*Kit)
	}{
		{oneBalance, `repeatability = "0.02 g"`, balance(func(b *Balance) { b.Repeatability = Spread{S: 0.02, Known: true} })},
		{oneBalance, `linearity = "0.03 g"`, balance(func(b *Balance) { b.Linearity = Stated{0.03, true} })},
		{oneBalance, `linearity = "0 g"`, balance(func(b *Balance) { b.Linearity = Stated{0, true} })},
		{oneBalance, `linearity-law = "independent"`, balance(func(b *Balance) { b.Law = Independent })},
		{oneBalance, `span = "0.1 % of reading"`, balance(func(b *Balance) { b.Span = 0.001 })},
		{oneBalance, `weighing-uncertainty = "8 mg"`, balance(func(b *Balance) { b.Weighing = Stated{0.008, true} })},
		{oneBalance, `count = 2`, balance(func(b *Balance) { b.Count = 2 })},
		{oneBalance, `price = "240 EUR"`, balance(func(b *Balance) { b.Price = Price{240, "EUR"} })},
		{own, `clinging = "30 µL"`, measure(func(k *Measure) { k.Clinging = Stated{0.03, true} })},
		{own, `retained = "0.1 mL"`, measure(func(k *Measure) { k.Retained = Retained{Mean: 0.1, Known: true} })},
		{own, `retained = { mean = "0.1 mL" }`, measure(func(k *Measure) { k.Retained = Retained{Mean: 0.1, Known: true} })},
		{own, `retained = { mean = "0.1 mL", spread = "0.03 mL" }`, measure(func(k *Measure) {
			k.Retained = Retained{Mean: 0.1, Spread: Stated{0.03, true}, Known: true}
		})},
		{own, `repeatability = "0.04 mL"`, measure(func(k *Measure) { k.Repeatability = Spread{S: 0.04, Known: true} })},
		{own, `reading = "first-time"`, measure(func(k *Measure) { k.Reading = firstTime })},
		{own, `reading = "none"`, measure(func(k *Measure) { k.Reading = noReading })},
		{own, `shape = "rectangular"`, measure(func(k *Measure) { k.Bias.Shape, k.Bias.ShapeAssumed = rectangle, false })},
		{own, `shape = "triangular"`, measure(func(k *Measure) { k.Bias.ShapeAssumed = false })},
		{own, `between-marks = 0.8`, measure(func(k *Measure) { k.Bias.BetweenMarks = 0.8 })},
		{own, `between-marks = 0`, measure(func(k *Measure) { k.Bias.BetweenMarks = 0 })},
		{own, `material = "borosilicate"`, measure(func(k *Measure) { k.Expansion, k.Glass = Stated{9.9e-6, true}, "borosilicate" })},
		{own, `expansion = "2.7e-5 /°C"`, measure(func(k *Measure) { k.Expansion = Stated{2.7e-5, true} })},
		{own, `count = 3`, measure(func(k *Measure) { k.Count = 3 })},
		{own, `price = "12.50 EUR"`, measure(func(k *Measure) { k.Price = Price{12.5, "EUR"} })},
		{own, `numbered = "2 mL"`, measure(func(k *Measure) { k.Numbered = 2 })},
		{onePipette, `bore = "4 mm"`, measure(func(k *Measure) { k.Bore = 4 })},
		{onePipette, `retained = "0.1 mL"`, measure(func(k *Measure) { k.Retained = Retained{Mean: 0.1, Known: true} })},
	} {
		want, got := parseKit(t, test.head), parseKit(t, test.head+test.key+"\n")
		want.Digest, want.Source = got.Digest, got.Source
		assert.Equal(t, false, reflect.DeepEqual(want, got), test.key)
		test.change(want)
		assert.Equal(t, want, got, test.key)
	}
}

func TestKitTitleNoteAndShapeForAll(t *testing.T) {
	head := "title = \"Bench\"\nnote = \"invented\"\nshape = \"rectangular\"\n"
	kit := parseKit(t, head+oneFlask+"class = \"A\"\n"+strings.Replace(onePipette, `"x"`, `"y"`, 1)+"shape = \"triangular\"\n")
	assert.Equal(t, []string{"Bench", "invented"}, []string{kit.Title, kit.Note})
	assert.Equal(t, bias{Shape: rectangle, Limit: 0.025, ClassLimit: true, BetweenMarks: 0.5}, kit.Measure("x").Bias)
	assert.Equal(t, bias{Shape: triangle, Limit: 0.02, Stated: true, BetweenMarks: 0.5}, kit.Measure("y").Bias) // its own beats the kit's
}

func TestKitStandardUncertainty(t *testing.T) {
	k := one(t, oneFlask+"standard-uncertainty = \"0.01 mL\"\n")
	assert.Equal(t, bias{Shape: Gauss, Limit: 0.01, Stated: true, BetweenMarks: 0.5}, k.Bias)
	assert.Equal(t, 0.01, uncertainty.SummaryOf(k.Bias.Shape.within(k.Limit(k.Capacity))).StandardUncertainty)
}

// What the kit states itself beats the row of its class, which fills in the rest.
func TestKitOwnValuesWin(t *testing.T) {
	row := one(t, oneCylinder+"class = \"B\"\nstandard = \"ISO\"\n")
	assert.Equal(t, []float64{0.2, 0.2}, []float64{row.Division, row.Bias.Limit})
	k := one(t, oneCylinder+"class = \"B\"\nstandard = \"ISO\"\ntolerance = \"0.15 mL\"\n")
	assert.Equal(t, []float64{0.2, 0.15}, []float64{k.Division, k.Bias.Limit})
	k = one(t, oneCylinder+"class = \"B\"\nstandard = \"ISO\"\nstandard-uncertainty = \"0.05 mL\"\n")
	assert.Equal(t, []float64{0.2, 0.05}, []float64{k.Division, k.Bias.Limit})
	// ISO 1042: the neck of a 10 mL flask is 7 mm.
	assert.Equal(t, 7.0, one(t, oneFlask+"class = \"A\"\n").Bore)
	assert.Equal(t, 6.5, one(t, oneFlask+"class = \"A\"\nbore = \"6.5 mm\"\n").Bore)
	// ASTM E1272 knows two divisions.
	k = one(t, oneCylinder+"class = \"A\"\nstandard = \"ASTM\"\ndivision = \"0.1 mL\"\n")
	assert.Equal(t, []float64{0.1, 0.1}, []float64{k.Division, k.Bias.Limit})
}

// 100 mL flask, class A: ISO 1042 ±0.10 mL, ASTM E288 ±0.08 mL; ISO unless said.
func TestKitStandard(t *testing.T) {
	head := "[[flask]]\nname = \"x\"\ncapacity = \"100 mL\"\nclass = \"A\"\n"
	for text, want := range map[string]struct {
		limit   float64
		assumed bool
	}{
		head:                          {0.10, true},
		head + `standard = "ISO"`:     {0.10, false},
		head + `standard = "ASTM"`:    {0.08, false},
		head + "tolerance = \"1 mL\"": {1, true},
	} {
		k := one(t, text)
		assert.Equal(t, want.limit, k.Bias.Limit)
		assert.Equal(t, want.assumed, k.StandardAssumed)
	}
}

func TestKitClassesAndForms(t *testing.T) {
	as := one(t, strings.Replace(onePipette, `tolerance = "0.02 mL"`, `class = "AS"`, 1))
	assert.Equal(t, "ISO 648:2008 class A", as.Class.String()) // class AS is swift, with the limits of A
	assert.Equal(t, 0.02, as.Bias.Limit)
	squat := one(t, oneCylinder+"class = \"B\"\nform = \"squat\"\n")
	assert.Equal(t, "ISO 4788:2005 class B, squat form", squat.Class.String())
	assert.Equal(t, []float64{1, 1}, []float64{squat.Division, squat.Bias.Limit})
	tall := one(t, oneCylinder+"class = \"B\"\nform = \"tall\"\n")
	assert.Equal(t, 0.2, tall.Bias.Limit)
}

// A size that the standard does not know is no mistake when its limit is stated.
func TestKitUnknownClassWithItsOwnLimit(t *testing.T) {
	k := one(t, "[[flask]]\nname = \"x\"\ncapacity = \"30 mL\"\nclass = \"A\"\ntolerance = \"0.05 mL\"\n")
	assert.Equal(t, (*Class)(nil), k.Class)
	assert.Equal(t, []float64{0.05, 0}, []float64{k.Bias.Limit, k.Bore})
	k = one(t, "[[cylinder]]\nname = \"x\"\ncapacity = \"30 mL\"\nclass = \"B\"\ndivision = \"1 mL\"\nstandard-uncertainty = \"0.5 mL\"\n")
	assert.Equal(t, (*Class)(nil), k.Class)
	assert.Equal(t, []float64{0.5, 1}, []float64{k.Bias.Limit, k.Division})
}

// Each mistake has its place and, where it can be foreseen, its cure.
func TestKitMistakes(t *testing.T) {
	graduated := "[[pipette]]\nname = \"x\"\nkind = \"graduated\"\n"
	for _, test := range []struct{ text, first, hint string }{
		{"title = \"x\"", "1:1: the kit holds no instrument", "add a [[balance]], [[cylinder]], [[flask]] or [[pipette]]"},
		{oneBalance + oneFlask + "class = \"A\"", `6:8: name: there are two instruments called "x"`, "give each its own name, or write count = 2"},
		{oneBalance + oneBalance, `6:8: name: there are two instruments called "x"`, "give each its own name, or write count = 2"},
		{"[[balance]]\nname = \"x\"\ncapacity = \"200 g\"", "1:1: a balance needs `readability`", ""},
		{"[[flask]]\ncapacity = \"10 mL\"\nclass = \"A\"", "1:1: a flask needs `name`", ""},
		{"[[flask]]\nname = \"x\"\nclass = \"A\"", "1:1: a flask needs `capacity`", ""},
		{"[[pipette]]\nname = \"x\"\ncapacity = \"1 mL\"\nclass = \"A\"", "1:1: a pipette needs `kind`", ""},
		{"[[pipette]]\nname = \"x\"\nkind = \"one mark\"\ncapacity = \"1 mL\"\nclass = \"A\"",
			`3:8: kind: "one mark" is not one of one-mark, graduated, piston, transfer`, `write "one-mark"`},
		{"[[balance]]\nname = \"x\"\ncapacity = \"2 g\"\nreadability = \"5 g\"",
			"4:15: readability: the readability is larger than the capacity", "a 200 g scale may show steps of 0.01 g"},
		{"[[balance]]\nname = \"x\"\ncapacity = \"200 kg\"\nreadability = \"1 µg\"",
			"4:15: readability: no display shows so many steps up to its capacity", "a 200 g scale may show steps of 0.01 g"},
		{"[[balance]]\nname = \"x\"\ncapacity = \"200 mL\"\nreadability = \"1 g\"",
			`3:12: capacity: "200 mL" is a volume, not a mass`, "a mass is written in g, mg, µg or kg"},
		{oneBalance + `repeatability = "-0.01 g"`, `5:17: repeatability: must not be below 0, found "-0.01 g"`, ""},
		{oneBalance + `repeatability = "200 g"`, "5:17: repeatability: must be smaller than the capacity", ""},
		{oneBalance + `linearity-law = "dependent"`, "5:17: linearity-law: \"dependent\" is not one of in-two-parts, independent", "write \"independent\""},
		{oneBalance + `linearity = "1 kg"`, "5:13: linearity: must be smaller than the capacity", ""},
		{oneBalance + `weighing-uncertainty = "1 kg"`, "5:24: weighing-uncertainty: must be smaller than the capacity", ""},
		{oneBalance + `readings = ["1 g"]`, "5:12: readings: a repeatability needs at least two readings", ""},
		{oneBalance + `readings = ["0.5 kg", "1 kg"]`, "5:12: readings: must be smaller than the capacity", ""},
		{oneBalance + `readings = ["10.00 g", "10.01 g", "100.1 g"]`, `5:12: readings: "100.1 g" is far from the other readings`, "look at its digits and its unit"},
		{oneBalance + `readings = ["10.00 g", "1.000 g"]`, `5:12: readings: "1.000 g" is far from the other readings`, "look at its digits and its unit"},
		{onePipette + `readings = ["10.00 mL", "10.01 mL", "1.001 mL"]`, `6:12: readings: "1.001 mL" is far from the other readings`, "look at its digits and its unit"},
		{oneBalance + `readings = ["1e300 g", "-1e300 g"]`, `5:13: readings: "1e300 g" is too large a number for a mass`, "look at the number and its unit; at most 1e+12 g is read"},
		{oneBalance + `readings = ["1e-300 g", "1 g"]`, `5:13: readings: "1e-300 g" is too small a number for a mass`, "look at the number and its unit; at least 1e-12 g is read"},
		{oneBalance + "repeatability = \"0.01 g\"\nreadings = [\"1 g\", \"2 g\"]",
			"6:12: readings: repeatability and readings are both stated", "state one of them"},
		{oneBalance + `span = "0.1 %"`, `5:8: span: "0.1 %" does not say of what`,
			`say of what it is a share, as in "8 % of target" or "2 % of capacity"`},
		{oneBalance + `span = "0.1 % of capacity"`, "5:8: span: is stated as a share of capacity",
			`write it as a share of the reading: "0.1 % of reading"`},
		{oneBalance + `span = "100 % of reading"`, "5:8: span: must lie between 0 and 100 %", ""},
		{oneBalance + `count = 0`, "5:9: count: must be a whole number of at least 1, found 0", ""},
		{oneBalance + `tolerance = "1 g"`, "5:1: unknown key `tolerance` in a balance", "the keys of a balance are " +
			"name, capacity, readability, readings, repeatability, linearity, linearity-law, span, weighing-uncertainty, count, price"},
		{oneFlask, "1:1: nothing says how good the x is", `state its class ("A" or "B"), or its own tolerance`},
		{oneFlask + `class = "C"`, `4:9: class: "C" is not one of A, AS, B`, ""},
		{oneFlask + `class = "AS"`, `4:9: class: the class table for kind "flask", standard "ISO" has no class "AS"`,
			`class can be "A", "B", or state an own tolerance instead of the class`},
		{"[[flask]]\nname = \"x\"\ncapacity = \"30 mL\"\nclass = \"A\"",
			`4:9: class: the class table for kind "flask", standard "ISO", class "A" has no capacity 30 mL`,
			"capacity can be 1 mL, 2 mL, 5 mL, 10 mL, 20 mL, 25 mL, 50 mL, 100 mL, 200 mL, 250 mL, 500 mL, 1000 mL, 2000 mL, " +
				"or state an own tolerance instead of the class"},
		{oneCylinder + "class = \"A\"\nstandard = \"ASTM\"",
			`4:9: class: the class table for kind "cylinder", standard "ASTM", form "tall", class "A", capacity 10 mL has several divisions`,
			"state which: 0.1 mL, 0.2 mL"},
		{oneCylinder + `tolerance = "0.2 mL"`, "1:1: the x has a scale, but its division is not stated", "state division, or the class that fixes it"},
		{graduated + "capacity = \"3 mL\"\nclass = \"A\"\ntolerance = \"0.1 mL\"",
			"1:1: the x has a scale, but its division is not stated", "state division, or the class that fixes it"},
		{oneFlask + "class = \"A\"\ndivision = \"1 mL\"", "5:1: unknown key `division` in a flask", "the keys of a flask are name, material, expansion, clinging, retained, readings, repeatability, count, single-use, price, " +
			"capacity, bore, marked, vessel, reading, class, standard, tolerance, standard-uncertainty, correction, between-marks, shape"},
		{oneFlask + "tolerance = \"1 mL\"\ndivision = \"1 mL\"", "5:1: unknown key `division` in a flask", "the keys of a flask are name, material, expansion, clinging, retained, readings, repeatability, count, single-use, price, " +
			"capacity, bore, marked, vessel, reading, class, standard, tolerance, standard-uncertainty, correction, between-marks, shape"},
		{oneCylinder + "tolerance = \"1 mL\"\ndivision = \"20 mL\"", "5:12: division: the division is larger than the capacity", ""},
		{oneCylinder + "tolerance = \"1 mL\"\ndivision = \"1e-12 mL\"", "5:12: division: a scale of 1e+13 lines up to its capacity is not likely", "the finest have some hundreds; at most 2000 are read"},
		{oneFlask + "tolerance = \"1 mL\"\nbore = \"120 mm\"", "5:8: bore: one millimetre of so wide a neck holds more than the capacity",
			`state the inside width at the mark, as in "13 mm"`},
		{oneFlask + "tolerance = \"10 mL\"", "4:13: tolerance: must be smaller than the capacity", ""},
		{oneFlask + "standard-uncertainty = \"10 mL\"", "4:24: standard-uncertainty: must be smaller than the capacity", ""},
		{oneFlask + "tolerance = \"1 mL\"\nstandard-uncertainty = \"1 mL\"",
			"5:24: standard-uncertainty: how good the x is, is stated twice", "state one of tolerance, standard-uncertainty and correction"},
		{onePipette + `between-marks = 1.5`, "6:17: between-marks: the correlation between marks must lie between 0 and 1", "leave it out for 1/2"},
		{onePipette + `between-marks = "0.5"`, `6:17: between-marks: found the text "0.5", expected a number without quotes`,
			"write it without quotes, as in 1.5"},
		{onePipette + `shape = "normal"`, `6:9: shape: "normal" is not one of triangular, rectangular`, ""},
		{onePipette + `reading = "carefull"`, `6:11: reading: "carefull" is not one of careful, ordinary, first-time, none`, `write "careful"`},
		{onePipette + `material = "borosilikate"`, `6:12: material: there is no material called "borosilikate"`,
			`perhaps "borosilicate" is meant; or state its cubic expansion: expansion = "9.9e-6 /°C"`},
		{onePipette + "material = \"borosilicate\"\nexpansion = \"1e-5 /°C\"", "7:13: expansion: material and expansion are both stated", "state one of them"},
		{onePipette + `expansion = "0.5 /°C"`, "6:13: expansion: nothing expands by so much", `borosilicate glass has "9.9e-6 /°C", plastics about "3e-4 /°C"`},
		{onePipette + `retained = { spread = "0.1 mL" }`, "6:12: the retained needs `mean`", ""},
		{onePipette + `retained = { mean = "0.1 mL", spread = "0.3 mL" }`, "6:40: spread: must not be above twice the mean",
			"a volume that cannot be negative varies by about its mean at most"},
		{onePipette + `retained = "10 mL"`, "6:12: retained: must be smaller than the capacity", ""},
		{onePipette + `clinging = "11 mL"`, "6:12: clinging: must be smaller than the capacity", ""},
		{onePipette + `form = "tall"`, "6:1: unknown key `form` in a pipette", "the keys of a pipette are name, kind, material, expansion, clinging, retained, " +
			"readings, repeatability, count, single-use, price, capacity, bore, marked, made-for-blow-out, two-marks, reading, class, standard, tolerance, standard-uncertainty, " +
			"correction, between-marks, shape"},
		{"[[flask]]\nname = \"x\"\ncapacity = \"10,5 mL\"\nclass = \"A\"", `3:12: capacity: "10,5 mL" has a comma in its number`,
			"write 10.5 mL: a decimal point, not a comma"},
		{"[[flask]]\nname = \"x\"\ncapacity = 10 mL\nclass = \"A\"", "3:12: found 10 mL without quotes", `put quotes round it: "10 mL"`},
		{"[[flask]]\nname = \"x\"\ncapacity = \"10 ML\"\nclass = \"A\"\ntolerance = \"0.1 mL\"",
			`3:12: capacity: "10 ML" has the unit "ML", which is not a unit of volume`, "write mL"},
		{"[[cylinder]]\nname = \"x\"\ncapacity = \"10 ML\"\ntolerance = \"0.1 mL\"\n",
			`3:12: capacity: "10 ML" has the unit "ML", which is not a unit of volume`, "write mL"},
		{oneCylinder + "division = \"0,2 mL\"\ntolerance = \"0.1 mL\"\n", `4:12: division: "0,2 mL" has a comma in its number`,
			"write 0.2 mL: a decimal point, not a comma"},
		{"[[flask]]\nname = \"x\"\ncapacity = \"1e11 mL\"\ntolerance = \"1 mL\"", "3:12: capacity: no instrument of a bench has this capacity", ""},
		{"[[flask]]\nname = \"x\"\ncapacity = \"0.000001 µL\"\ntolerance = \"0 mL\"", "3:12: capacity: no instrument of a bench has this capacity", ""},
		{"[[funnel]]\nname = \"x\"", "1:3: unknown key `funnel` in the file", "the keys of the file are title, note, shape, balance, cylinder, flask, pipette, " +
			"burette, syringe, dropper, beaker, conical-flask, conical-measure, jar, candidate"},
		{oneFlask + "class = \"A\"\ntitle = \"x\"", "5:1: unknown key `title` in a flask",
			"`title` belongs to the file, not to a flask: write it above the first [header]"},
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
