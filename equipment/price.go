package equipment

import (
	"math"
	"slices"
	"strconv"
)

// Price of an instrument, of 1 g or 1 mL of a material, or of a route; zero when
// it is not stated.
type Price struct {
	Amount   float64
	Currency string
}

// Stated reports whether there is a price; it may be one of 0.
func (p Price) Stated() bool { return p.Currency != "" }

// String prints a price with two decimals or none: "240 EUR", "12.50 EUR".
func (p Price) String() string {
	decimals := 2
	if p.Amount == math.Trunc(p.Amount) {
		decimals = 0
	}
	return strconv.FormatFloat(p.Amount, 'f', decimals, 64) + " " + p.Currency
}

// Currency of the prices of the kit, candidates included; "" without a price.
func (k *Kit) Currency() string {
	for _, list := range []Instruments{k.Instruments, k.Candidates} {
		if i := slices.IndexFunc(list.Balances, func(b *Balance) bool { return b.Price.Stated() }); i >= 0 {
			return list.Balances[i].Price.Currency
		}
		if i := slices.IndexFunc(list.Measures, func(m *Measure) bool { return m.Price.Stated() }); i >= 0 {
			return list.Measures[i].Price.Currency
		}
	}
	return ""
}
