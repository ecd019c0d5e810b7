package quantity

import (
	"fmt"
	"strings"
)

// BottleParts are what commas part in what is said of a bottle; a comma between two digits
// is none of these.
func BottleParts(text string) (parts []string) {
	from := 0
	digit := func(i int) bool { return i >= 0 && i < len(text) && text[i] >= '0' && text[i] <= '9' }
	for i := range len(text) {
		if text[i] == ',' && !(digit(i-1) && digit(i+1)) {
			parts, from = append(parts, strings.TrimSpace(text[from:i])), i+1
		}
	}
	return append(parts, strings.TrimSpace(text[from:]))
}

// MistakenBottle is the error of a bottle that is not stated as it should be.
func MistakenBottle(text string, err error) error {
	return &Error{Found: text, Message: err.Error(), Hint: `write it as in "8 % w/v, 20 mL", or "8 % w/v, give or take 0.2 % w/v, 20 mL"`}
}

// ParseStockVolume reads how much there is of a stock.
func ParseStockVolume(text string) (float64, error) {
	v, err := Parse(Volume, text)
	if err == nil && !Limits.Supply.Holds(v) {
		err = &Error{Found: text, Message: fmt.Sprintf("no stock has a volume of %q", text), Hint: "state one between 0.001 µL and 1000 L"}
	}
	return v, err
}
