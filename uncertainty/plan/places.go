package plan

import (
	"fmt"
	"strings"

	"minim/uncertainty/route"
)

// places are those of instruments, stocks and packets in their files, from 1 on: routes
// are put in order by them, and not by names.
type places map[any]int

func placesIn(p *route.Prep) places {
	of := make(places)
	for _, k := range p.Kit.Balances {
		of[k] = len(of) + 1
	}
	for _, k := range p.Kit.Measures {
		of[k] = len(of) + 1
	}
	for _, k := range p.Stocks {
		of[k] = len(of) + 1
	}
	for _, k := range p.Packets {
		of[k] = len(of) + 1
	}
	return of
}

// signature holds all that the steps of a route do, and with what.
func (of places) signature(r *route.Route) string {
	var text strings.Builder
	for i := range r.Steps {
		s := &r.Steps[i]
		place := of[s.Measure]
		switch {
		case s.Balance != nil:
			place = of[s.Balance]
		case s.Measure == nil && s.Stock != nil:
			place = of[s.Stock]
		case s.Packet != nil:
			place = of[s.Packet]
		}
		fmt.Fprintf(&text, "%s %v %06d ", s.Verb, s.Amount, place)
	}
	return text.String()
}
