package data

import (
	"encoding/csv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"minim/report/words"
	"minim/uncertainty/plan"
	"minim/uncertainty/purchase"
	"minim/uncertainty/record"
	"minim/uncertainty/rescue"
	"minim/uncertainty/route"
)

// What may not meet stands in every row of every table, as it stands above the screens: in one
// column what the route of the row brings together, in the next all else that the prep names.
func TestCSVSaysWhatMayNotMeet(t *testing.T) {
	c := paperOf(100, 2).Comparison
	columns := func(d Data) (here, elsewhere []string) {
		rows, err := csv.NewReader(strings.NewReader(string(d.CSV()))).ReadAll()
		require.NoError(t, err)
		require.Greater(t, len(rows), 1)
		last := len(rows[0]) - 1
		require.Equal(t, []string{"may_not_meet", "may_not_meet_elsewhere"}, rows[0][last-1:])
		for _, row := range rows[1:] {
			here, elsewhere = append(here, row[last-1]), append(elsewhere, row[last])
		}
		return here, elsewhere
	}
	batch := &words.Batch{Made: madeOf(c)}
	tables := map[string]Data{
		"compare": Comparison(c, nil),
		"changed": Comparison(c, c),
		"plan":    Plan(&plan.Plan{Comparison: c, Front: []plan.Member{{Result: c.Results[0]}}}, nil),
		"buy":     Purchase(&purchase.Purchase{Prep: c.Prep, Choices: []purchase.Choice{{Name: "x"}}}, nil),
		"rescue":  Rescue(&rescue.Rescue{Comparison: c}),
		"made":    Made(batch),
	}
	for name, table := range tables {
		here, elsewhere := columns(table)
		assert.Empty(t, strings.Join(append(here, elsewhere...), ""), name)
	}
	c.Prep.Stocks = []*route.Stock{{Name: "household bleach"}, {Name: "vinegar"}, {Name: "ammonia"}}
	stops := words.Stops(c.Prep)
	require.Len(t, stops, 2)
	for name, table := range tables {
		here, elsewhere := columns(table)
		for i := range here {
			assert.Equal(t, []string{"", strings.Join(stops, " ")}, []string{here[i], elsewhere[i]}, name)
		}
	}
	c.Results[0].Route = &route.Route{Name: "both", Steps: []route.Step{{Verb: route.Start, Stock: c.Prep.Stocks[0]}, {Verb: route.Start, Stock: c.Prep.Stocks[1]}}}
	here, elsewhere := columns(Comparison(c, nil))
	assert.Contains(t, here[0], "vinegar")
	assert.NotContains(t, here[0], "ammonia")
	assert.Contains(t, elsewhere[0], "ammonia")
	assert.NotContains(t, elsewhere[0], "vinegar")
	for i := range here[1:] {
		assert.Equal(t, []string{"", strings.Join(stops, " ")}, []string{here[1+i], elsewhere[1+i]}, c.Results[1+i].Route.Name)
	}
}

// madeOf is a batch that was made as planned.
func madeOf(c *route.Comparison) *record.Made {
	return &record.Made{Record: &record.Record{Prep: c.Prep, Plan: c.Prep}, AsPlanned: c.Results[0], AsMade: c.Results[0]}
}
