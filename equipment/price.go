package equipment

import (
	"math"
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
