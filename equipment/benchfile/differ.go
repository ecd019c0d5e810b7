package benchfile

import (
	"cmp"
	"slices"
	"strconv"
	"strings"

	"minim/equipment/quantity"
)

// Difference is a key with which two tables do not agree.
type Difference struct {
	// Of is what has the key: "solute", an item of a list by its name, or "step 1". It
	// is empty for the table itself.
	Of string
	// Key is empty where an item is in only one of the two.
	Key string
	// Then and Now are the values, a text without its quotes; empty where there is none.
	Then, Now string
	// List is the key of the whole tables that it stands at or below, Item the label of an
	// item of a list there: its name, or "step 1".
	List, Item string
}

// Differences lists where the table now is not as it was then, in the order of then.
// Items of a list are told apart by their names, or where they have none by their number;
// one without the first key of the other is another item. Comments, the layout, how a
// quantity is written ("1.0 g" or "1000 mg"), the order of keys and that of named items do
// not count; keys of the names given are left out. Either table may be nil, which holds
// nothing.
func Differences(then, now *Table, without ...string) []Difference {
	return differencesIn("", then, now, without)
}

// differencesIn are those of two tables that go by a name.
func differencesIn(of string, then, now *Table, without []string) (list []Difference) {
	for _, key := range union(then.Keys(), now.Keys()) {
		if slices.Contains(without, key) {
			continue
		}
		for _, d := range differencesAt(of, key, then, now) {
			d.List = key // that of the outermost comes last
			list = append(list, d)
		}
	}
	return list
}

// union lists what is in one of two lists, each once.
func union(a, b []string) (all []string) {
	for _, s := range slices.Concat(a, b) {
		if !slices.Contains(all, s) {
			all = append(all, s)
		}
	}
	return all
}

// differencesAt are those at one key.
func differencesAt(of, key string, then, now *Table) []Difference {
	var none value
	switch a, b := cmp.Or(then.value(key), &none), cmp.Or(now.value(key), &none); {
	case isTableOrNone(a) && isTableOrNone(b):
		return differencesIn(below(of, key), a.table, b.table, nil)
	case len(a.tables())+len(b.tables()) > 0:
		return itemDifferences(of, key, a, b)
	case a.shown() != b.shown() && !sameQuantity(a.shown(), b.shown()):
		return []Difference{{Of: of, Key: key, Then: a.shown(), Now: b.shown()}}
	}
	return nil
}

// itemDifferences compares two lists of tables.
func itemDifferences(of, key string, then, now *value) (list []Difference) {
	labels, before := then.itemsOf(key)
	others, after := now.itemsOf(key)
	for _, label := range union(labels, others) {
		a, b := before[label], after[label]
		name, from := below(of, label), len(list)
		if a == nil || b == nil || a.name() == "" && !slices.Contains(b.Keys(), append(a.Keys(), "")[0]) {
			list = append(list, Difference{Of: name, Then: a.shown(), Now: b.shown()})
		} else {
			list = append(list, differencesIn(name, a, b, nil)...)
		}
		for i := range list[from:] {
			list[from+i].Item = label
		}
	}
	return list
}

// below names what stands in something.
func below(of, name string) string {
	if of == "" {
		return name
	}
	return of + ", " + name
}

// itemsOf lists the tables of a list, by what tells them apart: their names, or "step 1".
func (v *value) itemsOf(key string) (labels []string, items map[string]*Table) {
	items = map[string]*Table{}
	for i, t := range v.tables() {
		label := cmp.Or(t.name(), singular(key)+" "+strconv.Itoa(i+1))
		if items[label] == nil {
			items[label] = t
		}
		labels = append(labels, label)
	}
	return labels, items
}

// name is the text at the key name, "" when there is none.
func (t *Table) name() string {
	if v := t.value("name"); v != nil && v.shape == isText {
		return v.shown()
	}
	return ""
}

// value is what stands at a key, nil when absent. It does not ask for the key.
func (t *Table) value(key string) *value {
	if t == nil {
		return nil
	}
	if e := t.find(key); e != nil {
		return e.value
	}
	return nil
}

func isTableOrNone(v *value) bool { return v.shape == absent || v.shape == isTable }

// shown is a value for people: a text without quotes; "" for none.
func (v *value) shown() string {
	if v.shape == isText {
		return strings.TrimSpace(v.text)
	}
	return v.written(nil, "[", ", ", "]")
}

// shown is a table for people: "" for none.
func (t *Table) shown() string {
	if t == nil {
		return ""
	}
	return (&value{shape: isTable, table: t}).shown()
}

// sameQuantity reports whether two texts are one quantity: "1.0 g" and "1000 mg", or in a unit that
// is not of a kind "0.04 % w/v" and "0.040 % w/v".
func sameQuantity(a, b string) bool {
	for kind := quantity.Mass; kind <= quantity.Share; kind++ {
		x, errA := quantity.Parse(kind, a)
		y, errB := quantity.Parse(kind, b)
		if errA == nil && errB == nil {
			return x == y
		}
	}
	x, unit, errA := quantity.Split(a)
	y, other, errB := quantity.Split(b)
	return errA == nil && errB == nil && x == y && unit == other
}
