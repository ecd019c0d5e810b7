package equipment

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"

	"minim/uncertainty"
	"minim/uncertainty/near"
)

// What a pipette with one mark delivers scatters by 0.006, 0.02 and 0.065 mL of 10 mL (see
// deliveriesAt10 for the sets, and TestModelAgainstMeasuredSpread); it takes the place of the
// error of reading, and needs no bore.
func TestDeliveriesByCare(t *testing.T) {
	k := one(t, exactPipette)
	for how, s := range map[Reading]float64{Careful: 0.006, ordinary: 0.02, firstTime: 0.065} {
		u := alone()
		u.BenchReading = how
		got := delivered(t, k, u, 10)
		assert.Equal(t, set("repeatability of the x"), names(got.Analytic))
		near.Relative(t, string(how), s, got.StandardUncertainty, 1e-12)
		assert.Equal(t, 1.0, got.AssumedShare())
		assert.Equal(t, 0, len(worded(u.Notes).NotCounted))
	}
	u := alone()
	delivered(t, k, u, 10)
	assert.Equal(t, []string{
		"scales and marks are read with ordinary care",
		"what the x delivers scatters by s = 0.02 mL (ordinary reading), reading and what stays in it together",
	}, worded(u.Notes).Assumed)
	assert.Equal(t, said{NotCounted: []string{"scatter of what stays in the x as it delivers"}}, func() said {
		u := quiet()
		assert.Equal(t, 0.0, delivered(t, k, u, 10).StandardUncertainty)
		return worded(u.Notes)
	}())
}

// Other capacities by the square root: 25 mL 0.032 mL, as five weighings by a research student
// gave (github.com/evanmascitti/asi468), 5 mL 0.014 mL, where five by a student gave
// 0.021 mL (123helpme.com/essay/Glassware-Experiment-724158).
func TestDeliveriesByCapacity(t *testing.T) {
	near.Absolute(t, "25 mL", 0.032, deliveries(ordinary, 25), 0.0005)
	near.Relative(t, "5 mL", 0.021, deliveries(ordinary, 5), 0.4)
	near.Relative(t, "4 times as large", 2*deliveries(Careful, 10), deliveries(Careful, 40), 1e-12)
}

// What the kit states takes its place: a scatter of use, or that of what stays, which then counts
// beside the reading.
func TestStatedScatterTakesThePlaceOfTheAssumed(t *testing.T) {
	for text, want := range map[string]float64{
		"repeatability = \"0.003 mL\"":                                              0.003,
		"bore = \"4 mm\"\nretained = { mean = \"0.01 mL\", spread = \"0.004 mL\" }": math.Hypot(0.004, 0.25*PerMillimetre(4)),
		"retained = \"0.01 mL\"":                                                    0.02,
	} {
		u := alone()
		u.BenchReading = ordinary
		got := delivered(t, one(t, exactPipette+text), u, 10)
		near.Relative(t, text, want, got.StandardUncertainty, 1e-12)
		assert.Equal(t, 10.0, got.Value)
	}
	graduated := one(t, serological)
	u := alone()
	u.BenchReading = ordinary
	assert.Equal(t, set("reading of the x"), names(delivered(t, graduated, u, 10).Analytic))
}

// A syringe is set within a quarter of a division, a tenth of the distance of its numbers: 2.5 µL of
// 1 mL, where three people scattered by 1.75 to 2.84 µL
// (github.com/Biological-Microsystems-Laboratory/micropipette).
func TestSyringeIsSetByEye(t *testing.T) {
	k := one(t, oneSyringe+"tolerance = \"0 mL\"\nnumbered = \"0.1 mL\"\n")
	for _, mL := range []float64{0.02, 0.05, 0.2, 1} {
		u := alone()
		got := delivered(t, k, u, mL)
		near.Relative(t, "s", 0.0025, got.StandardUncertainty, 1e-12)
		assert.Equal(t, set("repeatability of the x"), names(got.Analytic))
		assert.Contains(t, worded(u.Notes).Assumed, "the x is set within s = 0.0025 mL, a quarter of the 0.01 mL from one line to the next")
	}
	assert.Equal(t, 0.0, delivered(t, k, quiet(), 1).StandardUncertainty)
	stated := one(t, oneSyringe+"tolerance = \"0 mL\"\nrepeatability = \"0.001 mL\"\n")
	near.Relative(t, "stated", 0.001, delivered(t, stated, alone(), 1).StandardUncertainty, 1e-12)
}

// What stays in a poured cylinder: its mean is the vessel's and its user's, unknown by half of it and
// the same in each pour; each scatters by a quarter of it (pt.scribd.com/doc/55952279: mean 0.101,
// s 0.024 mL of five pours by one).
func TestPoursOfOneCylinder(t *testing.T) {
	k := one(t, oneCylinder+"division = \"0.2 mL\"\ntolerance = \"0 mL\"\nclinging = \"0 mL\"\n")
	u := quiet()
	first, second := node(t, k, u, "a", 10), node(t, k, u, "b", 5)
	got := propagate(t, u, first)
	near.Relative(t, "mean", 9.90, got.Value, 1e-12)
	near.Relative(t, "u", 0.10*math.Hypot(0.5, 0.25), got.StandardUncertainty, 1e-12)
	same(t, got, "retained in the x", 0.05)
	same(t, got, "scatter of what stays in the x", 0.25)
	near.Relative(t, "correlation", 0.8, correlation(t, u, first, second), 1e-9)
	assert.Equal(t, []any{uncertainty.Instrument, uncertainty.OneUse},
		[]any{term(got, "retained in the x").Owner.Kind, term(got, "scatter of what stays in the x").Owner.Kind})
	sum := propagate(t, u, u.Model.Add(first, second))
	near.Relative(t, "two pours", 0.10*math.Sqrt(4*0.25+2*0.0625), sum.StandardUncertainty, 1e-12)
	near.Relative(t, "assumed", 1, got.AssumedShare(), 1e-12)
	assert.Equal(t, []string{"the x keeps about 0.1 mL when it is poured out (unknown by half of that, and from pour to pour by a quarter)"},
		worded(u.Notes).Assumed)
	// A measured scatter holds that of the pours, and says nothing of the mean.
	measured := one(t, oneCylinder+"division = \"0.2 mL\"\ntolerance = \"0 mL\"\nclinging = \"0 mL\"\nrepeatability = \"0.03 mL\"\n")
	near.Relative(t, "measured", math.Hypot(0.03, 0.05), delivered(t, measured, quiet(), 10).StandardUncertainty, 1e-12)
}

// However little is poured, no more than that stays.
func TestLittleIsPoured(t *testing.T) {
	k := one(t, "[[cylinder]]\nname = \"x\"\ncapacity = \"5 mL\"\ndivision = \"0.1 mL\"\ntolerance = \"0 mL\"\nclinging = \"0 mL\"\n")
	for _, mL := range []float64{0.2, 0.3, 1} {
		u := quiet()
		low, high := u.Model.Range(node(t, k, u, "a", mL))
		assert.Equal(t, true, low >= -1e-12 && high < mL, "%v: %v to %v", mL, low, high)
	}
	_, err := k.Deliver(quiet(), 0.1)
	impossible(t, "0.1 mL is no more than what stays in the x: 0.08 mL", err)
}
