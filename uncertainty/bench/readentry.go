package bench

import (
	"cmp"
	"fmt"
	"slices"

	"minim/equipment/benchfile"
)

// fill reads what an entry says; it returns false for a blank one, a line of a form that has
// not been filled in.
func (e *entry) fill(r *recordReader, p prepReader) bool {
	t := e.table
	ofBench := slices.Contains(t.Keys(), "temperature") // it may be blank
	t.DropBlanks()
	e.By, e.Note, e.Spoilt = t.Text("by"), t.Text("note"), t.Text("spoilt")
	if len([]rune(e.By)) > 40 {
		t.Fail("by", "is longer than 40 characters", "initials or a name will do")
	}
	e.readTime()
	e.Late, e.Withdrawn, e.asPlanned = t.Flag("late"), t.Flag("withdrawn"), t.Flag("as-planned")
	switch {
	case t.Has("corrects"):
		e.correct(r, p)
	case t.Has("temperature") || t.Has("within"):
		e.readTemperature(nil)
	case ofBench && holdsOnly(t, "by", "at", "note") || holdsOnly(t, "step", "note"):
		t.Accept()
		return false
	default:
		e.readStep(r, p)
	}
	e.checkRemarks()
	return true
}

// checkRemarks checks what is said of what was done.
func (e *entry) checkRemarks() {
	t := e.table
	switch {
	case e.Withdrawn && !t.Has("corrects"):
		t.FailKey("withdrawn", "does not say which entry", "write corrects = and its number")
	case e.Withdrawn && e.Spoilt != "":
		t.FailKey("spoilt", "what is withdrawn was never so, and cannot be spoilt", "leave one of the two out")
	case e.asPlanned && (e.Withdrawn || e.Step == 0):
		t.FailKey("as-planned", "says how a step was done", "leave it out")
	case e.Temperature.Known && e.Spoilt != "":
		t.FailKey("spoilt", "a temperature cannot be spoilt", "to change it write an entry with corrects = and its number")
	}
	if e.Corrects > 0 || e.Spoilt != "" {
		t.Need("by", "at")
	}
}

// holdsOnly reports whether a table has no other keys.
func holdsOnly(t *benchfile.Table, keys ...string) bool {
	return !slices.ContainsFunc(t.Keys(), func(k string) bool { return !slices.Contains(keys, k) })
}

// readTemperature reads that of the bench; what is not said is as in the entry that is
// corrected. Without one, nil, the temperature must be said.
func (e *entry) readTemperature(corrected *entry) {
	t := e.table
	if corrected != nil {
		e.Temperature, e.Within = corrected.Temperature, corrected.Within
	} else {
		t.Need("temperature")
	}
	e.Temperature, e.Within = readTemperature(t, e.Temperature, e.Within)
	if t.Has("step") {
		t.FailKey("step", "the temperature is of the bench, not of a step", "write an entry for each")
	}
	e.known = e.Temperature.Known
}

// readStep reads what was done in a step.
func (e *entry) readStep(r *recordReader, p prepReader) {
	t := e.table
	t.Need("step")
	if e.Step = t.Count("step", 1); e.Step == 0 {
		t.Accept()
		return
	}
	planned := len(r.Planned.Steps)
	if e.Step <= planned {
		e.Done, e.known = p.readDone(t, &r.Planned.Steps[e.Step-1])
		e.Read = t.Has(e.Done.Verb.Traits().Key) && !e.asPlanned
		return
	}
	last := planned
	for _, above := range r.entries {
		last = max(last, above.Step)
	}
	switch {
	case e.Step > last+1:
		r.failNumber(e, last+1)
		t.Accept()
	case holdsOnly(t, "step", "by", "at", "note", "late", "spoilt", "withdrawn"):
		t.Fail("step", fmt.Sprintf("%s has %d steps, and nothing says what was done in a further one", r.Planned.Name, planned),
			"write the number of the step that is meant, or what was done in it, as in add = \"2 mL\", with = \"5 mL pipette\"")
	default:
		e.Done, e.known = p.readDone(t, nil)
		e.Read = true
	}
}

// failNumber says that a step cannot have been done yet; next is the one that can.
func (r *recordReader) failNumber(e *entry, next int) {
	e.table.Fail("step", fmt.Sprintf("there is no step %d: %s has %d, and the next after what is recorded is %d", e.Step, r.Planned.Name, len(r.Planned.Steps), next),
		"write the number of the step that is meant")
}

// correct reads an entry that corrects another: what it does not say stays as in that
// one, which is struck.
func (e *entry) correct(r *recordReader, p prepReader) {
	t := e.table
	e.Corrects = t.Count("corrects", 1)
	other := e.corrected(r)
	if other == nil {
		t.Accept()
		return
	}
	if t.Has("step") {
		t.FailKey("step", "a correction is about the step of the entry that it corrects", "withdraw that one with withdrawn = true, and write a new entry")
	}
	e.Step, e.Late = other.Step, other.Late
	other.StruckBy = e.Number
	switch {
	case e.Withdrawn:
		return
	case other.Step == 0:
		e.readTemperature(other)
	default:
		e.Done, e.known = p.readDone(t, &other.Done)
		e.Read = (other.Read || t.Has(e.Done.Verb.Traits().Key)) && !e.asPlanned
	}
	e.Spoilt = cmp.Or(e.Spoilt, other.Spoilt)
}

// corrected is the entry that one corrects. It is nil when there is a mistake: in the
// number, or already in that entry.
func (e *entry) corrected(r *recordReader) *entry {
	other := r.entry(e.Corrects)
	fail := func(message, hint string) { e.table.Fail("corrects", message, hint) }
	switch {
	case e.Corrects == 0:
	case slices.Contains(r.blanks, e.Corrects):
		fail(fmt.Sprintf("entry %d is blank", e.Corrects), "write an entry with step = in place of corrects =")
	case other == nil:
		fail(fmt.Sprintf("there is no entry %d above", e.Corrects), "write the number of the entry that is wrong")
	case other.Withdrawn:
		fail(fmt.Sprintf("entry %d withdraws another and says nothing of its own", e.Corrects), "write the step anew, as an entry of its own")
	case other.StruckBy > 0:
		fail(fmt.Sprintf("entry %d is struck by entry %d already", e.Corrects, other.StruckBy), fmt.Sprintf("write corrects = %d", other.StruckBy))
	case other.known:
		return other
	}
	return nil
}

// entry is the one of a number, nil when there is none.
func (r *recordReader) entry(number int) *entry {
	if i := slices.IndexFunc(r.entries, func(e *entry) bool { return e.Number == number }); i >= 0 {
		return r.entries[i]
	}
	return nil
}
