package beside

import (
	"minim/equipment/quantity"
	"minim/report/words/clause"
	"minim/uncertainty/route"
)

// evaporates says by how much the solvent that evaporates raises a strength; "" where none is
// counted. Its influences lie between nothing and the most, so that the mean is half of that.
func evaporates(r *route.Result) string {
	mean := 0.0
	for _, s := range r.Analytic.Shifts() {
		if s.Group.Kind == route.Evaporation {
			mean += s.Sum / r.Analytic.Value
		}
	}
	assumed := false
	for i := range r.Analytic.Budget {
		line := &r.Analytic.Budget[i]
		assumed = assumed || line.Group.Kind == route.Evaporation && line.Assumed
	}
	if !(mean > 0) {
		return ""
	}
	return "makes the solution 0 to " + quantity.Percent(2*mean) + " stronger, " + quantity.Percent(mean) + " on average, " +
		clause.Either(assumed, "within a factor of 2; how long and wide vessels, and how often bottles, are open is assumed where it is not stated (open, mouth, opened)", "as the prep states")
}
