package record

import (
	"fmt"
	"math"
	"slices"
	"strconv"

	"minim/equipment"
	"minim/equipment/benchfile"
	"minim/equipment/quantity"
	"minim/uncertainty/route"
)

// Load reads the record file of a batch of a prep. A mistake in it is a
// *benchfile.Mistake.
func Load(path string, p *route.Prep) (*Record, error) {
	text, err := benchfile.Read(path)
	if err != nil {
		return nil, err
	}
	return Parse(path, text, p)
}

// Parse reads the text of a record; name stands for the file in messages.
func Parse(name string, text []byte, p *route.Prep) (*Record, error) {
	whole, cut := Whole(name, text)
	root, err := benchfile.Parse(name, whole)
	if err != nil {
		return nil, err
	}
	if err := refuseOthers(root); err != nil {
		return nil, err
	}
	root.DropBlanks()
	root.Need("route", "entries")
	r := &Record{File: name, Plan: p, Batch: root.Text("batch"), Note: root.Text("note"), Cut: cut}
	r.Planned = findRoute(root, p)
	entries := root.Table("entries")
	if r.Planned == nil || entries == nil {
		entries.Accept()
		return nil, root.Err()
	}
	r.read(entries, p)
	if err := root.Err(); err != nil {
		return nil, err
	}
	r.Prep = r.onTheDay(p)
	r.follow(entries)
	return r, root.Err()
}

// refuseOthers refuses the other files of a bench.
func refuseOthers(root *benchfile.Table) error {
	switch keys := root.Keys(); {
	case slices.Contains(keys, "target"):
		return root.Refuse("this is a prep, not a record", "minim new --record PREP --route NAME writes a record to fill in")
	case slices.ContainsFunc(keys, func(key string) bool { return slices.Contains(equipment.KitTables(), key) }):
		return root.Refuse("this is a kit, not a record", "minim new --record PREP --route NAME writes a record to fill in")
	}
	return nil
}

// findRoute finds the route that was planned.
func findRoute(root *benchfile.Table, p *route.Prep) *route.Route {
	name := root.Text("route")
	names := make([]string, len(p.Routes))
	for i, r := range p.Routes {
		if names[i] = r.Name; r.Name == name {
			return r
		}
	}
	if name != "" {
		root.FailChoice("route", "route in "+p.File, name, names, "")
	}
	return nil
}

// read reads the entries, and checks what can be said of each by itself and against
// those above it.
func (r *Record) read(entries *benchfile.Table, p *route.Prep) {
	for _, key := range entries.Keys() {
		t := entries.Table(key)
		if t == nil {
			continue
		}
		number, err := strconv.Atoi(key)
		if err != nil || number < 1 {
			entries.FailKey(key, "entries are numbered", "write 1, 2, 3 and so on before the =")
			continue
		}
		r.last = max(r.last, number)
		t.Call("entry " + key)
		e := &Entry{Number: number, Line: t.Place().Line, table: t}
		if !e.fill(r, p) {
			r.blanks = append(r.blanks, number)
			continue
		}
		r.inOrder(entries, key, e)
		r.Entries = append(r.Entries, *e)
	}
}

// inOrder checks the number and the time of an entry against those above.
func (r *Record) inOrder(entries *benchfile.Table, key string, e *Entry) {
	if n := len(r.Entries); n > 0 && e.Number <= r.Entries[n-1].Number {
		entries.FailKey(key, fmt.Sprintf("stands below entry %d", r.Entries[n-1].Number), "number the entries in the order in which they were written")
	}
	for i := len(r.Entries) - 1; i >= 0 && e.At != ""; i-- {
		above := &r.Entries[i]
		switch {
		case above.At == "":
			continue
		case e.before(above):
			e.table.Fail("at", fmt.Sprintf("is before entry %d above it, %s", above.Number, above.At), "write when the entry was made; one that was forgotten gets the time at which it is written, and late = true")
			return
		case above.clock || !e.clock:
			return // all further up are in order
		}
	}
}

// fill reads what an entry says; it returns false for a blank one.
func (e *Entry) fill(r *Record, p *route.Prep) bool {
	t := e.table
	ofBench := slices.Contains(t.Keys(), "temperature") // it may be blank
	t.DropBlanks()
	e.By, e.Note, e.Spoilt = readInitials(t), t.Text("note"), t.Text("spoilt")
	e.readTime()
	e.Late, e.Withdrawn = t.Flag("late"), t.Flag("withdrawn")
	switch {
	case t.Has("corrects"):
		e.correct(r, p)
	case t.Has("temperature") || t.Has("within"):
		e.readTemperature(nil)
	case ofBench && holdsOnly(t, "by", "at", "note") || blank(t):
		t.Accept()
		return false
	default:
		e.readStep(r, p)
	}
	e.checkRemarks()
	return true
}

