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

// Key is the key of the step that names its verb, and holds its reading.
func (s *Step) Key() string { return s.Verb.key() }

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
func (s *Step) words() string { return s.Written()[0] }

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

// CheckDone checks that the steps of a route can follow each other, and that the bench
// can do them; a mistake is recorded in the table of the step.
func (p *Prep) CheckDone(r *Route, tables []*benchfile.Table) {
	at, soFar := nothing, &Route{Name: r.Name}
	for i, s := range r.Steps {
		if !soFar.follows(tables[i], at, s) {
			return
		}
		at = grammars[s.Verb].then
		soFar.Steps = append(soFar.Steps, s)
	}
	r.checkOptions(p, tables)
	c := p.newCompiler(r)
	for i := range r.Steps {
		if err := c.step(i); err != nil {
			tables[i].Fail(r.Steps[i].Key(), err.Error(), "look at what is recorded of this step and those before")
			return
		}
	}
}

// Finished reports whether what stands on the bench after a step, from 0, is a
// solution; before the first it is not.
func (r *Route) Finished(i int) bool {
	then := grammars[r.Steps[i].Verb].then
	return then == solution || then == mixture
}

// Begins reports whether a step, from 0, starts with what stands on the bench for
// itself: with nothing, a stock, or a part of a finished solution. Work that was
// spoilt can be taken up again there.
func (r *Route) Begins(i int) bool {
	if i == 0 {
		return true
	}
	switch r.Steps[i].Verb {
	case Take, Pour, WeighAliquot:
		return r.Finished(i-1) || r.Steps[i-1].Verb == Start
	}
	return false
}

// MeasuresOut reports whether a step of the verb measures something out that is then
// put to the rest: when it is spoilt, it is done again by itself.
func (v Verb) MeasuresOut() bool {
	switch v {
	case Weigh, UsePacket, Measured, Take, Pour, Add, WeighAliquot, Strengthen, AddSolute:
		return true
	}
	return false
}
