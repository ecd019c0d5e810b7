package verb

import (
	"fmt"
	"math"

	"minim/equipment"
	"minim/equipment/quantity"
	"minim/uncertainty/route"
)

// AmountInFile is the amount of a step that reads an instrument, as a file holds it.
func AmountInFile(s *route.Step) string {
	if s.Balance != nil {
		return displayed(s.Balance, s.Amount)
	}
	return measured(s)
}

// InstrumentInFile is the key by which a step names its instrument, and the name.
func InstrumentInFile(s *route.Step) (key, name string) {
	if s.Balance != nil {
		return "on", s.Balance.Name
	}
	return s.Verb.Traits().Instrument, s.Measure.Name
}

// OfWhich names the solution that a step says it takes from or strengthens with: a stock, or "step 2"; "" where
// it says none.
func OfWhich(s *route.Step) string {
	switch {
	case s.Verb == route.Start || s.Stock == nil && s.From == 0:
		return ""
	case s.Stock != nil:
		return s.Stock.Name
	}
	return fmt.Sprintf("step %d", s.From)
}

// displayed is a reading as the balance shows it, or in full when it cannot.
func displayed(b *equipment.Balance, reading float64) string {
	shown := b.Display(reading)
	if g, err := quantity.Parse(quantity.Mass, shown); err == nil && math.Abs(g-reading) <= 1e-12*reading {
		return shown
	}
	return quantity.Plain(reading) + " g"
}

// measured is the amount of a step that measures a volume: in drops, in µL where it
// is small or a piston's below 1 mL, or in mL.
func measured(s *route.Step) string {
	switch {
	case s.Measure.Kind.Traits().Counts && s.Amount == 1:
		return "1 drop"
	case s.Measure.Kind.Traits().Counts:
		return quantity.Plain(s.Amount) + " drops"
	case s.Amount < 0.01 || s.Measure.Kind.Traits().Dial && s.Amount < 1:
		return quantity.Plain(1000*s.Amount) + " µL"
	}
	return quantity.Plain(s.Amount) + " mL"
}
