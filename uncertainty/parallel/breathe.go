//go:build !js

package parallel

// breathe is of use where the program has one thread, in a browser.
func breathe() {}
