package benchfile

import (
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
	var list []Difference
	for _, key := range keysOfBoth(then, now) {
		if !slices.Contains(without, key) {
			for _, d := range differencesAt("", key, then, now) {
				d.List = key
				list = append(list, d)
			}
		}
	}
	return list
}

// keysOfBoth lists the keys of two tables, each once.
func keysOfBoth(then, now *Table) []string {
	keys := then.Keys()
	for _, key := range now.Keys() {
		if !slices.Contains(keys, key) {
			keys = append(keys, key)
		}
	}
	return keys
}

// differencesIn are those of two tables that go by a name, but for some keys.
func differencesIn(of string, then, now *Table, without ...string) (list []Difference) {
	for _, key := range keysOfBoth(then, now) {
		if !slices.Contains(without, key) {
			list = append(list, differencesAt(of, key, then, now)...)
		}
	}
	return list
}

// differencesAt are those at one key.
func differencesAt(of, key string, then, now *Table) []Difference {
	switch a, b := then.value(key), now.value(key); {
	case isSubOrNone(a) && isSubOrNone(b):
		return differencesIn(below(of, key), a.sub(), b.sub())
	case holdsTables(a) || holdsTables(b):
		return itemDifferences(of, key, a, b)
	case a.shown() != b.shown() && !sameQuantity(a.shown(), b.shown()):
		return []Difference{{Of: of, Key: key, Then: a.shown(), Now: b.shown()}}
	}
	return nil
}

// itemDifferences compares two lists of tables.
func itemDifferences(of, key string, then, now *value) (list []Difference) {
	before, after := then.itemsOf(key), now.itemsOf(key)
	var labels []string
	for _, items := range [][]item{before, after} {
		for _, i := range items {
			if !slices.Contains(labels, i.label) {
				labels = append(labels, i.label)
			}
		}
	}
	for _, label := range labels {
		a, b := labelled(before, label), labelled(after, label)
		name, from := below(of, label), len(list)
		if a == nil || b == nil || a.name() == "" && !slices.Contains(b.Keys(), a.first()) {
			list = append(list, Difference{Of: name, Then: a.shown(), Now: b.shown()})
		} else {
			list = append(list, differencesIn(name, a, b)...)
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

// item is one table of a list, with what tells it apart.
type item struct {
	label string
	table *Table
}

// itemsOf lists the tables of a list: by their names, or as "step 1".
func (v *value) itemsOf(key string) (items []item) {
	if v == nil {
		return nil
	}
	for i, t := range v.tables() {
		label := t.name()
		if label == "" {
			label = singular(key) + " " + strconv.Itoa(i+1)
		}
		items = append(items, item{label, t})
	}
	return items
}

// labelled finds an item, nil when there is none.
func labelled(items []item, label string) *Table {
	if i := slices.IndexFunc(items, func(i item) bool { return i.label == label }); i >= 0 {
		return items[i].table
	}
	return nil
}

// name is the text at the key name, "" when there is none.
func (t *Table) name() string {
	if v := t.value("name"); v != nil && v.shape == Text {
		return v.shown()
	}
	return ""
}

// first is the first key.
func (t *Table) first() string {
	if keys := t.Keys(); len(keys) > 0 {
		return keys[0]
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

// isSubOrNone reports a table, or nothing at all.
func isSubOrNone(v *value) bool { return v == nil || v.shape == Sub }

// holdsTables reports a list of tables.
func holdsTables(v *value) bool { return v != nil && v.shape == List && len(v.tables()) > 0 }

// sub is the table of a value, nil for none.
func (v *value) sub() *Table {
	if v == nil {
		return nil
	}
	return v.table
}

// shown is a value for people: a text without quotes; "" for none.
func (v *value) shown() string {
	switch {
	case v == nil:
		return ""
	case v.shape == Text:
		return strings.TrimSpace(v.text)
	}
	return v.written(nil, "[", ", ", "]")
}

// shown is a table for people: "" for none.
func (t *Table) shown() string {
	if t == nil {
		return ""
	}
	return (&value{shape: Sub, table: t}).shown()
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
