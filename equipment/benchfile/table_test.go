package benchfile

import (
	"context"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"minim/equipment/quantity"
)

// parsed returns the root table of a text that must be right.
func parsed(t *testing.T, text string) *Table {
	t.Helper()
	root, err := Parse("f.toml", []byte(text))
	require.NoError(t, err)
	return root
}

// readKit asks for every accessor once for each [[balance]].
func readKit(root *Table) {
	for _, b := range root.Tables("balance") {
		b.Need("name", "capacity")
		b.Text("name")
		b.Positive("capacity", quantity.Mass)
		b.NotNegative("left", quantity.Mass)
		b.Quantity("correction", quantity.Mass)
		b.Quantities("readings", quantity.Mass)
		b.Word("class", "A", "B", "AS")
		b.Texts("hazards")
		b.Count("count", 1)
		b.Number("factor")
		b.Flag("new")
		if r := b.Table("retained"); r != nil {
			r.Need("mean")
			r.Positive("mean", quantity.Volume)
			r.Positive("spread", quantity.Volume)
		}
	}
}

func TestMistakesInValues(t *testing.T) {
	const head = "[[balance]]\nname = \"x\"\n"
	const full = head + "capacity = \"1 g\"\n"
	for _, c := range []struct {
		text, place, marked, message, hint string
	}{
		{head, "1:1", `[[balance]]`, "a balance needs `capacity`", ""},
		{head + `capacity = 10`, "3:12", `10`, `capacity: found the number 10, expected a mass in quotes`, `write it in quotes with its unit, as in "10 g"`},
		{head + `capacity = inf`, "3:12", `inf`, `capacity: found the number inf, expected a mass in quotes`, `write it in quotes with its unit, as in "1 g"`},
		{head + `capacity = "10 G"`, "3:12", `"10 G"`, `capacity: "10 G" has the unit "G", which is not a unit of mass`, "write g"},
		{head + `capacity = "0 g"`, "3:12", `"0 g"`, `capacity: must be above 0, found "0 g"`, ""},
		{head + `capacity = ["1 g"]`, "3:12", `["1 g"]`, `capacity: found a list, expected a mass in quotes`, `write it in quotes with its unit, as in "1 g"`},
		{full + `left = "-1 mg"`, "4:8", `"-1 mg"`, `left: must not be below 0, found "-1 mg"`, ""},
		{full + `readings = ["1 g", "2 xl"]`, "4:20", `"2 xl"`, `readings: "2 xl" has the unit "xl", which is not a unit of mass`, "a mass is written in g, mg, µg or kg"},
		{full + `readings = [["1 g"]]`, "4:12", `[["1 g"]]`, `readings: found a list, expected a mass in quotes`, `write it in quotes with its unit, as in "1 g"`},
		{full + `class = "a"`, "4:9", `"a"`, `class: "a" is not one of A, B, AS`, `write "A"`},
		{full + `class = "Q"`, "4:9", `"Q"`, `class: "Q" is not one of A, B, AS`, ""},
		{full + `count = 0`, "4:9", `0`, `count: must be a whole number of at least 1, found 0`, ""},
		{full + `count = "3"`, "4:9", `"3"`, `count: found the text "3", expected a whole number`, "write it without quotes, as in 3"},
		{full + `count = 2.5`, "4:9", `2.5`, `count: found the number 2.5, expected a whole number`, ""},
		{full + `factor = nan`, "4:10", `nan`, `factor: found nan, expected a finite number`, ""},
		{full + `factor = -inf`, "4:10", `-inf`, `factor: found -inf, expected a finite number`, ""},
		{full + `factor = true`, "4:10", `true`, `factor: found the bare word true, expected a number without quotes`, ""},
		{full + `new = "true"`, "4:7", `"true"`, `new: found the text "true", expected true or false without quotes`, "write it without quotes, as in true"},
		{full + `hazards = [1]`, "4:12", `1`, `hazards: found the number 1, expected a text in quotes`, `put quotes round it: "1"`},
		{full + `hazards = "  "`, "4:11", `"  "`, `hazards: the text is empty`, "write something between the quotes, or leave the key out"},
		{full + `hazards = "a\u001bb"`, "4:11", `"a\u001bb"`, `hazards: the text holds the character U+001B, which cannot be printed`, "take it out"},
		{full + `hazards = "C:\u0001b"`, "4:11", `"C:\u0001b"`, `hazards: the text holds the character U+0001, which cannot be printed`, `write / or \\ for each backslash, or put the text in single quotes`},
		{full + "hazards = \"a\u202eb\"", "4:11", "\"a\u202eb\"", `hazards: the text holds the character U+202E, which cannot be printed`, `take it out`},
		{full + `hazards = 2020-01-01`, "4:11", `2020-01-01`, `hazards: found the date or time 2020-01-01, expected a text in quotes`, `put quotes round it: "2020-01-01"`},
		{full + `retained = "1 mL"`, "4:12", `"1 mL"`, `retained: found the text "1 mL", expected a table`, "write retained = { … }"},
		{full + `retained = {}`, "4:12", `{}`, "the retained needs `mean`", ""},
		{full + `retained.mean = "0 mL"`, "4:17", `"0 mL"`, `mean: must be above 0, found "0 mL"`, ""},
		{full + `[[balance.retained]]`, "4:1", `[[balance.retained]]`, "retained: found a list, expected one table", "write its header once, in single brackets"},
		{`[balance]`, "1:1", `[balance]`, "balance: found a table, expected a list of tables", "write [[balance]] in double brackets"},
		{`balance = { name = "x" }`, "1:11", `{ name = "x" }`, "balance: found a table, expected a list of tables", "write balance = [ { … } ]"},
		{`balance = [3]`, "1:12", `3`, "balance: found the number 3, expected a table", "write { … }"},
	} {
		root := parsed(t, c.text)
		readKit(root)
		require.Error(t, root.Err(), c.text)
		m := root.Err().(*Mistake)
		assert.Equal(t, "f.toml:"+c.place, m.place.String(), c.text)
		assert.Equal(t, c.marked, string([]rune(m.Source)[m.Column-1:m.Column-1+m.Width]), c.text)
		assert.Equal(t, c.message, m.Message, c.text)
		assert.Equal(t, c.hint, m.Hint, c.text)
	}
}

