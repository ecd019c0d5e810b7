package benchfile

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

const toBeWritten = `# a comment
title = '''  several "quotes" \ '''   # another
count = 1_000
rinsed = true
list = [ "a", 'b', # c
  "d" ]
none = []
bench = { temperature = "20 °C", within = "2 °C" }
[solute]
name = "x"
price = "1 EUR"
[solute.assay]
from = "97 %"
[[flask]]
name = "f"
retained = { mean = "1 mL", spread = "2 mL" }
[[flask]]
name = "g"
steps = [ { take = "1 mL" }, { take = "2 mL" } ]
`

// What is written holds all, and is written the same when it is read again (constructed).
func TestWritten(t *testing.T) {
	const want = `title = "several \"quotes\" \\"
count = 1_000
rinsed = true
list = ["a", "b", "d"]
none = []
bench = { temperature = "20 °C", within = "2 °C" }
solute = { name = "x", assay = { from = "97 %" } }
flask = [
  { name = "f", retained = { mean = "1 mL", spread = "2 mL" } },
  { name = "g", steps = [{ take = "1 mL" }, { take = "2 mL" }] },
]
`
	root := parsed(t, toBeWritten)
	assert.Equal(t, want, root.Written("price"))
	again := parsed(t, want)
	assert.Equal(t, want, again.Written())
	assert.Equal(t, []Difference{{Of: "solute", Key: "price", Then: "1 EUR", Now: ""}}, toldOf(Differences(root, again)))
	assert.Empty(t, Differences(again, parsed(t, root.Written()), "solute"))
}

// What two tables do not agree in (constructed).
func TestDifferences(t *testing.T) {
	for _, c := range []struct {
		then, now string
		want      []Difference
	}{
		{`a = 1`, `a   =  1 # as before`, nil},
		{`a = "x"`, `a = '''x'''`, nil},
		{`a = "1.0 g"`, `a = "1000 mg"`, nil},
		{`a = [ { b = "1.0 g" } ]`, `a = [ { b = "1 g" } ]`, nil},
		{"a = 1\nb = 2", "b = 2\na = 1", nil},
		{"x = 0\n[a]\nb = 1", "a.b = 1\nx = 0", nil},
		{"[[a]]\nname = \"x\"\n[[a]]\nname = \"y\"", `a = [ { name = "y" }, { name = "x" } ]`, nil},
		{`a = 1`, `b = 2`, []Difference{{Of: "", Key: "a", Then: "1", Now: ""}, {Of: "", Key: "b", Then: "", Now: "2"}}},
		{`a = "1"`, `a = { b = 1 }`, []Difference{{Of: "", Key: "a", Then: "1", Now: "{ b = 1 }"}}},
		{`a = { b = 1, c = 2 }`, `a = { c = 3 }`, []Difference{{Of: "a", Key: "b", Then: "1", Now: ""}, {Of: "a", Key: "c", Then: "2", Now: "3"}}},
		{`a = { b = 1 }`, `x = 1`, []Difference{{Of: "a", Key: "b", Then: "1", Now: ""}, {Of: "", Key: "x", Then: "", Now: "1"}}},
		{`a = [ "x", "y" ]`, `a = [ "y", "x" ]`, []Difference{{Of: "", Key: "a", Then: `["x", "y"]`, Now: `["y", "x"]`}}},
		{`a = [ { name = "x", b = 1 } ]`, `a = [ { b = 2, name = "x" } ]`, []Difference{{Of: "x", Key: "b", Then: "1", Now: "2"}}},
		{`a = [ { name = "x" } ]`, `a = [ { name = "y" } ]`, []Difference{{Of: "x", Key: "", Then: `{ name = "x" }`, Now: ""}, {Of: "y", Key: "", Then: "", Now: `{ name = "y" }`}}},
		{`a = [ { name = "x" } ]`, `a = []`, []Difference{{Of: "x", Key: "", Then: `{ name = "x" }`, Now: ""}}},
		{`steps = [ { take = 1, with = "p" } ]`, `steps = [ { with = "q", take = 1 } ]`, []Difference{{Of: "step 1", Key: "with", Then: "p", Now: "q"}}},
		{`steps = [ { take = 1 } ]`, `steps = [ { pour = 1 }, { add = 2 } ]`, []Difference{{Of: "step 1", Key: "", Then: "{ take = 1 }", Now: "{ pour = 1 }"}, {Of: "step 2", Key: "", Then: "", Now: "{ add = 2 }"}}},
		{`a = [ { name = "x", b = { c = 1 } } ]`, `a = [ { name = "x", b = { c = 2 } } ]`, []Difference{{Of: "x, b", Key: "c", Then: "1", Now: "2"}}},
	} {
		assert.Equal(t, c.want, toldOf(Differences(parsed(t, c.then), parsed(t, c.now))), "%s; %s", c.then, c.now)
	}
	assert.Empty(t, Differences(nil, nil))
	assert.Equal(t, []Difference{{Of: "", Key: "a", Then: "1", Now: ""}}, toldOf(Differences(parsed(t, "a = 1"), nil)))
	assert.Equal(t, []Difference{{Of: "", Key: "a", Then: "", Now: "1"}}, toldOf(Differences(nil, parsed(t, "a = 1"))))
}

// toldOf leaves of differences what is told of them.
func toldOf(list []Difference) []Difference {
	for i := range list {
		list[i].List, list[i].Item = "", ""
	}
	return list
}

// Where a difference stands does not rest on the names there (constructed).
func TestDifferencesStandSomewhere(t *testing.T) {
	then := `hazard = [ { from = "1 g/L" } ]
pipette = [ { name = "hazard 1, a", count = 1, price = { each = 1 } } ]
solute = { name = "x" }`
	now := `hazard = [ { from = "2 g/L" } ]
pipette = [ { name = "hazard 1, a", count = 2, price = { each = 2 } } ]
solute = { name = "y" }`
	var places [][3]string
	for _, d := range Differences(parsed(t, then), parsed(t, now)) {
		places = append(places, [3]string{d.List, d.Item, d.Key})
	}
	assert.Equal(t, [][3]string{{"hazard", "hazard 1", "from"}, {"pipette", "hazard 1, a", "count"}, {"pipette", "hazard 1, a", "each"}, {"solute", "", "name"}}, places)
}
