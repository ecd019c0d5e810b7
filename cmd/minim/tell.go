package main

import (
	"errors"
	"fmt"
	"io"
	"strings"

	"minim/equipment/quantity"
	"minim/report/words/clause"
)

// tell writes one line to the user. Names of files may be of any characters: what could
// move the cursor or turn the direction of writing is replaced.
func tell(w io.Writer, format string, values ...any) {
	fmt.Fprintf(w, "minim: %s\n", quantity.Printable(fmt.Sprintf(format, values...)))
}

// listed is an error of several lines, the last of which is that of another error, if there is one.
type listed struct {
	lines []string
	last  error
}

func (e *listed) Error() string { return strings.Join(linesOf(e), "\n") }

func (e *listed) Unwrap() error { return e.last }

// linesOf are the lines of an error, printable each.
func linesOf(err error) (lines []string) {
	var list *listed
	if !errors.As(err, &list) {
		return []string{quantity.Printable(err.Error())}
	}
	lines = clause.Each(list.lines, quantity.Printable)
	if list.last != nil {
		lines = append(lines, linesOf(list.last)...)
	}
	return lines
}
