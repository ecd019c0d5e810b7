package data

import (
	"context"
	"encoding/json"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"minim/uncertainty"
	read "minim/uncertainty/bench"
	"minim/uncertainty/contest"
	"minim/uncertainty/near"
	"minim/uncertainty/route"
)

const demoPrep = "../../cmd/minim/demo/dye.toml"

func compared(t *testing.T, path string) *route.Comparison {
	t.Helper()
	p, err := read.LoadPrep(context.Background(), path, "")
	require.NoError(t, err)
	c, err := contest.Compare(context.Background(), p, "", uncertainty.Settings{Trials: 20_000, Seed: 7, Coverage: 0.95})
	require.NoError(t, err)
	return c
}

func decoded(t *testing.T, c *route.Comparison) map[string]any {
	t.Helper()
	data := Comparison(c, nil).JSON()
	var whole map[string]any
	require.NoError(t, json.Unmarshal(data, &whole))
	return whole
}

// The names of the JSON, which stay (DEVELOPERS.md, "Habits").
func TestJSONFields(t *testing.T) {
	whole := decoded(t, compared(t, demoPrep))
	assert.Equal(t, "minim.compare/1", whole["schema"])
	assert.Equal(t, "% w/v", whole["strength_unit"])
	assert.Equal(t, "two dilutions", whole["use"])
	r := whole["routes"].([]any)[5].(map[string]any)
	for part, names := range map[string][]string{
		"analytic": {"value", "standard_uncertainty", "effective_degrees_of_freedom", "coverage_probability", "coverage_factor",
			"expanded_uncertainty", "lower", "upper", "conformance_probability"},
		"monte_carlo": {"trials", "seed", "mean", "standard_deviation", "lower", "upper", "shortest_lower", "shortest_upper", "conformance_probability"},
		"cross_check": {"agrees", "tolerance", "d_low", "d_high", "of_expanded", "cause"},
		"quoted":      {"lower", "upper", "from"},
	} {
		for _, name := range names {
			assert.Contains(t, r[part], name, part)
		}
	}
	for _, name := range []string{"name", "possible", "reason", "informative", "dilutions", "operations", "intended",
		"solute_g", "made_mL", "left_over_mL", "warnings", "assumed", "not_counted"} {
		assert.Contains(t, r, name)
	}
	for _, name := range []string{"influence", "owner", "shared", "standard_uncertainty", "unit", "sensitivity", "contribution", "share", "assumed"} {
		assert.Contains(t, r["budget"].([]any)[0], name)
	}
}

func TestJSONValues(t *testing.T) {
	c := compared(t, demoPrep)
	whole := decoded(t, c)
	routes := whole["routes"].([]any)
	r, result := routes[5].(map[string]any), &c.Results[5]
	analytic := r["analytic"].(map[string]any)
	assert.Equal(t, result.Analytic.Value, analytic["value"], "full precision")
	assert.Nil(t, analytic["effective_degrees_of_freedom"], "infinite is null")
	assert.Equal(t, result.Chance(), r["monte_carlo"].(map[string]any)["conformance_probability"])
	assert.Equal(t, "analytic", r["quoted"].(map[string]any)["from"])
	sum := 0.0
	for _, line := range r["budget"].([]any) {
		sum += line.(map[string]any)["share"].(float64)
	}
	near.Absolute(t, "sum of the shares", 1, sum, 1e-12)

	impossible := routes[0].(map[string]any)
	assert.Equal(t, false, impossible["possible"])
	assert.NotEmpty(t, impossible["reason"])
	for _, name := range []string{"intended", "analytic", "monte_carlo", "cross_check", "quoted", "made_mL"} {
		assert.Nil(t, impossible[name], name)
	}
	assert.Equal(t, []any{}, impossible["budget"])

	uninformative := routes[1].(map[string]any)
	assert.Equal(t, false, uninformative["informative"])
	assert.NotNil(t, uninformative["analytic"], "an uninformative route still has its numbers")
}

// No tolerance: the chance of being inside is not defined, and null.
func TestJSONWithoutTolerance(t *testing.T) {
	c := compared(t, demoPrep)
	c.Prep.Tolerances = nil
	for i := range c.Results {
		c.Results[i].Inside = nil
	}
	r := decoded(t, c)["routes"].([]any)[5].(map[string]any)
	assert.Nil(t, r["analytic"].(map[string]any)["conformance_probability"])
	assert.Nil(t, r["monte_carlo"].(map[string]any)["conformance_probability"])
	assert.Equal(t, []any{}, r["inside"])
}

func TestNumbersThatAreNotFinite(t *testing.T) {
	data := appendJSON(nil, object{{"a", []float64{math.NaN(), math.Inf(1), math.Inf(-1), 0.1}}, {"b", math.NaN()}})
	assert.Equal(t, `{"a":[null,null,null,0.1],"b":null}`, string(data))
}

// The quoted interval comes from the simulation where the two differ.
func TestJSONQuotedFromSimulation(t *testing.T) {
	c := compared(t, demoPrep)
	c.Results[5].Quoted = uncertainty.Quoted{Lower: 1, Upper: 2, Simulated: true, Value: 1.4, StandardUncertainty: math.NaN()}
	r := decoded(t, c)["routes"].([]any)[5].(map[string]any)
	assert.Equal(t, map[string]any{"lower": 1.0, "upper": 2.0, "from": "monte_carlo", "value": 1.4, "standard_uncertainty": nil, "interval": "probabilistically symmetric interval"}, r["quoted"])
}
