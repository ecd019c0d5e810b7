package bench

import (
	"errors"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"minim/equipment"
	"minim/equipment/benchfile"
	"minim/equipment/quantity"
)

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
		assert.Equal(t, test.place, mistake.String())
		assert.Equal(t, test.message, mistake.Message)
		assert.Equal(t, test.hint, mistake.Hint, test.text)
	}
}

// Prices of a material, per g or mL (constructed).
func TestParseUnitPrice(t *testing.T) {
	for _, test := range []struct {
		kind quantity.Kind
		text string
		want equipment.Price
	}{
		{quantity.Mass, "3.20 EUR/g", equipment.Price{Amount: 3.2, Currency: "EUR"}},
		{quantity.Mass, "0.5 € / mg", equipment.Price{Amount: 500, Currency: "€"}},
		{quantity.Mass, "3200 zł/kg", equipment.Price{Amount: 3.2, Currency: "zł"}},
		{quantity.Mass, "0 kr./g", equipment.Price{Amount: 0, Currency: "kr."}},
		{quantity.Volume, "0.02 EUR/mL", equipment.Price{Amount: 0.02, Currency: "EUR"}},
		{quantity.Volume, "18 EUR/L", equipment.Price{Amount: 0.018, Currency: "EUR"}},
	} {
		got, err := unitPrice(test.kind)(test.text)
		require.NoError(t, err)
		assert.Equal(t, test.want, got, test.text)
	}
	const perGram, perMillilitre = `write an amount, a currency and for how much, as in "3.20 EUR/g"`, `write an amount, a currency and for how much, as in "3.20 EUR/mL"`
	for _, test := range []struct {
		kind                quantity.Kind
		text, message, hint string
	}{
		{quantity.Mass, "3.20", `"3.20" does not say in which currency`, perGram},
		{quantity.Mass, "3.20/g", `"3.20/g" does not say in which currency`, perGram},
		{quantity.Mass, "3.20 EUR", `"3.20 EUR" does not say for how much`, perGram},
		{quantity.Mass, "3.20 EUR/", `"" is not a unit of mass`, perGram},
		{quantity.Mass, "3.20 EUR/mL", `"mL" is not a unit of mass`, perGram},
		{quantity.Volume, "3.20 EUR/g", `"g" is not a unit of volume`, perMillilitre},
		{quantity.Volume, "EUR 3/mL", `"EUR 3/mL" does not start with an amount`, perMillilitre},
		{quantity.Volume, "", `"" does not start with an amount`, perMillilitre},
		{quantity.Volume, "3,20 EUR/L", `"3,20 EUR/L" has a comma in its number`, "write 3.20 EUR/L: a decimal point, not a comma"},
		{quantity.Volume, "3 EUR net/L", `"EUR net" is not a currency`, perMillilitre},
		{quantity.Mass, "-3 EUR/g", "no material has this price", ""},
		{quantity.Mass, "1e8 EUR/mg", "no material has this price", ""},
	} {
		_, err := unitPrice(test.kind)(test.text)
		var fault *quantity.Error
		require.True(t, errors.As(err, &fault), "%s gave %v", test.text, err)
		assert.Equal(t, test.message, fault.Message)
		assert.Equal(t, test.hint, fault.Hint, test.text)
	}
}

func TestCurrencyOfAKit(t *testing.T) {
	const candidate = "[[candidate]]\nname = \"z\"\n"
	for _, test := range []struct{ more, want string }{
		{"", ""},
		{"price = \"1 EUR\"\n", "EUR"},
		{"[[dropper]]\nname = \"y\"\nprice = \"0 USD\"\n", "USD"},
		{candidate + "kind = \"dropper\"\nprice = \"2 CHF\"\n", "CHF"},
		{candidate + "kind = \"balance\"\ncapacity = \"2 g\"\nreadability = \"1 mg\"\nprice = \"2 kr\"\n", "kr"},
	} {
		assert.Equal(t, test.want, currencyOf(parseKit(t, oneBalance+test.more)), test.more)
	}
}
