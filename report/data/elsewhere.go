package data

import (
	"minim/uncertainty/route"
)

// elsewhereJSON is where a route aims that does not aim at the target, and the reading
// that brings it there; null where no single one does.
type elsewhereJSON struct {
	Off         number  `json:"off_target"`
	Step        *int    `json:"step"`
	Planned     *number `json:"planned"`
	Reading     *number `json:"reading"`
	Unit        *string `json:"unit"`
	Intended    *number `json:"intended"`
	Conformance *number `json:"conformance_probability"`
}

func elsewhereToJSON(r *route.Result) *elsewhereJSON {
	e := r.Elsewhere
	if e == nil {
		return nil
	}
	out := &elsewhereJSON{Off: number(e.Off)}
	if e.Step > 0 {
		out.Step, out.Unit = &e.Step, orNull(unitOf(&e.Amended))
		out.Planned, out.Reading = some(r.Route.Steps[e.Step-1].Amount), some(e.Amended.Amount)
		out.Intended, out.Conformance = some(e.Intended), some(e.Chance)
	}
	return out
}

// unitOf is the unit of the amount of a step with a reading.
func unitOf(s *route.Step) string {
	switch {
	case s.Balance != nil:
		return "g"
	case s.Measure.Kind.Traits().Counts:
		return "drops"
	}
	return "mL"
}
