package words

import (
	"fmt"
	"strconv"
	"strings"

	"minim/report/page"
	"minim/report/words/verb"
	"minim/uncertainty/record"
)

// entryLines are the entries of a record; what no longer stands is struck through.
func entryLines(r *record.Record) []fact {
	var list []fact
	widest := 0
	for i := range r.Entries {
		widest = max(widest, len(strconv.Itoa(r.Entries[i].Number)))
	}
	for i := range r.Entries {
		e := &r.Entries[i]
		list = append(list, fact{fmt.Sprintf("%*d", widest, e.Number), entryWords(e)})
	}
	return list
}

// entryWords say what an entry says, by whom and when.
func entryWords(e *record.Entry) string {
	said, struck := SaidIn(e)
	if struck {
		said = "~~" + said + "~~"
	}
	text := strings.Join(append([]string{aboutStep(e) + said}, remarks(e)...), "; ")
	by := strings.TrimSpace(e.By + " " + e.At)
	return text + when(by != "", " ("+by+")")
}

// entryTable is the entries of a record, with what no longer stands struck through.
func entryTable(r *record.Record) *page.Table {
	t := &page.Table{Head: []string{"entry", "step", "done", "remarks", "by", "at"}, Numbers: 6, StruckCell: 2}
	for i := range r.Entries {
		e, step := &r.Entries[i], ""
		if e.Step > 0 {
			step = strconv.Itoa(e.Step)
		}
		said, struck := SaidIn(e)
		t.Rows = append(t.Rows, page.Row{Cells: []string{strconv.Itoa(e.Number), step, said, strings.Join(remarks(e), "; "), e.By, e.At}, Struck: struck})
	}
	return t
}

// remarks are what an entry says beside what was done.
func remarks(e *record.Entry) (parts clauses) {
	parts.Add(e.Corrects > 0, "corrects entry %d", e.Corrects)
	parts.Add(e.Spoilt != "", "spoilt (%s) and thrown away", e.Spoilt)
	parts.Add(e.Undone && e.Spoilt == "", "thrown away with what was spoilt")
	parts.Add(e.StruckBy > 0, "struck by entry %d", e.StruckBy)
	parts.Add(e.Late, "written down late")
	parts.Put("", e.Note)
	return parts
}

// aboutStep says what an entry is about.
func aboutStep(e *record.Entry) string {
	return either(e.Step == 0, "bench: ", fmt.Sprintf("step %d: ", e.Step))
}

// SaidIn is what an entry says was done. It is struck where that no longer counts: it is
// corrected, withdrawn, or was thrown away.
func SaidIn(e *record.Entry) (said string, struck bool) {
	struck = e.StruckBy > 0 || e.Spoilt != "" || e.Undone
	switch {
	case e.Withdrawn:
		return "withdrawn", struck
	case e.Step == 0:
		return temperature(e.Temperature.Value, e.Within), struck
	case !e.Read:
		return verb.Short(&e.Done) + ", as planned", struck
	}
	return verb.Short(&e.Done), struck
}

// RoomLines say of each reading still to come how far off it may be.
func RoomLines(b *Batch) []fact {
	var list []fact
	for i := range b.Room {
		room := &b.Room[i]
		list = append(list, fact{fmt.Sprintf("step %d:", room.Step), roomWords(b, room)})
	}
	return list
}

func roomWords(b *Batch, room *record.Room) string {
	s := b.Made.Made.Steps[room.Step-1]
	at := func(reading float64) string {
		s.Amount = reading
		return measured(&s)
	}
	planned := verb.Short(&s)
	switch {
	case room.Fixed && room.Any:
		return planned + ": there is one mark, nothing to be off by"
	case room.Fixed:
		return planned + ": there is one mark, with which the batch is not surely inside"
	case !room.Any:
		return planned + ": no reading of this step alone brings the batch inside"
	case room.Low == room.High && room.Low == room.Planned:
		return planned + ": only as planned"
	case room.Low == room.High:
		return planned + ": only " + at(room.Low) + ", not as planned"
	case room.LowFree && room.HighFree:
		return planned + ": any reading will do"
	case room.LowFree:
		return planned + ": up to " + at(room.High)
	case room.HighFree:
		return planned + ": from " + at(room.Low) + " on"
	}
	outside := room.Planned < room.Low*(1-1e-9) || room.Planned > room.High*(1+1e-9)
	return fmt.Sprintf("%s: from %s to %s%s", planned, at(room.Low), at(room.High), when(outside, ", not as planned"))
}
