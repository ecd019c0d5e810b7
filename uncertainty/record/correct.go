package record

import (
	"fmt"

	"minim/uncertainty/route"
)

// correct reads an entry that corrects another: what it does not say stays as in that
// one, which is struck.
func (e *Entry) correct(r *Record, p *route.Prep) {
	t := e.table
	e.Corrects = t.Count("corrects", 1)
	other := r.entry(e.Corrects)
	switch {
	case e.Corrects == 0:
		t.Accept()
		return
	case other == nil:
		t.Fail("corrects", fmt.Sprintf("there is no entry %d above", e.Corrects), "write the number of the entry that is wrong")
		t.Accept()
		return
	case other.Withdrawn:
		t.Fail("corrects", fmt.Sprintf("entry %d withdraws another and says nothing of its own", e.Corrects), "write the step anew, as an entry of its own")
		t.Accept()
		return
	case other.StruckBy > 0:
		t.Fail("corrects", fmt.Sprintf("entry %d is struck by entry %d already", e.Corrects, other.StruckBy), fmt.Sprintf("write corrects = %d", other.StruckBy))
		t.Accept()
		return
	}
	if t.Has("step") {
		t.FailKey("step", "a correction is about the step of the entry that it corrects", "withdraw that one with withdrawn = true, and write a new entry")
	}
	e.Step, e.Late = other.Step, other.Late
	if e.Withdrawn {
		e.strike(other)
		return
	}
	if other.Step == 0 {
		e.readTemperature()
	} else {
		e.Done, _ = p.ReadDone(t, &other.Done)
		e.Read = other.Read || t.Has(e.Done.Key())
	}
	if e.Spoilt == "" {
		e.Spoilt = other.Spoilt
	}
	e.strike(other)
}

// strike strikes an entry.
func (e *Entry) strike(other *Entry) { other.StruckBy = e.Number }

// entry is the one of a number, nil when there is none.
func (r *Record) entry(number int) *Entry {
	for i := range r.Entries {
		if r.Entries[i].Number == number {
			return &r.Entries[i]
		}
	}
	return nil
}
