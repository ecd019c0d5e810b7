package benchfile

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// refused parses a text that must be refused and returns the mistake.
func refused(t *testing.T, text string) *Mistake {
	t.Helper()
	root, err := Parse("f.toml", []byte(text))
	if err == nil {
		err = root.file.mistakes.asError()
	}
	require.Error(t, err, text)
	require.IsType(t, &Mistake{}, err, text)
	return err.(*Mistake)
}

func TestFaultsOfTheText(t *testing.T) {
	for _, c := range []struct {
		text, place, marked, message, hint string
	}{
		{`capacity = 10 mL`, "1:12", `10 mL`, `found 10 mL without quotes`, `put quotes round it: "10 mL"`},
		{"a = 1\r\nb = 5 µL # small\r\n", "2:5", `5 µL`, `found 5 µL without quotes`, `put quotes round it: "5 µL"`},
		{`class = B`, "1:9", `B`, `found B without quotes`, `put quotes round it: "B"`},
		{`flag = True`, "1:8", `True`, `found True without quotes`, `write true or false, or put quotes round it: "True"`},
		{`s = [ { weigh = 1 g }, 2 ]`, "1:17", `1 g`, `found 1 g without quotes`, `put quotes round it: "1 g"`},
		{"r = [\n  \"1 g\",\n  2 g,\n]", "3:3", `2 g`, `found 2 g without quotes`, `put quotes round it: "2 g"`},
		{`x = 1 mL # 3" tall`, "1:5", `1 mL`, `found 1 mL without quotes`, `put quotes round it: "1 mL"`},
		{`capacity = 0,5 mL`, "1:12", `0,5 mL`, `found 0,5 mL, a number with a decimal comma`, `write "0.5 mL" with a decimal point, in quotes`},
		{`target = 0,65 % w/v`, "1:10", `0,65 % w/v`, `found 0,65 % w/v, a number with a decimal comma`, `write "0.65 % w/v" with a decimal point, in quotes`},
		{`capacity = 0,5`, "1:12", `0,5`, `found 0,5, a number with a decimal comma`, `write 0.5, and a quantity in quotes with its unit`},
		{`x = { mean = 0,5 mL, spread = 3 }`, "1:14", `0,5 mL`, `found 0,5 mL, a number with a decimal comma`, `write "0.5 mL" with a decimal point, in quotes`},
		{`r = [0,50 g, 0,51 g]`, "1:6", `0,50 g`, `found 0,50 g, a number with a decimal comma`, `write "0.50 g" with a decimal point, in quotes`},
		{"r = [[1], { b = 2 }, 3 g]", "1:22", `3 g`, `found 3 g without quotes`, `put quotes round it: "3 g"`},
		{"a = " + strings.Repeat("x", 50), "1:5", strings.Repeat("x", 50), "found " + strings.Repeat("x", 40) + "… without quotes", `put quotes round it: "` + strings.Repeat("x", 40) + `…"`},
		{`x = 007`, "1:5", `007`, `found 007, which is not a number`, "write digits before and after the point, no zero in front; a quantity stands in quotes with its unit"},
		{`x = .5`, "1:5", `.5`, `found .5, which is not a number`, "write digits before and after the point, no zero in front; a quantity stands in quotes with its unit"},
		{`x = 99999999999999999999`, "1:5", `99999999999999999999`, "the number is too large", ""},
		{`x = 1e999`, "1:5", `1e999`, "the number is too large", ""},
		{`capacity = “10 mL”`, "1:12", `“`, "found the curly quote “, expected a straight one", `write "10 mL"`},
		{`capacity = "10 mL”`, "1:18", `”`, "found the curly quote ”, expected a straight one", `write "10 mL"`},
		{"capacity = \"10 mL\nname = 3", "1:12", `"10 mL`, "the quote that opens here is not closed", "put a quote at the end of the text"},
		{"a = 'x\n", "1:5", `'x`, "the quote that opens here is not closed", "put a quote at the end of the text"},
		{"a = \"\"\"x\ny", "1:5", `"""x`, "the quote that opens here is not closed", "put a quote at the end of the text"},
		{`s = { weigh = "1 g, on = "scale" }`, "1:27", `s`, "a quote is missing on this line, before or after this", "see that each text has a quote before it and one after it"},
		{`kit = "C:\users"`, "1:12", `s`, "a backslash in double quotes has a meaning of its own, and none before this", `write / or \\ for each backslash, or put the text in single quotes`},
		{`capacity "10 mL"`, "1:1", `capacity "`, `found no = after "capacity"`, "write capacity = …"},
		{`capacity: "10 mL"`, "1:1", `capacity:`, `found no = after "capacity"`, "write capacity = …"},
		{`make up to = "25 mL"`, "1:1", `make up to`, "found a key with spaces", "write make-up-to ="},
		{`s = [{ make up to = "25 mL" }]`, "1:8", `make up to`, "found a key with spaces", "write make-up-to ="},
		{`capacity =`, "1:10", `=`, "found no value", `write the value after the =, as in key = "10 mL"`},
		{`capacity = # later`, "1:12", `#`, "found no value", `write the value after the =, as in key = "10 mL"`},
		{"[[balance]\nname = 3", "1:1", `[[balance]`, "the header is not closed as it was opened", "a header is [one-word] or, where there may be several, [[one-word]]"},
		{`[my balance]`, "1:1", `[my balance]`, "the header is not closed as it was opened", "a header is [one-word] or, where there may be several, [[one-word]]"},
		{`[[a]]]`, "1:1", `[[a]]]`, "the header is not closed as it was opened", "a header is [one-word] or, where there may be several, [[one-word]]"},
		{`[`, "1:1", `[`, `found "[", expected a key`, "a line is key = value, a [header] or a # comment"},
		{"a.\n", "1:3", " ", "found the end of the line, expected a key", "a line is key = value, a [header] or a # comment"},
		{`a = [1, , 2]`, "1:9", `,`, "found a comma with nothing before it", "take it out"},
		{`a = { , }`, "1:7", `,`, "found a comma with nothing before it", "take it out"},
		{"# \x01", "1:3", "\x01", "control characters are not allowed in comments", ""},
		{"a = \"x“y", "1:7", "“", "found the curly quote “, expected a straight one", `write "x"`},
		{"a = “x", "1:5", "“", "found the curly quote “, expected a straight one", `write straight quotes: "`},
		{"s = [ { a = \"1\" } # \"x\n { b = 1 }]", "2:2", `{`, "a comma is missing before this", "put a comma between the two"},
		{"s = { a = 1 \"", "1:13", `"`, "a quote is missing on this line, before or after this", "see that each text has a quote before it and one after it"},
		{"a = { b.c = 1, b = 2 }", "1:16", `b`, "`b` stands twice: line 1 has it already", "keep one of the two"},
		{"a = { b = 1, b.c = 2 }", "1:14", `b`, "`b` stands twice: line 1 has it already", "keep one of the two"},
		{"steps = [\n {a = \"1\"},\n\n[[route]]\n", "1:1", `steps = [`, "the list that starts here is not closed", "put ] at its end, before line 4"},
		{"# x\nsteps = [\n {a = \"1\"},\ntolerance = \"8 %\"\n", "2:1", `steps = [`, "the list that starts here is not closed", "put ] at its end, before line 4"},
		{"a = 1\nx = [1,\n", "2:1", `x = [1,`, "the list that starts here is not closed", "put ] at its end"},
		{`x = { a = 1`, "1:1", `x = { a = 1`, "the table that starts here is not closed", "put } at its end"},
		{"s = [\n {a = \"1\"}\n {b = \"2\"}]", "3:2", `{`, "a comma is missing before this", "put a comma between the two"},
		{`s = [ "a" "b" ]`, "1:11", `"`, "a comma is missing before this", "put a comma between the two"},
		{`s = { a = "1" b = "2" }`, "1:15", `b`, "a comma is missing before this", "put a comma between the two"},
		{`// a bench`, "1:1", `/`, `found "/", expected a key`, "a comment starts with #; a line is key = value, a [header] or a # comment"},
		{`= 5`, "1:1", `=`, `found "=", expected a key`, "a line is key = value, a [header] or a # comment"},
		{`name = "a" nominal`, "1:12", `nominal`, `found "nominal" after the value`, "start a comment with #, a new key on a new line"},
		{`name = "a", "b"`, "1:11", `, "b"`, `found ", \"b\"" after the value`, "put several values in brackets, as in [1, 2]"},
		{`a = 1 b = 2`, "1:7", `b = 2`, `found "b = 2" after the value`, "start a comment with #, a new key on a new line"},
		{"a = \"x\x01y\"", "1:7", "\x01", "texts in double quotes cannot have control characters", ""},
		{`d = 2020-13-45`, "1:10", `13-45`, "impossible date", ""},
		{"a = 1\na = 2", "2:1", `a`, "`a` stands twice: line 1 has it already", "keep one of the two"},
		{"[a]\nb = 1\n[a]\n", "3:2", `a`, "`a` stands twice: line 1 has it already", "keep one of the two"},
		{"a = 1\n[a.b]\n", "2:2", `a`, "`a` stands twice: line 1 has it already", "keep one of the two"},
		{"s = [\n{ x = 1 },\n{ y = 1, y = 2 },\n]", "3:10", `y`, "`y` stands twice: line 3 has it already", "keep one of the two"},
		{`Capacity = "1 g"`, "1:1", `Capacity`, "`Capacity`: keys are in lower case", "write `capacity`"},
		{"[a]\n[a.Bb]", "2:4", `Bb`, "`Bb`: keys are in lower case", "write `bb`"},
		{`s = [{ U = 1 }]`, "1:8", `U`, "`U`: keys are in lower case", "write `u`"},
		{`make_up = 1`, "1:1", `make_up`, "`make_up`: keys are in lower case, their words joined by hyphens", "write `make-up`"},
		{`"ä" = 1`, "1:1", `"ä"`, "`ä`: keys are in lower case, their words joined by hyphens", ""},
		{`"" = 1`, "1:1", `""`, "the key is empty", "write a word before the ="},
		{"ok = 1\nname = \"5 \xb5L\"", "2:11", "�", "the byte 0xB5 is not UTF-8 text", "save the file as UTF-8"},
	} {
		m := refused(t, c.text)
		assert.Equal(t, "f.toml:"+c.place, m.place.String(), c.text)
		marked := string([]rune(m.Source + " ")[m.Column-1 : m.Column-1+m.Width])
		assert.Equal(t, c.marked, marked, c.text)
		assert.Equal(t, c.message, m.Message, c.text)
		assert.Equal(t, c.hint, m.Hint, c.text)
	}
}

