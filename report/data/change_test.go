package data

import (
	"bytes"
	"context"
	"encoding/csv"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"minim/equipment/benchfile"
	"minim/report/words/note"
	"minim/uncertainty"
	read "minim/uncertainty/bench"
	"minim/uncertainty/contest"
	"minim/uncertainty/route"
)

// comparedWith compares the demo on its kit with changes.
func comparedWith(t *testing.T, changes ...string) *route.Comparison {
	t.Helper()
	var list []benchfile.Change
	for _, text := range changes {
		c, err := benchfile.ParseChange("--change", text)
		require.NoError(t, err)
		list = append(list, c)
	}
	p, err := read.LoadPrep(context.Background(), demoPrep, "")
	require.NoError(t, err)
	p, err = read.Changed(p, list)
	require.NoError(t, err)
	c, err := contest.Compare(context.Background(), p, "", uncertainty.Settings{Trials: 20_000, Seed: 7, Coverage: 0.95})
	require.NoError(t, err)
	return c
}

// figures gives a route the figures that the section shows.
func figures(r *route.Result, value, u, chance float64) {
	r.Possible, r.Informative = true, true
	r.Analytic.Value, r.Analytic.ExpandedUncertainty = value, u
	r.Quoted.Simulated = false
	r.Inside = []route.Chance{{Simulated: chance}}
}

// Two comparisons of two routes (constructed): 90.04 against 95.56 in 100 is a
// difference of 5.52, so that another route reaches what is asked for.
func constructed(t *testing.T) (c, before *route.Comparison) {
	c, before = comparedWith(t, "25 mL flask: count = 2"), new(route.Comparison)
	*before = *c
	before.Results = slices.Clone(c.Results)
	for _, of := range []*route.Comparison{c, before} {
		of.Results = of.Results[4:6]
		figures(&of.Results[0], 0.0594, 0.0015, 0.9004)
		figures(&of.Results[1], 0.0601, 0.0021, 0.981)
		of.Verdict = route.Verdict{Use: 1, Meets: true}
	}
	figures(&c.Results[0], 0.0596, 0.0011, 0.9556)
	c.Verdict.Use = 0
	return c, before
}

// Where no route was possible none is to be used.
func TestNothingPossibleInJSON(t *testing.T) {
	_, before := constructed(t)
	before.Verdict = route.Verdict{Use: -1}
	for i := range before.Results {
		before.Results[i] = route.Result{Route: before.Results[i].Route, Reason: note.Of("property-lacking", "", "the bench is empty")}
	}
	assert.Nil(t, lookUp(comparison(before), []string{"use"}))
	assert.Contains(t, lookUp(own(&before.Results[0]), []string{"reason"}), "the bench is empty")
}

// The rows of both kits stand in one table, of which those of the changed kit are
// those that it has by itself.
func TestCSVOfAChange(t *testing.T) {
	c, before := constructed(t)
	data := Comparison(c, before).CSV()
	rows, err := csv.NewReader(bytes.NewReader(data)).ReadAll()
	require.NoError(t, err)
	require.Equal(t, 5, len(rows))
	var kits []string
	for _, row := range rows {
		kits = append(kits, row[0])
	}
	assert.Equal(t, []string{"kit", "as it is", "as it is", "changed", "changed"}, kits)
	alone := csvRows(c)
	assert.Equal(t, alone[0], rows[0][1:])
	assert.Equal(t, alone[1:], [][]string{rows[3][1:], rows[4][1:]})
	assert.Equal(t, "0.9004", lookUpColumn(rows, 1, "inside_1_conformance_probability"))
}

func lookUpColumn(rows [][]string, row int, name string) string {
	for i, head := range rows[0] {
		if head == name {
			return rows[row][i]
		}
	}
	return "there is no column " + name
}
