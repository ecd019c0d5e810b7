package bench

import (
	"fmt"
	"slices"
	"strings"

	"minim/equipment"
	"minim/equipment/benchfile"
	"minim/equipment/quantity"
	"minim/uncertainty/strengths"
)

// readSolubility reads a strength, a strength at a temperature, or several of these.
func (p prepReader) readSolubility(t *benchfile.Table) (list []strengths.Solubility) {
	const key = "solubility"
	texts := t.Texts(key)
	for _, text := range texts {
		s, err := p.soluble(text)
		alike := func(o strengths.Solubility) bool { return o.At == s.At }
		switch {
		case text == "":
			return nil
		case err != nil:
			failStrength(t, key, err)
			return nil
		case len(texts) > 1 && !s.At.Known:
			t.Fail(key, fmt.Sprintf("%q does not say at which temperature", text), "write it as in \"20 % w/v at 15 °C\"")
			return nil
		case slices.ContainsFunc(list, alike):
			t.Fail(key, fmt.Sprintf("two are stated at %v °C", s.At.Value), "state one of them")
			return nil
		}
		list = append(list, s)
	}
	return list
}

// soluble reads "20 % w/v at 15 °C", or without the temperature.
func (p prepReader) soluble(text string) (s strengths.Solubility, err error) {
	strength, at, found := strings.Cut(text, " at ")
	if s.Concentration, err = p.Concentration(strings.TrimSpace(strength)); err != nil || !found {
		return s, err
	}
	v, err := quantity.Parse(quantity.Temperature, strings.TrimSpace(at))
	if limit := quantity.Limits.Temperature; err == nil && !limit.Holds(v) {
		err = &quantity.Error{Found: text, Message: fmt.Sprintf("a solubility at %v °C is of no use on a bench", v), Hint: fmt.Sprintf("state it between %v and %v °C", limit.Least, limit.Most)}
	}
	s.At = equipment.Stated{Value: v, Known: err == nil}
	return s, err
}
