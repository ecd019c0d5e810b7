package data

import (
	"strconv"

	"minim/equipment/quantity"
	"minim/report/words"
	"minim/report/words/note"
	"minim/uncertainty/plan"
	"minim/uncertainty/route"
)

// planSchema names the form of the JSON of a search.
const planSchema = "minim.plan/1"

// planJSON is a comparison of the routes that no other beats, with what the search
// adds.
type planJSON struct {
	Schema string `json:"schema"`
	comparisonJSON
	Prefer      string       `json:"prefer"`
	Limits      limitsJSON   `json:"limits"`
	Candidates  number       `json:"candidates_by_volume"`
	NotSearched []string     `json:"not_searched"`
	CutShort    bool         `json:"search_cut_short"`
	Helps       []helpJSON   `json:"would_help"`
	Routes      []memberJSON `json:"routes"`
	Own         []ownJSON    `json:"own_routes"`
	Before      *planJSON    `json:"before"`
}

// limitsJSON are the limits of a search, null where there is none.
type limitsJSON struct {
	Steps     int      `json:"steps"`
	LeftOver  *number  `json:"left_over_mL"`
	Volume    *number  `json:"volume_mL"`
	Solute    *number  `json:"solute_g"`
	Strongest *number  `json:"strongest_g_per_mL"`
	Without   []string `json:"without"`
	Fine      bool     `json:"every_graduation"`
}

type helpJSON struct {
	Change      string `json:"change"`
	Conformance number `json:"conformance_probability"`
}

// memberJSON is a route of the front. Group is the name of the one that stands for
// it and its near-equals.
type memberJSON struct {
	routeJSON
	Group    string  `json:"near_equal_to"`
	Cost     *number `json:"cost"`
	Currency *string `json:"currency"`
}

// ownJSON is a route of the prep itself.
type ownJSON struct {
	Name        string        `json:"name"`
	Possible    bool          `json:"possible"`
	Reason      *string       `json:"reason"`
	ReasonCode  *string       `json:"reason_code"`
	Informative bool          `json:"informative"`
	Operations  int           `json:"operations"`
	Analytic    *analyticJSON `json:"analytic"`
	Conformance *number       `json:"conformance_probability"`
	LeftOver    *number       `json:"left_over_mL"`
	Solute      *number       `json:"solute_g"`
}

func ownToJSON(r *route.Result) ownJSON {
	out := ownJSON{Name: r.Route.Name, Possible: r.Possible, Reason: orNull(r.Reason.String()), ReasonCode: orNull(r.Reason.Code), Informative: r.Informative, Operations: r.Operations}
	if !r.Possible {
		return out
	}
	out.Analytic, out.LeftOver, out.Solute = analyticToJSON(&r.Analytic), some(r.LeftOverML), soluteGrams(r)
	if len(r.Inside) > 0 {
		out.Analytic.Conformance, out.Conformance = some(r.Inside[0].Normal), some(r.Chance())
	}
	return out
}

// PlanJSON is the search in full precision, with every route of the front; see
// [JSON].
func PlanJSON(p, before *plan.Plan) ([]byte, error) {
	out := planToJSON(p)
	if before != nil {
		out.Before = planToJSON(before)
	}
	return indented(out)
}

func planToJSON(p *plan.Plan) *planJSON {
	o := &p.Options
	out := &planJSON{
		Schema: planSchema, comparisonJSON: *comparisonToJSON(p.Comparison), Prefer: o.Prefer,
		Limits:      limitsJSON{o.Steps, positive(o.LeftOver), positive(o.Volume), positive(o.Solute), positive(o.Strongest), list(o.Without), o.Fine},
		Candidates:  number(p.Candidates),
		NotSearched: list(note.Texts(p.NotSearched)), CutShort: p.CutShort, Helps: []helpJSON{},
	}
	for _, h := range p.Helps {
		out.Helps = append(out.Helps, helpJSON{words.HelpName(h), number(h.Chance)})
	}
	out.Own = []ownJSON{}
	for i := range p.Own {
		out.Own = append(out.Own, ownToJSON(&p.Own[i]))
	}
	for i := range p.Front {
		m := &p.Front[i]
		member := memberJSON{routeJSON: routeToJSON(p.Prep, &m.Result), Group: p.Results[m.Group].Route.Name}
		if cost, known := p.Prep.Cost(&m.Result); known {
			member.Cost, member.Currency = some(cost.Amount), &cost.Currency
		}
		out.Routes = append(out.Routes, member)
	}
	return out
}

// positive is null for a limit that is not stated.
func positive(x float64) *number {
	if x == 0 {
		return nil
	}
	return some(x)
}

// PlanCSV is the front as a table: see [CSV]. The column near_equal_to names the
// route that stands for a row and its near-equals.
func PlanCSV(p, before *plan.Plan) ([]byte, error) {
	return csvFile(p.Prep, planCSVRows, p, before)
}

func planCSVRows(p *plan.Plan) ([][]string, error) {
	all := &route.Comparison{Prep: p.Prep, Settings: p.Settings}
	all.Verdict.Use = -1
	for i := range p.Front {
		all.Results = append(all.Results, p.Front[i].Result)
		if p.Front[i].Route == p.Results[p.Verdict.Use].Route {
			all.Verdict.Use = i
		}
	}
	rows, err := csvRows(all)
	if err != nil {
		return nil, err
	}
	rows[0] = append(rows[0], "near_equal_to", "cost", "currency", "search_cut_short")
	for i := range p.Front {
		amount, currency := "", ""
		if cost, known := p.Prep.Cost(&p.Front[i].Result); known {
			amount, currency = quantity.Exact(cost.Amount), cost.Currency
		}
		rows[i+1] = append(rows[i+1], harmless(p.Results[p.Front[i].Group].Route.Name), amount, harmless(currency), strconv.FormatBool(p.CutShort))
	}
	return rows, nil
}
