package benchfile

import (
	"slices"
	"strings"

	"minim/equipment/quantity"
)

// Line is the line of the header or the brace of the table, from 1.
func (t *Table) Line() int { return t.place().Line }

func (t *Table) place() place {
	if t == nil {
		return place{}
	}
	return t.file.place(t.at.from)
}

// Root returns the table of the whole file.
func (t *Table) Root() *Table { return t.file.root }

// Source returns the name of the whole file, and its bytes as they were read.
func (t *Table) Source() (name string, data []byte) { return t.place().File, t.file.read }

// Call gives the table a name that messages know it by: "entry 3".
func (t *Table) Call(name string) { t.Name, t.called = name, true }

// Has reports whether the key is there.
func (t *Table) Has(key string) bool { return t.ask(key) != nil }

// IsText reports whether a text in quotes stands at the key.
func (t *Table) IsText(key string) bool { return t.shape(key) == isText }

// IsTable reports whether a table stands at the key.
func (t *Table) IsTable(key string) bool { return t.shape(key) == isTable }

// ListsTables reports whether a list of tables stands at the key.
func (t *Table) ListsTables(key string) bool {
	v := t.ask(key)
	return v != nil && v.shape == isList && len(v.items) > 0 && v.items[0].shape == isTable
}

// DropBlanks takes the keys away whose text is empty: the blanks of a form that have
// not been filled in.
func (t *Table) DropBlanks() {
	t.entries = slices.DeleteFunc(t.entries, func(e *entry) bool {
		return e.value.shape == isText && strings.TrimSpace(e.value.text) == ""
	})
}

// shape returns what stands at the key.
func (t *Table) shape(key string) shape {
	if v := t.ask(key); v != nil {
		return v.shape
	}
	return absent
}

// Keys returns the keys in file order. It asks for none of them.
func (t *Table) Keys() []string {
	if t == nil {
		return nil
	}
	keys := make([]string, len(t.entries))
	for i, e := range t.entries {
		keys[i] = e.key
	}
	return keys
}

// Table returns the table at the key, nil when absent.
func (t *Table) Table(key string) *Table {
	v := t.ask(key)
	switch {
	case v == nil:
		return nil
	case v.shape == isTable:
		v.table.open = true
		return v.table
	case v.headed():
		t.wrong(key, v, "one table", "write its header once, in single brackets")
	default:
		t.wrong(key, v, "a table", "write "+key+" = { … }")
	}
	return nil
}

// Tables returns the tables of a list, nil when absent.
func (t *Table) Tables(key string) (tables []*Table) {
	v := t.ask(key)
	switch {
	case v == nil:
		return nil
	case v.shape == isTable && v.table.origin == byHeader:
		t.wrong(key, v, "a list of tables", "write ["+string(t.file.data[v.at.from:v.at.to])+"] in double brackets")
	case v.shape != isList:
		t.wrong(key, v, "a list of tables", "write "+key+" = [ { … } ]")
	}
	for _, item := range t.atMost(key, v.items) {
		if item.shape != isTable {
			t.wrong(key, item, "a table", "write { … }")
			continue
		}
		item.table.open = true
		tables = append(tables, item.table)
	}
	return tables
}

// Need records a mistake at the place of the table for each key that is not there.
func (t *Table) Need(keys ...string) {
	for _, key := range keys {
		if t != nil && t.ask(key) == nil {
			t.file.missing = append(t.file.missing, missing{t, []string{key}, nil})
		}
	}
}

// Fail records a mistake at the value of the key, and at the place of the table
// when the key is empty or absent, with what else helps. The message is shown after the key.
func (t *Table) Fail(key, message, hint string, help ...Help) {
	t.fail(key, message, hint, false, help...)
}

// FailKey is Fail at the key itself.
func (t *Table) FailKey(key, message, hint string) { t.fail(key, message, hint, true) }

// FailFor is Fail for want of another key, one of those in the table that needed is.
// Where a mistyped key there was meant to be it, that alone is the mistake; of several
// that want the same key the first in the file is.
func (t *Table) FailFor(needed *Table, wanted []string, key, message, hint string) {
	for _, want := range wanted {
		needed.ask(want)
	}
	at, message := t.blamed(key, message, false)
	if t.Sound(key) {
		t.file.missing = append(t.file.missing, missing{needed, wanted, t.file.mistake(at, message, hint)})
	}
}

func (t *Table) fail(key, message, hint string, atKey bool, help ...Help) {
	at, message := t.blamed(key, message, atKey)
	if t.Sound(key) { // what follows from a mistake is no second one
		t.file.record(at, message, hint, help...)
	}
}

// blamed is where a mistake stands, and its message after the key.
func (t *Table) blamed(key, message string, atKey bool) (span, string) {
	if t == nil {
		panic("benchfile: Fail on an absent table")
	}
	at := t.at
	if v := t.ask(key); v != nil && atKey {
		at = t.find(key).at
	} else if v != nil {
		at = v.at
	}
	if key != "" {
		message = key + ": " + message
	}
	return at, message
}

// Mistaken reports whether a mistake has been recorded in the file of the table; keys that
// nobody asks for are found by Err.
func (t *Table) Mistaken() bool { return len(t.file.mistakes)+len(t.file.missing) > 0 }

// Accept takes all keys that are there as known: those of a table of which it
// cannot be said what it may hold. A key that was meant to be one that is needed stays
// unknown.
func (t *Table) Accept() {
	var needed []string
	if t != nil {
		for _, n := range t.file.missing {
			if n.table == t {
				needed = append(needed, n.keys...)
			}
		}
	}
	for _, key := range t.Keys() {
		if Nearest(key, needed) == "" {
			t.ask(key)
		}
	}
}

// ask marks the key as known and returns its value, nil when absent.
func (t *Table) ask(key string) *value {
	if t == nil {
		return nil
	}
	if key != "" && !slices.Contains(t.known, key) {
		t.known = append(t.known, key)
	}
	return t.value(key)
}

// refuse records a mistake at a value, under its key.
func (t *Table) refuse(key string, v *value, message, hint string) {
	t.file.record(v.at, key+": "+message, hint)
}

// wrong records that a value has the wrong shape.
func (t *Table) wrong(key string, v *value, wanted, hint string) {
	t.refuse(key, v, "found "+v.describe()+", expected "+wanted, hint)
}

// shapes are how a mistake names what stands at a key, before what it is.
var shapes = [...]ofMistake{isText: "the text ", number: "the number ", flag: "the bare word ", date: "the date or time ", isTable: "a table", isList: "a list"}

// describe says what a value is: `the number 10`.
func (v *value) describe() string {
	if v.shape == isText {
		return shapes[v.shape] + quote(v.text)
	}
	return shapes[v.shape] + quantity.Shortened(v.text)
}
