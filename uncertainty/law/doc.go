// Package law works out the law of a sum of independent quantities: its distribution function
// and quantiles, from their characteristic functions by one Fourier transform. It takes the place
// of a simulation where a quantity is the sum of its influences, and of most of one where it nearly
// is.
//
// All digits are the same on every machine: see DEVELOPERS.md.
package law
