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
	"minim/uncertainty/strengths"
)

// paperOf is a paper about a result with a value and an expanded uncertainty.
func paperOf(value, expanded float64) *Paper {
	r := route.Result{Route: &route.Route{Name: "r"}, Possible: true, Informative: true, MadeML: 10}
	r.Analytic = uncertainty.Analytic{Value: value, StandardUncertainty: expanded / 2, DegreesOfFreedom: math.Inf(1), CoverageProbability: 0.95, CoverageFactor: 2, ExpandedUncertainty: expanded}
	r.Quoted = uncertainty.Quoted{Lower: value - expanded, Upper: value + expanded}
	target, err := strengths.Parse("100 g/L")
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
	_, err := strengths.Parse("1 of none")
	require.ErrorAs(t, err, &e)
	units := strings.Split(strings.TrimPrefix(e.Hint, "write one of "), ", ")
	assert.ElementsMatch(t, units, slices.Collect(maps.Keys(quantities)))
	assert.Subset(t, units, slices.Collect(maps.Keys(counted)))
}

// A simulated quotation has mean, standard deviation and interval of the simulation, says
// which interval it is, and takes its digits from itself (constructed).
func TestSimulatedStatement(t *testing.T) {
	p := paperOf(100, 10)
	r := &p.Results[0]
	r.CrossCheck = uncertainty.CrossCheck{OfExpanded: 0.4, Cause: "skew"}
	r.Quoted = uncertainty.Quoted{Lower: 97.4444, Upper: 108.1234, Simulated: true, Value: 102.3456, StandardUncertainty: 2.7777}
	text := p.statement()
	for _, part := range []string{"c = 102.3 g/L is the mean", "standard deviation 2.78 g/L", "probabilistically symmetric interval", "from 97.4 to 108.1 g/L: 2.5 % lie below it", "u = 5.00 g/L"} {
		assert.Contains(t, text, part)
	}
	assert.NotContains(t, text, "±")
	assert.Contains(t, p.method(), "102.3 g/L (mean of ")
	r.Quoted.StandardUncertainty = math.NaN()
	assert.Contains(t, p.statement(), "it has no standard deviation")
	assert.NotContains(t, p.statement(), "NaN")
}

// "Agrees" is not said where u and the standard deviation differ by more than δ, though both
// ends are near, nor where there is no standard deviation; δ and the digits are stated.
func TestAgreement(t *testing.T) {
	p := paperOf(100, 10) // u = 5
	r := &p.Results[0]
	for _, c := range []struct {
		du     float64
		agrees bool
	}{{0.5, true}, {0.51, false}, {math.NaN(), false}} {
		r.CrossCheck = uncertainty.CrossCheck{Agrees: true, Tolerance: 0.5, DLow: 0.1, DHigh: 0.2, DU: c.du, OfExpanded: 0.02}
		assert.Equal(t, c.agrees, strings.Contains(checked(p.Comparison, r), "agrees"), "%v", c.du)
		assert.Contains(t, p.criterion(), "δ = 0.5 g/L, that is half a unit of the last digit of u where u is given with 1 significant digit")
		assert.Contains(t, p.criterion(), "lower ends differ by 0.10 g/L, the upper ones by 0.20 g/L")
		assert.NotContains(t, p.criterion(), "NaN")
	}
}
