package bench

import (
	"fmt"
	"slices"
	"strings"
	"time"

	"minim/equipment/quantity"
	"minim/uncertainty/record"
)

// timeForm is how times are written: with how far the clock is ahead of UTC, as in
// RFC 3339.
const timeForm = "2006-01-02 15:04 -07:00"

const howToTime ofMistake = `write year, month, day and the time of day, as in "2026-11-28 10:05" or "2026-11-28 10:05 +01:00"`

// moment is when an entry was made, as far as it is known: from first to last, which are
// the same where the time of day is stated.
type moment struct {
	first, last time.Time
	// zoned: it says how far its clock is ahead of UTC. If not, the times are those of a
	// clock of which that is not known, as if it were 0.
	zoned bool
}

// parseTime reads a time of a record.
func parseTime(text string) (moment, error) {
	local := strings.Replace(text, "T", " ", 1)
	for _, form := range []string{"2006-01-02 15:04", "2006-01-02 15:04:05"} {
		for _, zone := range []string{"", "Z07:00", " Z07:00"} {
			if when, err := time.Parse(form+zone, local); err == nil {
				return moment{when, when, zone != ""}, nil
			}
		}
	}
	if day, err := time.Parse(time.DateOnly, local); err == nil {
		return moment{day, day.Add(24*time.Hour - time.Nanosecond), false}, nil
	}
	return moment{}, fmt.Errorf("%q is not a time", text)
}

// The clocks of the earth are from 12 h behind UTC to 14 h ahead of it.
const (
	mostBehind = 12 * time.Hour
	mostAhead  = 14 * time.Hour
)

// widened is the moment in UTC wherever on the earth the clock was.
func (m moment) widened() moment {
	if m.zoned {
		return m
	}
	return moment{m.first.Add(-mostAhead), m.last.Add(mostBehind), true}
}

// before reports whether a moment was surely before another. Two clocks of which the zone
// is not known are taken to be one.
func (m moment) before(other moment) bool {
	if m.zoned != other.zoned {
		m, other = m.widened(), other.widened()
	}
	return m.last.Before(other.first)
}

// EntryTime is the time of an entry that is to be added: as it is said or, where nothing is,
// now. It must be a time, and not more than a day ahead of the clock now. Where it does not
// say how far it is ahead of UTC, the zone of now counts. The error is a *quantity.Error.
func EntryTime(said string, now time.Time) (string, error) {
	if said == "" {
		return now.Format(timeForm), nil
	}
	at, err := parseTime(said)
	if err != nil {
		return "", &quantity.Error{Found: said, Message: err.Error(), Hint: howToTime}
	}
	first := at.first
	if !at.zoned {
		_, offset := now.Zone()
		first = first.Add(-time.Duration(offset) * time.Second)
	}
	if first.After(now.Add(24 * time.Hour)) {
		return "", &quantity.Error{Found: said, Message: fmt.Sprintf("%q is more than a day ahead: it is %s", said, now.Format(timeForm)), Hint: "look at the year and the day, and at the clock of the computer"}
	}
	return said, nil
}

func (e *entry) readTime() {
	text := e.table.Text("at")
	if text == "" {
		return
	}
	var err error
	if e.when, err = parseTime(text); err != nil {
		e.table.Fail("at", err.Error(), howToTime)
		return
	}
	e.At = text
}

// times fills in those of the first and the last entry that has one.
func (r *recordReader) times() {
	timed := slices.DeleteFunc(slices.Clone(r.entries), func(e *entry) bool { return e.At == "" })
	if len(timed) > 0 {
		first, last := timed[0], timed[len(timed)-1]
		r.First, r.Last, r.Reversed = first.At, last.At, last.when.before(first.when)
	}
}

// backwards lists the entries whose times surely are before that of the nearest above
// that has one and stands. What counts is the order of the entries, not that of their
// times.
func (r *recordReader) backwards() (list []record.Backward) {
	var timed []*entry
	for _, e := range r.entries {
		if e.At == "" || e.StruckBy > 0 {
			continue
		}
		for _, above := range slices.Backward(timed) {
			if e.when.before(above.when) {
				list = append(list, record.Backward{Entry: e.Number, Above: above.Number})
				break
			}
			if above.when.first.Equal(above.when.last) {
				break // with a date alone it is no end to those above
			}
		}
		timed = append(timed, e)
	}
	return list
}
