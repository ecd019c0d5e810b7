package data

import (
	"slices"
	"strconv"

	"minim/equipment/quantity"
	"minim/report/words"
	"minim/uncertainty/plan"
	"minim/uncertainty/route"
)

// Plan is a comparison of the routes that no other beats, and of rounder ones, with what the search adds: see
// [Comparison]. The column near_equal_to names the route that stands for a row and its
// near-equals.
func Plan(p, before *plan.Plan) Data { return both(p, before, searched, planRows) }

func searched(p *plan.Plan) object {
	return slices.Concat(headed("minim.plan/1", p.Prep), recommended(p.Comparison), object{
		{"cautions", cautionsOf(p.Comparison, false)}, {"changes", list(words.ChangeTexts(p.Prep))},
		{"prefer", p.Options.Prefer}, {"limits", limits(&p.Options)}, {"candidates_by_volume", float64(p.Candidates)},
		{"not_searched", texts(p.NotSearched)}, {"search_cut_short", p.CutShort},
		{"would_help", each(p.Helps, func(h *plan.Help) object {
			return object{{"change", h.Change.String()}, {"conformance_probability", h.Chance}, {"search_cut_short", h.CutShort}}
		})},
		{"routes", each(p.Front, func(m *plan.Member) object { return member(p, m) })}, {"own_routes", each(p.Own, own)},
	})
}

// limits are those of a search, null where there is none.
func limits(o *plan.Options) object {
	return object{
		{"steps", o.Steps}, {"left_over_mL", positive(o.LeftOver)}, {"volume_mL", positive(o.Volume)}, {"solute_g", positive(o.Solute)},
		{"strongest_g_per_mL", positive(o.Strongest)}, {"without", list(o.Without)}, {"every_graduation", o.Fine}, {"one_piece_both_ways", o.All},
	}
}

// member is a route of the front, with the name of the one that stands for it and its
// near-equals.
func member(p *plan.Plan, m *plan.Member) object {
	cost, known := plan.Cost(p.Prep, &m.Result)
	return append(routeOf(p.Prep, &m.Result), object{
		{"near_equal_to", p.Front[m.Group].Route.Name}, {"cost", only(known, cost.Amount)}, {"currency", only(known, cost.Currency)},
	}...)
}

// own is a route of the prep itself.
func own(r *route.Result) object {
	possible := func(value any) any { return only(r.Possible, value) }
	out := object{
		{"name", r.Route.Name}, {"possible", r.Possible}, {"reason", orNull(r.Reason.String())}, {"reason_code", orNull(r.Reason.Code)},
		{"informative", r.Informative}, {"operations", r.Operations}, {"analytic", possible(chanced(&r.Analytic, r))}, {"conformance_probability", nil},
		{"left_over_mL", possible(r.LeftOverML)}, {"solute_g", only(r.Possible && massKnown(r), r.SoluteGrams)},
	}
	if r.Possible && len(r.Inside) > 0 {
		out.set("conformance_probability", r.Chance())
	}
	return out
}

func planRows(p *plan.Plan) [][]string {
	all := &route.Comparison{Prep: p.Prep, Settings: p.Settings}
	all.Verdict.Use = -1
	for i := range p.Front {
		all.Results = append(all.Results, p.Front[i].Result)
		if p.Front[i].Route == p.Results[p.Verdict.Use].Route {
			all.Verdict.Use = i
		}
	}
	rows := routeRows(all)
	rows[0] = append(rows[0], "near_equal_to", "cost", "currency", "search_cut_short")
	for i := range p.Front {
		amount, currency := "", ""
		if cost, known := plan.Cost(p.Prep, &p.Front[i].Result); known {
			amount, currency = quantity.Exact(cost.Amount), cost.Currency
		}
		rows[i+1] = append(rows[i+1], harmless(p.Front[p.Front[i].Group].Route.Name), amount, harmless(currency), strconv.FormatBool(p.CutShort))
	}
	return withStops(p.Prep, rows, func(i int) *route.Route { return p.Front[i].Route })
}
