//go:build race

package bench_test

// The continuous integration runs the whole without the race detector.
func init() { few = nil }
