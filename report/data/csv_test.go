package data

import (
	"bytes"
	"encoding/csv"
	"strconv"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"minim/report/words/note"
	"minim/uncertainty/route"
)

// csvOf reads the CSV of a comparison strictly, a map from name to cell for each
// route.
func csvOf(t *testing.T, c *route.Comparison) (rows []map[string]string) {
	t.Helper()
	data := Comparison(c, nil).CSV()
	records, err := csv.NewReader(bytes.NewReader(data)).ReadAll()
	require.NoError(t, err)
	for _, record := range records[1:] {
		row := map[string]string{}
		for i, name := range records[0] {
			assert.NotContains(t, row, name, "two columns of one name")
			row[name] = record[i]
		}
		rows = append(rows, row)
	}
	return rows
}

func TestCSVValues(t *testing.T) {
	c := compared(t, demoPrep)
	rows := csvOf(t, c)
	require.Equal(t, len(c.Results), len(rows))
	row, r := rows[5], &c.Results[5]
	for name, want := range map[string]float64{
		"analytic_value": r.Analytic.Value, "analytic_standard_uncertainty": r.Analytic.StandardUncertainty,
		"analytic_expanded_uncertainty": r.Analytic.ExpandedUncertainty, "monte_carlo_upper": r.MonteCarlo.Upper,
		"quoted_lower": r.Quoted.Lower, "inside_1_conformance_probability": r.Chance(), "solute_g": r.SoluteGrams,
		"made_mL": r.MadeML, "left_over_mL": r.LeftOverML, "target": c.Prep.Target.Value, "volume_mL": c.Prep.Volume,
	} {
		got, err := strconv.ParseFloat(row[name], 64)
		require.NoError(t, err, name)
		assert.True(t, got == want, "%s: %s, not %v: full precision", name, row[name], want)
	}
	for name, want := range map[string]string{
		"name": "two dilutions", "use": "true", "possible": "true", "strength_unit": "% w/v", "inside_1_tolerance": "7 % of target",
		"analytic_effective_degrees_of_freedom": "", "quoted_from": "analytic", "reason": "", "monte_carlo_trials": "20000",
	} {
		assert.Equal(t, want, row[name], name)
	}
	assert.Equal(t, "false", rows[4]["use"])
}

// An impossible route says so and why; its figures are empty.
func TestCSVOfImpossible(t *testing.T) {
	c := compared(t, demoPrep)
	row := csvOf(t, c)[0]
	assert.Equal(t, "false", row["possible"])
	assert.Equal(t, c.Results[0].Reason.String(), row["reason"])
	for _, name := range []string{"intended", "analytic_value", "monte_carlo_mean", "cross_check_agrees", "quoted_from", "made_mL", "inside_1_tolerance"} {
		cell, there := row[name]
		assert.True(t, there, name)
		assert.Equal(t, "", cell, name)
	}
}

func TestCSVColumnsFollowTheTolerances(t *testing.T) {
	c := compared(t, demoPrep)
	c.Prep.Tolerances = append(c.Prep.Tolerances, route.Tolerance{Text: "2 % of target"})
	c.Results[5].Inside = append(c.Results[5].Inside, route.Chance{Simulated: 0.25})
	row := csvOf(t, c)[5]
	assert.Equal(t, "2 % of target", row["inside_2_tolerance"])
	assert.Equal(t, "0.25", row["inside_2_conformance_probability"])

	c.Prep.Tolerances = nil
	for i := range c.Results {
		c.Results[i].Inside = nil
	}
	row = csvOf(t, c)[5]
	assert.NotContains(t, row, "inside_1_tolerance")
	assert.Equal(t, "", row["monte_carlo_conformance_probability"])
}

// No cell starts as a formula does, whatever the names are; numbers stay numbers.
func TestCSVIsHarmless(t *testing.T) {
	c := compared(t, demoPrep)
	for i, name := range []string{"=1+1", "+1", "-1", "@SUM(A1)", "\t=1", "\r=1", "a,\"b\"\nc", "plain - =1"} {
		c.Results[i].Route.Name = name
	}
	c.Results[2].Notes.Warnings = []note.Note{note.Of("property-lacking", "", "=cmd"), note.Of("property-lacking", "", "second")}
	rows := csvOf(t, c)
	for i, want := range []string{"'=1+1", "'+1", "'-1", "'@SUM(A1)", "'\t=1", "'\r=1", "a,\"b\"\nc", "plain - =1"} {
		assert.Equal(t, want, rows[i]["name"])
	}
	assert.Equal(t, "'=cmd; second", rows[2]["warnings"])
	// The lower end of what could be nothing at all is below zero.
	assert.Equal(t, "-", rows[1]["analytic_lower"][:1])
}

func TestLookUpRefusesWhatIsNotThere(t *testing.T) {
	whole := object{{"a", nil}, {"b", []object{{{"c", "d"}}}}}
	assert.Equal(t, nil, lookUp(whole, []string{"a", "x", "y"}))
	assert.Equal(t, "d", lookUp(whole, []string{"b", "1", "c"}))
	assert.Equal(t, nil, lookUp(whole, []string{"b", "2", "c"}))
	for _, path := range [][]string{{"x"}, {"b", "c"}, {"b", "1", "c", "e"}} {
		assert.Panics(t, func() { lookUp(whole, path) })
	}
}
