//go:build race

package uncertainty

// Under the race detector simulations are some thirty times slower.
const (
	raceDetector = true
	trials       = 100_000
)
