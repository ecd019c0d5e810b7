package record

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"minim/equipment/benchfile"
	"minim/uncertainty/route"
)

// work is the batch while the entries are gone through.
type work struct {
	*Record
	// steps are those planned, and what was done after them.
	steps []route.Step
	// done are the entries of the steps, nil where there is none; lost is what was
	// thrown away in each, in the unit of its amount.
	done []*Entry
	lost []float64
	// last is the last step that was done, spoilt the one that was spoilt and not yet
	// repeated; both from 1, 0 for none.
	last, spoilt int
}

// follow goes through the entries in the order in which they were made, and puts the
// made route together.
func (r *Record) follow(entries *benchfile.Table) {
	w := &work{Record: r, steps: slices.Clone(r.Planned.Steps)}
	w.done, w.lost = make([]*Entry, len(w.steps)), make([]float64, len(w.steps))
	for i := range r.Entries {
		e := &r.Entries[i]
		stands := r.standing(e)
		if e.Step == 0 || stands.Withdrawn {
			continue
		}
		if e.Corrects == 0 {
			w.do(e, stands)
		}
		if e.Spoilt != "" && (e.Corrects == 0 || r.entry(e.Corrects).Spoilt == "") {
			w.spoil(e)
		}
	}
	if w.spoilt > 0 {
		w.goBack(w.again()[0])
	}
	w.finish(entries)
}

// standing is the entry that an entry has been corrected to.
func (r *Record) standing(e *Entry) *Entry {
	for e.StruckBy > 0 {
		e = r.entry(e.StruckBy)
	}
	return e
}

// do takes up a step as it was done; e says where in the order.
func (w *work) do(e, stands *Entry) {
	switch {
	case w.spoilt > 0:
		if !w.repeat(e) {
			return
		}
	case e.Late && e.Step <= len(w.done) && w.done[e.Step-1] == nil && e.Step < w.last:
	case e.Step <= w.last:
		w.refuse(e)
		return
	}
	if e.Step > len(w.steps) {
		w.steps, w.done = append(w.steps, route.Step{}), append(w.done, nil)
	}
	if e.Step > len(w.lost) {
		w.lost = append(w.lost, 0)
	}
	w.steps[e.Step-1], w.done[e.Step-1] = stands.Done, stands
	w.last = max(w.last, e.Step)
}

// refuse says that a step has been done already, or comes too late.
func (w *work) refuse(e *Entry) {
	before := w.done[e.Step-1]
	if before == nil {
		e.table.Fail("step", fmt.Sprintf("step %d stands below step %d", e.Step, w.last), "entries follow the steps; for one that was forgotten write late = true")
		return
	}
	e.table.Fail("step", fmt.Sprintf("step %d is in entry %d already", e.Step, before.Number),
		fmt.Sprintf("to change what that says write corrects = %d in place of step; when it was spoilt and done again, first an entry with corrects = %d and spoilt = the reason", before.Number, before.Number))
}

// spoil marks a step as spoilt.
func (w *work) spoil(e *Entry) {
	switch {
	case w.spoilt > 0:
		w.spoilt = min(w.spoilt, e.Step)
	case e.Step > len(w.done) || w.done[e.Step-1] == nil:
		// the entry that did it has a mistake of its own
	default:
		w.spoilt = e.Step
	}
}

// again lists the steps from which the work can go on after one was spoilt, the last
// first.
func (w *work) again() (steps []int) {
	r := &route.Route{Steps: w.steps}
	for i := w.spoilt; i > 0; i-- {
		if r.Begins(i-1) || i == w.spoilt && i == w.last && w.steps[i-1].Verb.MeasuresOut() {
			steps = append(steps, i)
		}
	}
	return steps
}

// repeat takes the work up again after it was spoilt, if that is possible from the
// step of an entry.
func (w *work) repeat(e *Entry) bool {
	steps := w.again()
	if !slices.Contains(steps, e.Step) {
		words := make([]string, len(steps))
		for i, s := range steps {
			words[i] = strconv.Itoa(s)
		}
		e.table.Fail("step", fmt.Sprintf("step %d was spoilt and has not been done again", w.spoilt),
			"the work can be taken up again from step "+strings.Join(words, " or "))
		return false
	}
	e.table.Need("by", "at")
	w.goBack(e.Step)
	return true
}

// goBack throws away what was done from a step on.
func (w *work) goBack(step int) {
	for i := step - 1; i < w.last; i++ {
		if w.done[i] != nil {
			w.lost[i] += w.wasted(i)
			w.done[i] = nil
		}
	}
	keep := max(step-1, len(w.Planned.Steps))
	w.steps, w.done = w.steps[:min(keep, len(w.steps))], w.done[:min(keep, len(w.done))]
	w.last, w.spoilt = step-1, 0
}

// wasted is what a step that is done again has cost: what it measured out or, for one
// that made a solution, the solvent.
func (w *work) wasted(i int) float64 {
	s := &w.steps[i]
	switch s.Verb {
	case route.UsePacket:
		return s.Packet.Content.Value
	case route.MakeUpTo, route.WeighUpTo:
		return s.Amount - w.inside(i)
	}
	return s.Amount
}

// inside is what was in a vessel before it was made up, in the unit of what it was made
// up to.
func (w *work) inside(i int) (amount float64) {
	for j := i - 1; j >= 0; j-- {
		s := &w.steps[j]
		switch s.Verb {
		case route.Take, route.Pour, route.Measured:
			if !s.Measure.Kind.Counts() {
				amount += s.Amount
			}
		case route.WeighAliquot:
			return s.Amount
		case route.Weigh, route.UsePacket:
		default:
			return amount
		}
	}
	return amount
}

// finish puts the made route together and checks it.
func (w *work) finish(entries *benchfile.Table) {
	planned := w.Planned
	w.Made = &route.Route{Name: planned.Name}
	tables := make([]*benchfile.Table, len(w.steps))
	table := entries
	for i := range w.steps {
		s, origin := w.steps[i], w.origin(i)
		if origin == Missing || origin == ToCome {
			s = planned.Steps[i]
		} else {
			table = w.done[i].table
		}
		s.Lost, tables[i] = w.lost[i], table
		w.Made.Steps, w.Steps = append(w.Made.Steps, s), append(w.Steps, origin)
	}
	w.Prep.CheckDone(w.Made, tables)
	for n := len(w.Made.Steps); n > len(planned.Steps) && !w.Made.Finished(n-1); n-- {
		w.Made.Steps, w.Steps = w.Made.Steps[:n-1], w.Steps[:n-1]
		w.Begun++
	}
}

// origin says where a step is from.
func (w *work) origin(i int) Origin {
	switch {
	case w.done[i] == nil && i < w.last:
		return Missing
	case w.done[i] == nil:
		return ToCome
	case w.done[i].Read:
		return Recorded
	}
	return AsPlanned
}
