package equipment

import (
	"fmt"
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"minim/equipment/benchfile"
	"minim/equipment/quantity"
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

// SameCurrency returns a *quantity.Error unless a price is in the currency of one
// that was stated before, if any; which says of what that one is.
func (p Price) SameCurrency(currency, which string) error {
	if currency == "" || p.Currency == currency {
		return nil
	}
	return &quantity.Error{Message: fmt.Sprintf("is in %s, where %s is in %s", p.Currency, which, currency),
		Hint: "state all prices in one currency"}
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

// price reads an amount and a currency, which is one for the whole kit.
func (r *kitReader) price(t *benchfile.Table) Price {
	text := t.Text("price")
	if text == "" {
		return Price{}
	}
	p, err := parsePrice(text)
	if err == nil {
		err = p.SameCurrency(r.currency, "another price of the kit")
	}
	if err != nil {
		t.FailWith("price", err)
		return Price{}
	}
	r.currency = p.Currency
	return p
}

// parsePrice reads the price of an instrument.
func parsePrice(text string) (Price, error) {
	form := priceForm{`write an amount and a currency, as in "240 EUR"`, "no instrument of a bench has this price"}
	p, err := form.split(text)
	if err != nil {
		return Price{}, err
	}
	return form.checked(p, text)
}

// ParseUnitPrice reads the price of a mass or a volume, "3.20 EUR/g", as that of
// 1 g or 1 mL. Its errors are *quantity.Error.
func ParseUnitPrice(kind quantity.Kind, text string) (Price, error) {
	form := priceForm{fmt.Sprintf(`write an amount, a currency and for how much, as in "3.20 EUR/%s"`, kind.Unit()), "no material has this price"}
	p, err := form.split(text)
	if err != nil {
		return Price{}, err
	}
	currency, unit, divided := strings.Cut(p.Currency, "/")
	if !divided {
		return Price{}, form.fault(text, strconv.Quote(text)+" does not say for how much")
	}
	amount, err := quantity.Parse(kind, "1 "+unit)
	if err != nil {
		return Price{}, form.fault(text, fmt.Sprintf("%q is not a unit of %s", unit, kind))
	}
	return form.checked(Price{p.Amount / amount, currency}, text)
}

// priceForm is how a price is written, and what is said of one that cannot be.
type priceForm struct{ hint, unlikely string }

func (f priceForm) fault(text, message string) error {
	return &quantity.Error{Found: text, Message: message, Hint: f.hint}
}

// split reads an amount; the currency is all that stands after it.
func (f priceForm) split(text string) (Price, error) {
	amount, rest, err := quantity.Split(text)
	switch {
	case err != nil && isNumber(text):
		return Price{}, f.noCurrency(text)
	case err != nil && !strings.ContainsAny(text[:min(1, len(text))], "0123456789+-."):
		return Price{}, f.fault(text, strconv.Quote(text)+" does not start with an amount")
	}
	return Price{amount, rest}, err
}

func (f priceForm) noCurrency(text string) error {
	return f.fault(text, strconv.Quote(text)+" does not say in which currency")
}

// currencyWord is one word or sign: EUR, €, zł, kr.
var currencyWord = regexp.MustCompile(`^[\p{L}\p{Sc}.]+$`)

// checked returns a price that may be stated.
func (f priceForm) checked(p Price, text string) (Price, error) {
	switch {
	case p.Currency == "":
		return Price{}, f.noCurrency(text)
	case !currencyWord.MatchString(p.Currency):
		return Price{}, f.fault(text, strconv.Quote(p.Currency)+" is not a currency")
	case !priceLimit.Holds(p.Amount):
		return Price{}, &quantity.Error{Found: text, Message: f.unlikely}
	}
	return p, nil
}

func isNumber(text string) bool {
	_, err := strconv.ParseFloat(text, 64)
	return err == nil
}
