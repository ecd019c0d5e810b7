package policy

import (
	"strconv"
	"strings"
)

// RoundnessOf is the number of digits of a reading without the zeros at its ends, of which a last 5
// behind another digit counts half: 1 of 2 and 0.5, 1½ of 2.5 and 150, 2 of 0.12, 3 of 1.42. It is 0
// of nothing. Little is round.
func RoundnessOf(reading float64) float64 {
	if reading == 0 {
		return 0
	}
	text := strconv.FormatFloat(reading, 'e', 9, 64) // beyond what any display shows
	mantissa, _, _ := strings.Cut(strings.TrimPrefix(text, "-"), "e")
	digits := strings.TrimRight(strings.Replace(mantissa, ".", "", 1), "0")
	if n := len(digits); n > 1 && digits[n-1] == '5' {
		return float64(n) - 0.5
	}
	return float64(len(digits))
}
