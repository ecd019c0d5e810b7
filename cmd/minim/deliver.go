package main

import (
	"minim/equipment/quantity"
	"minim/report/answer"
)

// stager stages a set of files that come with an answer.
type stager func(a *answer.Answer) (*staged, error)

// deliver puts sets of files in their places, and then prints a result, which it does
// whatever became of the files. Its error is the first.
func (c console) deliver(printed []byte, a *answer.Answer, sets ...stager) error {
	var failed error
	var kept []*staged
	for _, set := range sets {
		s, err := set(a)
		if err == nil {
			err = s.commit()
			s.discard()
		}
		switch {
		case err == nil:
			kept = append(kept, s)
		case failed == nil:
			failed = err
		}
	}
	if _, err := c.out.Write(printed); err != nil && failed == nil {
		failed = err
	}
	for _, s := range kept {
		c.wrote(s)
	}
	return failed
}

// wrote says what files were written.
func (c console) wrote(s *staged) {
	for _, why := range s.missing {
		tell(c.err, "%s", why)
	}
	if len(s.files) > 0 {
		tell(c.err, "wrote %s into %s", quantity.Series(namesOf(s.files), "and"), s.dir)
	}
}
