package quantity

import "fmt"

// ParseStockVolume reads how much there is of a stock.
func ParseStockVolume(text string) (float64, error) {
	v, err := Parse(Volume, text)
	if err == nil && !Limits.Supply.Holds(v) {
		err = &Error{Found: text, Message: fmt.Sprintf("no stock has a volume of %q", text), Hint: "state one between 0.001 µL and 1000 L"}
	}
	return v, err
}
