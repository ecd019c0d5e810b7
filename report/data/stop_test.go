package data

import (
	"encoding/csv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"minim/report/words"
	"minim/uncertainty/plan"
	"minim/uncertainty/record"
	"minim/uncertainty/rescue"
	"minim/uncertainty/route"
)

// What may not meet stands in every row of every table, as it stands above the screens.
func TestCSVSaysWhatMayNotMeet(t *testing.T) {
	c := paperOf(100, 2).Comparison
	column := func(d Data) (cells []string) {
		rows, err := csv.NewReader(strings.NewReader(string(d.CSV()))).ReadAll()
		require.NoError(t, err)
		require.Greater(t, len(rows), 1)
		last := len(rows[0]) - 1
		require.Equal(t, "may_not_meet", rows[0][last])
		for _, row := range rows[1:] {
			cells = append(cells, row[last])
		}
		return cells
	}
	batch := &words.Batch{Made: madeOf(c)}
	tables := map[string]Data{
		"compare": Comparison(c, nil),
		"changed": Comparison(c, c),
		"plan":    Plan(&plan.Plan{Comparison: c, Front: []plan.Member{{Result: c.Results[0]}}}, nil),
		"buy":     Purchase(&plan.Purchase{Prep: c.Prep, Choices: []plan.Choice{{Name: "x"}}}, nil),
		"rescue":  Rescue(&rescue.Rescue{Comparison: c}),
		"made":    Made(batch),
	}
	for name, table := range tables {
		assert.Empty(t, strings.Join(column(table), ""), name)
	}
	c.Prep.Stocks = []*route.Stock{{Name: "household bleach"}, {Name: "vinegar"}}
	require.NotEmpty(t, words.Stops(c.Prep))
	for name, table := range tables {
		for _, cell := range column(table) {
			assert.Equal(t, strings.Join(words.Stops(c.Prep), " "), cell, name)
		}
	}
}

// madeOf is a batch that was made as planned.
func madeOf(c *route.Comparison) *record.Made {
	return &record.Made{Record: &record.Record{Prep: c.Prep, Plan: c.Prep}, AsPlanned: c.Results[0], AsMade: c.Results[0]}
}
