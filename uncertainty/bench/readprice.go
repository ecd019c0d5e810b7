package bench

import (
	"cmp"
	"fmt"
	"regexp"
	"strconv"
	"strings"

	"minim/equipment"
	"minim/equipment/benchfile"
	"minim/equipment/quantity"
)

// inCurrency is a price that was stated before, if any, by its currency.
type inCurrency struct{ currency, of string }

// readPrice reads a price, in the currency of those that were stated before.
func readPrice(t *benchfile.Table, parse func(text string) (equipment.Price, error), before ...inCurrency) equipment.Price {
	text := t.Text("price")
	if text == "" {
		return equipment.Price{}
	}
	p, err := parse(text)
	for _, other := range before {
		if err == nil && other.currency != "" && other.currency != p.Currency {
			err = &quantity.Error{Message: fmt.Sprintf("is in %s, where %s is in %s", p.Currency, other.of, other.currency), Hint: "state all prices in one currency"}
		}
	}
	if err != nil {
		t.FailWith("price", err)
		return equipment.Price{}
	}
	return p
}

// price reads an amount and a currency, which is one for the whole kit.
func (r *kitReader) price(t *benchfile.Table) equipment.Price {
	p := readPrice(t, parsePrice, inCurrency{r.currency, "another price of the kit"})
	r.currency = cmp.Or(p.Currency, r.currency)
	return p
}

// readPrices reads the prices of the solute and the solvent, in the currency of
// those of the kit.
func (p prepReader) readPrices(root *benchfile.Table) {
	kit := inCurrency{currencyOf(p.Kit), "a price of the kit"}
	p.Solute.Price = readPrice(root.Table("solute"), unitPrice(quantity.Mass), kit)
	p.Solvent.Price = readPrice(root.Table("solvent"), unitPrice(quantity.Volume), kit, inCurrency{p.Solute.Price.Currency, priceOfSolute})
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

// parsePrice reads the price of an instrument.
func parsePrice(text string) (equipment.Price, error) {
	form := priceForm{`write an amount and a currency, as in "240 EUR"`, "no instrument of a bench has this price"}
	p, err := form.split(text)
	if err != nil {
		return equipment.Price{}, err
	}
	return form.checked(p, text)
}

// unitPrice reads the price of a mass or a volume, "3.20 EUR/g", as that of
// 1 g or 1 mL. Its errors are *quantity.Error.
func unitPrice(kind quantity.Kind) func(text string) (equipment.Price, error) {
	form := priceForm{`write an amount, a currency and for how much, as in "3.20 EUR/` + kind.Unit() + `"`, "no material has this price"}
	return func(text string) (equipment.Price, error) {
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
}

// priceForm is how a price is written, and what is said of one that cannot be.
type priceForm struct{ hint, unlikely string }

func (f priceForm) fault(text, message string) error {
	return &quantity.Error{Found: text, Message: message, Hint: f.hint}
}

// split reads an amount; the currency is all that stands after it.
func (f priceForm) split(text string) (equipment.Price, error) {
	amount, rest, err := quantity.Split(text)
	_, noNumber := strconv.ParseFloat(text, 64)
	switch {
	case err != nil && noNumber == nil:
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
