//go:build race

package bench

// The race detector makes everything ten times slower, and one simulation finds its races:
// the continuous integration runs the whole without it.
func init() { thorough = false }
