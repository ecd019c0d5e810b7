package benchfile

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// What goes and what stays, line by line (constructed).
func TestWithout(t *testing.T) {
	for _, c := range []struct{ name, text, want string }{
		{"absent", "x = 1 # one\n\n[a]\n\n\n", "x = 1 # one\n\n[a]\n\n\n"},
		{"a key", "# top\nb = 1 # one\nx = 2\n", "# top\nx = 2\n"},
		{"a list of some lines", "x = 1\nb = [ # open\n  1,\n  # inside\n  2,\n] # closed\ny = 2", "x = 1\ny = 2"},
		{"dotted keys", "b.c = 1\nb.d = 2\nx = 1\n", "x = 1\n"},
		{"not in another table", "[x]\nb = 1\n[[y.b]]\n", "[x]\nb = 1\n[[y.b]]\n"},
		{"a table, with what is below it", "x = 1\n\n[b]\nc = 1\n[b.d]\ne = 1\n\n# of y\n[y]\n", "x = 1\n\n# of y\n[y]\n"},
		{"at the end", "x = 1\n\n# above\n[[b]]\n# inside\nc = \"\"\"\n[x]\n\"\"\" # c\n\n# between\n[[ \"b\" ]]\nc = 2\n\n# below", "x = 1\n\n# above\n\n# below"},
		{"in two places", "[b]\n[x]\n[b.c] # c\ny = 1\n[z]", "[x]\n[z]"},
		{"blank lines above and below", "x = 1\n\n[b]\n \t\n\n[y]\n", "x = 1\n\n[y]\n"},
		{"a blank line below only", "x = 1\n[b]\n\n[y]\n", "x = 1\n\n[y]\n"},
		{"not at the start of its line", "x = 1\n  [b]\n\tc = 1\n y = 2", "x = 1\n"},
		{"alone", "b = 1", ""},
	} {
		for _, end := range []string{"\n", "\r\n"} {
			text, want := strings.ReplaceAll(c.text, "\n", end), strings.ReplaceAll(c.want, "\n", end)
			rest, err := without("f.toml", []byte(text), "b")
			require.NoError(t, err, c.name)
			assert.Equal(t, want, string(rest), c.name)
		}
	}
	_, err := without("f.toml", []byte("a = 1,5\n"), "b")
	assert.ErrorContains(t, err, "f.toml:1:5")
}

func TestWithText(t *testing.T) {
	for text, want := range map[string]string{
		"b = 'x' # c\ny = 1\n":             "b = \"new\" # c\ny = 1\n",
		"y = 1\nb=\"\"\"x\ny\"\"\"\n[z]\n": "y = 1\nb=\"new\"\n[z]\n",
		"y = 1 \t\nb\t=  'x'\t\n":          "y = 1 \t\nb\t=  \"new\"\t\n",
		"# top\r\n\r\ny = 1\r\n":           "# top\r\n\r\nb = \"new\"\r\ny = 1\r\n",
		"[y]\nb = 'x'":                     "b = \"new\"\n[y]\nb = 'x'",
	} {
		got, err := withText("f.toml", []byte(text), "b", "new")
		require.NoError(t, err)
		assert.Equal(t, want, string(got))
	}
	for text, message := range map[string]string{
		"y = 1\nb = 12\n": "f.toml:2:5: b: found the number 12, expected a text in quotes",
		"[b]\n":           "f.toml:1:1: b: found a table, expected a text in quotes",
		"b.c = 'x'\n":     "f.toml:1:1: b: found a table, expected a text in quotes",
		"b = ":            "f.toml:1:4: found no value",
	} {
		_, err := withText("f.toml", []byte(text), "b", "new")
		assert.ErrorContains(t, err, message)
	}
}

func TestAppend(t *testing.T) {
	for text, want := range map[string]string{
		"a = 1":                 "a = 1\n\nb = 1\nc = 2\n",
		"a = 1\n":               "a = 1\n\nb = 1\nc = 2\n",
		"a = 1\n \n\n":          "a = 1\n\nb = 1\nc = 2\n",
		"a = 1 # x \t\n\n":      "a = 1 # x \t\n\nb = 1\nc = 2\n",
		"a = 1\r\n#  \r\n\r\n":  "a = 1\r\n#  \r\n\r\nb = 1\r\nc = 2\r\n",
		"a = 1\r\nz = 2\r\n \t": "a = 1\r\nz = 2\r\n\r\nb = 1\r\nc = 2\r\n",
	} {
		assert.Equal(t, want, string(appended([]byte(text), "b = 1\nc = 2\n")), "%q", text)
	}
}

// Any text is read as it was before it was quoted.
func TestQuote(t *testing.T) {
	for _, text := range []string{"", "x", `a "b" c`, `C:\up\new`, "µ ° …", "tab\tline\r\nend", "\x00\x1f\x7f\u0085\u2028", "'"} {
		root, err := Parse("f.toml", []byte("x = "+Quote(text)))
		require.NoError(t, err, "%q", text)
		assert.Equal(t, text, root.ask("x").text)
	}
}

// FuzzWithout: what is left is right, holds nothing of the key, and no byte that
// was not there.
func FuzzWithout(f *testing.F) {
	f.Add([]byte(prep))
	f.Add([]byte(strings.ReplaceAll(prep, "\n", "\r\n")))
	f.Add([]byte("route = [ { a = 1 } ]\nx = 1\n[y]\n[y.route]"))
	f.Fuzz(func(t *testing.T, data []byte) {
		root, err := Parse("f.toml", data)
		if err != nil || len(root.file.mistakes) > 0 { // misspelt keys
			return
		}
		rest, err := without("f.toml", data, "route")
		require.NoError(t, err)
		after, err := Parse("f.toml", rest)
		if err != nil {
			assert.Equal(t, []string{"route"}, root.Keys(), "%v", err)
			return
		}
		want := make([]string, 0)
		for _, key := range root.Keys() {
			if key != "route" {
				want = append(want, key)
			}
		}
		assert.Equal(t, want, after.Keys())
	})
}
