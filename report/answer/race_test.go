//go:build race

package answer

// Under the race detector a thousand labels take a minute, and one processor makes them. The
// continuous integration runs the whole without it.
func init() { thorough = false }
