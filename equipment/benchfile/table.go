package benchfile

import (
	"slices"
	"strings"
)

// Place returns where the header or the brace of the table stands; for the root
// table, the start of the file.
func (t *Table) Place() Place {
	if t == nil {
		return Place{}
	}
	return t.file.place(t.at.from)
}

// Root returns the table of the whole file.
func (t *Table) Root() *Table { return t.file.root }

// Source returns the whole file as it was read.
func (t *Table) Source() []byte { return t.file.read }

// Digest returns the SHA-256 of the whole file as it was read; see [Digest].
func (t *Table) Digest() string { return Digest(t.Source()) }

// Call gives the table a name that messages know it by: "entry 3".
func (t *Table) Call(name string) { t.Name, t.called = name, true }

// Has reports whether the key is there.
func (t *Table) Has(key string) bool { return t.Shape(key) != absent }

// Is reports whether the key holds a text.
func (t *Table) Is(key, text string) bool {
	v := t.ask(key)
	return v != nil && v.shape == Text && strings.TrimSpace(v.text) == text
}

// DropBlanks takes the keys away whose text is empty: the blanks of a form that have
// not been filled in.
func (t *Table) DropBlanks() {
	t.entries = slices.DeleteFunc(t.entries, func(e *entry) bool {
		return e.value.shape == Text && strings.TrimSpace(e.value.text) == ""
	})
}

// Shape returns what stands at the key.
func (t *Table) Shape(key string) Shape {
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
	case v.shape == Sub:
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
func (t *Table) Tables(key string) []*Table {
	v := t.ask(key)
	if v == nil {
		return nil
	}
	if v.shape != List {
		hint := "write " + key + " = [ { … } ]"
		if v.shape == Sub && v.table.origin == byHeader {
			hint = "write [" + string(t.file.data[v.at.from:v.at.to]) + "] in double brackets"
		}
		t.wrong(key, v, "a list of tables", hint)
		return nil
	}
	var tables []*Table
	for _, item := range t.atMost(key, v.items) {
		if item.shape != Sub {
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
// when the key is empty or absent. The message is shown after the key.
func (t *Table) Fail(key, message, hint string) {
	t.fail(key, message, hint, func(e *entry) span { return e.value.at })
}

// FailKey is Fail at the key itself.
func (t *Table) FailKey(key, message, hint string) {
	t.fail(key, message, hint, func(e *entry) span { return e.at })
}

// FailFor is Fail for want of another key, one of those in the table that needed is.
// Where a mistyped key there was meant to be it, that alone is the mistake; of several
// that want the same key the first in the file is.
func (t *Table) FailFor(needed *Table, wanted []string, key, message, hint string) {
	if needed == nil {
		t.Fail(key, message, hint)
		return
	}
	for _, want := range wanted {
		needed.ask(want)
	}
	at, message := t.blamed(key, message, func(e *entry) span { return e.value.at })
	if t.Sound(key) {
		t.file.missing = append(t.file.missing, missing{needed, wanted, t.file.mistake(at, message, hint)})
	}
}

func (t *Table) fail(key, message, hint string, where func(*entry) span) {
	at, message := t.blamed(key, message, where)
	if t.Sound(key) { // what follows from a mistake is no second one
		t.file.record(at, message, hint)
	}
}

// blamed is where a mistake stands, and its message after the key.
func (t *Table) blamed(key, message string, where func(*entry) span) (span, string) {
	if t == nil {
		panic("benchfile: Fail on an absent table")
	}
	at := t.at
	if t.ask(key) != nil {
		at = where(t.find(key))
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

// describe says what a value is: `the number 10`.
func (v *value) describe() string {
	switch v.shape {
	case Text:
		return "the text " + quote(v.text)
	case number:
		return "the number " + Shortened(v.text)
	case flag:
		return "the bare word " + v.text
	case date:
		return "the date or time " + v.text
	case Sub:
		return "a table"
	}
	return "a list"
}
