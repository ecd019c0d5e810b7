package route

import (
	"fmt"
	"strings"

	"minim/equipment/quantity"
	"minim/uncertainty/strengths"
)

// Bottle reads a stock that is stated in one line: its strength, what that may be off by
// where it is known (U with k = 2), and how much there is of it. Its errors are
// *quantity.Error.
func (p *Prep) Bottle(text string) (*Stock, error) {
	parts := quantity.BottleParts(text)
	if len(parts) < 2 || len(parts) > 3 {
		return nil, quantity.MistakenBottle(text, fmt.Errorf("%q does not state a strength and a volume", text))
	}
	strength, err := p.ParseStrength(strings.TrimSpace(parts[0]))
	if err != nil {
		return nil, err
	}
	s := &Stock{Name: "the bottle", Unit: strength.Unit, Strength: Estimate{Value: strength.Value, Known: true}}
	s.Opened.Known = true // its strength is that of now
	if len(parts) == 3 {
		if s.Strength, err = p.giveOrTake(strength, parts[1]); err != nil {
			return nil, err
		}
	}
	volume, err := quantity.ParseStockVolume(strings.TrimSpace(parts[len(parts)-1]))
	s.Volume = Estimate{Value: volume, Known: true}
	if err == nil {
		err = p.LacksDensity(s)
	}
	return s, err
}

// giveOrTake reads "give or take 0.2 % w/v".
func (p *Prep) giveOrTake(strength strengths.Strength, text string) (Estimate, error) {
	off, ok := strings.CutPrefix(strings.TrimSpace(text), "give or take ")
	if !ok {
		return Estimate{}, quantity.MistakenBottle(text, fmt.Errorf("found %q between the strength and the volume", text))
	}
	expanded, err := p.ParseStrength(off)
	switch {
	case err != nil:
		return Estimate{}, err
	case expanded.Unit != strength.Unit || expanded.Value >= strength.Value:
		return Estimate{}, quantity.MistakenBottle(text, fmt.Errorf("%q is not smaller than the strength, in its unit", off))
	}
	return ExpandedBy(strength.Value, expanded.Value, 2), nil
}
