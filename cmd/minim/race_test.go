//go:build race

package main

// The race detector makes everything ten times slower. What README and the demo show is
// shown without it as well, and the commands of testdata/commands go the same ways.
func init() { thorough = false }
