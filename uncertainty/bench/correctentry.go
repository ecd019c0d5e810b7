package bench

import (
	"fmt"
	"slices"
)

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
	if e.Spoilt == "" {
		e.Spoilt = other.Spoilt
	}
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
