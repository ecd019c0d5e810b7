package report

import (
	"fmt"
	"strconv"
	"strings"

	"minim/uncertainty/record"
	"minim/uncertainty/route"
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
		list = append(list, fact{right(strconv.Itoa(e.Number), widest), entryWords(e)})
	}
	return list
}

// entryWords say what an entry says, by whom and when.
func entryWords(e *record.Entry) string {
	said := saidIn(e)
	if isStruck(e) {
		said = "~~" + said + "~~"
	}
	text := strings.Join(append([]string{aboutStep(e) + said}, remarks(e)...), "; ")
	if by := strings.TrimSpace(e.By + " " + e.At); by != "" {
		text += " (" + by + ")"
	}
	return text
}

// entryTable is the entries of a record, with what no longer stands struck through.
func entryTable(r *record.Record) tabular {
	t := tabular{Head: []string{"entry", "step", "done", "remarks", "by", "at"}, Numbers: 6, Marked: -1, StruckCell: 2}
	for i := range r.Entries {
		e, step := &r.Entries[i], ""
		if e.Step > 0 {
			step = strconv.Itoa(e.Step)
		}
		t.Rows = append(t.Rows, []string{strconv.Itoa(e.Number), step, saidIn(e), strings.Join(remarks(e), "; "), e.By, e.At})
		t.Struck = append(t.Struck, isStruck(e))
	}
	return t
}

// remarks are what an entry says beside what was done.
func remarks(e *record.Entry) (parts []string) {
	if e.Corrects > 0 {
		parts = append(parts, fmt.Sprintf("corrects entry %d", e.Corrects))
	}
	if e.Spoilt != "" {
		parts = append(parts, "spoilt ("+e.Spoilt+") and thrown away")
	}
	if e.Undone && e.Spoilt == "" {
		parts = append(parts, "thrown away with what was spoilt")
	}
	if e.StruckBy > 0 {
		parts = append(parts, fmt.Sprintf("struck by entry %d", e.StruckBy))
	}
	if e.Late {
		parts = append(parts, "written down late")
	}
	if e.Note != "" {
		parts = append(parts, e.Note)
	}
	return parts
}

// aboutStep says what an entry is about.
func aboutStep(e *record.Entry) string {
	if e.Step == 0 {
		return "bench: "
	}
	return fmt.Sprintf("step %d: ", e.Step)
}

// saidIn is what an entry says was done.
func saidIn(e *record.Entry) string {
	switch {
	case e.Withdrawn:
		return "withdrawn"
	case e.Step == 0:
		return temperature(e.Temperature.Value, e.Within)
	case !e.Read:
		return stepWords(&e.Done) + ", as planned"
	}
	return stepWords(&e.Done)
}

// isStruck reports whether what an entry says no longer counts: it is corrected,
// withdrawn, or was thrown away.
func isStruck(e *record.Entry) bool {
	return e.StruckBy > 0 || e.Spoilt != "" || e.Undone
}

// stepWords say in short what a step does.
func stepWords(s *route.Step) string { return stepNaming(s, "", "solute", "solvent") }

// stepNaming is stepWords with names for the solute and the solvent; ofSolute stands where
// stepWords leave out what is weighed or measured.
func stepNaming(s *route.Step, ofSolute, solute, solvent string) string {
	switch s.Verb {
	case route.UsePacket:
		return "use the whole of the " + s.Packet.Name
	case route.Start:
		return "start from " + s.Stock.Name
	case route.TakeAll:
		return "go on with all of the solution"
	case route.Weigh:
		return "weigh " + measured(s) + ofSolute + " on the " + instrument(s)
	case route.MakeUpTo:
		return "make up to " + measured(s) + " in the " + instrument(s)
	case route.Pour:
		return "pour out " + measured(s) + " from the " + instrument(s)
	case route.WeighAliquot:
		return "weigh out " + measured(s) + " of the solution on the " + instrument(s)
	case route.WeighUpTo:
		return "make up to " + measured(s) + " on the " + instrument(s)
	case route.AddSolute:
		return "add " + measured(s) + " of " + solute + ", weighed on the " + instrument(s)
	case route.Strengthen:
		return "add " + measured(s) + " of " + strong(s) + " with the " + instrument(s)
	case route.Add:
		return "add " + measured(s) + " of " + solvent + " with the " + instrument(s)
	case route.DissolveIn:
		return "dissolve in " + measured(s) + " with the " + instrument(s)
	}
	if s.Verb != route.Measured {
		ofSolute = ""
	}
	return string(s.Verb) + " " + measured(s) + ofSolute + " with the " + instrument(s) // take, measure
}

// roomLines say of each reading still to come how far off it may be.
func roomLines(b *Batch) []fact {
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
	planned := stepWords(&s)
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
	text := fmt.Sprintf("%s: from %s to %s", planned, at(room.Low), at(room.High))
	if room.Planned < room.Low*(1-1e-9) || room.Planned > room.High*(1+1e-9) {
		text += ", not as planned"
	}
	return text
}
