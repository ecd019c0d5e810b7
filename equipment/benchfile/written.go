package benchfile

import (
	"slices"
	"strings"
)

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
