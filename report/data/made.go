package data

import (
	"slices"

	"minim/equipment/benchfile"
	"minim/report/words"
	"minim/report/words/note"
	"minim/report/words/verb"
	"minim/uncertainty/record"
	"minim/uncertainty/rescue"
)

// Made is a batch. Its table has a row for the plan, one for the batch, and one for each way to
// correct it, with the columns of [Comparison]; the column use marks the batch.
func Made(b *words.Batch) Data {
	return dataOf(func() object { return batch(b) }, func() [][]string {
		c := b.Comparison()
		if b.Rescue != nil && b.Rescue.Prep.Target.Unit == b.Prep.Target.Unit {
			c.Results = append(c.Results, b.Rescue.Results...)
		}
		return csvRows(c)
	})
}

func batch(b *words.Batch) object {
	p, t := b.Prep, b.Prep.Bench.Temperature
	out := slices.Concat(headed("minim.made/1", p), object{
		{"coverage_probability", b.Settings.Coverage}, {"record", b.File}, {"batch", orNull(b.Record.Batch)}, {"record_note", orNull(b.Record.Note)},
		{"route", b.Record.Made.Name}, {"finished", b.Finished()}, {"meets_tolerance", b.Meets() && len(p.Tolerances) > 0},
		{"bench", object{{"temperature_celsius", stated(t)}, {"within_celsius", only(t.Known, p.Bench.Within.Value)}}},
		{"planned", routeOf(b.Record.Plan, &b.AsPlanned)}, {"made", routeOf(p, &b.AsMade)},
		{"difference_from_plan", only(b.AsPlanned.Possible, b.Difference())}, {"effects", each(b.Effects, effect)},
		{"steps", origins(b.Record)}, {"entries", each(b.Entries, entry)}, {"plan_in_record", !b.PlanMissing},
		{"plan_differs_from_prep", each(b.Differences, func(d *benchfile.Difference) object {
			return object{{"of", orNull(d.Of)}, {"key", orNull(d.Key)}, {"planned_then", orNull(d.Then)}, {"planned_now", orNull(d.Now)}}
		})},
		{"cut_off", each(b.Cut, func(c *record.Cut) object { return object{{"line", c.Line}, {"text", c.Text}} })}, {"steps_not_counted", b.Begun},
		{"room", each(b.Room, func(r *record.Room) object { return room(b, r) })}, {"rescue", nil}, {"no_rescue_because", nil}, {"cautions", b.Cautions()},
	})
	if b.Rescue != nil {
		out.set("rescue", ways(b.Rescue))
	}
	if b.NoWay != nil {
		out.set("no_rescue_because", orNull(b.NoWay.Reason.String()))
	}
	return out
}

// effect is a deviation from the plan. Step is 0 for the temperature of the bench,
// and null for what was done after the plan.
func effect(e *record.Effect) object {
	out := object{{"step", only(e.Step != record.Extra, e.Step)}, {"planned", nil}, {"done", nil}, {"relative_change", e.Relative}}
	if e.Done != nil {
		out.set("planned", orNull(verb.Short(e.Planned)))
		out.set("done", orNull(verb.Short(e.Done)))
	}
	return out
}

// originNames as they are called in the JSON.
var originNames = map[record.Origin]string{
	record.Recorded: "reading", record.AsPlanned: "done as planned", record.Missing: "plan", record.ToCome: "to come",
}

// origins say of each step of the made route where it is from. Amounts are in g, mL or
// drops, as the step measures.
func origins(r *record.Record) (out []object) {
	for i, from := range r.Steps {
		s := &r.Made.Steps[i]
		out = append(out, object{{"step", i + 1}, {"does", verb.Short(s)}, {"from", originNames[from]}, {"thrown_away", only(s.Lost > 0, s.Lost)}})
	}
	return out
}

func entry(e *record.Entry) object {
	said, struck := words.SaidIn(e)
	return object{
		{"number", e.Number}, {"line", e.Line}, {"step", place(e.Step)}, {"said", said}, {"read", e.Read}, {"by", orNull(e.By)}, {"at", orNull(e.At)},
		{"spoilt_by", orNull(e.Spoilt)}, {"corrects", place(e.Corrects)}, {"withdrawn", e.Withdrawn}, {"late", e.Late},
		{"struck", struck}, {"struck_by", place(e.StruckBy)}, {"note", orNull(e.Note)},
	}
}

// room are the readings of a step still to come with which the batch is inside; null
// where there is no limit or no such reading.
func room(b *words.Batch, r *record.Room) object {
	return object{
		{"step", r.Step}, {"planned", r.Planned}, {"unit", unitOf(&b.Record.Made.Steps[r.Step-1])}, {"any", r.Any}, {"one_mark", r.Fixed},
		{"low", only(r.Any && !r.LowFree, r.Low)}, {"high", only(r.Any && !r.HighFree, r.High)},
	}
}

// Rescue is what there is, and the ways to correct it. Its table has a row for each way, with
// the columns of [Comparison].
func Rescue(r *rescue.Rescue) Data {
	return dataOf(func() object {
		return slices.Concat(headed("minim.rescue/1", r.Prep), object{
			{"coverage_probability", r.Settings.Coverage}, {"has", analytic(&r.Batch.Analytic)}, {"has_mL", r.Batch.MadeML},
		}, ways(r), object{{"cautions", cautionsOf(r.Comparison, false)}})
	}, func() [][]string { return csvRows(r.Comparison) })
}

// ways with the number of corrections that were worked out.
func ways(r *rescue.Rescue) object {
	out := object{
		{"to", r.Prep.Target.Value}, {"use", r.Results[r.Verdict.Use].Route.Name}, {"meets_tolerance", r.Verdict.Meets && len(r.Prep.Tolerances) > 0},
		{"largest_vessel_mL", r.Largest}, {"ways", nil}, {"corrections_tried", r.Tried}, {"not_tried", list(note.Texts(r.NotTried))},
	}
	var list []object
	for i := range r.Results {
		way := object{{"kind", r.Kinds[i].Code}, {"does", words.WayInstructions(r, i)}, {"set_aside_mL", r.SetAside(i)}}
		list = append(list, append(way, routeOf(r.Prep, &r.Results[i])...))
	}
	out.set("ways", list)
	return out
}
