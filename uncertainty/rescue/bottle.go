package rescue

import (
	"fmt"
	"strings"

	"minim/equipment/quantity"
	"minim/uncertainty/route"
	"minim/uncertainty/strengths"
)

// Bottle reads a stock of what a prep makes that is stated in one line: its strength, what that may be off by
// where it is known (U with k = 2), and how much there is of it. Its errors are
// *quantity.Error.
func Bottle(p *route.Prep, text string) (*route.Stock, error) {
	parts := BottleParts(text)
	if len(parts) < 2 || len(parts) > 3 {
		return nil, mistaken(text, fmt.Errorf("%q does not state a strength and a volume", text))
	}
	strength, err := p.ParseStrength(strings.TrimSpace(parts[0]))
	if err != nil {
		return nil, err
	}
	s := &route.Stock{Name: "the bottle", Unit: strength.Unit, Strength: route.Estimate{Value: strength.Value, Known: true}}
	s.Opened.Known = true // its strength is that of now
	if len(parts) == 3 {
		if s.Strength, err = giveOrTake(p, strength, parts[1]); err != nil {
			return nil, err
		}
	}
	volume, err := quantity.ParseStockVolume(strings.TrimSpace(parts[len(parts)-1]))
	s.Volume = route.Estimate{Value: volume, Known: true}
	if err == nil {
		err = p.LacksDensity(s)
	}
	return s, err
}

// giveOrTake reads "give or take 0.2 % w/v".
func giveOrTake(p *route.Prep, strength strengths.Strength, text string) (route.Estimate, error) {
	off, ok := strings.CutPrefix(strings.TrimSpace(text), "give or take ")
	if !ok {
		return route.Estimate{}, mistaken(text, fmt.Errorf("found %q between the strength and the volume", text))
	}
	expanded, err := p.ParseStrength(off)
	switch {
	case err != nil:
		return route.Estimate{}, err
	case expanded.Unit != strength.Unit || expanded.Value >= strength.Value:
		return route.Estimate{}, mistaken(text, fmt.Errorf("%q is not smaller than the strength, in its unit", off))
	}
	return route.ExpandedBy(strength.Value, expanded.Value, 2), nil
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

// mistaken is the error of a bottle that is not stated as it should be.
func mistaken(text string, err error) error {
	return &quantity.Error{Found: text, Message: err.Error(), Hint: `write it as in "8 % w/v, 20 mL", or "8 % w/v, give or take 0.2 % w/v, 20 mL"`}
}
