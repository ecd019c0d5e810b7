//go:build race

package route

// The race detector makes everything ten times slower. Reading runs on one processor, and the
// routes of other tests are simulated in the same way. The continuous integration runs the
// whole without it.
func init() { thorough = false }
