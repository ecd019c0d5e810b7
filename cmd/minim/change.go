package main

import (
	"errors"
	"strings"

	"minim/equipment/benchfile"
	"minim/report/words/clause"
)

// changes is the option --change, which may be repeated: properties of
// instruments that are changed in memory.
type changes []benchfile.Change

// Set reads one more change. The error is a *benchfile.Mistake.
func (c *changes) Set(text string) error {
	change, err := benchfile.ParseChange("--change", text)
	if err != nil {
		return err
	}
	*c = append(*c, change)
	return nil
}

// Type is shown by no help, which names the argument itself.
func (c *changes) Type() string { return "change" }

// String is empty, as what is not given; [changes.texts] has all.
func (c *changes) String() string { return "" }

// texts are the changes as they were written.
func (c *changes) texts() []string {
	return clause.Each(*c, func(change benchfile.Change) string { return change.Line })
}

// blame makes a wrong command line of a mistake that comes with changes to files
// that are right without them.
func blame(err error) error {
	var m *benchfile.Mistake
	if !errors.As(err, &m) {
		return err
	}
	message := clause.When(m.Line > 0, "with what --change says, ") + m.Report()
	lines := strings.Split(message, "\n")
	last := len(lines) - 1
	return &listed{lines[:last], &usageError{lines[last], m.Hint}}
}
