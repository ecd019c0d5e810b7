// Package data has a result as JSON and as CSV, for other programs: in full precision, with
// the sentences of package words beside the numbers.
package data
