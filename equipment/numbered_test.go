package equipment

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
)

// ISO 384, from memory: every tenth line of a scale is numbered, or every fifth
// where the division is 2 times a power of ten.
func TestNumberedByDivision(t *testing.T) {
	for _, test := range []struct{ division, capacity, want float64 }{
		{0.001, 0.1, 0.01}, {0.01, 1, 0.1}, {0.05, 5, 0.5}, {0.1, 10, 1}, {0.1, 50, 1}, {0.2, 10, 1}, {0.02, 2, 0.1},
		{0.5, 25, 5}, {1, 100, 10}, {5, 500, 50}, {10, 1000, 100},
		{1, 25, 5}, {1, 10, 2}, {20, 100, 20}, {25, 250, 50}, {2.5, 25, 5}, {50, 250, 50}, {5, 10, 5}, {3, 300, 30}, // few lines: constructed
	} {
		assert.Equal(t, test.want, numberedByDivision(test.division, test.capacity), "%v mL by %v mL", test.capacity, test.division)
	}
}

// What syringes of each size show, from memory; sizes without a row are constructed.
func TestNumberedBySize(t *testing.T) {
	for capacity, want := range map[float64]float64{
		1: 0.1, 2: 0.5, 2.5: 0.5, 3: 0.5, 5: 1, 10: 1, 20: 5, 30: 5, 50: 10, 60: 10,
		0.05: 0.01, 0.3: 0.05, 0.4: 0.1, 0.5: 0.1, 100: 10, 200: 50, 1e-6: 1e-7, 1e9: 1e8,
	} {
		assert.Equal(t, want, numberedBySize(capacity), "%v mL", capacity)
		if row, err := findClass(Class{Kind: "syringe", Capacity: capacity}); err == nil {
			assert.Equal(t, want, row.Numbered, "%v mL", capacity)
		}
	}
}

// The class tables follow the rule, but for what is common on cylinders of 250 and
// 2000 mL, and on transfer pipettes (from memory). Where the maker chooses the division, there are four
// numbers at least, and three on what has so few lines.
func TestNumberedOfClasses(t *testing.T) {
	exceptions, rows := map[string]float64{}, 0
	for _, c := range classTable() {
		what := fmt.Sprintf("%s %v, %v mL", c.Kind, c, c.Capacity)
		if !Kind(c.Kind).Traits().Numbers {
			assert.Equal(t, 0.0, c.Numbered, what)
			continue
		}
		rows++
		assert.Equal(t, fromMemory, c.NumberedTrust, what)
		switch {
		case c.Division == 0:
			assert.GreaterOrEqual(t, c.Capacity/c.Numbered, 3.0, what)
			assert.LessOrEqual(t, c.Capacity/c.Numbered, 10.0, what)
		case c.Numbered != numberedByDivision(c.Division, c.Capacity):
			exceptions[fmt.Sprintf("%s of %v mL by %v mL", c.Kind, c.Capacity, c.Division)] = c.Numbered
		}
		assert.Equal(t, true, c.Division == 0 || isMultiple(c.Numbered, c.Division), what)
	}
	assert.Equal(t, map[string]float64{
		"cylinder of 250 mL by 2 mL": 20, "cylinder of 2000 mL by 20 mL": 200, "transfer of 5 mL by 0.5 mL": 0.5,
	}, exceptions)
	assert.Equal(t, 50+24+20+15+10+34+3, rows) // cylinders, plastic ones, burettes, graduated pipettes, syringes, printed scales, transfer pipettes
}

// Where the numbers of a piece come from: the kit, its class, the size of what has
// no division in a kit, or the division.
func TestNumberedOfAPiece(t *testing.T) {
	beaker := "[[beaker]]\nname = \"x\"\ncapacity = \"250 mL\"\n"
	large := "[[syringe]]\nname = \"x\"\ncapacity = \"100 mL\"\ntolerance = \"4 mL\"\n"
	for text, want := range map[string]float64{
		oneCylinder + "class = \"B\"\n":                                      1,
		oneCylinder + "class = \"B\"\nnumbered = \"2 mL\"\n":                 2,
		oneCylinder + "division = \"0.5 mL\"\ntolerance = \"0.5 mL\"\n":      1,  // ten divisions would leave two numbers
		oneCylinder + "division = \"0.2 mL\"\ntolerance = \"0.1 mL\"\n":      1,  // the rule
		"[[cylinder]]\nname = \"x\"\ncapacity = \"250 mL\"\nclass = \"B\"\n": 20, // its class
		oneBurette:                         1,
		beaker:                             50,
		beaker + "tolerance = \"10 mL\"\n": 50, // not in need of a class otherwise
		beaker + "division = \"25 mL\"\n":  50,
		beaker + "division = \"20 mL\"\n":  20, // the class's 50 is no whole number of them
		beaker + "division = \"10 mL\"\n":  50,
		beaker + "division = \"25 mL\"\nnumbered = \"25 mL\"\n": 25,
		large:                            10,
		large + "numbered = \"20 mL\"\n": 20,
		"[[syringe]]\nname = \"x\"\ncapacity = \"20 mL\"\n":                     5,
		"[[pipette]]\nname = \"x\"\nkind = \"transfer\"\ncapacity = \"3 mL\"\n": 0.5,
		onePiston: 0, onePipette: 0, oneDropper: 0, oneFlask + "class = \"A\"\n": 0,
		"[[beaker]]\nname = \"x\"\ncapacity = \"300 mL\"\ntolerance = \"10 mL\"\n": 0, // nothing is known of its scale
	} {
		assert.Equal(t, want, one(t, text).Numbered, text)
	}
}

func TestNumberedMistakes(t *testing.T) {
	const hint = "\n  state the volume from one number on the scale to the next"
	syringe := "[[syringe]]\nname = \"x\"\ncapacity = \"20 mL\"\n"
	for text, want := range map[string]string{
		oneCylinder + "class = \"B\"\nnumbered = \"0.5 mL\"": "b.toml:5:12: numbered: is not a whole number of divisions of 0.2 mL\n  5 | numbered = \"0.5 mL\"\n    |            ^^^^^^^^" + hint,
		oneCylinder + "class = \"B\"\nnumbered = \"20 mL\"":  "b.toml:5:12: numbered: is more than the capacity\n  5 | numbered = \"20 mL\"\n    |            ^^^^^^^" + hint,
		oneCylinder + "class = \"B\"\nnumbered = \"0 mL\"":   "b.toml:5:12: numbered: must be above 0, found \"0 mL\"\n  5 | numbered = \"0 mL\"\n    |            ^^^^^^",
		oneCylinder + "class = \"B\"\nnumbered = \"1\"":      "b.toml:5:12: numbered: \"1\" has no unit\n  5 | numbered = \"1\"\n    |            ^^^\n  add the unit: mL, µL, L or cm3",
		syringe + "numbered = \"1e-9 mL\"":                   "b.toml:4:12: numbered: no scale has so many numbers\n  4 | numbered = \"1e-9 mL\"\n    |            ^^^^^^^^^" + hint,
	} {
		_, err := ParseKit("b.toml", []byte(text))
		assert.EqualError(t, err, want, text)
	}
}
