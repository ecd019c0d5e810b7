package equipment

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"

	"minim/uncertainty"
	"minim/uncertainty/near"
)

// The drop that stays in the tip: five people delivered 1 to 4 mL eight times,
// with the drop left and with it expelled; these are the differences in g
// (trabalhosfeitos.com/ensaios/Relatorio/821595.html). The default for pipettes
// from 5 mL on rests on them, so that this is a check of the sums; the last, and
// the second, show how wide people differ.
func TestDropLeftInTheTip(t *testing.T) {
	mean, s, _ := uncertainty.Readings([]float64{0.083, 0.195, 0.104, 0.109, 0.111, 0.087, 0.102, 0.012})
	drop, _ := lastDrop(10)
	near.Absolute(t, "mean", mean, drop.Mean, 0.005)
	near.Absolute(t, "s", s, drop.Spread.Value, 0.005)
}

// Scales of which only d is known: the model takes s = d for a weighing as read.
// Measured, in digits: a digital powder scale 0.83 (three-way separation,
// rstudio-pubs-static.s3.amazonaws.com/6962_dcce546090514a5eb5cf59da77e9f9cc.html),
// a teaching-lab scale 0.84, 0.45 and 0 (es.scribd.com/document/633727040). The
// model is a little too wide, on the safe side; a shown s of 0 is only the digit.
func TestScaleOfWhichOnlyTheDigitIsKnown(t *testing.T) {
	b := &Balance{Name: "scale", Capacity: 200, Readability: 0.01}
	u := alone()
	m, err := b.Weigh(u, 50, u.Step, onBoat)
	assert.NoError(t, err)
	a := propagate(t, u, m)
	scatter := 0.0
	for _, line := range a.Budget {
		if !IsLinearity(line.Code) { // the same each time
			scatter = math.Hypot(scatter, line.Contribution)
		}
	}
	near.Relative(t, "s of the model, in digits", 1, scatter/b.Readability, 1e-12)
	for _, measured := range []float64{0.83, 0.84, 0.45} {
		assert.Less(t, measured, scatter/b.Readability)
	}
}

// A 15 dollar pocket scale of 0.01 g against a 0.1 mg balance: errors in digits
// at these loads (electronics-lab.com/forums/threads/my-4-precision-weights.263339).
// The assumed linearity of two digits, with the scatter of a reading, holds up to
// 50 g; at 106 g, where it grows to 0.1 % of the load, it still holds.
func TestPocketScaleAgainstBetterBalance(t *testing.T) {
	b := &Balance{Name: "scale", Capacity: 200, Readability: 0.01}
	for load, digits := range map[float64]float64{1: -0.7, 5: -0.9, 10: -0.6, 20: 0.6, 50: 1.9, 106: 7.3} {
		u := alone()
		m, err := b.Weigh(u, load, u.Step, onBoat)
		assert.NoError(t, err)
		a := propagate(t, u, m)
		assert.Less(t, math.Abs(digits)*b.Readability, a.ExpandedUncertainty, "%v g", load)
	}
}
