package kits

import (
	"fmt"

	"minim/equipment"
	"minim/equipment/quantity"
	"minim/report/words/clause"
)

// Row is what a report says of an instrument, a balance or one for volumes: its name, size and
// display, class, limit of error or what it errs by, and how far that can be trusted.
func Row(name string, b *equipment.Balance, m *equipment.Measure) []string {
	const stated = "as the kit states"
	if b != nil {
		errors := clause.Either(b.Weighing.Known, "u = "+quantity.Grams(b.Weighing.Value)+" for a weighing",
			"repeats within s = "+spreadOf(b, " (assumed)")+", linear within "+linearityOf(b, " (assumed)")+
				clause.When(b.Law == equipment.Independent, " (in each reading anew)"))
		return []string{name, fmt.Sprintf("%s by %s", quantity.Grams(b.Capacity), quantity.Grams(b.Readability)), "", errors, stated}
	}
	size := quantity.Millilitres(m.Capacity) + clause.When(m.Division > 0, " by "+quantity.Millilitres(m.Division))
	class, source := "", stated
	if m.Class != nil && (m.Bias.ClassLimit || m.Bias.ByClass) {
		class, source = m.Class.String(), m.Class.Trust+supersededBy(", ", m.Class)
	}
	limit := "±" + quantity.Millilitres(quantity.Round(m.Limit(m.Capacity), 3))
	switch {
	case m.Kind.Traits().Counts:
		size, limit = "drops of "+quantity.Millilitres(m.Capacity)+ofLiquid(m), ""
	case m.Bias.Shape == equipment.Gauss:
		limit = "u = " + quantity.Millilitres(quantity.Round(m.Bias.Limit, 3))
	case m.Limit(m.Capacity) == 0:
		limit = "none"
	}
	return []string{name, size, class, limit + byReadings(m), source}
}

// byReadings says where own readings count beside the limit, or without it.
func byReadings(m *equipment.Measure) (text string) {
	for i := range m.Judged {
		if j := &m.Judged[i]; j.Counts() {
			text += "; " + j.Where().String() + " the mean of its readings counts " + standings[j.Standing]
		}
	}
	return text
}