func TestUnknownKeys(t *testing.T) {
	const keys = "the keys of a balance are name, capacity, left, correction, readings, class, hazards, count, factor, new, retained"
	for _, c := range []struct{ text, place, message, hint string }{
		// The mistyped key says it better than the missing one, though that stands first.
		{"[[balance]]\nname = \"x\"\ncapcity = \"3 g\"", "3:1", "unknown key `capcity` in a balance", "write `capacity`; " + keys},
		// A near key that is there already was not meant.
		{"[[balance]]\nname = \"x\"\ncapacity = \"3 g\"\ncapcity = \"3 g\"", "4:1", "unknown key `capcity` in a balance", keys},
		{"[[balance]]\nname = \"x\"\ncapacity = \"3 g\"\nwombat = 1", "4:1", "unknown key `wombat` in a balance", keys},
		{"[[balance]]\nname = \"x\"\ncapacity = \"3 g\"\nretained = { mean = \"1 mL\", spred = \"1 mL\" }", "4:29", "unknown key `spred` in the retained", "write `spread`; the keys of the retained are mean, spread"},
		{"[[ballance]]\nname = 5", "1:3", "unknown key `ballance` in the file", "write `balance`; the keys of the file are balance"},
		{"[oven.shelf]\nx = 5", "1:2", "unknown key `oven` in the file", "the keys of the file are balance"},
	} {
		root := parsed(t, c.text)
		readKit(root)
		require.Error(t, root.Err(), c.text)
		m := root.Err().(*Mistake)
		assert.Equal(t, "f.toml:"+c.place, m.place.String(), c.text)
		assert.Equal(t, c.message, m.Message, c.text)
		assert.Equal(t, c.hint, m.Hint, c.text)
	}
}

