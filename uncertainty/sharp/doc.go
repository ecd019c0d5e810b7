// Package sharp makes more of few trials than their mean and their order say: control variates make
// means and standard deviations sharper, and the exact law of the linear part makes the ends of
// intervals and chances so. It knows no model: whoever draws the trials says what their linear part is,
// and fills in blocks of them.
//
// All digits are the same on every machine: see DEVELOPERS.md.
package sharp
