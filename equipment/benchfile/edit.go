package benchfile

import (
	"bytes"
	"cmp"
	"fmt"
	"slices"
	"strings"
	"unicode"

	"github.com/pelletier/go-toml/v2/unstable"
)

// Without returns the text of a file without the tables or the value that a key of
// the file holds, whole lines, with the comments and blank lines in between. All
// else stays, comments above and below included; but where blank lines stand on
// both sides of what goes, those below go as well. The name is the one shown in
// mistakes; the error is that of [Parse], or a *Mistake for a misspelt key.
func Without(name string, data []byte, key string) ([]byte, error) {
	src, list, err := expressions(name, data)
	if err != nil {
		return nil, err
	}
	mark, data := cutMark(data)
	rest := bytes.Clone(mark)
	from := 0
	for len(list) > 0 {
		first := list[0]
		next := slices.IndexFunc(list, func(e expression) bool { return e.key != first.key })
		if next < 0 {
			next = len(list)
		}
		if first.key == key {
			gone := src.wholeLines(span{first.at.from, list[next-1].at.to})
			rest = append(rest, data[from:gone.from]...)
			from = gone.to
		}
		list = list[next:]
	}
	return append(rest, data[from:]...), nil
}

// WithText returns the text of a file in which a key of the file holds a text:
// instead of the text that stands there, or in a line of its own above all other
// keys. A mistake in the text of the file, or a value that is no text, is a
// *Mistake, or several.
func WithText(name string, data []byte, key, text string) ([]byte, error) {
	root, err := Parse(name, data)
	if err != nil {
		return nil, err
	}
	if len(root.file.mistakes) > 0 {
		return nil, root.file.mistakes.asError()
	}
	mark, data := cutMark(data)
	v := root.ask(key)
	switch {
	case v == nil:
		src, list, err := expressions(name, data)
		if err != nil {
			return nil, err
		}
		above := src.lines[src.line(list[0].at.from)]
		line := key + " = " + Quote(text) + LineEnd(data)
		return slices.Concat(mark, data[:above], []byte(line), data[above:]), nil
	case v.shape != Text:
		root.wrong(key, v, "a text in quotes", v.quoted())
		return nil, root.file.mistakes[0]
	}
	return slices.Concat(mark, data[:v.at.from], []byte(Quote(text)), data[v.at.to:]), nil
}

// Append returns the text of a file with more lines at its end, below one blank
// line. They get the line ends of the text.
func Append(data []byte, lines string) []byte {
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

// expressions lists what stands in a text, in order.
func expressions(name string, data []byte) (*source, []expression, error) {
	root, err := Parse(name, data)
	if err != nil {
		return nil, nil, err
	}
	b := &builder{src: root.file.source}
	b.parser.Reset(b.src.data)
	var list []expression
	header := ""
	for b.parser.NextExpression() {
		node := b.parser.Expression()
		parts, m := b.parts(node)
		if m != nil {
			return nil, nil, m
		}
		if node.Kind != unstable.KeyValue {
			header = parts[0].name
			list = append(list, expression{header, b.src.header(parts)})
			continue
		}
		at := span{parts[0].at.from, int(node.Raw.Offset + node.Raw.Length)}
		list = append(list, expression{cmp.Or(header, parts[0].name), at})
	}
	return b.src, list, nil
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
