package equipment

import (
	"fmt"
	"math"
	"regexp"
	"strconv"
	"strings"

	"minim/equipment/benchfile"
	"minim/equipment/quantity"
)

// Price of an instrument, in the currency of its kit; zero when it is not stated.
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

// currencyWord is one word or sign: EUR, €, zł, kr.
var currencyWord = regexp.MustCompile(`^[\p{L}\p{Sc}.]+$`)

// price reads an amount and a currency, which is one for the whole kit.
func (r *kitReader) price(t *benchfile.Table) Price {
	const hint = `write an amount and a currency, as in "240 EUR"`
	text := t.Text("price")
	if text == "" {
		return Price{}
	}
	amount, currency, err := quantity.Split(text)
	switch {
	case err != nil && isNumber(text):
		t.Fail("price", strconv.Quote(text)+" does not say in which currency", hint)
	case err != nil && !strings.ContainsAny(text[:1], "0123456789+-."):
		t.Fail("price", strconv.Quote(text)+" does not start with an amount", hint)
	case err != nil:
		t.FailWith("price", err)
	case !currencyWord.MatchString(currency):
		t.Fail("price", strconv.Quote(currency)+" is not a currency", hint)
	case amount < 0 || amount > largest:
		t.Fail("price", "no instrument of a bench has this price", "")
	case r.currency != "" && r.currency != currency:
		t.Fail("price", fmt.Sprintf("is in %s, where another price of the kit is in %s", currency, r.currency), "state all prices in one currency")
	default:
		r.currency = currency
		return Price{amount, currency}
	}
	return Price{}
}

func isNumber(text string) bool {
	_, err := strconv.ParseFloat(text, 64)
	return err == nil
}
