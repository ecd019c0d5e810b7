package uncertainty

import "testing"

func TestTooFewReadings(t *testing.T) {
	for _, few := range [][]float64{nil, {1}} {
		panics(t, "uncertainty: a standard deviation needs at least two readings", func() { Readings(few) })
	}
}
