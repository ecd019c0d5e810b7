package words

import (
	"math/big"
	"strings"

	"minim/report/words/inline"
	"minim/uncertainty/route"
)

// letters are the symbols of the kinds of quantity that strengths are (ISO 80000-9 and IUPAC, from
// memory).
var letters = map[string]string{
	massConcentration: "γ", amountConcentration: "c", "mass fraction": "w", "volume concentration": "σ", "catalytic activity concentration": "b",
}

// Letter is the symbol of the strength that is wanted.
func Letter(p *route.Prep) string { return letters[quantities[p.Target.Unit.Name]] }

// Symbols of an uncertainty: expanded, standard and the factor between them.
var symbolU, symbolu, symbolk = inline.Symbol("U"), inline.Symbol("u"), inline.Symbol("k")

// gramsPerLitre are the same figures in g/L, a strength in % w/v being a tenth of what it is in g/L; ""
// where the unit is another. The form has a place for each figure, and none for the unit.
func gramsPerLitre(unit, form string, figures ...string) string {
	if unit != "% w/v" {
		return ""
	}
	for _, figure := range figures {
		form = strings.Replace(form, "%s", tenfold(figure), 1)
	}
	return form + " g/L"
}

// tenfold moves the decimal mark of a number, whose digits stay.
func tenfold(number string) string {
	_, decimals, _ := strings.Cut(number, ".")
	n, ok := new(big.Rat).SetString(number)
	if !ok {
		return number
	}
	return n.Mul(n, big.NewRat(10, 1)).FloatString(max(0, len(decimals)-1))
}
