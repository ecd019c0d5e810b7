package route

import (
	"fmt"
	"slices"

	"minim/equipment/benchfile"
)

// ReadDone reads a step as it was really done from a table of a record. What the table
// does not say is as in the step planned; how an instrument was used only where it is
// the one planned. Without a plan, nil, the table must say all. Mistakes are recorded
// in the table; ok is false when it does not tell which step it is.
func (p *Prep) ReadDone(t *benchfile.Table, planned *Step) (s Step, ok bool) {
	if planned == nil {
		s, ok = p.readStep(t)
	} else {
		s, ok = p.readPlanned(t, planned)
	}
	if ok {
		s.checkReading(t)
	}
	return s, ok
}

// readPlanned reads a step that was planned.
func (p *Prep) readPlanned(t *benchfile.Table, planned *Step) (s Step, ok bool) {
	key := planned.Verb.key()
	if slices.ContainsFunc(t.Keys(), func(k string) bool { return slices.Contains(verbs, Verb(k)) }) {
		verb, ok := oneVerb(t)
		if !ok {
			return Step{}, false
		}
		if verb != planned.Verb {
			t.FailKey(verb.key(), fmt.Sprintf("was planned as %s", planned.words()), fmt.Sprintf("write %s, or the number of the step that is meant", key))
			return Step{}, false
		}
	}
	if (planned.Verb == Start || planned.Verb == UsePacket || planned.Verb == TakeAll) && !slices.Contains(t.Keys(), key) {
		t.Has(key)
		return *planned, true
	}
	s = p.readVerb(t, planned.Verb, planned)
	s.inherit(t, planned)
	return s, true
}

// key is the key of a step that names its verb.
func (v Verb) key() string {
	if v == TakeAll {
		return string(Take)
	}
	return string(v)
}

// words name a step in a message: "take 1 mL".
func (s *Step) words() string { return s.written()[0] }

// inherit takes from the step planned what the table does not say.
func (s *Step) inherit(t *benchfile.Table, planned *Step) {
	said := func(keys ...string) bool {
		return slices.ContainsFunc(keys, func(k string) bool { return slices.Contains(t.Keys(), k) })
	}
	if !said("weighed-back", "left-behind") {
		s.WeighedBack, s.LeftBehind = planned.WeighedBack, planned.LeftBehind
	}
	if !said("tare") {
		s.SeparateTare = planned.SeparateTare
	}
	if !said("contraction") {
		s.Contraction = planned.Contraction
	}
	if s.Balance != planned.Balance || s.Measure != planned.Measure {
		return
	}
	if !said("piece") {
		s.Piece = planned.Piece
	}
	if !said("rinsed", "blown-out") {
		s.Emptying = planned.Emptying
	}
	if !said("state") {
		s.State = planned.State
	}
	if !said("reading") {
		s.Reading = planned.Reading
	}
	if !said("of") {
		s.Stock, s.From = planned.Stock, planned.From
	}
}

// checkReading refuses a reading that the instrument cannot have shown.
func (s *Step) checkReading(t *benchfile.Table) {
	var err error
	switch {
	case s.Amount == 0:
		return // it is wrong already, or there is none
	case s.Balance != nil:
		err = s.Balance.Shows(s.Amount)
	case s.Measure != nil && !s.Measure.Kind.Counts():
		err = s.Measure.Reads(s.Amount)
	}
	if err != nil {
		t.Fail(s.Verb.key(), err.Error(), "write what was really read, and on which instrument")
	}
}

// Check follows the steps of a route as the bench does them. It returns the place,
// from 0, of the first that cannot be done with the reason, an *equipment.Impossible,
// or the number of steps.
func (p *Prep) Check(r *Route) (place int, err error) {
	c := p.newCompiler(r)
	for i := range r.Steps {
		if err := c.step(i); err != nil {
			return i, err
		}
	}
	return len(r.Steps), nil
}
