package benchfile

import (
	"bytes"
	"fmt"
	"slices"
	"strings"
	"unicode"
)

// Rewritten returns the text of a file without the tables or the value that a key of it
// holds, with a text at another key, unless that is empty, and with more lines at its end,
// unless there are none. The name is the one shown in mistakes. A mistake in the text, a
// misspelt key, or a value that is no text is a *Mistake, or several.
func Rewritten(name string, data []byte, gone, key, text, lines string) ([]byte, error) {
	data, err := without(name, data, gone)
	if err == nil && text != "" {
		data, err = withText(name, data, key, text)
	}
	if err == nil && lines != "" {
		data = appended(data, lines)
	}
	return data, err
}

// parseRight parses a text without misspelt keys.
func parseRight(name string, data []byte) (*Table, error) {
	root, err := Parse(name, data)
	if err != nil {
		return nil, err
	}
	return root, root.file.mistakes.asError()
}

// without returns the text of a file without the tables or the value that a key of
// the file holds, whole lines, with the comments and blank lines in between. All
// else stays, comments above and below included; but where blank lines stand on
// both sides of what goes, those below go as well.
func without(name string, data []byte, key string) ([]byte, error) {
	root, err := parseRight(name, data)
	if err != nil {
		return nil, err
	}
	mark, data := cutMark(data)
	rest, list, from := bytes.Clone(mark), root.file.list, 0
	for i, e := range list {
		if e.key != key || i > 0 && list[i-1].key == key {
			continue
		}
		for i+1 < len(list) && list[i+1].key == key {
			i++
		}
		gone := root.file.wholeLines(span{e.at.from, list[i].at.to})
		rest = append(rest, data[from:gone.from]...)
		from = gone.to
	}
	return append(rest, data[from:]...), nil
}

// withText returns the text of a file in which a key of the file holds a text:
// instead of the text that stands there, or in a line of its own above all other
// keys.
func withText(name string, data []byte, key, text string) ([]byte, error) {
	root, err := parseRight(name, data)
	if err != nil {
		return nil, err
	}
	mark, data := cutMark(data)
	v := root.ask(key)
	switch {
	case v == nil:
		above := root.file.lines[root.file.line(root.file.list[0].at.from)]
		line := key + " = " + Quote(text) + LineEnd(data)
		return slices.Concat(mark, data[:above], []byte(line), data[above:]), nil
	case v.shape != isText:
		root.noText(key, v)
		return nil, root.file.mistakes[0]
	}
	return slices.Concat(mark, data[:v.at.from], []byte(Quote(text)), data[v.at.to:]), nil
}

// appended returns the text of a file with more lines at its end, below one blank
// line. They get the line ends of the text.
func appended(data []byte, lines string) []byte {
	end := LineEnd(data)
	text := bytes.TrimRight(data, " \t\r\n")
	if after := data[len(text):]; len(after) > 0 { // what else stands in the last line
		line, _, _ := bytes.Cut(after, []byte("\n"))
		text = data[:len(text)+len(bytes.TrimSuffix(line, []byte("\r")))]
	}
	return slices.Concat(text, []byte(end+end+strings.ReplaceAll(lines, "\n", end)))
}

// Quote returns a text in quotes, as a file holds it.
func Quote(text string) string {
	var b strings.Builder
	b.WriteByte('"')
	for _, r := range text {
		switch {
		case r == '"' || r == '\\':
			b.WriteString(`\` + string(r))
		case unicode.IsControl(r):
			fmt.Fprintf(&b, `\u%04X`, r)
		default:
			b.WriteRune(r)
		}
	}
	b.WriteByte('"')
	return b.String()
}

// LineEnd is how the first line of a text ends: "\n" or "\r\n".
func LineEnd(data []byte) string {
	if first, _, ended := bytes.Cut(data, []byte("\n")); ended && bytes.HasSuffix(first, []byte("\r")) {
		return "\r\n"
	}
	return "\n"
}

// expression is a header, or a key with its value, under a key of the file.
type expression struct {
	key string
	at  span
}

// wholeLines widens a span to whole lines, and where it is empty above, to the
// blank lines below.
func (s *source) wholeLines(at span) span {
	first, next := s.line(at.from), s.line(at.to)+1
	for (first == 0 || s.blank(first-1)) && next < len(s.lines) && s.blank(next) {
		next++
	}
	whole := span{s.lines[first], len(s.data)}
	if next < len(s.lines) {
		whole.to = s.lines[next]
	}
	return whole
}

// blank reports a line without anything but space.
func (s *source) blank(line int) bool {
	b := s.bounds(line)
	return len(bytes.TrimSpace(s.data[b.from:b.to])) == 0
}

// Written returns what a table holds as lines of a file: a key with its value each, in
// order, and in a list of tables a line for each. Comments and the layout are gone. Keys
// of the names given are left out wherever they stand.
func (t *Table) Written(without ...string) string {
	var b strings.Builder
	for _, key := range t.written(without, "[\n  ", ",\n  ", ",\n]") {
		b.WriteString(key + "\n")
	}
	return b.String()
}

// written lists the keys with their values; open, between and end stand round the tables
// of a list.
func (t *Table) written(without []string, open, between, end string) (keys []string) {
	for _, e := range t.entries {
		if !slices.Contains(without, e.key) {
			keys = append(keys, e.key+" = "+e.value.written(without, open, between, end))
		}
	}
	return keys
}

// written is a value as a file holds it.
func (v *value) written(without []string, open, between, end string) string {
	switch {
	case v.shape == isText:
		return Quote(strings.TrimSpace(v.text))
	case v.shape == isTable:
		return "{ " + strings.Join(v.table.written(without, "[", ", ", "]"), ", ") + " }"
	case v.shape != isList:
		return v.text
	case len(v.items) == 0 || v.items[0].shape != isTable:
		open, between, end = "[", ", ", "]"
	}
	items := make([]string, len(v.items))
	for i, item := range v.items {
		items[i] = item.written(without, "[", ", ", "]")
	}
	return open + strings.Join(items, between) + end
}
