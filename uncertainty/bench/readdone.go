package bench

import (
	"fmt"
	"slices"

	"minim/equipment/benchfile"
	"minim/report/words/verb"
	"minim/uncertainty/route"
)

// readDone reads a step as it was really done from a table of a record. What the table
// does not say is as in the step planned; how an instrument was used only where it is
// the one planned. Without a plan, nil, the table must say all. Mistakes are recorded
// in the table; ok is false when for one of them the step is not known.
func (p prepReader) readDone(t *benchfile.Table, planned *route.Step) (s route.Step, ok bool) {
	if planned == nil {
		s, ok = p.readStep(t)
	} else {
		s, ok = p.readPlanned(t, planned)
	}
	if ok {
		checkReading(&s, t)
	}
	return s, ok && known(&s)
}

// known reports whether a step has all that its verb needs.
func known(s *route.Step) bool {
	switch s.Verb {
	case route.Start:
		return s.Stock != nil
	case route.UsePacket:
		return s.Packet != nil
	case route.TakeAll:
		return true
	case route.Strengthen:
		if s.Stock == nil && s.From == 0 {
			return false
		}
	}
	return s.Amount > 0 && (s.Balance != nil || s.Measure != nil)
}

// readPlanned reads a step that was planned.
func (p prepReader) readPlanned(t *benchfile.Table, planned *route.Step) (s route.Step, ok bool) {
	key := planned.Verb.Traits().Key
	if holds(t, verbKeys()...) {
		verb, ok := oneVerb(t)
		if !ok {
			return route.Step{}, false
		}
		if verb != planned.Verb {
			t.FailKey(verb.Traits().Key, "the step is "+stepWords(planned), fmt.Sprintf("write it as in %s, or the number of what is meant", stepWords(planned)))
			return route.Step{}, false
		}
	}
	if planned.Verb.Traits().Instrument == "" && !holds(t, key) {
		t.Has(key)
		return *planned, true
	}
	s = p.readVerb(t, planned.Verb, planned)
	if !holds(t, key) {
		checkUnit(&s, t, planned)
	}
	inherit(&s, t, planned)
	return s, true
}

// stepWords name a step in a message: take = "1 mL".
func stepWords(s *route.Step) string { return Written(s)[0] }

// inherited are what a step has from the plan where its table has none of the keys; how an
// instrument was used only with the one that was planned.
var inherited = []struct {
	keys  []string
	ofUse bool
	from  func(s, planned *route.Step)
}{
	{[]string{"weighed-back", "left-behind"}, false, func(s, planned *route.Step) { s.WeighedBack, s.LeftBehind = planned.WeighedBack, planned.LeftBehind }},
	{[]string{"tare"}, false, func(s, planned *route.Step) { s.SeparateTare = planned.SeparateTare }},
	{[]string{"contraction"}, false, func(s, planned *route.Step) { s.Contraction = planned.Contraction }},
	{[]string{"open"}, false, func(s, planned *route.Step) { s.Open = planned.Open }},
	{[]string{"mouth"}, true, func(s, planned *route.Step) { s.Mouth = planned.Mouth }},
	{[]string{"piece"}, true, func(s, planned *route.Step) { s.Piece = planned.Piece }},
	{[]string{"rinsed", "blown-out"}, true, func(s, planned *route.Step) { s.Emptying = planned.Emptying }},
	{[]string{"state"}, true, func(s, planned *route.Step) { s.State = planned.State }},
	{[]string{"reading"}, true, func(s, planned *route.Step) { s.Reading = planned.Reading }},
}

// inherit takes from the step planned what the table does not say.
func inherit(s *route.Step, t *benchfile.Table, planned *route.Step) {
	if s.Verb != route.Start && !holds(t, "of") {
		s.Stock, s.From = planned.Stock, planned.From
	}
	if !holds(t, "vessel") && s.Balance == planned.Balance {
		s.Vessel = planned.Vessel
	}
	other := s.Balance != planned.Balance || s.Measure != planned.Measure
	for _, one := range inherited {
		if !holds(t, one.keys...) && !(one.ofUse && other) {
			one.from(s, planned)
		}
	}
}

// checkUnit refuses the amount planned where it was read on an instrument that shows
// another unit.
func checkUnit(s *route.Step, t *benchfile.Table, planned *route.Step) {
	if s.Balance == nil && s.Measure == nil || unitOf(s) == unitOf(planned) {
		return
	}
	key, name := verb.InstrumentInFile(s)
	t.FailKey(key, fmt.Sprintf("%s as planned cannot be read on the %s", verb.AmountInFile(planned), name), "write "+s.Verb.Traits().Key+" = and what was read")
	s.Amount = 0
}

// unitOf is the unit of the amount of a step that reads an instrument.
func unitOf(s *route.Step) string {
	switch {
	case s.Balance != nil:
		return "g"
	case s.Measure != nil && s.Measure.Kind.Traits().Counts:
		return "drops"
	}
	return "mL"
}

// checkReading refuses a reading that the instrument cannot have shown.
func checkReading(s *route.Step, t *benchfile.Table) {
	var err error
	switch {
	case s.Amount == 0:
		return // it is wrong already, or there is none
	case s.Balance != nil:
		err = s.Balance.Shows(s.Amount)
	case s.Measure != nil && !s.Measure.Kind.Traits().Counts:
		err = s.Measure.Reads(s.Amount)
	}
	if err != nil {
		t.Fail(s.Verb.Traits().Key, err.Error(), "write what was really read, and on which instrument")
	}
}

// checkDone checks that the steps of a route can follow each other, and that the bench
// can do them. The tables are those in which the steps are recorded, nil for one that is
// not: a mistake in such a step is recorded in that of the step before, or else in the
// table of all. It returns false at a mistake.
func (p prepReader) checkDone(r *route.Route, tables []*benchfile.Table, all *benchfile.Table) bool {
	near := slices.Clone(tables)
	finished := 0
	for i := range near {
		if near[i] == nil {
			near[i] = all
		}
		all = near[i]
		if r.Finished(i) {
			finished = i + 1
		}
	}
	if !p.checkOrder(r, near) {
		return false
	}
	// what the options need of the steps to come is not known of work that is going on
	for _, wrong := range p.CheckOptions(&route.Route{Name: r.Name, Steps: r.Steps[:finished]}) {
		failStep(near[wrong.Step], wrong)
	}
	i, err := p.FirstImpossible(r)
	if err != nil {
		failDone(r, i, tables[i] != nil, near[i], err)
	}
	return err == nil
}

// failDone records that the bench cannot do a step.
func failDone(r *route.Route, i int, recorded bool, t *benchfile.Table, err error) {
	s := &r.Steps[i]
	switch {
	case !recorded:
		t.Fail("", fmt.Sprintf("step %d as planned: %s", i+1, err), "record what was done in its place, or look at what is recorded of those before")
	case s.From > i || s.From > 0 && !r.Finished(s.From-1):
		t.Fail("of", err.Error(), "name a stock, or a step above that made a solution, as in \"step 2\"")
	case s.Lost > 0:
		t.Fail(s.Verb.Traits().Key, err.Error(), "look at what is recorded of this step, with what of it was spoilt, and of those before")
	default:
		t.Fail(s.Verb.Traits().Key, err.Error(), "look at what is recorded of this step and those before")
	}
}
