package bench

import (
	"fmt"
	"strings"

	"minim/equipment/benchfile"
	"minim/uncertainty/route"
)

// Template is a record of a route to be filled in: an entry for each step, with a blank
// for its reading and beside it what is planned.
func Template(p *route.Prep, r *route.Route) string {
	var b strings.Builder
	number, key := firstReading(r)
	fmt.Fprintf(&b, `# The record of a batch of %s.
# Write what was really read between the quotes; what stays blank is taken from the plan, and said to be.
# Where another instrument was used, name it as the plan does: take = "2.05 mL", with = "5 mL pipette".
# A record only grows. To change an entry add one with corrects = and its number, by whom and when:
#   20 = { corrects = %d, %s = "…", by = "AK", at = "2026-11-28 10:05" }
# When something was spoilt and done again, say so in its entry, spoilt = "overfilled", and add one for the step.
route = %s
batch = ""

# What was planned when this record was begun: what follows from the batch rests on it,
# whatever becomes of the prep and its kit. Leave it as it is.
%s
[entries]
`, oneLine(p.Solute.Name), number, key, benchfile.Quote(r.Name), digestedPlan(p, r))
	fmt.Fprintf(&b, "1 = { temperature = \"\", by = \"\", at = \"\" }%s\n", plannedTemperature(p))
	for i := range r.Steps {
		s := &r.Steps[i]
		reading := ""
		if s.Measure != nil || s.Balance != nil {
			reading = s.Verb.Traits().Key + ` = "", `
		}
		fmt.Fprintf(&b, "%d = { step = %d, %sby = \"\", at = \"\" }   # planned: %s\n", i+2, i+1, reading, strings.Join(Written(s), ", "))
	}
	return b.String()
}

// firstReading is the entry of the first step that reads something, and its key.
func firstReading(r *route.Route) (number int, key string) {
	for i := range r.Steps {
		if s := &r.Steps[i]; s.Measure != nil || s.Balance != nil {
			return i + 2, s.Verb.Traits().Key
		}
	}
	return 2, "take"
}

func plannedTemperature(p *route.Prep) string {
	t := p.Bench.Temperature
	if !t.Known {
		return "   # not stated in the prep"
	}
	return fmt.Sprintf("   # planned: %v °C, within %v °C", t.Value, p.Bench.Within.Value)
}

// oneLine keeps a name within its line.
func oneLine(text string) string { return strings.Join(strings.Fields(text), " ") }
