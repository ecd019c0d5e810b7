package benchfile

import (
	"cmp"
	"slices"
	"strings"
)

// file is what all tables of one file share.
type file struct {
	*source
	root     *Table
	list     []expression
	mistakes mistakes
	// marked are the places of the mistakes.
	marked  []span
	missing []missing
}

// missing is a needed key that is not there, or several of which one is needed.
type missing struct {
	table *Table
	keys  []string
	// by is the mistake of what needs it; nil where the table itself does.
	by *Mistake
}

// is reports whether two are of the same key.
func (n missing) is(other missing) bool {
	return n.table == other.table && slices.ContainsFunc(n.keys, func(key string) bool { return slices.Contains(other.keys, key) })
}

// Err closes the whole file of the table: keys that were never asked for become
// mistakes. It returns nil, the one *Mistake, or all all of them in the order of the
// file.
func (t *Table) Err() error {
	if t == nil {
		panic("benchfile: Err of an absent table")
	}
	return t.file.all().asError()
}

// all are the mistakes of the file.
func (f *file) all() mistakes {
	all, meant := f.unknown(f.root)
	for _, need := range f.needed() {
		if !slices.ContainsFunc(meant, need.is) { // the mistyped key says it better
			all = append(all, need.mistake())
		}
	}
	return append(all, f.mistakes...)
}

// needed are the keys that are missing, each once: of several that need one, the first in
// the file says so.
func (f *file) needed() (list []missing) {
	for _, need := range f.missing {
		i := slices.IndexFunc(list, need.is)
		switch {
		case i < 0:
			list = append(list, need)
		case order(need.mistake(), list[i].mistake()) < 0:
			list[i] = need
		}
	}
	return list
}

// asError is none, the one, or all in order.
func (all mistakes) asError() error {
	switch len(all) {
	case 0:
		return nil
	case 1:
		return all[0]
	}
	slices.SortStableFunc(all, order)
	return all
}

// order compares the places of two mistakes.
func order(a, b *Mistake) int {
	return cmp.Or(cmp.Compare(a.Line, b.Line), cmp.Compare(a.Column, b.Column))
}

// unknown returns a mistake for each key that nobody asked for, in the table
// and in those handed out below it, and what these keys were meant to be.
func (f *file) unknown(t *Table) (all mistakes, meant []missing) {
	for _, e := range t.entries {
		switch known := slices.Contains(t.known, e.key); {
		case !known && f.wrong(e.at): // misspelt, it may have been meant to be any
			meant = append(meant, missing{t, t.known, nil})
		case !known:
			meaning, m := f.guess(t, e)
			meant, all = append(meant, meaning), append(all, m)
		default:
			for _, sub := range e.value.within() {
				if sub.open {
					below, also := f.unknown(sub)
					all, meant = append(all, below...), append(meant, also...)
				}
			}
		}
	}
	return all, meant
}

// within returns the tables that a value holds.
func (v *value) within() []*Table {
	if v.shape == isTable {
		return []*Table{v.table}
	}
	return v.tables()
}

// guess returns what an unknown key was probably meant to be, and the mistake.
func (f *file) guess(t *Table, e *entry) (missing, *Mistake) {
	key, added := e.key, f.isAdded(e.at)
	wrong := func(hint string) *Mistake { return f.mistake(e.at, "unknown key `"+key+"` in "+t.phrase(), hint) }
	if !added && t.origin == byHeader && slices.Contains(f.root.known, key) && f.root.find(key) == nil {
		return missing{f.root, []string{key}, nil}, wrong("`" + key + "` belongs to the file, not to " + t.phrase() + ": write it above the first [header]")
	}
	if len(t.known) == 0 {
		return missing{}, wrong("")
	}
	free := slices.DeleteFunc(slices.Clone(t.known), func(k string) bool {
		return !added && t.find(k) != nil && !(e.value.headed() && t.find(k).value.headed())
	})
	keys := t.phrase() + " are " + strings.Join(t.known, ", ")
	if near := Nearest(key, free); near != "" {
		return missing{t, []string{near}, nil}, wrong("write `" + near + "`; the keys of " + keys)
	}
	return missing{}, wrong("the keys of " + keys)
}

// mistake says that the needed key is missing. In the whole file no line is to blame.
func (n missing) mistake() *Mistake {
	if n.by != nil {
		return n.by
	}
	f, message := n.table.file, n.table.phrase()+" needs `"+n.keys[0]+"`"
	if n.table.rank == isRoot {
		return &Mistake{place: f.place(0), Message: message}
	}
	return f.mistake(n.table.at, message, "")
}

// phrase names a table with its article: "the file", "a balance", "the solute".
func (t *Table) phrase() string {
	switch {
	case t.called:
		return t.Name
	case t.rank != isElement:
		return "the " + t.Name
	case t.Name != "" && strings.Contains("aeiou", t.Name[:1]):
		return "an " + t.Name
	}
	return "a " + t.Name
}
