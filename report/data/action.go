package data

import (
	"minim/equipment"
	"minim/report/words"
	"minim/report/words/verb"
	"minim/uncertainty/route"
)

// actions are the steps of a route in their parts, each with the sentence that says it.
func actions(p *route.Prep, r *route.Route) []object {
	out := each(r.Steps, func(s *route.Step) object { return action(p, s) })
	for i, sentence := range words.Instructions(p, r) {
		out[i].set("step", i+1)
		out[i].set("sentence", sentence)
	}
	return out
}

// action is a step in its parts. Of what it brings, "the solution" is that of an earlier step.
func action(p *route.Prep, s *route.Step) object {
	out := object{
		{"step", 0}, {"verb", string(s.Verb)}, {"amount", nil}, {"unit", nil}, {"of", broughtBy(p, s)}, {"of_step", place(s.From)},
		{"instrument", nil}, {"piece", nil}, {"options", options(s)}, {"amount_shown", nil}, {"sentence", ""},
	}
	switch {
	case s.Balance != nil:
		out.set("instrument", orNull(s.Balance.Name))
	case s.Measure != nil:
		out.set("instrument", orNull(s.Measure.Name))
	default:
		return out
	}
	out.set("amount", s.Amount)
	out.set("unit", orNull(unitOf(s)))
	out.set("piece", place(s.Piece))
	out.set("amount_shown", orNull(verb.Amount(s)))
	return out
}

// broughtBy is what a step measures out or goes on with.
func broughtBy(p *route.Prep, s *route.Step) string {
	switch {
	case s.Stock != nil:
		return s.Stock.Name
	case s.Packet != nil:
		return s.Packet.Name
	}
	switch s.Verb {
	case route.Weigh, route.Measured, route.AddSolute:
		return p.Solute.Weighed()
	case route.DissolveIn, route.MakeUpTo, route.Add, route.WeighUpTo:
		return p.Solvent.Name
	}
	return "the solution"
}

// options are what a step says besides; null where it says nothing of it.
func options(s *route.Step) object {
	return object{
		{"reading", orNull(string(s.Reading))}, {"state", orNull(string(s.State))}, {"emptying", orNull(emptyings[s.Emptied()])},
		{"weighed_back", s.WeighedBack}, {"separate_tare", s.SeparateTare},
		{"left_behind_g", stated(s.LeftBehind)}, {"vessel_g", stated(s.Vessel)}, {"contraction", stated(s.Contraction)},
	}
}

// emptyings as they are called in the JSON.
var emptyings = map[equipment.Emptying]string{equipment.Rinsed: "rinsed", equipment.BlownOut: "blown_out"}

// elsewhere is where a route aims that is not expected at the target, and the reading
// that brings it there; null where no single one does.
func elsewhere(p *route.Prep, r *route.Result) object {
	e := r.Elsewhere
	if e == nil {
		return nil
	}
	out := object{{"off_target", r.Intended/p.Target.Value - 1}, {"expected_off_target", e.Off}, {"step", place(e.Step)}, {"planned", nil}, {"reading", nil}, {"unit", nil}, {"intended", nil}, {"conformance_probability", nil}}
	if e.Step > 0 {
		out.set("planned", r.Route.Steps[e.Step-1].Amount)
		out.set("reading", e.Amended.Amount)
		out.set("unit", orNull(unitOf(&e.Amended)))
		out.set("intended", e.Intended)
		out.set("conformance_probability", e.Chance)
	}
	return out
}

// unitOf is the unit of the amount of a step with a reading.
func unitOf(s *route.Step) string {
	switch {
	case s.Balance != nil:
		return "g"
	case s.Measure.Kind.Traits().Counts:
		return "drops"
	}
	return "mL"
}
