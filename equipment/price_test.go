package equipment

import (
	"errors"
	"testing"

	"github.com/stretchr/testify/assert"

	"minim/equipment/benchfile"
)

// Every table takes a price, which changes nothing else (constructed).
func TestPriceOfEachKind(t *testing.T) {
	jar := "[[jar]]\nname = \"j\"\nline = \"50 mL\"\ntolerance = \"1 mL\"\n"
	for _, text := range []string{oneSyringe, oneDropper, oneBurette, onePiston, oneFlask + "class = \"A\"\n", jar} {
		want, got := one(t, text), one(t, text+"price = \"0 kr\"\n")
		assert.Equal(t, false, want.Price.Stated(), text)
		assert.Equal(t, true, got.Price.Stated(), text)
		want.Price = Price{0, "kr"}
		assert.Equal(t, want, got)
	}
}

func TestPriceIsPrinted(t *testing.T) {
	for text, want := range map[string]string{
		"240 EUR": "240 EUR", "12.5 €": "12.50 €", "19.99 zł": "19.99 zł", "1e3 CHF": "1000 CHF", "7kr.": "7 kr.", "0 EUR": "0 EUR",
	} {
		assert.Equal(t, want, parseKit(t, oneBalance+"price = \""+text+"\"\n").Balances[0].Price.String())
	}
}

func TestPriceMistakes(t *testing.T) {
	const form = `write an amount and a currency, as in "240 EUR"`
	second := "price = \"1 EUR\"\n" + oneFlask[:10] + "name = \"y\"\ncapacity = \"10 mL\"\nclass = \"A\"\n"
	for _, test := range []struct{ text, place, message, hint string }{
		{`price = 12`, "b.toml:5:9", "price: found the number 12, expected a text in quotes", `put quotes round it: "12"`},
		{`price = "12"`, "b.toml:5:9", `price: "12" does not say in which currency`, form},
		{`price = "€ 12"`, "b.toml:5:9", `price: "€ 12" does not start with an amount`, form},
		{`price = "about 12 EUR"`, "b.toml:5:9", `price: "about 12 EUR" does not start with an amount`, form},
		{`price = "12 EUR each"`, "b.toml:5:9", `price: "EUR each" is not a currency`, form},
		{`price = "12,50 EUR"`, "b.toml:5:9", `price: "12,50 EUR" has a comma in its number`, "write 12.50 EUR: a decimal point, not a comma"},
		{`price = "-1 EUR"`, "b.toml:5:9", "price: no instrument of a bench has this price", ""},
		{`price = "1e300 EUR"`, "b.toml:5:9", "price: no instrument of a bench has this price", ""},
		{second + `price = "2 USD"`, "b.toml:10:9", "price: is in USD, where another price of the kit is in EUR", "state all prices in one currency"},
		{second + "[[candidate]]\nkind = \"dropper\"\nname = \"z\"\nprice = \"2 USD\"", "b.toml:13:9",
			"price: is in USD, where another price of the kit is in EUR", "state all prices in one currency"},
	} {
		_, err := ParseKit("b.toml", []byte(oneBalance+test.text+"\n"))
		mistake := (*benchfile.Mistake)(nil)
		if !errors.As(err, &mistake) {
			t.Errorf("%s\ngave %v", test.text, err)
			continue
		}
		assert.Equal(t, test.place, mistake.Place.String())
		assert.Equal(t, test.message, mistake.Message)
		assert.Equal(t, test.hint, mistake.Hint, test.text)
	}
}
