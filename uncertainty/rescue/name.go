package rescue

import (
	"strconv"
	"strings"

	"minim/uncertainty/route"
)

// wayName is "2 mL in 20 mL", or "all + 5 + 1.2 mL": what a way to correct a batch does.
func wayName(steps []route.Step) string {
	name := ""
	for i := range steps {
		s := &steps[i]
		switch s.Verb {
		case route.TakeAll:
			name = "all"
		case route.Take:
			name += ", " + short(s.Amount)
		case route.MakeUpTo:
			name += " in " + short(s.Amount)
		case route.AddSolute:
			name += " + " + s.Balance.Display(s.Amount)
		case route.Add:
			if i > 0 && steps[i-1].Verb == route.Strengthen {
				name += " mL, then"
			}
			name += " + " + short(s.Amount)
		default:
			name += " + " + short(s.Amount)
		}
	}
	if steps[len(steps)-1].Verb != route.AddSolute {
		name += " mL"
	}
	return strings.TrimPrefix(name, ", ")
}

func short(mL float64) string { return strconv.FormatFloat(mL, 'g', -1, 64) }
