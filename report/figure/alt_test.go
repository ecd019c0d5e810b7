package figure

import (
	"testing"

	"github.com/stretchr/testify/require"

	"minim/report/words/picture"
	"minim/uncertainty/plan"
	"minim/uncertainty/purchase"
	"minim/uncertainty/route"
)

// What the figures show, for those who cannot see them.

func altOfSpread(c *route.Comparison) string { return clean(picture.OfRoutes(c, ranked(c)).Alt) }

func altOfBudget(c *route.Comparison) string {
	return clean(picture.OfBudget(c, ranked(c), largest).Alt)
}

func altOfTrade(p *plan.Plan) string { return clean(newTrade(hand{}, p).Caption().Alt) }

func altOfMoney(t *testing.T, p *purchase.Purchase) string {
	f, err := Changes(p)
	require.NoError(t, err)
	return f.Alt
}
