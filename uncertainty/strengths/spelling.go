package strengths

import "minim/equipment/quantity"

// respelt returns the name of a unit that is written in another way, and the text with it.
func respelt(unit, text string) (name, written string) {
	name = quantity.StrengthUnit(unit)
	for _, u := range units {
		if u.Name == name {
			return name, quantity.Digits(text) + " " + name
		}
	}
	return unit, text
}
