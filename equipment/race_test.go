//go:build race

package equipment

// The race detector makes everything ten times slower, and counting finds no race: the
// continuous integration runs the whole without it.
func init() { thorough = false }
