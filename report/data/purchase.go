package data

import (
	"strconv"

	"minim/report/words"
	"minim/report/words/note"
	"minim/uncertainty/plan"
)

// purchaseSchema names the form of the JSON about another instrument.
const purchaseSchema = "minim.buy/1"

type purchaseJSON struct {
	Schema string `json:"schema"`
	wantedJSON
	Verdict      string          `json:"verdict"`
	Present      *string         `json:"present"`
	Buy          *string         `json:"buy"`
	Meets        bool            `json:"meets_tolerance"`
	WouldMeet    bool            `json:"candidate_meets_tolerance"`
	AssumedShare number          `json:"assumed_share_of_variance"`
	Doubled      *string         `json:"verdict_assumed_doubled"`
	Halved       *string         `json:"verdict_assumed_halved"`
	Choices      []choiceJSON    `json:"choices"`
	MostLeftOver *number         `json:"break_even_most_left_over_mL"`
	BreakEven    []breakEvenJSON `json:"break_even"`
	Curves       []curveJSON     `json:"curves"`
	Direct       *number         `json:"direct_from_mL"`
	NotSearched  []string        `json:"not_searched"`
	Cautions     []string        `json:"cautions"`
	Changes      []string        `json:"changes"`
	Before       *purchaseJSON   `json:"before"`
}

type choiceJSON struct {
	Name         string     `json:"name"`
	Owned        bool       `json:"owned"`
	Price        *number    `json:"price"`
	Currency     *string    `json:"currency"`
	Meets        bool       `json:"meets_tolerance"`
	LeastByUSP   *number    `json:"least_mass_usp_41_g"`
	LeastWithin  *number    `json:"least_mass_2s_within_tolerance_g"`
	LeastByModel *number    `json:"least_mass_model_g"`
	Best         *routeJSON `json:"best_route"`
	CutShort     bool       `json:"search_cut_short"`
}

type breakEvenJSON struct {
	Dilutions   int     `json:"dilutions"`
	Readability *number `json:"readability_g"`
	LeftOver    *number `json:"left_over_mL"`
	CutShort    bool    `json:"search_cut_short"`
}

type curveJSON struct {
	Dilutions   int      `json:"dilutions"`
	Readability []number `json:"readability_g"`
	Relative    []number `json:"relative_expanded_uncertainty"`
	CutShort    []bool   `json:"search_cut_short"`
}

// PurchaseJSON is the answer about another instrument in full precision; see [JSON].
func PurchaseJSON(p, before *plan.Purchase) ([]byte, error) {
	out := purchaseToJSON(p)
	if before != nil {
		out.Before = purchaseToJSON(before)
	}
	return indented(out)
}

func purchaseToJSON(p *plan.Purchase) *purchaseJSON {
	q, v := p.Prep, p.Verdict
	sentence, doubled, halved := words.Verdicts(p)
	out := &purchaseJSON{
		Schema: purchaseSchema, wantedJSON: wantedToJSON(q),
		Verdict: sentence, Present: choiceName(p, v.Present), Buy: choiceName(p, v.Buy), Meets: v.Meets, WouldMeet: v.Would,
		AssumedShare: number(p.AssumedShare), MostLeftOver: positive(p.MostLeftOver), Direct: positive(p.DirectML),
		Choices: []choiceJSON{}, BreakEven: []breakEvenJSON{}, Curves: []curveJSON{},
		NotSearched: list(note.Texts(p.NotSearched)), Cautions: words.Cautions(q, words.BestOf(p)), Changes: list(words.ChangeTexts(q)),
	}
	out.Doubled, out.Halved = orNull(doubled), orNull(halved)
	for i := range p.Choices {
		out.Choices = append(out.Choices, choiceToJSON(p, &p.Choices[i]))
	}
	for _, e := range p.BreakEven {
		line := breakEvenJSON{Dilutions: e.Dilutions, Readability: positive(e.Readability), CutShort: e.CutShort}
		if e.Readability > 0 {
			line.LeftOver = some(e.LeftOver)
		}
		out.BreakEven = append(out.BreakEven, line)
	}
	for _, c := range p.Curves {
		out.Curves = append(out.Curves, curveJSON{c.Dilutions, numbers(c.Readability), numbers(c.Relative), c.CutShort})
	}
	return out
}

func choiceName(p *plan.Purchase, at int) *string {
	if at < 0 {
		return nil
	}
	return &p.Choices[at].Name
}

func choiceToJSON(p *plan.Purchase, o *plan.Choice) choiceJSON {
	out := choiceJSON{Name: o.Name, Owned: o.Owned, Meets: o.Meets, CutShort: o.CutShort, LeastByUSP: positive(o.LeastByUSP), LeastWithin: positive(o.LeastWithin), LeastByModel: positive(o.LeastByModel)}
	if o.Price.Stated() {
		out.Price, out.Currency = some(o.Price.Amount), orNull(o.Price.Currency)
	}
	if o.Found {
		best := routeToJSON(p.Prep, &o.Best)
		out.Best = &best
	}
	return out
}

func numbers(list []float64) []number {
	out := make([]number, len(list))
	for i, x := range list {
		out[i] = number(x)
	}
	return out
}

// PurchaseCSV is the choices as a table, a row each: see [CSV].
func PurchaseCSV(p, before *plan.Purchase) ([]byte, error) {
	return csvFile(purchaseCSVRows, p, before)
}

func purchaseCSVRows(p *plan.Purchase) ([][]string, error) {
	rows := [][]string{{
		"name", "owned", "price", "currency", "least_mass_usp_41_g", "least_mass_2s_within_tolerance_g", "least_mass_model_g", "meets_tolerance",
		"best_route", "conformance_probability", "relative_expanded_uncertainty", "left_over_mL", "operations", "solute_g", "search_cut_short",
	}}
	for i := range p.Choices {
		o := &p.Choices[i]
		row := []string{harmless(o.Name), strconv.FormatBool(o.Owned), "", "", "", "", "", strconv.FormatBool(o.Meets)}
		if o.Price.Stated() {
			row[2], row[3] = digits(o.Price.Amount), harmless(o.Price.Currency)
		}
		for column, least := range []float64{o.LeastByUSP, o.LeastWithin, o.LeastByModel} {
			if least > 0 {
				row[4+column] = digits(least)
			}
		}
		rows = append(rows, append(append(row, bestCells(o)...), strconv.FormatBool(o.CutShort)))
	}
	return rows, nil
}

// bestCells are those of the best route of a choice.
func bestCells(o *plan.Choice) []string {
	if !o.Found {
		return make([]string, 6)
	}
	r, chance := &o.Best, ""
	if len(r.Inside) > 0 {
		chance = digits(r.Chance())
	}
	return []string{
		harmless(r.Route.Name), chance, digits(r.Analytic.ExpandedUncertainty / r.Analytic.Value), digits(r.LeftOverML),
		strconv.Itoa(r.Operations), gramDigits(r),
	}
}
