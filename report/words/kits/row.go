package kits

import (
	"fmt"
	"strings"

	"minim/equipment"
	"minim/equipment/quantity"
)

// BalanceRow is what a report says of a balance: its name, range and display, what it errs by, and
// how far that can be trusted.
func BalanceRow(name string, b *equipment.Balance) []string {
	errors := "repeats within s = " + spreadOf(b) + ", linear within " + linearityOf(b)
	if b.Weighing.Known {
		errors = "u = " + quantity.Grams(b.Weighing.Value) + " for a weighing"
	}
	return []string{name, fmt.Sprintf("%s by %s", quantity.Grams(b.Capacity), quantity.Grams(b.Readability)), "", strings.ReplaceAll(errors, assumed, " (assumed)"), "as the kit states"}
}

// MeasureRow is what a report says of an instrument for volumes: its name, size, class, limit of
// error, and how far that can be trusted.
func MeasureRow(name string, m *equipment.Measure) []string {
	size := quantity.Millilitres(m.Capacity)
	if m.Division > 0 {
		size += " by " + quantity.Millilitres(m.Division)
	}
	class, source := "", "as the kit states"
	if m.Class != nil && (m.Bias.ClassLimit || m.Bias.ByClass) {
		class, source = m.Class.String(), m.Class.Trust
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
	return []string{name, size, class, limit, source}
}
