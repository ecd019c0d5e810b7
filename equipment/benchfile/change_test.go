package benchfile

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"minim/equipment/quantity"
)

// Each line in its parts (constructed). A name may hold a colon or an equals sign.
func TestParseChange(t *testing.T) {
	for line, want := range map[string][3]string{
		"0.01 g scale: readability = 0.001 g":       {"0.01 g scale", "readability", "0.001 g"},
		"  x :readability=0.001 g  ":                {"x", "readability", "0.001 g"},
		"x: y: class = A":                           {"x: y", "class", "A"},
		"x=1: count = 2":                            {"x=1", "count", "2"},
		"x: note = a: b = c":                        {"x", "note", "a: b = c"},
		`µ: retained = { mean = "1 mL", k = 2 }`:    {"µ", "retained", `{ mean = "1 mL", k = 2 }`},
		`x: readings = ["1 g", '2 g']`:              {"x", "readings", `["1 g", '2 g']`},
		`x: readings = [1 g, 2 g]`:                  {"x", "readings", `[1 g, 2 g]`},
		`x: price = "240 EUR"`:                      {"x", "price", `"240 EUR"`},
		"x: single-use = true":                      {"x", "single-use", "true"},
		`x: note = he said "so" \ # and no comment`: {"x", "note", `he said "so" \ # and no comment`},
	} {
		c, err := ParseChange("--set", line)
		require.NoError(t, err, line)
		assert.Equal(t, want, [3]string{c.Name, c.Key, c.Value})
		assert.Equal(t, line, c.Line)
	}
}

func TestParseChangeMistakes(t *testing.T) {
	const form = `write it as in "0.01 g scale: readability = 0.001 g"`
	for _, test := range []struct{ line, marked, message, hint string }{
		{"", "", "the change is not of the form NAME: property = VALUE", form},
		{"x", "x", "the change is not of the form NAME: property = VALUE", form},
		{"x: readability", "x: readability", "the change is not of the form NAME: property = VALUE", form},
		{"readability = 1 g", "readability = 1 g", "the change is not of the form NAME: property = VALUE", form},
		{": readability = 1 g", ": readability = 1 g", "the change is not of the form NAME: property = VALUE", form},
		{"µ: Readability = 1 g", "Readability", "`Readability`: keys are in lower case", "write `readability`"},
		{"x: single_use = true", "single_use", "`single_use`: keys are in lower case, their words joined by hyphens", "write `single-use`"},
		{"x: readability =", "readability", "found no value for readability", "write it after the ="},
		{"µ: a = [1, 2", "a = [1, 2", "the list that starts here is not closed", "put ] at its end"},
		{`µ: a = "1 g`, `"1 g`, "the quote that opens here is not closed", "put a quote at the end of the text"},
		{`µ: a = "1 g" b`, "b", `found "b" after the value`, "start a comment with #, a new key on a new line"},
		{"µ: a = { u = 1, U = 2 }", "U", "`U`: keys are in lower case", "write `u`"},
		{"µ: a = 1e999", "1e999", "the number is too large", ""},
		{"x: a = 1\ny = 2", "x: a = 1\ny = 2", "the change holds a character that cannot be printed", ""},
		{"x: a = \xff", "x: a = \uFFFD", "the change holds a character that cannot be printed", ""},
	} {
		_, err := ParseChange("--set", test.line)
		require.Error(t, err, test.line)
		m := err.(*Mistake)
		assert.Equal(t, "--set", m.place.String(), test.line)
		if test.marked != "" {
			assert.Equal(t, test.marked, string([]rune(m.Source)[m.Column-1:m.Column-1+m.Width]), test.line)
		}
		assert.Equal(t, test.message, m.Message, test.line)
		assert.Equal(t, test.hint, m.Hint, test.line)
	}
}

// changed applies lines to the one balance of a text that is right.
func changed(t *testing.T, text string, lines ...string) (*Table, error) {
	t.Helper()
	root := parsed(t, text)
	for _, line := range lines {
		c, err := ParseChange("--set", line)
		require.NoError(t, err)
		if err := root.Tables("balance")[0].change(c); err != nil {
			return nil, err
		}
	}
	return root, nil
}

// A changed table reads as a file in which the change was written by hand, however
// the key stands in it and whether or not the last line ends.
func TestChangeReadsAsAFileWould(t *testing.T) {
	for _, text := range []string{
		"[[balance]]\nname = \"x\"\ncapacity = \"1 g\"\nretained.mean = \"2 mL\"",
		"[[balance]]\nname = \"x\"\ncapacity = \"1 g\"\n[balance.retained]\nmean = \"2 mL\"\n",
		"balance = [ { name = \"x\", capacity = \"1 g\" } ]\r\n",
	} {
		root, err := changed(t, text, "x: capacity = 3 g", `x: retained = { mean = "4 mL" }`, `x: readings = ["1 g", "2 g"]`, "x: count = 2", "x: new = true", "x: class = \"A\"", "x: factor = -1.5e1")
		require.NoError(t, err)
		b := root.Tables("balance")[0]
		assert.Equal(t, "x", b.Text("name"))
		assert.Equal(t, 3.0, b.Quantity("capacity", quantity.Mass))
		assert.Equal(t, 4.0, b.Table("retained").Quantity("mean", quantity.Volume))
		assert.Equal(t, []float64{1, 2}, b.Quantities("readings", quantity.Mass))
		assert.Equal(t, 2, b.Count("count", 1))
		assert.Equal(t, true, b.Flag("new"))
		assert.Equal(t, "A", b.Word("class", "A", "B"))
		assert.Equal(t, -15.0, b.Number("factor"))
		require.NoError(t, root.Err())
	}
}

