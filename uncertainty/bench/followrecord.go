package bench

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"minim/equipment/benchfile"
	"minim/uncertainty/record"
	"minim/uncertainty/route"
)

// work is the batch while the entries are gone through.
type work struct {
	*recordReader
	// all is the table of all entries.
	all *benchfile.Table
	// steps are those planned, and what was done after them.
	steps []route.Step
	// done are the entries of the steps, nil where there is none; lost is what was
	// thrown away in each.
	done []*entry
	lost []waste
	// last is the last step that was done, spoilt the one that was spoilt and not yet
	// repeated; both from 1, 0 for none.
	last, spoilt int
}

// follow goes through the entries in the order in which they were made, and puts the
// made route together. It ends at a mistake.
func (r *recordReader) follow(entries *benchfile.Table) {
	w := &work{recordReader: r, all: entries, steps: slices.Clone(r.Planned.Steps)}
	w.done, w.lost = make([]*entry, len(w.steps)), make([]waste, len(w.steps))
	stands := r.standing()
	for _, e := range r.entries {
		if !w.enter(e, stands) {
			return
		}
	}
	if w.spoilt > 0 && !w.goBack(w.again()[0]) {
		return
	}
	w.finish()
}

// standing maps the number of each entry to the entry that it has been corrected to.
func (r *recordReader) standing() map[int]*entry {
	stands := make(map[int]*entry, len(r.entries))
	for _, e := range slices.Backward(r.entries) {
		stands[e.Number] = e
		if e.StruckBy > 0 {
			stands[e.Number] = stands[e.StruckBy]
		}
	}
	return stands
}

// enter takes up an entry. It returns false at a mistake.
func (w *work) enter(e *entry, stands map[int]*entry) bool {
	now := stands[e.Number]
	switch {
	case e.Step == 0 || now.Withdrawn:
		return true
	case e.Corrects == 0 && !w.do(e, now):
		return false
	}
	if e.Spoilt != "" && e.Step <= len(w.done) && w.done[e.Step-1] == now { // else it has been thrown away already
		w.spoilt = min(cmp.Or(w.spoilt, e.Step), e.Step)
	}
	return true
}

// do takes up a step as it was done; e says where in the order, and now what it has been
// corrected to. It returns false at a mistake.
func (w *work) do(e, now *entry) bool {
	switch {
	case e.Late && e.Step < w.last && w.done[e.Step-1] == nil:
		// it was forgotten
	case w.spoilt > 0:
		if !w.repeat(e) {
			return false
		}
	case e.Step <= w.last:
		w.refuse(e)
		return false
	}
	return w.put(e, now)
}

// put puts a step in its place. It returns false when one before it is not there.
func (w *work) put(e, now *entry) bool {
	switch n := len(w.steps); {
	case e.Step > n+1:
		w.failNumber(e, n+1)
		return false
	case e.Step > n:
		w.steps, w.done = append(w.steps, route.Step{}), append(w.done, nil)
		if e.Step > len(w.lost) {
			w.lost = append(w.lost, waste{})
		}
	}
	w.steps[e.Step-1], w.done[e.Step-1] = now.Done, now
	w.last = max(w.last, e.Step)
	return true
}

// refuse says that a step has been done already, or comes too late.
func (w *work) refuse(e *entry) {
	before := w.done[e.Step-1]
	if before == nil {
		e.table.Fail("step", fmt.Sprintf("step %d stands below step %d", e.Step, w.last), "entries follow the steps; for one that was forgotten write late = true")
		return
	}
	e.table.Fail("step", fmt.Sprintf("step %d is in entry %d already", e.Step, before.Number),
		fmt.Sprintf("to change what that says write corrects = %d in place of step; when it was spoilt and done again, first an entry with corrects = %d and spoilt = the reason", before.Number, before.Number))
}

// again lists the steps from which the work can go on after one was spoilt, the last
// first.
func (w *work) again() (steps []int) {
	r := &route.Route{Steps: w.steps}
	for i := w.spoilt; i > 0; i-- {
		if r.Begins(i-1) || i == w.spoilt && i == w.last && w.steps[i-1].Verb.Traits().MeasuresOut {
			steps = append(steps, i)
		}
	}
	return steps
}

// repeat takes the work up again after it was spoilt, if that is possible from the
// step of an entry.
func (w *work) repeat(e *entry) bool {
	steps := w.again()
	if !slices.Contains(steps, e.Step) {
		words := strings.Fields(strings.Trim(fmt.Sprint(steps), "[]"))
		e.table.Fail("step", fmt.Sprintf("step %d was spoilt and has not been done again", w.spoilt),
			"the work can be taken up again from step "+strings.Join(words, " or "))
		return false
	}
	e.table.Need("by", "at")
	return w.goBack(e.Step)
}

// finish puts the made route together and checks it.
func (w *work) finish() {
	w.Made = w.route(len(w.steps))
	for i := range w.steps {
		w.Steps = append(w.Steps, w.origin(i))
	}
	w.check(w.Made)
	for n := len(w.Made.Steps); n > len(w.Planned.Steps) && (!w.Made.Finished(n-1) || turnedAway(w.Made.Steps[len(w.Planned.Steps):n])); n-- {
		w.Made.Steps, w.Steps = w.Made.Steps[:n-1], w.Steps[:n-1]
		w.Begun++
	}
}

// turnedAway reports whether further steps end with another solution than that of the batch, which
// is made for it.
func turnedAway(further []route.Step) (away bool) {
	for i := range further {
		if s := &further[i]; s.From > 0 || s.Stock != nil {
			away = s.Verb.Traits().FromSolution || away && s.Verb != route.TakeAll
		}
	}
	return away
}

// route is the first steps of the made route.
func (w *work) route(steps int) *route.Route {
	r := &route.Route{Name: w.Planned.Name, Steps: slices.Clone(w.steps[:steps]), Made: steps}
	for i := range r.Steps {
		r.Steps[i].Lost = w.lost[i].of(&r.Steps[i])
	}
	return r
}

// check checks the first steps of the made route. It returns false at a mistake.
func (w *work) check(r *route.Route) bool {
	tables := make([]*benchfile.Table, len(r.Steps))
	for i := range tables {
		if w.done[i] != nil {
			tables[i] = w.done[i].table
		}
	}
	return prepReader{w.Prep}.checkDone(r, tables, w.all)
}

// origin says where a step is from.
func (w *work) origin(i int) record.Origin {
	switch {
	case w.done[i] == nil && i < w.last:
		return record.Missing
	case w.done[i] == nil:
		return record.ToCome
	case w.done[i].Read:
		return record.Recorded
	}
	return record.AsPlanned
}
