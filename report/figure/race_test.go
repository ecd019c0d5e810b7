//go:build race

package figure

// Under the race detector a picture in pixels takes twenty seconds, and one processor draws
// it. The continuous integration runs the whole without it.
func init() { thorough = false }
