package plan

import (
	"fmt"

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
func noRoute(p *route.Prep, o Options) error {
	largest := 0.0
	for _, m := range p.Kit.Measures {
		if m.Kind.Receives() {
			largest = max(largest, m.Capacity)
		}
	}
	switch {
	case len(p.Kit.Balances)+len(p.Stocks)+len(p.Packets) == 0:
		return &NoRouteError{"there is no balance, and the prep names no stock and no packet"}
	case largest == 0 && !p.Solvent.Density.Known:
		return &NoRouteError{"there is no vessel to make a solution in"}
	case largest < p.Volume:
		return &NoRouteError{fmt.Sprintf("%s are wanted, and the largest vessel holds %s", equipment.Millilitres(p.Volume), equipment.Millilitres(largest))}
	case o.strongest(p) < p.TargetConcentration():
		return &NoRouteError{"the target is stronger than a solution may be"}
	case len(p.Kit.Balances) == 0:
		return &NoRouteError{"none from what it starts with comes near to the target"}
	}
	return &NoRouteError{fmt.Sprintf("none keeps the limits with up to %d dilutions", o.Steps)}
}
