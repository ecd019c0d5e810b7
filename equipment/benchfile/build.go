package benchfile

import (
	"cmp"
	"errors"
	"fmt"
	"regexp"
	"strings"

	"github.com/pelletier/go-toml/v2/unstable"

	"minim/equipment/quantity"
)

// builder turns the expressions of a file into the tree.
type builder struct {
	src     *source
	parser  unstable.Parser
	root    *Table
	current *Table // the table of the last header
	under   string // the first word of that header
	count   int
}

// build returns the root of the tree, with the mistake at which it ends.
func build(src *source) (*Table, *Mistake) {
	b := &builder{src: src}
	b.root = &Table{Name: "file", rank: isRoot, open: true}
	b.root.file = &file{source: src, root: b.root}
	b.current = b.root
	b.parser.Reset(src.data)
	end := 0
	for b.parser.NextExpression() {
		last, m := b.expression(b.parser.Expression())
		if m != nil {
			return b.root, m
		}
		end = last
	}
	if err := b.parser.Error(); err != nil {
		return b.root, b.syntax(err, end)
	}
	return b.root, nil
}

// syntax words the error of the parser in the expression that starts after the
// offset.
func (b *builder) syntax(err error, after int) *Mistake {
	var found *unstable.ParserError
	if !errors.As(err, &found) {
		return b.src.mistake(span{after, after}, plain(err.Error()), "")
	}
	at := b.parser.Range(found.Highlight)
	return newFault(b.src, span{int(at.Offset), int(at.Offset + at.Length)}, found.Message, after).worded()
}

// expression adds one key and value or one header and returns where it ends.
func (b *builder) expression(node *unstable.Node) (end int, m *Mistake) {
	parts, m := b.parts(node)
	if m != nil {
		return 0, m
	}
	at := b.src.header(parts)
	if node.Kind == unstable.KeyValue {
		at = span{parts[0].at.from, int(node.Raw.Offset + node.Raw.Length)}
		m = b.keyValue(b.current, parts, node)
	} else {
		b.under = parts[0].name
		b.current, m = b.header(parts, at, node.Kind == unstable.ArrayTable)
	}
	b.root.file.list = append(b.root.file.list, expression{cmp.Or(b.under, parts[0].name), at})
	return at.to, m
}

// keyValue adds a key, dotted or not, and its value to a table.
func (b *builder) keyValue(t *Table, parts []part, node *unstable.Node) (m *Mistake) {
	last := parts[len(parts)-1]
	if t, m = b.down(t, parts[:len(parts)-1], byDots); m != nil {
		return m
	}
	if e := t.find(last.name); e != nil {
		return b.twice(last, e)
	}
	equals := b.src.skip(last.at.to, " \t")
	at := span{b.src.skip(equals+1, " \t"), int(node.Raw.Offset + node.Raw.Length)}
	v, m := b.value(t, last.name, node.Value(), at, t.depth+1)
	if m != nil {
		return m
	}
	t.add(last, v)
	return nil
}

// header opens the table of a [header] or appends one for a [[header]].
func (b *builder) header(parts []part, at span, array bool) (*Table, *Mistake) {
	last := parts[len(parts)-1]
	t, m := b.down(b.root, parts[:len(parts)-1], byPath)
	if m != nil {
		return nil, m
	}
	e := t.find(last.name)
	switch {
	case array && e == nil:
		e = &entry{last.name, last.at, &value{shape: isList, at: at}}
		t.entries = append(t.entries, e)
		fallthrough
	case array && e.value.headed():
		element := t.child(singular(last.name), at, isElement, byHeader)
		e.value.items = append(e.value.items, &value{shape: isTable, at: at, table: element})
		return element, nil
	case e == nil:
		return t.begin(last, at, byHeader), nil
	case !array && e.value.shape == isTable && e.value.table.origin == byPath:
		sub := e.value.table
		e.at, e.value.at, sub.at, sub.origin = last.at, at, at, byHeader
		return sub, nil
	}
	return nil, b.twice(last, e)
}

// down goes down parts of a dotted key, or of a header, before its last.
func (b *builder) down(t *Table, parts []part, by origin) (*Table, *Mistake) {
	for _, p := range parts {
		e := t.find(p.name)
		switch {
		case e == nil:
			t = t.begin(p, p.at, by)
		case by == byPath && e.value.headed():
			t = e.value.items[len(e.value.items)-1].table
		case e.value.shape == isTable && (e.value.table.origin == by || by == byPath && e.value.table.origin != byBraces):
			t = e.value.table
		default:
			return nil, b.twice(p, e)
		}
	}
	return t, nil
}

// begin adds a table.
func (t *Table) begin(p part, at span, by origin) *Table {
	sub := t.child(p.name, at, isSub, by)
	t.add(p, &value{shape: isTable, at: at, table: sub})
	return sub
}

// Limits that no file of a bench comes near, so that a hostile one costs little.
const (
	deepest = 32    // tables and lists inside each other
	most    = 10000 // keys and values
)

// part is one word of a key.
type part struct {
	name string
	at   span
}

// parts returns the words of a key, or the mistake in one of them. One that is only
// misspelt is recorded, and read as what was meant.
func (b *builder) parts(node *unstable.Node) ([]part, *Mistake) {
	var parts []part
	for it := node.Key(); it.Next(); {
		raw := it.Node().Raw
		p := part{string(it.Node().Data), span{int(raw.Offset), int(raw.Offset + raw.Length)}}
		if m := b.limit(p.at, len(parts)); m != nil {
			return nil, m
		}
		if m := b.src.spelling(p); m != nil {
			p.name = cured(p.name)
			if p.name == "" {
				return nil, m
			}
			b.root.file.keep(p.at, m)
		}
		parts = append(parts, p)
	}
	return parts, nil
}

// limit counts a key or value and refuses it where a file goes too far.
func (b *builder) limit(at span, depth int) *Mistake {
	b.count++
	switch {
	case b.count > most:
		return b.src.mistake(at, fmt.Sprintf("the file holds more than %d keys and values", most), "")
	case depth > deepest:
		return b.src.mistake(at, tooDeep, "")
	}
	return nil
}

var wellSpelt = regexp.MustCompile(`^[a-z0-9]+(-[a-z0-9]+)*$`)

// spelling refuses a key that is not in lower case with hyphens. Readers that
// match keys without case would let u fill U.
func (s *source) spelling(p part) *Mistake {
	if wellSpelt.MatchString(p.name) {
		return nil
	}
	hint := ""
	if cure := cured(p.name); cure != "" {
		hint = "write `" + cure + "`"
	}
	switch {
	case p.name == "":
		return s.mistake(p.at, "the key is empty", "write a word before the =")
	case wellSpelt.MatchString(strings.ToLower(p.name)):
		return s.mistake(p.at, "`"+quantity.Shortened(p.name)+"`: keys are in lower case", hint)
	}
	return s.mistake(p.at, "`"+quantity.Shortened(p.name)+"`: keys are in lower case, their words joined by hyphens", hint)
}

// cured is the key that a misspelt one was meant to be; "" where that is not known.
func cured(name string) string {
	cure := strings.NewReplacer("_", "-", " ", "-").Replace(strings.ToLower(name))
	if !wellSpelt.MatchString(cure) {
		return ""
	}
	return cure
}

// twice refuses a key that is already there.
func (b *builder) twice(p part, first *entry) *Mistake {
	line := b.src.place(first.at.from).Line
	return b.src.mistake(p.at, fmt.Sprintf("`%s` stands twice: line %d has it already", p.name, line), "keep one of the two")
}
