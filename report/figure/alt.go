package figure

import (
	"minim/report/words/picture"
	"minim/uncertainty/plan"
	"minim/uncertainty/route"
)

// What the figures show, for those who cannot see them.

func altOfSpread(c *route.Comparison) string { return clean(picture.SpreadAlt(c, ranked(c))) }

func altOfBudget(c *route.Comparison) string { return clean(picture.BudgetAlt(c, ranked(c), largest)) }

// largest are the influences of the first two bars.
func largest(r *route.Result) (list []string) {
	bars := barsOf(r.Analytic.Budget)
	for _, b := range bars[:min(2, len(bars))] {
		list = append(list, b.words+" ("+shareOfVariance(b.share)+")")
	}
	return list
}

func altOfTrade(p *plan.Plan) string {
	if p.Comparison == nil {
		return (&picture.Trade{Plan: p}).Alt()
	}
	return clean(newTrade(p).Alt())
}

func altOfReadability(p *plan.Purchase) string { return clean(newReadable(p).Alt()) }
