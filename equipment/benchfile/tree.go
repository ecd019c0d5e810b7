package benchfile

import "slices"

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
func (t *Table) add(p part, v *value) {
	t.entries = append(t.entries, &entry{p.name, p.at, v})
}

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
