//go:build race

package smallbench

// The race detector makes everything ten times slower, and counting finds no race: a part
// of each count is enough for it. The continuous integration runs the whole without it.
func init() { Thorough = false }
