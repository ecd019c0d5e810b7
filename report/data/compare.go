package data

import (
	"cmp"
	"fmt"
	"slices"

	"minim/equipment"
	"minim/report/words"
	"minim/report/words/influence"
	"minim/report/words/note"
	"minim/report/words/reminder"
	"minim/uncertainty"
	"minim/uncertainty/hazards"
	"minim/uncertainty/policy"
	"minim/uncertainty/route"
)

// Comparison is the routes of a prep. Its table has a row for each route: a column is called
// as in the JSON, analytic.value being analytic_value; strengths are in strength_unit, of
// what strength_counts says, of which counted_of_weighed is in what is weighed. Each
// tolerance adds inside_1_tolerance and inside_1_conformance_probability, and so on. Before is
// that on the kit as it is; it is nil without changes.
func Comparison(c, before *route.Comparison) Data { return both(c, before, comparison, csvRows) }

func comparison(c *route.Comparison) object {
	return slices.Concat(headed("minim.compare/1", c.Prep), recommended(c), object{
		{"routes", routes(c.Prep, c.Results)}, {"cautions", cautionsOf(c, true)}, {"changes", list(words.ChangeTexts(c.Prep))},
	})
}

// recommended is which of the routes is to be used, and the rule by which each other fell behind it,
// of those that stand in the comparison.
func recommended(c *route.Comparison) object {
	fell := []object{}
	for i, rule := range c.Verdict.Choice.Fell {
		if rule != policy.None {
			fell = append(fell, object{{"name", c.Results[i].Route.Name}, {"rule", string(rule)}})
		}
	}
	out := object{{"coverage_probability", c.Settings.Coverage}, {"use", nil}, {"meets_tolerance", c.Verdict.Meets}, {"not_used", fell}}
	if c.Verdict.Use >= 0 {
		out[1].value = c.Results[c.Verdict.Use].Route.Name
	}
	return out
}

// cautionsOf the route to use, those of the rungs of its ladder where the screen shows it.
func cautionsOf(c *route.Comparison, ladder bool) []string {
	switch {
	case c.Verdict.Use < 0:
		return words.Cautions(c.Prep, nil)
	case !ladder:
		return words.Cautions(c.Prep, words.WithoutLadder(&c.Results[c.Verdict.Use]))
	}
	return words.Cautions(c.Prep, &c.Results[c.Verdict.Use])
}

// headed begins a JSON with the name of its form, what is wanted, and from which files.
func headed(schema string, p *route.Prep) object {
	return object{
		{"schema", schema}, {"invented_example", p.Kit.Invented}, {"title", p.Title}, {"note", p.Note}, {"prep", p.File}, {"kit", p.Kit.File},
		{"solute", p.Solute.Name}, {"weighed_as", p.Solute.Weighed()}, {"strength_counts", words.Meant(p)}, {"counted_of_weighed", p.SoluteContent()},
		{"solvent", p.Solvent.Name}, {"strength_unit", p.Target.Unit.Name}, {"target", p.Target.Value}, {"volume_mL", p.Volume},
		{"tolerances", each(p.Tolerances, func(t *route.Tolerance) object {
			return object{{"text", t.Text}, {"lower", t.Limits.Lower}, {"upper", t.Limits.Upper}}
		})},
		{"least_conformance_probability", p.LeastChance}, {"may_not_meet", each(p.Clashes(nil), clash)},
	}
}

func routes(p *route.Prep, results []route.Result) []object {
	return each(results, func(r *route.Result) object { return routeOf(p, r) })
}

