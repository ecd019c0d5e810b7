package quantity

import (
	"math"
	"strconv"
	"strings"
)

// Step is one step of the last digit that a text such as "0.950 mL" is written to, in the
// base unit of the kind: 0.001 mL. The text must be one that [Parse] reads.
func Step(kind Kind, text string) (float64, error) {
	number, u, err := numberAndUnit(kind, text)
	if err != nil {
		return 0, err
	}
	parts := decimalNumber.FindStringSubmatch(number)
	_, decimals, _ := strings.Cut(parts[1], ".")
	exponent, _ := strconv.Atoi(parts[2]) // 0 where there is none
	return math.Pow10(u.power + exponent - len(decimals)), nil
}
