package benchfile

import (
	"cmp"
	"errors"

	"github.com/pelletier/go-toml/v2/unstable"
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
