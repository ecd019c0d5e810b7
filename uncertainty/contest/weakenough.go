package contest

import (
	"math"
	"slices"

	"minim/report/words/note"
	"minim/uncertainty/route"
	"minim/uncertainty/strengths"
)

// Strongest is the concentration in g/mL, with a little room for rounding, that no solution may pass
// which is made: by the limits of a search, and since no more dissolves, or not easily, unless that is what is
// wanted; infinite without either.
func Strongest(p *route.Prep, l route.Limits) float64 {
	soluble, _ := p.Soluble()
	if easily := float64(strengths.EasilyDissolved * soluble); p.ConcentrationOf(p.Target.Value) < easily {
		soluble = easily
	}
	most := math.Inf(1)
	for _, limit := range []float64{l.Strongest, soluble} {
		if limit > 0 {
			most = min(most, float64(limit*(1+1e-9)))
		}
	}
	return most
}

// WeakEnough reports whether no solution that a route makes is stronger than may be made.
func WeakEnough(p *route.Prep, l route.Limits, r *route.Route) (bool, error) {
	most := Strongest(p, l)
	if math.IsInf(most, 1) {
		return true, nil
	}
	list, err := p.Solutions(r)
	return !slices.ContainsFunc(list, func(s route.Solution) bool { return s.Concentration > most }), err
}

// LeavesEnough reports whether each step of a route that is still to be gone leaves what the vessel and a rinse keep
// of the solution that it takes from.
func LeavesEnough(r *route.Result) bool {
	return !slices.ContainsFunc(r.Notes.Warnings, func(n note.Note) bool { return n.Code == "takes-nearly-all" && n.Args[0].(int) > r.Route.Made })
}
