package main

import "time"

// The clock of all tests stands still.
func init() {
	clock = func() time.Time { return time.Date(2026, 11, 30, 12, 0, 0, 0, time.FixedZone("CET", 3600)) }
}
