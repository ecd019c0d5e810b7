package benchfile

import (
	"errors"
	"regexp"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"
)

// Change gives one key of a named table another value in memory; the file stays
// as it is. It is written in one line:
//
//	0.01 g scale: readability = 0.001 g
type Change struct {
	// Line is the whole, with the name of the table, the key and the value, as written.
	Line, Name, Key, Value string

	src            *source // the line, by what the change goes by in messages
	keyAt, valueAt int     // offsets in the line
}

var changeForm = regexp.MustCompile(`^\s*(.*?\S)\s*:\s*([A-Za-z0-9_-]+)\s*=\s*(.*?)\s*$`)

// ParseChange reads a change. The option is what it goes by in messages. The value
// needs no quotes round a text, nor round those of a list; numbers, true, false, and what stands in quotes,
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
	c := Change{line, line[at[2]:at[3]], line[at[4]:at[5]], line[at[6]:at[7]], src, at[4], at[6]}
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

// Fail returns a mistake at the value.
func (c Change) Fail(message, hint string) error { return c.src.mistake(c.value(), message, hint) }

func (c Change) key() span   { return span{c.keyAt, c.keyAt + len(c.Key)} }
func (c Change) value() span { return span{c.valueAt, c.valueAt + len(c.Value)} }

// asInFile is a value that is not a text without quotes.
var asInFile = regexp.MustCompile(`^(["'\[{].*|true|false|[+-]?[0-9]+(\.[0-9]+)?([eE][+-]?[0-9]+)?)$`)

// bareList is a list in square brackets of texts without quotes, nil of anything else.
func (c Change) bareList() *value {
	inside := strings.TrimSuffix(strings.TrimPrefix(c.Value, "["), "]")
	if len(inside) != len(c.Value)-2 || strings.ContainsAny(inside, `"'[]{}`) {
		return nil
	}
	list := &value{shape: isList, at: c.value()}
	from := c.valueAt + 1
	for item := range strings.SplitSeq(inside, ",") {
		text := strings.TrimSpace(item)
		if text == "" || asInFile.MatchString(text) {
			return nil
		}
		at := from + strings.Index(item, text)
		list.items = append(list.items, &value{shape: isText, text: text, at: span{at, at + len(text)}})
		from += len(item) + 1
	}
	return list
}

// parse returns the value, with places in the line.
func (c Change) parse() (*value, error) {
	if list := c.bareList(); list != nil {
		return list, nil
	}
	if !asInFile.MatchString(c.Value) {
		return &value{shape: isText, text: c.Value, at: c.value()}, nil
	}
	root, err := Parse(c.src.name, []byte(c.Line[c.keyAt:]))
	if err == nil {
		err = root.file.mistakes.asError()
	}
	var m *Mistake
	if errors.As(err, &m) { // the first will do for one line
		m.Line, m.Column, m.Source = 0, m.Column+utf8.RuneCountInString(c.Line[:c.keyAt]), c.Line
		return nil, m
	}
	if err != nil {
		return nil, err
	}
	v := root.entries[0].value
	v.move(c.keyAt, root.file)
	return v, nil
}

// Apply puts the value of a change in place of what stands at its key in the table of its
// name, or adds the key. What stands at the key of another one which says the same, if any, is
// left out. The noun is what the tables are. The error is a *Mistake.
func (c Change) Apply(noun string, tables []*Table, another string) error {
	names := make([]string, len(tables))
	for i, t := range tables {
		if names[i] = t.Text("name"); names[i] == c.Name {
			t.leaveOut(another)
			return t.change(c)
		}
	}
	from, none := strings.Index(c.Line, c.Name), NoSuch(noun, c.Name, names)
	return c.src.mistake(span{from, from + len(c.Name)}, none.Message, none.Hint)
}

func (t *Table) change(c Change) error {
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
	by := t.file.addLine(c.src.name, c.Line)
	v.move(by, t.file)
	e.at, e.value = c.key().on(by), v
	return nil
}

// leaveOut takes out the key of the file, unless it was put there by a change.
func (t *Table) leaveOut(key string) {
	if e := t.find(key); e != nil && !t.file.isAdded(e.at) {
		t.entries = slices.DeleteFunc(t.entries, func(o *entry) bool { return o == e })
	}
}

// move puts a value and all that it holds into another file, so many bytes on.
func (v *value) move(by int, f *file) {
	v.at = v.at.on(by)
	for _, item := range v.items {
		item.move(by, f)
	}
	if v.table == nil {
		return
	}
	v.table.file, v.table.at = f, v.at
	for _, e := range v.table.entries {
		e.at = e.at.on(by)
		e.value.move(by, f)
	}
}
