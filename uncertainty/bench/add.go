package bench

import (
	"context"
	"fmt"
	"strings"

	"minim/equipment/benchfile"
	"minim/uncertainty/record"
	"minim/uncertainty/route"
)

// Addition is what is to be added to a record: by whom, when, and lines like
//
//	step 3: took 1.96 mL
//	step 3: took 2.05 mL with the 5 mL pipette; note = level read twice
//	step 2: spoilt, filled past the mark
//	step 2: done
//	step 2, late: made up to 25 mL
//	entry 4: took 1.94 mL
//	entry 4: withdrawn
//	bench: 23 °C within 1 °C
type Addition struct {
	By, At string
	Lines  []string
	// Check, if there is one, looks at the record as it would be; with an error nothing is
	// written. Waiting, if there is one, is called when the record is waited for long.
	Check   func(r *record.Record) error
	Waiting func()
}

// Add appends entries to the record file of a prep, all or none. Nothing is written when
// the record would not be right with them. Errors: a *quantity.Error of a line that cannot be understood, a
// *benchfile.Mistake, whose place is the new entry or the file as it was, those of Check,
// and those of adding to the file.
func Add(ctx context.Context, path string, p *route.Prep, a Addition) error {
	return appendTo(ctx, path, a.Waiting, func(text []byte) (string, error) {
		lines, r, err := a.added(path, text, p)
		if err == nil && a.Check != nil {
			err = a.Check(r)
		}
		return lines, err
	})
}

// added words the additions to the text of a record, and reads it with them.
func (a *Addition) added(path string, text []byte, p *route.Prep) (lines string, with *record.Record, err error) {
	r, err := readRecord(path, text, p)
	if err != nil {
		return "", nil, err
	}
	if lines, err = a.entries(r); err != nil {
		return "", nil, err
	}
	with, err = parseWith(path, text, lines, p)
	return lines, with, err
}

// entries words the additions as lines of a record.
func (a *Addition) entries(r *recordReader) (string, error) {
	var b strings.Builder
	for i, line := range a.Lines {
		keys, err := parseAddition(line, r)
		if err != nil {
			return "", err
		}
		keys = append(keys, textAt("by", a.By), textAt("at", a.At))
		fmt.Fprintf(&b, "%d = { %s }\n", r.last+i+1, strings.Join(keys, ", "))
	}
	return b.String(), nil
}

// parseWith reads the record as it would be. The place of a mistake in what is added is
// the option that it came by, since it is in no file.
func parseWith(path string, text []byte, lines string, p *route.Prep) (*record.Record, error) {
	whole, _ := wholeLines(path, text)
	before := strings.Count(string(whole), "\n") + 1
	if n := len(whole); n > 0 && whole[n-1] != '\n' {
		whole = append(whole, '\n')
	} else {
		before--
	}
	r, err := ParseRecord(path, append(whole, lines...), p)
	told, _ := benchfile.Told(err)
	for _, m := range told {
		if m.Line > before {
			m.File, m.Line = ofMistake("the new entry"), 0
		}
	}
	return r, err
}