// routeOf is a route; one that is not possible has no figures.
func routeOf(p *route.Prep, r *route.Result) object {
	possible := func(value any) any { return only(r.Possible, value) }
	out := object{
		{"name", r.Route.Name}, {"possible", r.Possible}, {"reason", orNull(r.Reason.String())}, {"reason_code", orNull(r.Reason.Code)},
		{"informative", r.Informative}, {"uninformative_because", orNull(r.Uninformative.String())},
		{"steps", words.Instructions(p, r.Route)}, {"actions", actions(p, r.Route)}, {"dilutions", r.Dilutions}, {"operations", r.Operations},
		{"intended", possible(r.Intended)}, {"aims_elsewhere", only(r.Possible && r.Elsewhere != nil, elsewhere(p, r))},
		{"analytic", possible(chanced(&r.Analytic, r))}, {"second_order", possible(secondOrder(r))},
		{"monte_carlo", possible(monteCarlo(&r.MonteCarlo, r))}, {"cross_check", possible(crossCheck(&r.CrossCheck))}, {"quoted", possible(quoted(r.Quoted))},
		{"inside", []object{}}, {"closer_than_use", possible(r.Closer)}, {"holds_within_of_target", possible(r.HoldsWithin)},
		{"equations", []object{}}, {"constants", []object{}}, {"budget", []object{}}, {"assumed_share_of_variance", possible(r.AssumedShare)}, {"from_memory_share_of_variance", possible(r.Analytic.MemoryShare())},
		{"expanded_uncertainty_if_rectangular", possible(r.Analytic.IfRectangular())}, {"ladder", []object{}},
		{"solute_g", only(r.Possible && massKnown(r), r.SoluteGrams)}, {"made_mL", possible(r.MadeML)}, {"left_over_mL", possible(r.LeftOverML)},
		{"warnings", texts(r.Notes.Warnings)}, {"doubts", texts(note.Doubts(r.Notes.Warnings))}, {"assumed", texts(r.Notes.Assumed)},
		{"from_memory", texts(r.Notes.FromMemory)}, {"not_counted", texts(r.Notes.NotCounted)},
		{"notes", notes(&r.Notes)}, {"shown", shown(p, r)},
	}
	if r.Possible {
		out.set("inside", inside(p, r))
		setModel(&out, p, r)
		out.set("ladder", each(r.Ladder, rung))
	}
	return out
}

// texts are the sentences of notes.
func texts(notes []note.Note) []string { return list(note.Texts(notes)) }

// massKnown reports whether the mass of the solute is known.
func massKnown(r *route.Result) bool { return r.SoluteGrams != 0 || r.SoluteUsed == 0 }

func analytic(a *uncertainty.Analytic) object {
	return object{
		{"value", a.Value}, {"standard_uncertainty", a.StandardUncertainty}, {"effective_degrees_of_freedom", a.DegreesOfFreedom},
		{"coverage_probability", a.CoverageProbability}, {"coverage_factor", a.CoverageFactor}, {"expanded_uncertainty", a.ExpandedUncertainty},
		{"lower", a.Lower()}, {"upper", a.Upper()}, {"conformance_probability", nil},
	}
}

// chanced is the analytic result of a route with its chance to be inside.
func chanced(a *uncertainty.Analytic, r *route.Result) object {
	out := analytic(a)
	if len(r.Inside) > 0 {
		out.set("conformance_probability", r.Inside[0].Normal)
	}
	return out
}

func secondOrder(r *route.Result) object {
	s := &r.SecondOrder
	return object{
		{"shift", s.Shift}, {"standard_uncertainty", s.StandardUncertainty},
		{"largest_term_of", orNull(influence.Name(s.First))}, {"largest_term_with", orNull(influence.Name(s.Second))},
	}
}

func monteCarlo(mc *uncertainty.MonteCarlo, r *route.Result) object {
	out := object{
		{"trials", mc.Trials}, {"seed", mc.Seed}, {"mean", mc.Mean}, {"mean_standard_error", mc.MeanError},
		{"standard_deviation", mc.StandardDeviation}, {"standard_deviation_standard_error", mc.DeviationError},
		{"lower", mc.Lower}, {"lower_standard_error", mc.LowerError}, {"upper", mc.Upper}, {"upper_standard_error", mc.UpperError},
		{"shortest_lower", mc.ShortestLower}, {"shortest_upper", mc.ShortestUpper}, {"resolution", mc.Resolution}, {"significant_digits", mc.Digits},
		{"conformance_probability", nil}, {"conformance_probability_standard_error", nil}, {"times_as_many_trials", mc.Sharper},
	}
	if len(r.Inside) > 0 {
		out.set("conformance_probability", r.Inside[0].Simulated)
		if p, e := r.Inside[0].Simulated, r.Inside[0].Error; e > 0 || p > 0 && p < 1 { // of none or all of the trials it says nothing
			out.set("conformance_probability_standard_error", e)
		}
	}
	return out
}

func crossCheck(c *uncertainty.CrossCheck) object {
	return object{
		{"agrees", c.Agrees}, {"tolerance", c.Tolerance}, {"tolerance_digits", uncertainty.CheckedDigits}, {"d_low", c.DLow}, {"d_high", c.DHigh},
		{"d_standard_uncertainty", c.DU}, {"of_expanded", c.OfExpanded},
		{"cause", orNull(string(c.Cause))}, {"influence", orNull(influence.Name(c.Influence))}, {"with", orNull(influence.Name(c.With))},
	}
}

func quoted(q uncertainty.Quoted) object {
	from := "analytic"
	if q.Simulated {
		from = "monte_carlo"
	}
	return object{{"lower", q.Lower}, {"upper", q.Upper}, {"from", from}, {"value", q.Value}, {"standard_uncertainty", q.StandardUncertainty}, {"interval", words.Interval(q)}}
}

