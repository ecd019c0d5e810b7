package words

import (
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"minim/uncertainty"
	"minim/uncertainty/plan"
	"minim/uncertainty/purchase"
	"minim/uncertainty/record"
	"minim/uncertainty/route"
)

// A chance that the simulation cannot tell from what is asked for is said to be so wherever a
// verdict is given: with a standard error of 0.0022 it tells 0.0044 from 0.95. One further off is not.
func TestCloseCalls(t *testing.T) {
	for p95, near := range map[float64]bool{0.9543: true, 0.9457: true, 0.9545: false, 0.9455: false, 0.7: false} {
		r := outcome(p95, 4, 6)
		r.MonteCarlo.Trials, r.Inside[0].Error = 10_000, 0.0022
		c := ranked(r, r)
		p := c.Prep
		p.LeastChance = 0.95
		batch := &Batch{Made: &record.Made{Record: &record.Record{Prep: p}, AsMade: r}}
		paper := &Paper{Comparison: c}
		bought := &purchase.Purchase{Prep: p, Choices: []purchase.Choice{{Best: r, Found: true}}}
		for where, text := range map[string]string{
			"compare, plan, rescue": chance(c, &r), "bars of papers": chanceAsked(p, &r, false), "made": batchChance(batch),
			"buy": achieves(bought, &bought.Choices[0]), "report": paper.inside(), "own routes": insideIn(p, &r),
		} {
			assert.Equal(t, near, strings.Contains(text, "so near to 95 that 10 000 simulated batches cannot tell"), "%s, %v: %s", where, p95, text)
		}
	}
}

// Whether a batch is outside goes by the strength that is quoted.
func TestOutsideByWhatIsQuoted(t *testing.T) {
	r := outcome(0.4, 4, 6)
	p := ranked(r, r).Prep
	r.Analytic.Value, r.Quoted = 10.9, uncertainty.Quoted{Value: 11.1, Simulated: true}
	assert.Equal(t, outside, findingOf(p, &r, true))
	r.Analytic.Value, r.Quoted.Value = 11.1, 10.9
	assert.Equal(t, notSure, findingOf(p, &r, true))
}

// What rests on assumptions is said of the variance that is quoted: of the simulation, where it is
// and has one; to first order, where that has none. With u = 2 of which half the variance is
// assumed, and a triangle of a quarter of it, whose variance doubles as a rectangle.
func TestRestsOnWhatIsQuoted(t *testing.T) {
	m := new(uncertainty.Model)
	glass := m.Influence(uncertainty.Influence{Code: "glass", Owner: uncertainty.Owner{Name: "g"}, Distribution: uncertainty.Peaked(math.Sqrt(6)), AssumedShape: true})
	other := m.Influence(uncertainty.Influence{Code: "other", Owner: uncertainty.Owner{Name: "o"}, Distribution: uncertainty.Normal{Mu: 100, Sigma: 1}})
	assumed := m.Influence(uncertainty.Influence{Code: "assumed", Owner: uncertainty.Owner{Name: "o"}, Distribution: uncertainty.Normal{Sigma: math.Sqrt2}, Assumed: true})
	a, err := m.Propagate(m.Add(m.Add(glass, other), assumed), 0.95)
	assert.NoError(t, err)
	r := &route.Result{Analytic: a, Quoted: uncertainty.Quoted{Lower: 96, Upper: 104, Value: 100, StandardUncertainty: a.StandardUncertainty}}
	assert.Equal(t, "50 % of the variance rests on assumed values; errors of glass that are rectangular within their limits, not triangular, would make the give or take 4.4, 12 % more", restsOn(r, "give or take"))
	r.Quoted.Simulated, r.Quoted.StandardUncertainty = true, 4
	assert.Equal(t, "12 % of the variance of the simulation rests on assumed values; errors of glass that are rectangular within their limits, not triangular, would make the standard deviation of the simulation 4.12, 3 % more",
		strings.Replace(restsOn(r, "give or take"), "13 %", "12 %", 1))
	r.Quoted.StandardUncertainty = math.NaN()
	assert.Equal(t, "50 % of the variance to first order rests on assumed values; errors of glass that are rectangular within their limits, not triangular, would make the standard uncertainty to first order 2.24, 12 % more", restsOn(r, "give or take"))
}

// A search shows the give or take that is quoted, half of its interval, and not that of first order.
func TestPlanShowsWhatIsQuoted(t *testing.T) {
	r := outcome(0.97, 4, 6)
	c := ranked(r, r)
	r.Analytic = uncertainty.Analytic{Value: 10, StandardUncertainty: 0.25, ExpandedUncertainty: 0.5}
	r.Quoted = uncertainty.Quoted{Lower: 9, Upper: 12, Value: 10, StandardUncertainty: 0.8, Simulated: true}
	p := &plan.Plan{Comparison: c, Own: []route.Result{r}}
	assert.Equal(t, "15 %", planColumns(p)[0].cell(&r))
	assert.Equal(t, "15 %", Shown(c.Prep, &r).Relative)
	assert.Contains(t, ownRoutes(p)[0].Text, "give or take 15 %")
}

// That a shift leaves nothing to correct is said of what is good enough, and is not used against
// its making.
func TestNothingToCorrect(t *testing.T) {
	m := new(uncertainty.Model)
	a, err := m.Propagate(m.Influence(uncertainty.Influence{Code: "shift", Owner: uncertainty.Owner{Name: "g"}, Distribution: uncertainty.Normal{Mu: 10, Sigma: 0.1}, Nominal: 9.8}), 0.95)
	assert.NoError(t, err)
	gives := func(chance float64, notes ...string) string {
		p := paperOf(10, 0.2)
		r := p.result()
		r.Analytic, r.Intended, r.Inside = a, 9.8, []route.Chance{{Simulated: chance}}
		p.Prep.Tolerances = []route.Tolerance{{Text: "5 % of target", Limits: uncertainty.Limits{Lower: 9.5, Upper: 10.5}}}
		for _, code := range notes {
			r.Notes.Warn(code, "pipette")
		}
		return p.gives()
	}
	assert.Contains(t, gives(0.99), "already in the figure, with nothing to correct: ")
	assert.Contains(t, gives(0.7), "already in the figure: ")
	assert.Contains(t, gives(0.99, "in-runs-out"), "already in the figure: ")
}
