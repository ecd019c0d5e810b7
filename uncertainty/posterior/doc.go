// Package posterior says what is known of a quantity after it was measured, as a table of its
// distribution function: what was known before times what the readings say.
//
// All digits are the same on every machine: see DEVELOPERS.md.
package posterior
