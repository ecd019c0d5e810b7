package purchase

import (
	"testing"

	"minim/equipment"
	"minim/uncertainty/near"
)

// TestLeastByUSP: USP <41>, minimum weight at 0.10 %: 2000 s, and 820 d where s is
// at its floor of 0.41 d. The rule of the prescription balance is one of limits, one
// whole step of sensitivity over the tolerance: 6 mg at 5 % are 120 mg (pharmacy
// teaching, University of North Carolina, "Weighing"); that is what the rule gives for
// a standard deviation of half a step.
func TestLeastByUSP(t *testing.T) {
	floor := equipment.Balance{Readability: 0.0001, Repeatability: equipment.Spread{S: 0.00002, Known: true}}
	near.Relative(t, "820 d", 0.082, leastWithin(&floor, shareOfUSP), 1e-12)
	stated := equipment.Balance{Readability: 0.0001, Repeatability: equipment.Spread{S: 0.0002, Known: true}}
	near.Relative(t, "2000 s", 0.4, leastWithin(&stated, shareOfUSP), 1e-12)
	near.Relative(t, "2 s within 8 %", 0.005, leastWithin(&stated, 0.08), 1e-12)
	prescription := equipment.Balance{Readability: 0.006, Repeatability: equipment.Spread{S: 0.003, Known: true}}
	near.Relative(t, "6 mg at 5 %", 0.120, leastWithin(&prescription, 0.05), 1e-12)
}
