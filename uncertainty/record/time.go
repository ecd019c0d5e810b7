package record

import (
	"fmt"
	"time"
)

// forms of a time in a record, the last without the time of day.
var forms = []string{"2006-01-02 15:04", "2006-01-02 15:04:05", "2006-01-02"}

// TimeForm is how times are written.
const TimeForm = "2006-01-02 15:04"

// ParseTime reads a time of a record, as in "2026-11-28 10:05"; clock is false when it
// is a date alone.
func ParseTime(text string) (when time.Time, clock bool, err error) {
	for _, form := range forms {
		if when, err = time.Parse(form, text); err == nil {
			return when, form != time.DateOnly, nil
		}
	}
	return time.Time{}, false, fmt.Errorf("%q is not a time", text)
}

func (e *Entry) readTime() {
	text := e.table.Text("at")
	if text == "" {
		return
	}
	var err error
	if e.when, e.clock, err = ParseTime(text); err != nil {
		e.table.Fail("at", err.Error(), `write year, month, day and the time of day, as in "2026-11-28 10:05"`)
		return
	}
	e.At = text
}

// before reports whether an entry was made before another; of one that has only a date
// the day counts.
func (e *Entry) before(other *Entry) bool {
	if e.clock && other.clock {
		return e.when.Before(other.when)
	}
	return e.when.Truncate(24 * time.Hour).Before(other.when.Truncate(24 * time.Hour))
}
