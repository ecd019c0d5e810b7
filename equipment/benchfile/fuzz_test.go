package benchfile

import (
	"errors"
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/pelletier/go-toml/v2"

	"minim/equipment/quantity"
)

// FuzzParse checks that any bytes give a table or an error, that no accessor
// panics on any key, and that every mistake stands inside the file.
func FuzzParse(f *testing.F) {
	for _, seed := range []string{
		bench, prep, "", "\xff", "a = 0,5 mL", "a = “1 g”", "[[a]]\n[[a.b]]\nc = [[1], {d = 1}]", "a.b = 1\n[a]",
		"a = \"\"\"\nx", "a = [\n1,\nb = 2", "[a]\na = 1\r\n[a.b]", "A = 1", "a = {b = 1, b = 2}", "a 1", "a = \"C:\\u\"",
	} {
		f.Add([]byte(seed))
	}
	f.Fuzz(func(t *testing.T, data []byte) {
		root, err := Parse("f.toml", data)
		if err != nil {
			inside(t, data, err)
			accepted(t, data, err)
			return
		}
		walk(root)
		for _, m := range root.file.mistakes {
			inside(t, data, m)
		}
		if err := root.Err(); err != nil {
			inside(t, data, err)
		}
	})
}

// accepted checks that nothing valid is refused, but for the rules of the house.
func accepted(t *testing.T, data []byte, err error) {
	var all map[string]any
	if toml.Unmarshal(data, &all) != nil {
		return
	}
	for _, rule := range []string{"keys are in lower case", "the key is empty", "the file is empty", "deep", "more than", "byte"} {
		if strings.Contains(err.Error(), rule) {
			return
		}
	}
	t.Errorf("refused valid TOML: %v", err)
}

// inside checks that a mistake stands, with its mark, on a line of the file.
func inside(t *testing.T, data []byte, err error) {
	var m *Mistake
	if !errors.As(err, &m) {
		if len(data) <= largest {
			t.Fatalf("not a mistake: %v", err)
		}
		return
	}
	lines := strings.Split(string(data), "\n")
	if m.Line < 1 || m.Line > len(lines) || m.Column < 1 || m.Column > 1+utf8.RuneCountInString(lines[m.Line-1]) {
		t.Fatalf("%v is not in the file", m.place)
	}
	if m.Message == "" || m.Source != "" && m.Column+m.Width > 2+utf8.RuneCountInString(m.Source) {
		t.Fatalf("message %q, width %d on %q", m.Message, m.Width, m.Source)
	}
	if shown := m.Error(); strings.ContainsAny(shown, "\r\t\x1b") || strings.Count(shown, "\n") > 3 {
		t.Fatalf("%q is not fit to be shown", shown)
	}
}

// walk asks for every key of a table in every way.
func walk(t *Table) {
	t.Need("absent")
	for _, key := range append(t.Keys(), "absent") {
		t.shape(key)
		t.Text(key)
		t.Word(key, "one", "two")
		t.Texts(key)
		t.Quantity(key, quantity.Volume)
		t.Quantities(key, quantity.Mass)
		t.Positive(key, quantity.Share)
		t.NotNegative(key, quantity.Temperature)
		t.Count(key, 1)
		t.Number(key)
		t.Flag(key)
		t.Fail(key, "value", "")
		t.FailKey(key, "key", "")
		for _, sub := range t.Tables(key) {
			walk(sub)
		}
		if sub := t.Table(key); sub != nil {
			walk(sub)
		}
	}
}
