package bench

import (
	"fmt"
	"regexp"
	"strconv"
	"strings"

	"minim/equipment"
	"minim/equipment/benchfile"
	"minim/equipment/quantity"
)

// sameCurrency returns a *quantity.Error unless a price is in the currency of one
// that was stated before, if any; which says of what that one is.
func sameCurrency(p equipment.Price, currency, which string) error {
	if currency == "" || p.Currency == currency {
		return nil
	}
	return &quantity.Error{Message: fmt.Sprintf("is in %s, where %s is in %s", p.Currency, which, currency),
		Hint: "state all prices in one currency"}
}

// price reads an amount and a currency, which is one for the whole kit.
func (r *kitReader) price(t *benchfile.Table) equipment.Price {
	text := t.Text("price")
	if text == "" {
		return equipment.Price{}
	}
	p, err := parsePrice(text)
	if err == nil {
		err = sameCurrency(p, r.currency, anotherPrice)
	}
	if err != nil {
		t.FailWith("price", err)
		return equipment.Price{}
	}
	r.currency = p.Currency
	return p
}

// parsePrice reads the price of an instrument.
func parsePrice(text string) (equipment.Price, error) {
	form := priceForm{`write an amount and a currency, as in "240 EUR"`, "no instrument of a bench has this price"}
	p, err := form.split(text)
	if err != nil {
		return equipment.Price{}, err
	}
	return form.checked(p, text)
}

// parseUnitPrice reads the price of a mass or a volume, "3.20 EUR/g", as that of
// 1 g or 1 mL. Its errors are *quantity.Error.
func parseUnitPrice(kind quantity.Kind, text string) (equipment.Price, error) {
	form := priceForm{fmt.Sprintf(`write an amount, a currency and for how much, as in "3.20 EUR/%s"`, kind.Unit()), "no material has this price"}
	p, err := form.split(text)
	if err != nil {
		return equipment.Price{}, err
	}
	currency, unit, divided := strings.Cut(p.Currency, "/")
	if !divided {
		return equipment.Price{}, form.fault(text, strconv.Quote(text)+" does not say for how much")
	}
	amount, err := quantity.Parse(kind, "1 "+unit)
	if err != nil {
		return equipment.Price{}, form.fault(text, fmt.Sprintf("%q is not a unit of %s", unit, kind))
	}
	return form.checked(equipment.Price{Amount: p.Amount / amount, Currency: currency}, text)
}

// priceForm is how a price is written, and what is said of one that cannot be.
type priceForm struct{ hint, unlikely string }

func (f priceForm) fault(text, message string) error {
	return &quantity.Error{Found: text, Message: message, Hint: f.hint}
}

// split reads an amount; the currency is all that stands after it.
func (f priceForm) split(text string) (equipment.Price, error) {
	amount, rest, err := quantity.Split(text)
	switch {
	case err != nil && isNumber(text):
		return equipment.Price{}, f.noCurrency(text)
	case err != nil && !strings.ContainsAny(text[:min(1, len(text))], "0123456789+-."):
		return equipment.Price{}, f.fault(text, strconv.Quote(text)+" does not start with an amount")
	}
	return equipment.Price{Amount: amount, Currency: rest}, err
}

func (f priceForm) noCurrency(text string) error {
	return f.fault(text, strconv.Quote(text)+" does not say in which currency")
}

// currencyWord is one word or sign: EUR, €, zł, kr.
var currencyWord = regexp.MustCompile(`^[\p{L}\p{Sc}.]+$`)

// checked returns a price that may be stated.
func (f priceForm) checked(p equipment.Price, text string) (equipment.Price, error) {
	switch {
	case p.Currency == "":
		return equipment.Price{}, f.noCurrency(text)
	case !currencyWord.MatchString(p.Currency):
		return equipment.Price{}, f.fault(text, strconv.Quote(p.Currency)+" is not a currency")
	case !quantity.Limits.Price.Holds(p.Amount):
		return equipment.Price{}, &quantity.Error{Found: text, Message: f.unlikely}
	}
	return p, nil
}

func isNumber(text string) bool {
	_, err := strconv.ParseFloat(text, 64)
	return err == nil
}

// readPrices reads the prices of the solute and the solvent, in the currency of
// those of the kit.
func (p prepReader) readPrices(root *benchfile.Table) {
	p.Solute.Price = p.readPrice(root.Table("solute"), quantity.Mass)
	p.Solvent.Price = p.readPrice(root.Table("solvent"), quantity.Volume)
}

// currencyOf is that of the prices of a kit, candidates included; "" without a price.
func currencyOf(k *equipment.Kit) string {
	for _, list := range []equipment.Instruments{k.Instruments, k.Candidates} {
		for _, b := range list.Balances {
			if b.Price.Stated() {
				return b.Price.Currency
			}
		}
		for _, m := range list.Measures {
			if m.Price.Stated() {
				return m.Price.Currency
			}
		}
	}
	return ""
}

func (p prepReader) readPrice(t *benchfile.Table, kind quantity.Kind) equipment.Price {
	text := t.Text("price")
	if text == "" {
		return equipment.Price{}
	}
	price, err := parseUnitPrice(kind, text)
	if err == nil {
		err = sameCurrency(price, currencyOf(p.Kit), aPrice)
	}
	if err == nil {
		err = sameCurrency(price, p.Solute.Price.Currency, priceOfSolute)
	}
	if err != nil {
		t.FailWith("price", err)
		return equipment.Price{}
	}
	return price
}
