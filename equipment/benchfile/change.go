package benchfile

import (
	"errors"
	"regexp"
	"strings"
	"unicode"
	"unicode/utf8"
)

// Change gives one key of a named table another value in memory; the file stays
// as it is. It is written in one line:
//
//	0.01 g scale: readability = 0.001 g
type Change struct {
	// Name of the table, the key and the value, as written.
	Name, Key, Value string

	option         string // what the change goes by in messages
	line           string
	keyAt, valueAt int // offsets in the line
}

var changeForm = regexp.MustCompile(`^\s*(.*?\S)\s*:\s*([A-Za-z0-9_-]+)\s*=\s*(.*?)\s*$`)

// ParseChange reads a change. The option is what it goes by in messages. The value
// needs no quotes round a text; numbers, true, false, and what stands in quotes,
// brackets or braces are written as in a file. The error is a *Mistake.
func ParseChange(option, line string) (Change, error) {
	line = Composed(line)
	src := newSource(option, nil)
	src.addLine(option, line)
	whole := span{0, len(line)}
	if !utf8.ValidString(line) || strings.ContainsFunc(line, unicode.IsControl) {
		return Change{}, src.mistake(whole, "the change holds a character that cannot be printed", "")
	}
	at := changeForm.FindStringSubmatchIndex(line)
	if at == nil {
		return Change{}, src.mistake(whole, "the change is not of the form NAME: property = VALUE", `write it as in "0.01 g scale: readability = 0.001 g"`)
	}
	c := Change{line[at[2]:at[3]], line[at[4]:at[5]], line[at[6]:at[7]], option, line, at[4], at[6]}
	if m := src.spelling(part{c.Key, c.key()}); m != nil {
		return Change{}, m
	}
	if c.Value == "" {
		return Change{}, src.mistake(c.key(), "found no value for "+c.Key, "write it after the =")
	}
	if _, err := c.parse(); err != nil {
		return Change{}, err
	}
	return c, nil
}

// String returns the line of the change.
func (c Change) String() string { return c.line }

// Fail returns a mistake at the value.
func (c Change) Fail(message, hint string) error { return c.mistake(c.value(), message, hint) }

// FailName returns the mistake that there is nothing of the name; [Table.FailChoice]
// says what is suggested.
func (c Change) FailName(noun string, among []string) error {
	message, hint := choice(noun, c.Name, among)
	from := strings.Index(c.line, c.Name)
	return c.mistake(span{from, from + len(c.Name)}, message, hint)
}

func (c Change) mistake(at span, message, hint string) *Mistake {
	src := newSource(c.option, nil)
	src.addLine(c.option, c.line)
	return src.mistake(at, message, hint)
}

func (c Change) key() span   { return span{c.keyAt, c.keyAt + len(c.Key)} }
func (c Change) value() span { return span{c.valueAt, c.valueAt + len(c.Value)} }

// asInFile is a value that is not a text without quotes.
var asInFile = regexp.MustCompile(`^(["'\[{].*|true|false|[+-]?[0-9]+(\.[0-9]+)?([eE][+-]?[0-9]+)?)$`)

// parse returns the value, with places in the line.
func (c Change) parse() (*value, error) {
	if !asInFile.MatchString(c.Value) {
		return &value{shape: Text, text: c.Value, at: c.value()}, nil
	}
	root, err := Parse(c.option, []byte(c.line[c.keyAt:]))
	if err == nil {
		err = root.file.mistakes.asError()
	}
	var m *Mistake
	if errors.As(err, &m) { // the first will do for one line
		m.Place = Place{c.option, 0, m.Column + utf8.RuneCountInString(c.line[:c.keyAt])}
		m.Source = c.line
		return nil, m
	}
	if err != nil {
		return nil, err
	}
	v := root.entries[0].value
	v.move(c.keyAt, root.file)
	return v, nil
}

// Change puts the value of a change in place of what stands at its key, or adds
// the key. The error is a *Mistake.
func (t *Table) Change(c Change) error {
	v, err := c.parse()
	if err != nil {
		return err
	}
	e := t.find(c.Key)
	switch {
	case e == nil:
		e = &entry{key: c.Key}
		t.entries = append(t.entries, e)
	case t.file.isAdded(e.at):
		return c.Fail(c.Key+" of "+c.Name+" is changed twice", "keep one of the two")
	}
	by := t.file.addLine(c.option, c.line)
	v.move(by, t.file)
	key := c.key()
	e.at, e.value = span{key.from + by, key.to + by}, v
	return nil
}

// move puts a value and all that it holds into another file, so many bytes on.
func (v *value) move(by int, f *file) {
	v.at = span{v.at.from + by, v.at.to + by}
	for _, item := range v.items {
		item.move(by, f)
	}
	if v.table == nil {
		return
	}
	v.table.file, v.table.at = f, v.at
	for _, e := range v.table.entries {
		e.at = span{e.at.from + by, e.at.to + by}
		e.value.move(by, f)
	}
}
