package hazards

import (
	"math"
	"slices"

	"minim/equipment"
	"minim/uncertainty/portable"
)

// StrongByName is "acid" or "alkali" where one of some names is known as that of a strong one, else "".
func StrongByName(names ...string) string {
	for _, kind := range []string{"acid", "alkali"} {
		if slices.ContainsFunc(names, func(name string) bool { return inGroup(name, "strong "+kind) }) {
			return kind
		}
	}
	return ""
}

// inGroup reports whether a name is known as that of a substance of a group.
func inGroup(name, group string) bool {
	return slices.ContainsFunc(equipment.Recognise(name), func(r equipment.Recognition) bool { return r.Group == group })
}

// SolventAhead is half of the whole, or less, so that with the part it stays below nine
// tenths; where that leaves next to nothing it is half of what is free. It is rounded
// down to two digits.
func SolventAhead(whole, part float64) float64 {
	ahead := min(whole/2, (float64(0.9*whole)-part)*(1-1e-6))
	if ahead < whole/20 {
		ahead = (whole - part) / 2
	}
	if ahead <= 0 {
		return 0
	}
	digit := math.Pow10(portable.Decade(ahead) - 1)
	return math.Floor(ahead/digit+1e-6) * digit
}
