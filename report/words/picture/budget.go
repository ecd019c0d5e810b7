package picture

import (
	"fmt"

	"minim/equipment/quantity"
	"minim/uncertainty/route"
)

// Rest names the bar of so many influences that are not shown.
func Rest(n int) string { return fmt.Sprintf("the rest (%d)", n) }

// Assumed says what share of the variance is assumed.
func Assumed(share string) string { return "assumed: " + share }

// BudgetNotes explain what is drawn.
func BudgetNotes(c *route.Comparison) []string {
	return []string{
		marked(c),
		"The variance is the square of the standard uncertainty: without an influence of 50 %, 71 % of the give or take would remain.",
		meaning + Share(c.Settings.Coverage) + ".",
		predicted,
	}
}

// BudgetAlt says in two sentences what the figure of all budgets shows, given the names and
// shares of the largest influences of a route.
func BudgetAlt(c *route.Comparison, order []*route.Result, largest func(*route.Result) []string) string {
	return alt(c, order, "What spoils the strength by each route", "bars for the largest shares of the variance of each", func(_ *route.Comparison, r *route.Result) string {
		list := largest(r)
		if len(list) == 0 {
			return "spoilt by " + Bars.None
		}
		return "spoilt most by " + quantity.Series(list, "and")
	})
}