// inside is the chance to be inside each tolerance, and the accepted strengths: both null
// where none is, one where it has no limit.
func inside(p *route.Prep, r *route.Result) []object {
	out := each(r.Inside, func(c *route.Chance) object {
		return object{
			{"tolerance", nil}, {"conformance_probability", c.Simulated}, {"normal_approximation", c.Normal},
			{"acceptance_lower", c.Acceptance.Lower}, {"acceptance_upper", c.Acceptance.Upper},
		}
	})
	for i := range out {
		out[i].set("tolerance", p.Tolerances[i].Text)
	}
	return out
}

func rung(r *route.Rung) object {
	out := object{
		{"rung", r.Strength.Text}, {"take_mL", r.TakeML}, {"reason", orNull(r.Reason.String())}, {"reason_code", orNull(r.Reason.Code)},
		{"analytic", only(r.Reason.None(), analytic(&r.Analytic))}, {"ratio_to_the_last", nil},
	}
	if r.Ratio != nil {
		out.set("ratio_to_the_last", analytic(r.Ratio))
	}
	return out
}

// contribution is a line of a budget. It has degrees of freedom where they are not infinitely many;
// lines of the same readings have one unknown standard deviation, and are one contribution.
func contribution(line *uncertainty.Contribution, symbol, of string, set int) object {
	u, share := words.Line(line)
	low, high := words.Limits(&line.Influence)
	return object{
		{"symbol", symbol}, {"value", uncertainty.SummaryOf(line.Distribution).Mean}, {"distribution", influence.Shape(&line.Influence)}, {"lower", low}, {"upper", high},
		{"type", influence.Type(&line.Influence)}, {"sensitivity_unit", words.Per(of, line.Unit)}, {"source", influence.Ground(&line.Influence)}, {"readings_set", only(set > 0, set)},
		{"influence", influence.Name(&line.Influence)}, {"owner", influence.Owner(line.Owner)}, {"group", influence.Group(line.Group)}, {"shared", line.Uses > 1},
		{"standard_uncertainty", line.StandardUncertainty}, {"unit", line.Unit}, {"sensitivity", line.Sensitivity},
		{"contribution", line.Contribution}, {"share", line.Share}, {"shift", line.Shift()}, {"assumed", line.Assumed}, {"assumed_shape", line.AssumedShape}, {"assumed_part", only(line.Assumed, cmp.Or(line.AssumedPart, 1))},
		{"degrees_of_freedom", only(line.DegreesOfFreedom > 0, line.DegreesOfFreedom)},
		{"readings_of", orNull(line.Set.Owner.Name)}, {"readings_at", only(line.Set != (uncertainty.Set{}), line.Set.At)},
		{"shown", object{{"standard_uncertainty", u}, {"share", share}}},
	}
}

// shown are the figures of a route as the screens print them; null of a route that says
// almost nothing about the amount.
func shown(p *route.Prep, r *route.Result) any {
	if !r.Possible || !r.Informative {
		return nil
	}
	f := words.Shown(p, r)
	return object{
		{"strength", f.Value}, {"give_or_take", f.Spread}, {"sentence", f.Sentence}, {"relative_give_or_take", f.Relative}, {"inside_in_100", orNull(f.Inside)},
		{"holds_within", f.HoldsWithin}, {"spoilt_by", f.Spoilt}, {"made", f.Made}, {"left_over", f.LeftOver}, {"solute", f.Solute},
	}
}

// clash is two things that may not meet, and how each was recognised.
func clash(c *hazards.Clash) object {
	thing := func(name string, role, by fmt.Stringer) object {
		return object{{"name", name}, {"role", role.String()}, {"recognised", by.String()}}
	}
	return object{
		{"first", thing(c.First, c.FirstRole, c.FirstBy)}, {"second", thing(c.Second, c.SecondRole, c.SecondBy)},
		{"what_happens", c.Happens}, {"gas_or_product", orNull(c.Product)}, {"known_of_strong_solutions", c.Strong}, {"trust", c.Trust},
		{"sentence", reminder.Stop(c)},
	}
}

// notes are those of a route in their parts, each with the sentence that says it. Of the kinds
// there are the four that the lists of sentences beside them have. The subject is null where
// the code says all.
func notes(n *equipment.Notes) []object {
	out := []object{}
	for _, of := range []struct {
		kind string
		list []note.Note
	}{{"warning", n.Warnings}, {"assumed", n.Assumed}, {"from_memory", n.FromMemory}, {"not_counted", n.NotCounted}} {
		for _, x := range of.list {
			out = append(out, object{{"kind", of.kind}, {"code", x.Code}, {"subject", orNull(x.Subject)}, {"text", x.String()}})
		}
	}
	return out
}
