package benchfile

import (
	"errors"
	"fmt"
	"slices"
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

// mistakes are all that is wrong in a file, in its order. There are two or more; one is
// a *Mistake alone. [errors.As] finds the first, [Told] as many as are told.
type mistakes []*Mistake

// mostTold is how many mistakes of a file are told.
const mostTold = 20

// Error tells them one below the other, as far as they are told.
func (all mistakes) Error() string {
	told, more := Told(all)
	texts := make([]string, len(told), len(told)+1)
	for i, m := range told {
		texts[i] = m.Error()
	}
	if more != "" {
		texts = append(texts, more)
	}
	return strings.Join(texts, "\n")
}

// Told are the mistakes in an error to be told, and "and 3 more mistakes" where there are more.
func Told(err error) (told []*Mistake, more string) {
	var all mistakes
	var one *Mistake
	if !errors.As(err, &all) && errors.As(err, &one) {
		all = mistakes{one}
	}
	switch rest := len(all) - mostTold; {
	case rest == 1:
		return all[:mostTold], errors.New("and 1 more mistake").Error()
	case rest > 1:
		return all[:mostTold], fmt.Errorf("and %d more mistakes", rest).Error()
	}
	return all, ""
}

// Unwrap returns them one by one.
func (all mistakes) Unwrap() []error {
	list := make([]error, len(all))
	for i, m := range all {
		list[i] = m
	}
	return list
}

// record adds a mistake to the file. Of two at one place the first says it.
func (f *file) record(at span, message, hint string, help ...Help) {
	if slices.Contains(f.marked, at) && !f.isTable(at) {
		return
	}
	f.keep(at, f.mistake(at, message, hint).with(help))
}

// keep adds a mistake that stands at a place.
func (f *file) keep(at span, m *Mistake) {
	f.marked = append(f.marked, at)
	f.mistakes = append(f.mistakes, m)
}

// isTable reports the place of a table, of which several things may be wrong.
func (f *file) isTable(at span) bool {
	return at.from == at.to || f.data[at.from] == '[' || f.data[at.from] == '{'
}

// Sound reports whether no mistake was found so far at the keys, or in what they hold.
// What follows from a value that is wrong is not to be judged: the user would look for
// a second mistake where there is none.
func (t *Table) Sound(keys ...string) bool {
	return t == nil || !slices.ContainsFunc(t.entries, func(e *entry) bool {
		return slices.Contains(keys, e.key) && (t.file.wrong(e.at) || t.file.anyWrong(e.value))
	})
}

// wrong reports a mistake within a place.
func (f *file) wrong(at span) bool {
	return slices.ContainsFunc(f.marked, func(m span) bool { return at.from <= m.from && m.to <= at.to })
}

// anyWrong reports a mistake at a value or in what it holds.
func (f *file) anyWrong(v *value) bool {
	if f.wrong(v.at) || slices.ContainsFunc(v.items, f.anyWrong) {
		return true
	}
	return v.table != nil && slices.ContainsFunc(v.table.entries, func(e *entry) bool { return f.wrong(e.at) || f.anyWrong(e.value) })
}
