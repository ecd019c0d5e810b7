package words

import (
	"maps"
	"math"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"minim/equipment"
	"minim/equipment/quantity"
	"minim/uncertainty"
	"minim/uncertainty/route"
)

// paperOf is a paper about a result with a value and an expanded uncertainty.
func paperOf(value, expanded float64) *Paper {
	r := route.Result{Route: &route.Route{Name: "r"}, Possible: true, Informative: true, MadeML: 10}
	r.Analytic = uncertainty.Analytic{Value: value, StandardUncertainty: expanded / 2, DegreesOfFreedom: math.Inf(1), CoverageProbability: 0.95, CoverageFactor: 2, ExpandedUncertainty: expanded}
	r.Quoted = uncertainty.Quoted{Lower: value - expanded, Upper: value + expanded}
	target, err := route.ParseStrength("100 g/L")
	if err != nil {
		panic(err)
	}
	p := &route.Prep{Kit: new(equipment.Kit), Target: target, Volume: 10, LeastChance: 0.95}
	p.Solute.Name, p.Solvent.Name = "urea", "water"
	stock := &route.Stock{Name: "stock", Strength: route.Estimate{Value: value, Known: true}, Unit: target.Unit}
	r.Route.Steps = []route.Step{{Verb: route.Start, Stock: stock}}
	c := &route.Comparison{Prep: p, Results: []route.Result{r}, Settings: uncertainty.Settings{Coverage: 0.95}}
	return &Paper{Comparison: c}
}

// Every unit of strength is of a kind of quantity, and what a unit counts is said of units.
func TestUnitsHaveQuantities(t *testing.T) {
	var e *quantity.Error
	_, err := route.ParseStrength("1 of none")
	require.ErrorAs(t, err, &e)
	units := strings.Split(strings.TrimPrefix(e.Hint, "write one of "), ", ")
	assert.ElementsMatch(t, units, slices.Collect(maps.Keys(quantities)))
	assert.Subset(t, units, slices.Collect(maps.Keys(counted)))
}