// checkRemarks checks what is said of what was done.
func (e *Entry) checkRemarks() {
	t := e.table
	switch {
	case e.Withdrawn && !t.Has("corrects"):
		t.FailKey("withdrawn", "does not say which entry", "write corrects = and its number")
	case e.Withdrawn && e.Spoilt != "":
		t.FailKey("spoilt", "what is withdrawn was never so, and cannot be spoilt", "leave one of the two out")
	case e.Temperature.Known && e.Spoilt != "":
		t.FailKey("spoilt", "a temperature cannot be spoilt", "to change it write an entry with corrects = and its number")
	}
	if e.Corrects > 0 || e.Spoilt != "" {
		t.Need("by", "at")
	}
}

// blank reports a line of a form that has not been filled in.
func blank(t *benchfile.Table) bool { return holdsOnly(t, "step", "note") }

// holdsOnly reports whether a table has no other keys.
func holdsOnly(t *benchfile.Table, keys ...string) bool {
	return !slices.ContainsFunc(t.Keys(), func(k string) bool { return !slices.Contains(keys, k) })
}

// readInitials reads by whom an entry is.
func readInitials(t *benchfile.Table) string {
	by := t.Text("by")
	if len([]rune(by)) > 40 {
		t.Fail("by", "is longer than 40 characters", "initials or a name will do")
	}
	return by
}

// readTemperature reads that of the bench; what is not said is as in the entry that is
// corrected. Without one, nil, the temperature must be said.
func (e *Entry) readTemperature(corrected *Entry) {
	t := e.table
	if corrected != nil {
		e.Temperature, e.Within = corrected.Temperature, corrected.Within
	} else {
		t.Need("temperature")
	}
	if t.Has("temperature") {
		e.Temperature = equipment.Stated{Value: t.Quantity("temperature", quantity.Temperature), Known: true}
	}
	if t.Has("within") {
		e.Within = equipment.Stated{Value: t.NotNegative("within", quantity.Temperature), Known: true}
	}
	if t.Has("step") {
		t.FailKey("step", "the temperature is of the bench, not of a step", "write an entry for each")
	}
	e.known = e.Temperature.Known
	if v := e.Temperature.Value; v < 0 || v > 50 {
		t.Fail("temperature", fmt.Sprintf("a bench at %v °C is not likely", v), "state it in °C, between 0 and 50")
	}
}

// readStep reads what was done in a step.
func (e *Entry) readStep(r *Record, p *route.Prep) {
	t := e.table
	t.Need("step")
	if e.Step = t.Count("step", 1); e.Step == 0 {
		t.Accept()
		return
	}
	planned := len(r.Planned.Steps)
	if e.Step <= planned {
		e.Done, e.known = p.ReadDone(t, &r.Planned.Steps[e.Step-1])
		e.Read = t.Has(e.Done.Key())
		return
	}
	last := planned
	for i := range r.Entries {
		last = max(last, r.Entries[i].Step)
	}
	switch {
	case e.Step > last+1:
		r.failStep(e, last+1)
		t.Accept()
	case holdsOnly(t, "step", "by", "at", "note", "late", "spoilt", "withdrawn"):
		t.Fail("step", fmt.Sprintf("%s has %d steps, and nothing says what was done in a further one", r.Planned.Name, planned),
			"write the number of the step that is meant, or what was done in it, as in add = \"2 mL\", with = \"5 mL pipette\"")
	default:
		e.Done, e.known = p.ReadDone(t, nil)
		e.Read = true
	}
}

// failStep says that a step cannot have been done yet; next is the one that can.
func (r *Record) failStep(e *Entry, next int) {
	e.table.Fail("step", fmt.Sprintf("there is no step %d: %s has %d, and the next after what is recorded is %d", e.Step, r.Planned.Name, len(r.Planned.Steps), next),
		"write the number of the step that is meant")
}

// onTheDay is the prep with the bench as it was: its temperature within the range of
// all that was read.
func (r *Record) onTheDay(p *route.Prep) *route.Prep {
	low, high, known := math.Inf(1), math.Inf(-1), false
	for i := range r.Entries {
		e := &r.Entries[i]
		if !e.Temperature.Known || e.StruckBy > 0 {
			continue
		}
		low = min(low, e.Temperature.Value-e.Within.Value)
		high = max(high, e.Temperature.Value+e.Within.Value)
		known = known || e.Within.Known
	}
	if low > high {
		return p
	}
	q := *p
	q.Bench.Temperature = equipment.Stated{Value: (low + high) / 2, Known: true}
	q.Bench.Within = equipment.Stated{Value: (high - low) / 2, Known: known || high > low}
	return &q
}
