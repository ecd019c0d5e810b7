package plan

import (
	"fmt"
	"math"
	"strings"

	"minim/equipment/quantity"
	"minim/uncertainty/route"
)

// NoRouteError reports a bench that allows no route.
type NoRouteError struct {
	// Reason is the most likely one.
	Reason string
}

func (e *NoRouteError) Error() string { return "this bench allows no route: " + e.Reason }

// tooHeavy says why the volume wanted cannot be made by weighing, where a vessel with it is
// too much for each balance that shows its mass; "" where that is not why.
func tooHeavy(p *route.Prep) string {
	if !p.Solvent.Density.Known {
		return ""
	}
	reason, density := "", p.Density(1.1*p.MassFraction(p.TargetConcentration()))
	for _, k := range p.Kit.Balances {
		total := k.Displayed(math.Ceil(p.Volume * density / k.Readability))
		err := p.Carries(route.Step{Verb: route.WeighUpTo, Balance: k, Amount: total})
		if err == nil && total <= k.Capacity {
			return ""
		}
		if err != nil {
			reason = err.Error()
		}
	}
	return reason
}

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
		return &NoRouteError{"the prep names no stock, and " + p.NeedsMass("a mass").Error()}
	case len(p.Kit.Balances)+len(p.Stocks)+len(p.Packets) == 0:
		reason = "there is no balance, and the prep names no stock and no packet"
	case largest < p.Volume && tooHeavy(p) != "":
		reason = tooHeavy(p)
	case largest == 0:
		reason = "there is no vessel to make a solution in"
	case largest < p.Volume:
		reason = fmt.Sprintf("%s are wanted, and the largest vessel holds %s", quantity.Millilitres(p.Volume), quantity.Millilitres(largest))
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
