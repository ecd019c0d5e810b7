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
	assert.Equal(t, []Difference{{"solute", "price", "1 EUR", ""}}, Differences(root, again))
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
		{`a = 1`, `b = 2`, []Difference{{"", "a", "1", ""}, {"", "b", "", "2"}}},
		{`a = "1"`, `a = { b = 1 }`, []Difference{{"", "a", "1", "{ b = 1 }"}}},
		{`a = { b = 1, c = 2 }`, `a = { c = 3 }`, []Difference{{"a", "b", "1", ""}, {"a", "c", "2", "3"}}},
		{`a = { b = 1 }`, `x = 1`, []Difference{{"a", "b", "1", ""}, {"", "x", "", "1"}}},
		{`a = [ "x", "y" ]`, `a = [ "y", "x" ]`, []Difference{{"", "a", `["x", "y"]`, `["y", "x"]`}}},
		{`a = [ { name = "x", b = 1 } ]`, `a = [ { b = 2, name = "x" } ]`, []Difference{{"x", "b", "1", "2"}}},
		{`a = [ { name = "x" } ]`, `a = [ { name = "y" } ]`, []Difference{{"x", "", `{ name = "x" }`, ""}, {"y", "", "", `{ name = "y" }`}}},
		{`a = [ { name = "x" } ]`, `a = []`, []Difference{{"x", "", `{ name = "x" }`, ""}}},
		{`steps = [ { take = 1, with = "p" } ]`, `steps = [ { with = "q", take = 1 } ]`, []Difference{{"step 1", "with", "p", "q"}}},
		{`steps = [ { take = 1 } ]`, `steps = [ { pour = 1 }, { add = 2 } ]`, []Difference{{"step 1", "", "{ take = 1 }", "{ pour = 1 }"}, {"step 2", "", "", "{ add = 2 }"}}},
		{`a = [ { name = "x", b = { c = 1 } } ]`, `a = [ { name = "x", b = { c = 2 } } ]`, []Difference{{"x, b", "c", "1", "2"}}},
	} {
		assert.Equal(t, c.want, Differences(parsed(t, c.then), parsed(t, c.now)), "%s; %s", c.then, c.now)
	}
	assert.Empty(t, Differences(nil, nil))
	assert.Equal(t, []Difference{{"", "a", "1", ""}}, Differences(parsed(t, "a = 1"), nil))
	assert.Equal(t, []Difference{{"", "a", "", "1"}}, Differences(nil, parsed(t, "a = 1")))
}
