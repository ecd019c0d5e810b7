package strengths

import (
	"fmt"

	"minim/equipment/quantity"
)

// parseActivity reads units of activity in a mass, "30 U/mg", as U/g.
func parseActivity(text string) (float64, error) {
	v, unit, err := quantity.Split(text)
	if err != nil {
		return 0, err
	}
	per := map[string]float64{"U/g": 1, "U/mg": 1e3, "U/µg": 1e6}[unit]
	if per == 0 || !quantity.Limits.Activity.Holds(v*per) {
		return 0, &quantity.Error{Found: text, Message: fmt.Sprintf("%q is not an activity", text), Hint: "write units in a mass, \"30 U/mg\""}
	}
	return v * per, nil
}
