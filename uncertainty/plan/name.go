package plan

import (
	"fmt"
	"strconv"
	"strings"

	"minim/uncertainty/route"
)

// nameAll gives each route a name of its own.
func nameAll(routes []*route.Route) {
	used := make(map[string]int)
	for _, r := range routes {
		name := nameOf(r)
		used[name]++
		if n := used[name]; n > 1 {
			name = fmt.Sprintf("%s (%d)", name, n)
		}
		r.Name = name
	}
}

// nameOf is "1.50 g in 25, 2 in 25, 3 + 17 mL": what is weighed and made up, then
// the dilutions, to a mark or with measured solvent.
func nameOf(r *route.Route) string {
	var parts []string
	for i := range r.Steps {
		s := &r.Steps[i]
		switch s.Verb {
		case route.Weigh, route.WeighAliquot:
			parts = append(parts, s.Balance.Display(s.Amount))
		case route.UsePacket:
			parts = append(parts, s.Packet.Name)
		case route.Start:
			parts = append(parts, s.Stock.Name)
		case route.Take:
			parts = append(parts, short(s.Amount))
		case route.WeighUpTo:
			parts[len(parts)-1] += " up to " + s.Balance.Display(s.Amount)
		case route.MakeUpTo:
			parts[len(parts)-1] += " in " + short(s.Amount)
		case route.Add:
			parts[len(parts)-1] += " + " + short(s.Amount)
		}
	}
	name := strings.Join(parts, ", ")
	if verb := r.Steps[len(r.Steps)-1].Verb; verb == route.MakeUpTo || verb == route.Add {
		name += " mL"
	}
	return name
}

func short(mL float64) string { return strconv.FormatFloat(mL, 'g', -1, 64) }
