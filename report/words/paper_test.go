package words

import (
	"math"

	"minim/equipment"
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
