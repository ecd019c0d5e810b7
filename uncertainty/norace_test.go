//go:build !race

package uncertainty

// trials of a simulation that is held against published figures; its standard
// errors are part of the check.
const (
	raceDetector = false
	trials       = 1_000_000
)
