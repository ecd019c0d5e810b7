// Package random has the streams of random numbers that trials are drawn from, and draws from
// distributions in their standard form, block by block.
//
// All draws are the same on every machine: see DEVELOPERS.md.
package random
