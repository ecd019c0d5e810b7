// Package record works out what follows from what was written down of a batch as it was
// really made, as package bench reads it: the strength that was achieved, which reading made
// it differ from the plan, what is left over, and how far off the readings still to
// come may be.
//
// A record is a TOML file that only grows, one numbered entry a line:
//
//	route = "two dilutions"
//
//	[entries]
//	1 = { step = 1, weigh = "1.49 g", by = "AK", at = "2026-11-28 10:05" }
//	2 = { step = 2, make-up-to = "25 mL", spoilt = "filled past the mark", by = "AK", at = "2026-11-28 10:20" }
//	3 = { step = 1, weigh = "1.52 g", by = "AK", at = "2026-11-28 10:25" }
//	4 = { corrects = 3, weigh = "1.53 g", by = "AK", at = "2026-11-28 10:30" }
//
// Above its entries it carries what was planned when it was begun, as a prep of one route
// with its kit in the table [planned]: what follows from a batch rests on that, not on the
// prep as it is now.
//
// An entry says what was done in a step, in the keys of a step; what it does not say
// was done as planned. The made route has the steps of the plan as they were done, and
// is evaluated by the same model as the plan.
package record

import (
	"slices"

	"minim/equipment"
	"minim/equipment/benchfile"
	"minim/uncertainty/route"
)

// Record is what was written down of a batch.
type Record struct {
	File, Batch, Note string
	// Digest is the SHA-256 of the file as it was read.
	Digest string
	// Now is the prep as it is now. Plan is the prep as it was when the record was begun,
	// and Prep the same with the bench as it was on the day.
	Now, Plan, Prep *route.Prep
	// PlanMissing: the record does not carry what was planned, so that Plan is Now.
	// Undigested: it carries it without a digest, so that it may have been changed.
	PlanMissing, Undigested bool
	// Differences say where Plan and Now do not agree in what counts for the batch.
	// Newcomers are instruments, stocks and packets of the batch that Plan has from Now, since
	// they were not there when the record was begun.
	Differences []benchfile.Difference
	Newcomers   []string
	// First and Last are the times of the first and the last entry that has one, as written;
	// "" for none. Reversed: the last surely is before the first.
	First, Last string
	Reversed    bool
	// Backward are the entries whose times are before that of one above.
	Backward []Backward
	// Planned is the route of the plan. Made is the route as it was made: what has been
	// done, and what is still to come as planned.
	Planned, Made *route.Route
	// Entries in the order of the file.
	Entries []Entry
	// Steps say of each step of Made where it is from.
	Steps []Origin
	// Begun is the number of steps after the plan that have been begun and have not led
	// to a solution yet; they are not in Made.
	Begun int
	// Cut are lines that were not written to their end, and are left out.
	Cut []Cut
}

// Origin says where a step of the made route is from.
type Origin int

// The origins of a step.
const (
	// Recorded: from an entry.
	Recorded Origin = iota
	// AsPlanned: an entry says that it was done, and gives no reading.
	AsPlanned
	// Missing: no entry says anything of it, though later steps have been done.
	Missing
	// ToCome: it has not been done yet.
	ToCome
)

// Entry is one line of a record.
type Entry struct {
	// Number of the entry, and Line of the file that it stands in.
	Number, Line int
	// By whom and when, as written; either may be empty.
	By, At string
	// Step that it is about, from 1; 0 for one about the bench.
	Step int
	// Done is the step as it was done, and Read whether a reading is given for it.
	Done route.Step
	Read bool
	// Temperature of the bench, and the half-width within which it is known, in °C.
	Temperature, Within equipment.Stated
	// Corrects is the number of the entry that this one corrects; 0 for none.
	Corrects int
	// Withdrawn: the entry that it corrects was never so.
	Withdrawn bool
	// Late: it was written down after later steps.
	Late bool
	// Spoilt says why what was done was thrown away; "" when it was not.
	Spoilt string
	Note   string
	// Undone: what was done was thrown away together with a spoilt step before or after
	// it, and had to be done again.
	Undone bool
	// StruckBy is the number of the entry by which this one is struck; 0 when it
	// stands. A spoilt entry stands: it was so.
	StruckBy int
}

// Finished reports whether every step of the plan has been done, so that there is a
// batch.
func (r *Record) Finished() bool {
	for _, o := range r.Steps {
		if o == ToCome {
			return false
		}
	}
	return true
}

// Any reports whether anything has been done.
func (r *Record) Any() bool {
	for i := range r.Entries {
		if e := &r.Entries[i]; e.Step > 0 && e.StruckBy == 0 && !e.Withdrawn {
			return true
		}
	}
	return false
}

// OfOrigin lists the steps of the made route, from 1, that are of an origin.
func (r *Record) OfOrigin(o Origin) (steps []int) {
	for i := range r.Steps {
		if r.Steps[i] == o {
			steps = append(steps, i+1)
		}
	}
	return steps
}

// Cut is a line that was not written to its end.
type Cut struct {
	Line int    // from 1
	Text string // what stands there, U+FFFD for what cannot be printed
}

// Backward is an entry whose time is before that of one above it.
type Backward struct{ Entry, Above int }

// OnTheBench is the prep for what is still to be done with the batch: without the
// instruments that the kit no longer has.
func (r *Record) OnTheBench() *route.Prep {
	gone := slices.DeleteFunc(r.Prep.Kit.Names(), func(name string) bool { return slices.Contains(r.Now.Kit.Names(), name) })
	if len(gone) == 0 {
		return r.Prep
	}
	q := *r.Prep
	q.Kit = q.Kit.Without(gone...)
	return &q
}
