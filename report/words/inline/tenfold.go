package inline

import (
	"math/big"
	"strings"
)

// GramsPerLitre are the same figures in g/L, a strength in % w/v being a tenth of what it is in g/L; ""
// where the unit is another. The form has a place for each figure, and none for the unit.
func GramsPerLitre(unit, form string, figures ...string) string {
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