func TestFilesThatAreNoText(t *testing.T) {
	const unmarked = "save it as UTF-8"
	for text, want := range map[string]string{
		"\xff\xfea\x00":    "f.toml:1:1: the file is UTF-16 text, not UTF-8\n  " + unmarked,
		"\xfe\xff\x00a":    "f.toml:1:1: the file is UTF-16 text, not UTF-8\n  " + unmarked,
		"a = 1\nb\x00":     "f.toml:2:2: the file holds a zero byte: it is not UTF-8 text\n  save it as UTF-8 text",
		"":                 "f.toml:1:1: the file is empty: it holds nothing but space and comments",
		" \r\n# only this": "f.toml:1:1: the file is empty: it holds nothing but space and comments",
	} {
		assert.Equal(t, want, refused(t, text).Error(), "%q", text)
	}
}

func TestLimits(t *testing.T) {
	deep := func(n int) string { return "a = " + strings.Repeat("[", n) + strings.Repeat("]", n) }
	_, err := Parse("f.toml", []byte(deep(deepest)))
	require.NoError(t, err)
	for _, text := range []string{
		deep(deepest + 1), deep(9000), deep(100000), "a = " + strings.Repeat("{a=", 40) + "1" + strings.Repeat("}", 40),
		strings.Repeat("a.", 40) + "a = 1", "[" + strings.Repeat("a.", 40) + "a]",
		"[" + strings.Repeat("a.", 20) + "a]\n" + strings.Repeat("b.", 20) + "b = 1",
	} {
		assert.Equal(t, tooDeep, refused(t, text).Message, text[:min(len(text), 60)])
	}
	many := func(n int) (text string) {
		for i := range n {
			text += fmt.Sprintf("k%d = 1\n", i)
		}
		return text
	}
	_, err = Parse("f.toml", []byte(many(most/2)))
	require.NoError(t, err)
	assert.Equal(t, "the file holds more than 10000 keys and values", refused(t, many(most/2+1)).Message)
	_, err = Parse("f.toml", make([]byte, largest+1))
	assert.EqualError(t, err, "f.toml: is larger than 1 MiB, too large for a file of a bench")
}
