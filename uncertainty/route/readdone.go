package route

import (
	"fmt"
	"slices"

	"minim/equipment/benchfile"
)

// ReadDone reads a step as it was really done from a table of a record. What the table
// does not say is as in the step planned; how an instrument was used only where it is
// the one planned. Without a plan, nil, the table must say all. Mistakes are recorded
// in the table; ok is false when for one of them the step is not known.
func (p *Prep) ReadDone(t *benchfile.Table, planned *Step) (s Step, ok bool) {
	if planned == nil {
		s, ok = p.readStep(t)
	} else {
		s, ok = p.readPlanned(t, planned)
	}
	if ok {
		s.checkReading(t)
	}
	return s, ok && s.known()
}

// known reports whether a step has all that its verb needs.
func (s *Step) known() bool {
	switch s.Verb {
	case Start:
		return s.Stock != nil
	case UsePacket:
		return s.Packet != nil
	case TakeAll:
		return true
	case Strengthen:
		if s.Stock == nil && s.From == 0 {
			return false
		}
	}
	return s.Amount > 0 && (s.Balance != nil || s.Measure != nil)
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
			t.FailKey(verb.key(), "the step is "+planned.words(), fmt.Sprintf("write it as in %s, or the number of what is meant", planned.words()))
			return Step{}, false
		}
	}
	if !planned.Verb.usesInstrument() && !slices.Contains(t.Keys(), key) {
		t.Has(key)
		return *planned, true
	}
	s = p.readVerb(t, planned.Verb, planned)
	if !slices.Contains(t.Keys(), key) {
		s.checkUnit(t, planned)
	}
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

// words name a step in a message: take = "1 mL".
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
	if s.Verb == Strengthen && !said("of") {
		s.Stock, s.From = planned.Stock, planned.From
	}
	if !said("vessel") && s.Balance == planned.Balance {
		s.Vessel = planned.Vessel
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
}

// checkUnit refuses the amount planned where it was read on an instrument that shows
// another unit.
func (s *Step) checkUnit(t *benchfile.Table, planned *Step) {
	if s.Balance == nil && s.Measure == nil || s.Unit() == planned.Unit() {
		return
	}
	key, name := s.Instrument()
	t.FailKey(key, fmt.Sprintf("%s as planned cannot be read on the %s", planned.AmountText(), name), "write "+s.Key()+" = and what was read")
	s.Amount = 0
}

// Unit is the unit of the amount of a step that reads an instrument.
func (s *Step) Unit() string {
	switch {
	case s.Balance != nil:
		return "g"
	case s.Measure != nil && s.Measure.Kind.Counts():
		return "drops"
	}
	return "mL"
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
// can do them. The tables are those in which the steps are recorded, nil for one that is
// not: a mistake in such a step is recorded in that of the step before, or else in the
// table of all. It returns false at a mistake.
func (p *Prep) CheckDone(r *Route, tables []*benchfile.Table, all *benchfile.Table) bool {
	near := slices.Clone(tables)
	at, soFar, finished := nothing, &Route{Name: r.Name}, 0
	for i, s := range r.Steps {
		if near[i] == nil {
			near[i] = all
		}
		if all = near[i]; !soFar.follows(all, at, s) {
			return false
		}
		at = grammars[s.Verb].then
		soFar.Steps = append(soFar.Steps, s)
		if soFar.Finished(i) {
			finished = i + 1
		}
	}
	// what the options need of the steps to come is not known of work that is going on
	(&Route{Name: r.Name, Steps: r.Steps[:finished]}).checkOptions(p, near)
	c := p.newCompiler(r)
	for i := range r.Steps {
		if err := c.checkedStep(i); err != nil {
			r.failDone(i, tables[i] != nil, near[i], err)
			return false
		}
	}
	return true
}

// failDone records that the bench cannot do a step.
func (r *Route) failDone(i int, recorded bool, t *benchfile.Table, err error) {
	s := &r.Steps[i]
	switch {
	case !recorded:
		t.Fail("", fmt.Sprintf("step %d as planned: %s", i+1, err), "record what was done in its place, or look at what is recorded of those before")
	case s.From > i || s.From > 0 && !r.Finished(s.From-1):
		t.Fail("of", err.Error(), "name a stock, or a step above that made a solution, as in \"step 2\"")
	case s.Lost > 0:
		t.Fail(s.Key(), err.Error(), "look at what is recorded of this step, with what of it was spoilt, and of those before")
	default:
		t.Fail(s.Key(), err.Error(), "look at what is recorded of this step and those before")
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
	return r.Steps[i].Verb.FromSolution() && (r.Finished(i-1) || r.Steps[i-1].Verb == Start)
}
