package plan

import (
	"fmt"
	"strings"

	"minim/equipment"
	"minim/uncertainty/route"
)

// NoRouteError reports a bench that allows no route.
type NoRouteError struct {
	// Reason is the most likely one.
	Reason string
}

func (e *NoRouteError) Error() string { return "this bench allows no route: " + e.Reason }

// noRoute finds the most likely reason.
func noRoute(p *route.Prep, o Options, notSearched []string) error {
	largest := 0.0
	for _, m := range p.Kit.Measures {
		if m.Kind.Receives() {
			largest = max(largest, m.Capacity)
		}
	}
	reason := "none comes near to the target"
	switch limited := o.LeftOver+o.Volume+o.Solute+o.Strongest+p.Solute.Solubility > 0 || len(o.Without) > 0; {
	case !p.CountsMass() && len(p.Stocks) == 0:
		return &NoRouteError{"the prep names no stock, and " + p.WeighingNeeds()}
	case len(p.Kit.Balances)+len(p.Stocks)+len(p.Packets) == 0:
		reason = "there is no balance, and the prep names no stock and no packet"
	case largest == 0:
		reason = "there is no vessel to make a solution in"
	case largest < p.Volume:
		reason = fmt.Sprintf("%s are wanted, and the largest vessel holds %s", equipment.Millilitres(p.Volume), equipment.Millilitres(largest))
	case o.strongest(p) < p.TargetConcentration():
		reason = "the target is stronger than a solution may be"
	case limited:
		reason = "none that comes near to the target keeps the limits"
	}
	if len(notSearched) > 0 {
		reason += "; not searched: " + strings.Join(notSearched, "; ")
	}
	return &NoRouteError{reason}
}
