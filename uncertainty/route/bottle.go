package route

import (
	"fmt"
	"strings"

	"minim/equipment/quantity"
)

// Bottle reads a stock that is stated in one line: its strength, what that may be off by
// where it is known (U with k = 2), and how much there is of it. Its errors are
// *quantity.Error.
func (p *Prep) Bottle(text string) (*Stock, error) {
	parts := BottleParts(text)
	if len(parts) < 2 || len(parts) > 3 {
		return nil, mistakenBottle(text, fmt.Errorf("%q does not state a strength and a volume", text))
	}
	strength, err := p.ParseStrength(strings.TrimSpace(parts[0]))
	if err != nil {
		return nil, err
	}
	s := &Stock{Name: "the bottle", Unit: strength.Unit, Strength: Estimate{Value: strength.Value, Known: true}}
	if len(parts) == 3 {
		if s.Strength, err = p.giveOrTake(strength, parts[1]); err != nil {
			return nil, err
		}
	}
	volume, err := ParseStockVolume(strings.TrimSpace(parts[len(parts)-1]))
	s.Volume = Estimate{Value: volume, Known: true}
	if err == nil {
		err = p.LacksDensity(s)
	}
	return s, err
}

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

// giveOrTake reads "give or take 0.2 % w/v".
func (p *Prep) giveOrTake(strength Strength, text string) (Estimate, error) {
	off, ok := strings.CutPrefix(strings.TrimSpace(text), "give or take ")
	if !ok {
		return Estimate{}, mistakenBottle(text, fmt.Errorf("found %q between the strength and the volume", text))
	}
	expanded, err := p.ParseStrength(off)
	switch {
	case err != nil:
		return Estimate{}, err
	case expanded.Unit != strength.Unit || expanded.Value >= strength.Value:
		return Estimate{}, mistakenBottle(text, fmt.Errorf("%q is not smaller than the strength, in its unit", off))
	}
	return ExpandedBy(strength.Value, expanded.Value, 2), nil
}

// mistakenBottle is the error of a bottle that is not stated as it should be.
func mistakenBottle(text string, err error) error {
	return &quantity.Error{Found: text, Message: err.Error(), Hint: `write it as in "8 % w/v, 20 mL", or "8 % w/v, give or take 0.2 % w/v, 20 mL"`}
}

// ParseStockVolume reads how much there is of a stock.
func ParseStockVolume(text string) (float64, error) {
	v, err := quantity.Parse(quantity.Volume, text)
	if err == nil && !quantity.Limits.Supply.Holds(v) {
		err = &quantity.Error{Found: text, Message: fmt.Sprintf("no stock has a volume of %q", text), Hint: "state one between 0.001 µL and 1000 L"}
	}
	return v, err
}
