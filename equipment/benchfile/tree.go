package benchfile

import (
	"slices"
	"strings"

	"github.com/pelletier/go-toml/v2/unstable"
)

// shape is what stands at a key.
type shape int

// The shapes. A list of tables, however written, is an isList.
const (
	absent  shape = iota
	isText        // in quotes
	number        // bare
	flag          // true or false
	isList        // in square brackets, or tables under [[headers]]
	isTable       // a table, in braces or under a [header]
	date          // a bare date or time; nothing in a file of a bench wants one
)

// Table is a cursor on one table of a file. Its accessors may be called on a
// nil Table, which holds nothing.
type Table struct {
	// Name is the noun for the table in messages: "balance" for an element of
	// [[balance]], "step" for one of steps = [ … ]. Callers may set a better one.
	Name string

	file    *file
	at      span
	rank    rank
	origin  origin
	depth   int
	called  bool // by a name of its own, without an article
	entries []*entry
	known   []string // the keys asked for, in order
	open    bool     // handed to the caller, who asks for its keys
}

// rank says how a table is spoken of: the file, the solute, a balance.
type rank int

const (
	isRoot rank = iota
	isSub
	isElement
)

// origin says how a table came to be, and so what may be added to it.
type origin int

const (
	byHeader origin = iota // complete
	byPath                 // a step on the way to a longer header; its own header may follow
	byDots                 // by dotted keys; more of them may follow
	byBraces               // complete
)

// entry is one key with its value.
type entry struct {
	key   string
	at    span
	value *value
}

// value is what stands at a key or in a list.
type value struct {
	shape shape
	at    span
	text  string // the content of a text in quotes, the characters of a number, flag or date
	whole bool   // a number that is an integer
	items []*value
	table *Table
}

// find returns the entry of a key, or nil.
func (t *Table) find(key string) *entry {
	i := slices.IndexFunc(t.entries, func(e *entry) bool { return e.key == key })
	if i < 0 {
		return nil
	}
	return t.entries[i]
}

// add appends an entry.
func (t *Table) add(p part, v *value) { t.entries = append(t.entries, &entry{p.name, p.at, v}) }

// child returns a new table one level down.
func (t *Table) child(name string, at span, r rank, o origin) *Table {
	return &Table{Name: name, file: t.file, at: at, rank: r, origin: o, depth: t.depth + 1}
}

// tables returns the tables of a list, or nil if it holds anything else.
func (v *value) tables() []*Table {
	tables := make([]*Table, len(v.items))
	for i, item := range v.items {
		if item.shape != isTable {
			return nil
		}
		tables[i] = item.table
	}
	return tables
}

// headed reports a list of tables that was written with [[headers]].
func (v *value) headed() bool {
	return v.shape == isList && len(v.items) > 0 && v.items[0].shape == isTable && v.items[0].table.origin == byHeader
}

// value returns what a node holds; depth counts the tables and lists round it.
func (b *builder) value(t *Table, key string, node *unstable.Node, at span, depth int) (*value, *Mistake) {
	if m := b.limit(at, depth); m != nil {
		return nil, m
	}
	v := &value{at: at}
	switch node.Kind {
	case unstable.String:
		v.shape, v.text = isText, string(node.Data)
	case unstable.Bool:
		v.shape, v.text = flag, string(node.Data)
	case unstable.Integer, unstable.Float:
		v.shape, v.text, v.whole = number, string(node.Data), node.Kind == unstable.Integer
	case unstable.Array:
		v.shape = isList
		return v, b.items(v, t, key, node, depth)
	case unstable.InlineTable:
		v.shape = isTable
		v.table = &Table{Name: key, file: t.file, at: at, rank: isSub, origin: byBraces, depth: depth}
		return v, b.pairs(v.table, node)
	default:
		v.shape, v.text = date, string(node.Data)
	}
	return v, nil
}

// items adds the items of a list.
func (b *builder) items(v *value, t *Table, key string, node *unstable.Node, depth int) *Mistake {
	for it := node.Children(); it.Next(); {
		item, m := b.value(t, singular(key), it.Node(), b.itemSpan(it.Node(), v.at), depth+1)
		if m != nil {
			return m
		}
		if item.shape == isTable {
			item.table.rank = isElement
		}
		v.items = append(v.items, item)
	}
	return nil
}

// pairs adds the keys and values between braces.
func (b *builder) pairs(t *Table, node *unstable.Node) *Mistake {
	for it := node.Children(); it.Next(); {
		parts, m := b.parts(it.Node())
		if m == nil {
			m = b.keyValue(t, parts, it.Node())
		}
		if m != nil {
			return m
		}
	}
	return nil
}

// itemSpan returns where an item of a list stands. The parser does not say so
// of a list in a list, which takes the place of the outer one.
func (b *builder) itemSpan(node *unstable.Node, list span) span {
	from, to := int(node.Raw.Offset), int(node.Raw.Offset+node.Raw.Length)
	switch node.Kind {
	case unstable.Array:
		return list
	case unstable.InlineTable:
		for it := node.Children(); it.Next(); {
			to = int(it.Node().Raw.Offset + it.Node().Raw.Length)
		}
		to = b.src.closing(to)
	}
	return span{from, to}
}

// singular returns the noun for one item of a list.
func singular(key string) string {
	if strings.HasSuffix(key, "ss") {
		return key
	}
	return strings.TrimSuffix(key, "s")
}