// What is wrong with a changed value is shown in the change, with no line number;
// what is wrong elsewhere keeps its own.
func TestMistakesInChanges(t *testing.T) {
	const text = "[[balance]]\nname = \"x\"\ncapacity = \"1 g\"\nclass = \"A\"\n"
	for _, test := range []struct{ line, want string }{
		{"x: capacity = 1 mL", "--set: capacity: \"1 mL\" is a volume, not a mass\n   | x: capacity = 1 mL\n   |               ^^^^\n  a mass is written in g, mg, µg or kg"},
		{"x: capacty = 1 g", "--set: unknown key `capacty` in a balance\n   | x: capacty = 1 g\n   |    ^^^^^^^\n" +
			"  write `capacity`; the keys of a balance are name, capacity, left, correction, readings, class, hazards, count, factor, new, retained"},
		{`x: retained = { mean = "1 mL", spred = "1 mL" }`, "--set: unknown key `spred` in the retained\n   | x: retained = { mean = \"1 mL\", spred = \"1 mL\" }\n" +
			"   |                                ^^^^^\n  write `spread`; the keys of the retained are mean, spread"},
		{`x: retained = { }`, "--set: the retained needs `mean`\n   | x: retained = { }\n   |               ^^^"},
		{`x: readings = ["1 g", "2 mL"]`, "--set: readings: \"2 mL\" is a volume, not a mass\n   | x: readings = [\"1 g\", \"2 mL\"]\n   |                       ^^^^^^\n  a mass is written in g, mg, µg or kg"},
		{"x: class = Q", "--set: class: \"Q\" is not one of A, B, AS\n   | x: class = Q\n   |            ^"},
	} {
		root, err := changed(t, text, test.line)
		require.NoError(t, err)
		readKit(root)
		assert.EqualError(t, root.Err(), test.want)
	}
	root, err := changed(t, text, "x: count = 2")
	require.NoError(t, err)
	root.Tables("balance")[0].Fail("class", "is odd", "")
	readKit(root)
	assert.EqualError(t, root.Err(), "f.toml:4:9: class: is odd\n  4 | class = \"A\"\n    |         ^^^")
	_, err = changed(t, text, "x: count = 2", "x: count = 3")
	assert.EqualError(t, err, "--set: count of x is changed twice\n   | x: count = 3\n   |            ^\n  keep one of the two")
}

func TestChangeFails(t *testing.T) {
	c, err := ParseChange("--set", "0.1 g scael: count = 2")
	require.NoError(t, err)
	assert.EqualError(t, c.Fail("too many", "buy fewer"), "--set: too many\n   | 0.1 g scael: count = 2\n   |                      ^\n  buy fewer")
	for text, hint := range map[string]string{
		"[[s]]\nname = \"0.1 g scale\"":          "perhaps \"0.1 g scale\" is meant",
		"[[s]]\nname = \"a\"\n[[s]]\nname = 'b'": "choose from a, b",
	} {
		assert.EqualError(t, c.Apply("scale", parsed(t, text).Tables("s"), ""), "--set: there is no scale called \"0.1 g scael\"\n   | 0.1 g scael: count = 2\n   | ^^^^^^^^^^^\n  "+hint)
	}
}

// Any line gives a change or a mistake; a change of a right file leaves one that
// can be read to its end.
func FuzzChange(f *testing.F) {
	for _, seed := range []string{"x: capacity = 3 g", `x: retained = { mean = "1 mL" }`, "x: a = [[1], {b = 2}]", "x: name.y = 1", ":=", "x: a = \"\"\"b", "x: a = 1979-05-27", "µ: a = [1, # b"} {
		f.Add(seed)
	}
	f.Fuzz(func(t *testing.T, line string) {
		c, err := ParseChange("--set", line)
		if err != nil {
			if m, ok := err.(*Mistake); !ok || m.Message == "" || m.Line != 0 {
				t.Fatalf("%q: %v", line, err)
			}
			return
		}
		root, err := Parse("f.toml", []byte("[[balance]]\nname = \"x\"\ncapacity = \"1 g\""))
		if err != nil {
			t.Fatal(err)
		}
		if err := root.Tables("balance")[0].change(c); err != nil {
			t.Fatal(err)
		}
		readKit(root)
		if err := root.Err(); err != nil && err.Error() == "" {
			t.Fatal("a mistake without words")
		}
	})
}
