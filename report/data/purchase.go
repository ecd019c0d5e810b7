package data

import (
	"slices"
	"strconv"

	"minim/equipment/quantity"
	"minim/report/words"
	"minim/uncertainty/purchase"
	"minim/uncertainty/route"
)

// Purchase is the answer about another instrument. Its table has a row for each choice.
func Purchase(p, before *purchase.Purchase) Data { return both(p, before, bought, purchaseRows) }

func bought(p *purchase.Purchase) object {
	q, v := p.Prep, p.Verdict
	sentence, doubled, halved := words.Verdicts(p)
	return slices.Concat(headed("minim.buy/1", q), object{
		{"verdict", sentence}, {"present", choiceName(p, v.Present)}, {"buy", choiceName(p, v.Buy)},
		{"meets_tolerance", v.Meets}, {"candidate_meets_tolerance", v.Would}, {"assumed_share_of_variance", p.AssumedShare},
		{"verdict_assumed_doubled", orNull(doubled)}, {"verdict_assumed_halved", orNull(halved)},
		{"choices", each(p.Choices, func(o *purchase.Choice) object { return choice(p, o) })},
		{"without", each(p.Without, func(o *purchase.Choice) object { return choice(p, o) })},
		{"break_even_most_left_over_mL", positive(p.MostLeftOver)},
		{"break_even", each(p.BreakEven, func(e *purchase.BreakEven) object {
			return object{
				{"dilutions", e.Dilutions}, {"readability_g", positive(e.Readability)},
				{"left_over_mL", only(e.Readability > 0, e.LeftOver)}, {"search_cut_short", e.CutShort},
			}
		})},
		{"curves", each(p.Curves, func(c *purchase.Curve) object {
			return object{
				{"dilutions", c.Dilutions}, {"readability_g", c.Readability},
				{"relative_expanded_uncertainty", c.Relative}, {"search_cut_short", c.CutShort},
			}
		})},
		{"direct_from_mL", positive(p.DirectML)}, {"not_searched", texts(p.NotSearched)},
		{"cautions", words.Cautions(q, words.WithoutLadder(words.BestOf(p)))}, {"changes", list(words.ChangeTexts(q))},
	})
}

func choiceName(p *purchase.Purchase, at int) any {
	if at < 0 {
		return nil
	}
	return p.Choices[at].Name
}

func choice(p *purchase.Purchase, o *purchase.Choice) object {
	out := slices.Concat(object{{"name", o.Name}, {"owned", o.Owned}}, priced(o.Price), object{
		{"meets_tolerance", o.Meets}, {"least_mass_usp_41_g", positive(o.LeastByUSP)},
		{"least_mass_2s_within_tolerance_g", positive(o.LeastWithin)}, {"least_mass_model_g", positive(o.LeastByModel)},
		{"best_route", nil}, {"search_cut_short", o.CutShort},
	})
	if o.Found {
		out.set("best_route", routeOf(p.Prep, &o.Best))
	}
	return out
}

func purchaseRows(p *purchase.Purchase) [][]string {
	rows := [][]string{{
		"name", "owned", "price", "currency", "least_mass_usp_41_g", "least_mass_2s_within_tolerance_g", "least_mass_model_g", "meets_tolerance",
		"best_route", "conformance_probability", "relative_expanded_uncertainty", "left_over_mL", "operations", "solute_g", "search_cut_short",
	}}
	for i := range p.Choices {
		o := &p.Choices[i]
		row := []string{harmless(o.Name), strconv.FormatBool(o.Owned), "", "", "", "", "", strconv.FormatBool(o.Meets)}
		if o.Price.Stated() {
			row[2], row[3] = quantity.Exact(o.Price.Amount), harmless(o.Price.Currency)
		}
		for column, least := range []float64{o.LeastByUSP, o.LeastWithin, o.LeastByModel} {
			if least > 0 {
				row[4+column] = quantity.Exact(least)
			}
		}
		rows = append(rows, append(append(row, bestCells(o)...), strconv.FormatBool(o.CutShort)))
	}
	return withStops(p.Prep, rows, func(i int) *route.Route { return p.Choices[i].Best.Route })
}

// bestCells are those of the best route of a choice; the mass is empty where it is not known.
func bestCells(o *purchase.Choice) []string {
	if !o.Found {
		return make([]string, 6)
	}
	r, chance, grams := &o.Best, "", ""
	if len(r.Inside) > 0 {
		chance = quantity.Exact(r.Chance())
	}
	if massKnown(r) {
		grams = quantity.Exact(r.SoluteGrams)
	}
	return []string{harmless(r.Route.Name), chance, quantity.Exact(r.Analytic.ExpandedUncertainty / r.Analytic.Value), quantity.Exact(r.LeftOverML), strconv.Itoa(r.Operations), grams}
}