func TestKeyBelowAHeaderThatBelongsToTheFile(t *testing.T) {
	root := parsed(t, "[[route]]\nname = \"x\"\nvolume = \"15 mL\"")
	root.Need("volume")
	root.Positive("volume", quantity.Volume)
	root.Tables("route")[0].Text("name")
	assert.EqualError(t, root.Err(), "f.toml:3:1: unknown key `volume` in a route\n  3 | volume = \"15 mL\"\n    | ^^^^^^\n"+
		"  `volume` belongs to the file, not to a route: write it above the first [header]")
}

func TestFail(t *testing.T) {
	for _, c := range []struct {
		fail func(*Table)
		want string
	}{
		{func(s *Table) { s.Fail("x", "is odd", "make it even") }, "f.toml:2:5: x: is odd\n  2 | x = 1\n    |     ^\n  make it even"},
		{func(s *Table) { s.FailKey("x", "is odd", "") }, "f.toml:2:1: x: is odd\n  2 | x = 1\n    | ^"},
		{func(s *Table) { s.Fail("y", "is odd", "") }, "f.toml:1:1: y: is odd\n  1 | [s]\n    | ^^^"},
		{func(s *Table) { s.Fail("", "is odd", "") }, "f.toml:1:1: is odd\n  1 | [s]\n    | ^^^"},
		{func(s *Table) { s.Name = "oven"; s.Need("heat") }, "f.toml:1:1: the oven needs `heat`\n  1 | [s]\n    | ^^^"},
	} {
		root := parsed(t, "[s]\nx = 1")
		s := root.Table("s")
		s.Number("x")
		require.NoError(t, root.Err())
		c.fail(s)
		assert.EqualError(t, s.Err(), c.want)
		assert.EqualError(t, root.Err(), c.want)
	}
}

func TestElementsAreNamedInTheSingular(t *testing.T) {
	for text, want := range map[string]string{
		"[[glass]]": "a glass needs `x`", "steps = [\n{ # none\n}]": "a step needs `x`", "[[oven]]": "an oven needs `x`", "[[a.flasks]]": "a flask needs `x`",
	} {
		root := parsed(t, text)
		for root.Keys()[0] == "a" {
			root = root.Table("a")
		}
		root.Tables(root.Keys()[0])[0].Need("x")
		assert.Equal(t, want, root.Err().(*Mistake).Message)
	}
}

func TestNilTableHoldsNothing(t *testing.T) {
	none := parsed(t, "a = 1").Table("b")
	assert.Nil(t, none)
	readKit(none)
	assert.Equal(t, absent, none.shape("x"))
	assert.Nil(t, none.Keys())
	assert.Equal(t, place{}, none.place())
	assert.Panics(t, func() { none.Fail("x", "y", "") })
	assert.Panics(t, func() { _ = none.Err() })
}

func TestLoad(t *testing.T) {
	dir := t.TempDir()
	path := func(name string) string { return filepath.Join(dir, name) }
	require.NoError(t, os.WriteFile(path("good.toml"), []byte("a = 1"), 0o600))
	require.NoError(t, os.WriteFile(path("bad.toml"), []byte("a = "), 0o600))
	require.NoError(t, os.WriteFile(path("large.toml"), []byte(strings.Repeat("#", largest+1)), 0o600))
	root, err := load(t.Context(), path("good.toml"))
	require.NoError(t, err)
	assert.Equal(t, 1.0, root.Number("a"))
	for name, want := range map[string]string{
		"none.toml":  ": no such file or directory",
		"":           ": is a folder, not a file",
		"large.toml": ": is larger than 1 MiB, too large for a file of a bench",
		"bad.toml":   ":1:4: found no value\n  1 | a = \n    |    ^\n  write the value after the =, as in key = \"10 mL\"",
	} {
		_, err := load(t.Context(), path(name))
		assert.EqualError(t, err, path(name)+want)
	}
	_, err = load(t.Context(), path("none.toml"))
	assert.ErrorIs(t, err, os.ErrNotExist)
}

// load reads and parses a file.
func load(ctx context.Context, path string) (*Table, error) {
	data, err := Read(ctx, path)
	if err != nil {
		return nil, err
	}
	return Parse(path, data)
}
