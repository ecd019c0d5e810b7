package equipment

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"minim/uncertainty/near"
)

// anew is the standard uncertainty of what is made anew in each use, which is
// what repeated weighings of one piece show: everything but its bias.
func anew(t *testing.T, k Measure, how Reading) float64 {
	t.Helper()
	k.Bias.Limit = 0
	u := alone()
	u.StepReading = how
	if k.Kind.Traits().Receives && !k.Retained.Known {
		return contain(t, &k, u, k.Capacity).StandardUncertainty
	}
	a := deliver(t, &k, u, k.Capacity)
	kept := term(a, "retained in the "+k.Name) // of poured ones the mean is not made anew
	return math.Sqrt(a.StandardUncertainty*a.StandardUncertainty - kept.Contribution*kept.Contribution)
}

// pouredOut is a cylinder whose default for what stays in it is written out.
func pouredOut(capacity, division float64) Measure {
	k := Measure{Name: "cylinder", Kind: "cylinder", Capacity: capacity, Division: division}
	k.Retained, _ = k.retained(alone())
	return k
}

// Measured standard deviations of repeated use against those of the model.
// Their ratio, measured/model, must lie in a band that says how good the model
// is there: over 1 it promises too much, under 1 too little.
func TestModelAgainstMeasuredSpread(t *testing.T) {
	flask := func(capacity, neck float64) Measure {
		return Measure{Name: "flask", Kind: "flask", Capacity: capacity, Bore: neck} // necks of ISO 1042
	}
	oneMark := Measure{Name: "pipette", Kind: "one-mark", Ex: true, Capacity: 10, Bore: 4}
	graduated := Measure{Name: "pipette", Kind: "graduated", Ex: true, Capacity: 10, Division: 0.1}
	burette := Measure{Name: "burette", Kind: "cylinder", Capacity: 50, Division: 0.1}
	syringe := Measure{Name: "syringe", Kind: "cylinder", Capacity: 1, Division: 0.01}
	for _, test := range []struct {
		what     string
		k        Measure
		how      Reading
		measured float64 // mL
		from, to float64 // the band of measured/model
	}{
		// The model holds, within the scatter of an s from a few readings.
		// scribd.com/document/697938781: 12 fillings of a 100 mL flask by a student.
		{"100 mL flask, student", flask(100, 13), firstTime, 0.0857, 0.7, 1.4},
		// scribd.com/document/792433027: 3 fillings of a 50 mL flask by a student.
		{"50 mL flask, student", flask(50, 11), firstTime, 0.0767, 0.7, 1.4},
		// es.scribd.com/document/427078751: 5 fillings of a stoppered 25 mL flask.
		{"25 mL flask, stoppered", flask(25, 9), Careful, 0.008, 0.7, 1.4},
		// clubensayos.com/Ciencia/Mediciones/1608798.html: 10 mL graduated, student.
		{"10 mL graduated, student", graduated, ordinary, 0.0245, 0.7, 1.4},
		// github.com/chicolucio/estatistica-pratica-buretas: 61 first-year students
		// read a burette, water and a dark liquid. The default comes from these, so
		// that this is a check of the sums only.
		{"burette, water, 61 students", burette, firstTime, 0.0566, 0.7, 1.4},
		{"burette, dark liquid, 61 students", burette, firstTime, 0.0493, 0.7, 1.4},
		// github.com/evanmascitti/asi468: 36 fillings of 100 mL flasks; as above.
		{"100 mL flask, usual", flask(100, 13), ordinary, 0.033, 0.7, 1.4},

		// github.com/Biological-Microsystems-Laboratory/micropipette: three researchers
		// set a 1 mL syringe by eye at 200, 50 and 20 µL; the default rests on these too.
		{"syringe at 200 µL", syringe, ordinary, 2.49e-3, 0.7, 1.4},
		{"syringe at 50 µL", syringe, ordinary, 2.84e-3, 0.7, 1.4},
		{"syringe at 20 µL", syringe, ordinary, 1.75e-3, 0.7, 1.4},

		// The model is too wide, up to four times, where a careful reading would do: the error
		// of reading is what spreads it.
		// pt.scribd.com/doc/55952279: five volumes poured from one cylinder.
		{"10 mL cylinder, poured", pouredOut(10, 0.2), ordinary, 0.0242, 0.2, 0.7},
		// studymode.com/essays/Accuracy-And-Precision-137415.html: three fillings.
		{"10 mL cylinder, poured", pouredOut(10, 0.2), ordinary, 0.035, 0.2, 0.8},
		// bartleby.com, calibration of volumetric flask: three of 50 mL.
		{"50 mL cylinder, poured", pouredOut(50, 1), ordinary, 0.0516, 0.2, 0.7},

		// Setting the mark is not what spreads a one-mark pipette, but what stays in it; the
		// default comes from these, and from others of their kind.
		// Skoog, table of replicate pipet calibrations (from memory): 50 by a trained hand.
		{"10 mL one-mark, trained", oneMark, Careful, 0.0056, 0.7, 1.4},
		// studymode.com/essays/C311-60700474.html and clubensayos 1608798: students.
		{"10 mL one-mark, student", oneMark, ordinary, 0.0150, 0.7, 1.4},
		{"10 mL one-mark, student", oneMark, ordinary, 0.0217, 0.7, 1.4},
		// scribd.com/document/823213592: a beginner.
		{"10 mL one-mark, beginner", oneMark, firstTime, 0.065, 0.7, 1.4},
	} {
		ratio := test.measured / anew(t, test.k, test.how)
		assert.Equal(t, true, test.from < ratio && ratio < test.to, "%s: %.2f", test.what, ratio)
	}
}

// pt.scribd.com/doc/55952279: 2.7, 3.0, 5.0, 7.3 and 2.0 mL poured from a
// cylinder were short by these amounts (its size is not visible; 10 mL taken).
// The mean is what the model takes off.
func TestPouredCylinderAgainstMeasuredDeficit(t *testing.T) {
	short := map[float64]float64{2.7: 0.121, 3.0: 0.120, 5.0: 0.062, 7.3: 0.096, 2.0: 0.103}
	k := pouredOut(10, 0.2)
	sum := 0.0
	for set, missing := range short {
		a := deliver(t, &k, oneUse(), set)
		near.Relative(t, "delivered", set-0.1, a.Value, 1e-12)
		sum += missing
		assert.Equal(t, true, math.Abs(a.Value-(set-missing)) < 2*a.StandardUncertainty, "%v mL", set)
	}
	// s = 0.024 mL, so that the mean of five is known to 0.011 mL.
	near.Absolute(t, "mean deficit", sum/5, 0.1, 0.011)
}

// A counter-example: 10 mL set, 10.04 mL delivered, no deficit
// (es.scribd.com/document/633727040). It lies within the limits of class B, but
// further out than two standard uncertainties of what is made anew.
func TestPouredCylinderCounterExample(t *testing.T) {
	k := pouredOut(10, 0.2)
	u := alone()
	v, err := k.Deliver(u, 10)
	require.NoError(t, err)
	without := propagate(t, u, v)
	assert.Equal(t, true, 10.04 > without.Value+2*without.StandardUncertainty)
	k.Bias = bias{Shape: triangle, Limit: 0.2}
	with := deliver(t, &k, alone(), 10)
	assert.Equal(t, true, 10.04 < with.Value+2*with.StandardUncertainty)
}
