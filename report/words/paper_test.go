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
	"minim/report/words/inline"
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
	text := inline.Plain(p.statement())
	for _, part := range []string{"γ = 102.3 g/L is the mass concentration of urea in the solution at 20 °C: the mean of the simulation", "standard deviation 2.78 g/L", "probabilistically symmetric interval", "from 97.4 to 108.1 g/L: 2.5 % lie below it", "u = 5.00 g/L"} {
		assert.Contains(t, text, part)
	}
	assert.NotContains(t, text, "±")
	assert.Contains(t, p.method(), " = 102.3 g/L, between 97.4 and 108.1 g/L with a probability of 95 %")
	r.Quoted.StandardUncertainty = math.NaN()
	assert.Contains(t, p.statement(), "which has no standard deviation")
	assert.NotContains(t, p.statement(), "NaN")
	line := uncertainty.Contribution{Contribution: 1}
	line.DegreesOfFreedom, line.Set.Owner.Name = 2, "pipette"
	r.Analytic.Budget, r.MonteCarlo.StandardDeviation = []uncertainty.Contribution{line}, math.NaN()
	assert.Contains(t, p.statement(), "JCGM 101), which has no standard deviation, since three readings of the pipette are too few for that. The prob")
	assert.Contains(t, checked(p.Comparison, r, "give or take"), "there is no standard deviation to compare, since three readings of the pipette are too few for that")
	// Two readings: t with one degree of freedom has no mean either.
	r.Analytic.Budget[0].DegreesOfFreedom, r.MonteCarlo.Mean = 1, math.NaN()
	for text, parts := range map[string]string{
		p.statement():                            "what the model gives with every influence at its best estimate. The strengths simulated (propagation of distributions, JCGM 101) have neither a mean nor a standard deviation, since two readings of the pipette",
		checked(p.Comparison, r, "give or take"): "there is neither a mean nor a standard deviation to compare, since two readings", p.method(): "JCGM 101, and the model with every influence at its best estimate)",
		coverage(p.Comparison, r): "the model at its best estimates, and the probabilistically symmetric interval of the simulation, about 95 %",
	} {
		assert.Contains(t, text, parts)
		assert.NotContains(t, text, "NaN")
	}
}

// Strengths have the symbols of their quantities; what is in % w/v stands in g/L beside it, with the same digits.
func TestSymbolsAndGramsPerLitre(t *testing.T) {
	p := paperOf(100, 10)
	for unit, start := range map[string]string{"% w/v": "γ = (100 ± 10) % w/v = (1000 ± 100) g/L is the mass concentration of urea", "mol/L": "c = (100 ± 10) mol/L is the amount-of-substance concentration", "% w/w": "w = (100 ± 10) % w/w is the mass fraction", "% v/v": "σ = (100 ± 10) % v/v is the volume"} {
		p.Prep.Target.Unit.Name = unit
		assert.Contains(t, inline.Plain(p.statement()), start)
		assert.Contains(t, inline.Plain(p.method()), start[:strings.Index(start, ")")]) // the same in what is quoted
	}
	for number, want := range map[string]string{"0.0598": "0.598", "0.0020": "0.020", "1.5": "15", "12": "120", "-0.05": "-0.5", "0.60": "6.0", "0": "0"} {
		assert.Equal(t, want+" g/L", gramsPerLitre("% w/v", "%s", number))
	}
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
		assert.Equal(t, c.agrees, strings.Contains(checked(p.Comparison, r, "give or take"), "agrees"), "%v", c.du)
		assert.Contains(t, inline.Plain(p.criterion()), "δ = 0.5 g/L, that is half a unit of the last digit of u where it is given with 1 significant digit")
		assert.Contains(t, p.criterion(), "lower ends differ by 0.10 g/L, the upper ones by 0.20 g/L")
		assert.NotContains(t, p.criterion(), "NaN")
	}
}
