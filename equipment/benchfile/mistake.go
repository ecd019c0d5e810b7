package benchfile

import (
	"fmt"
	"strconv"
	"strings"

	"minim/equipment/quantity"
)

// Mistake is something wrong in a file, with the place and, where it can be
// foreseen, the cure.
type Mistake struct {
	place
	Source  string // the line itself; empty when no one line is to blame
	Width   int    // how many characters are marked, from Column on
	Message string // what is wrong and what was found
	Hint    string // what would be right; may be empty
	Help    Help   // what else would; 0 for nothing
}

// Error returns the report with the hint as its last line:
//
//	bench.toml:12:12: capacity: "10 ML" has the unit "ML", which is not a unit of volume
//	  12 | capacity = "10 ML"
//	     |            ^^^^^^^
//	  write mL
func (m *Mistake) Error() string {
	if m.Hint == "" {
		return m.Report()
	}
	return m.Report() + "\n  " + quantity.Printable(m.Hint)
}

// Report returns everything but the hint: place and message, the line, the mark.
// The line of a change has no number.
func (m *Mistake) Report() string {
	head := quantity.Printable(m.place.String() + ": " + m.Message)
	if m.Source == "" {
		return head
	}
	shown, indent, width := window([]rune(m.Source), m.Column-1, m.Width)
	number := ""
	if m.Line > 0 {
		number = strconv.Itoa(m.Line)
	}
	return fmt.Sprintf("%s\n  %s | %s\n  %*s | %s%s", head, number, quantity.Printable(shown),
		len(number), "", strings.Repeat(" ", indent), strings.Repeat("^", width))
}

// The most characters of a line that are shown, and how many of them stand
// before the fault when the line has to be cut.
const (
	mostShown  = 100
	leadBefore = 40
)

// window cuts a long line round the marked part. It returns what is shown, and
// the start and width of the mark in it.
func window(line []rune, start, width int) (shown string, indent, marked int) {
	from, to := 0, len(line)
	if len(line) > mostShown {
		from = max(0, min(start-leadBefore, len(line)-mostShown))
		to = from + mostShown
	}
	shown, indent = string(line[from:to]), start-from
	marked = max(1, min(width, to-start))
	if from > 0 {
		shown, indent = "…"+shown, indent+1
	}
	if to < len(line) {
		shown += "…"
	}
	return shown, indent, marked
}

// Help is what else would be right of a file, beside the hint: something that is done
// outside of it, which whoever reads it for a user words in the user's terms.
type Help int

// What helps.
const (
	// NameKit: or give the kit of the prep, which names none.
	NameKit Help = iota + 1
	// OtherKit: or give another kit than the one that is not there.
	OtherKit
	// BeginRecord: have a record written to fill in.
	BeginRecord
	// FollowRecord: give the prep together with its record.
	FollowRecord
)

// with adds what else helps, if anything does.
func (m *Mistake) with(help []Help) *Mistake {
	for _, h := range help {
		m.Help = h
	}
	return m
}
