package equipment

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"minim/equipment/quantity"
	"minim/uncertainty"
	"minim/uncertainty/near"
)

// The shares that the searches are tried at.
var shares = []float64{0.001, 0.002, 0.01, 0.05, 0.1, 0.25, 0.5, 1, 2}

// everyReading is the search without its short cut: all multiples of a step.
func everyReading(steps int, step, share float64, once func(float64) uncertainty.Analytic) (float64, bool) {
	for n := 1; n <= steps; n++ {
		if amount := float64(n) * step; once(amount).ExpandedUncertainty <= share*amount*(1+1e-12) {
			return amount, true
		}
	}
	return 0, false
}

func TestLeastMassAgainstEveryReading(t *testing.T) {
	skipIfSlow(t)
	stated := func(s, nu, linearity, span float64) *Balance {
		return &Balance{Name: "scale", Capacity: 20, Readability: 0.01, Repeatability: Spread{S: s, DegreesOfFreedom: nu, Known: true}, Linearity: Stated{linearity, true}, Span: span}
	}
	for _, b := range []*Balance{
		{Name: "nothing stated", Capacity: 20, Readability: 0.01},
		{Name: "three steps", Capacity: 0.3, Readability: 0.1},
		{Name: "one step", Capacity: 1, Readability: 1},
		{Name: "certificate", Capacity: 20, Readability: 0.01, Weighing: Stated{0.007, true}},
		{Name: "certificate of no error", Capacity: 20, Readability: 0.01, Weighing: Stated{0, true}},
		stated(0, 0, 0, 0), stated(0.01, 0, 0.02, 0), stated(0.01, 0, 0.02, 0.01), stated(0.03, 3, 0, 0),
		stated(0.03, 1, 0.02, 0), stated(0.03, 3, 0.02, 0.005),
	} {
		for _, share := range shares {
			want, wantOK := everyReading(int(b.Capacity/b.Readability+0.5), b.Readability, share, b.once)
			got, ok := b.Least(share)
			assert.Equal(t, wantOK, ok, "%s %v %v", b.Name, b, share)
			near.Absolute(t, b.Name, want, got, 1e-12)
		}
	}
}

func TestLeastVolumeAgainstEveryMark(t *testing.T) {
	wide := tenCylinder()
	wide.Bias.Limit = 5
	coarse := graduatedPipette()
	coarse.Bias.Limit, coarse.Reading = 0, firstTime // at the tip it is read once, and so better
	repeated := graduatedPipette()
	repeated.Repeatability = Spread{S: 0.1, DegreesOfFreedom: 1, Known: true}
	for _, k := range []*Measure{tenCylinder(), wide, graduatedPipette(), coarse, repeated} {
		for _, share := range append(shares, 0.0085, 0.0098) {
			want, wantOK := everyReading(int(k.Capacity/k.Division+0.5), k.Division, share, k.once)
			got, ok := k.Least(share)
			assert.Equal(t, wantOK, ok, "%v %v", k, share)
			near.Absolute(t, k.Name, want, got, 1e-12)
		}
	}
}

// By hand, with s = d stated and linearity ±2 d: roundings and repeatability
// together d², linearity (4 d²/3)(2 - ρ) with the correlation ρ of the curve at the load and
// at nothing, 0 at the capacity: there u = d √(11/3) and, with k = 1.96, U = 3.753 d, so that
// 3754 d weigh to 0.1 %. Of 5000 d 32 d are 0.64 % and 71 d 1.42 %, for which ρ is 0.775 and
// 0.333, u is 1.623 d and 1.795 d, and U a tenth and a twentieth of it.
func TestLeastMassInDigits(t *testing.T) {
	for share, digits := range map[float64]float64{0.1: 32, 0.05: 71, 0.001: 3754} {
		for _, d := range []float64{0.1, 0.01, 0.001, 1e-4} {
			b := &Balance{Name: "scale", Capacity: 5000 * d, Readability: d, Repeatability: Spread{S: d, Known: true}, Linearity: Stated{2 * d, true}}
			near.Relative(t, "u in d", 1.914854215513, b.Uncertainty(b.Capacity)/d, 1e-9)
			g, ok := b.Least(share)
			assert.Equal(t, true, ok)
			near.Relative(t, "digits", digits, g/d, 1e-9)
		}
	}
}

// USP <41>: the least weight to 0.10 % is 2000 s, and no less than 820 d, which
// counts the repeatability alone and takes k = 2 for 1.96.
func TestLeastMassAgainstPharmacopoeia(t *testing.T) {
	const d = 1e-4
	for s, least := range map[float64]float64{0: 820, 0.3: 820, 0.41: 820, 1: 2000, 5: 10000} { // in d
		b := &Balance{Name: "balance", Capacity: 200, Readability: d, Repeatability: Spread{S: s * d, Known: true}, Linearity: Stated{0, true}}
		g, ok := b.Least(0.001)
		assert.Equal(t, true, ok)
		near.Relative(t, "digits", least*1.96/2, g/d, 0.005)
	}
}

// From a few readings the coverage factor is that of Student's t: a balance
// with s = 3 d from four readings needs 3.18 and not 1.96 times s, nearly
// (GUM table G.2, ν = 3).
func TestLeastMassFromFewReadings(t *testing.T) {
	b := &Balance{Name: "scale", Capacity: 200, Readability: 0.01, Repeatability: Spread{S: 0.03, DegreesOfFreedom: 3, Known: true}, Linearity: Stated{0, true}}
	g, ok := b.Least(0.1)
	assert.Equal(t, true, ok)
	near.Relative(t, "g", 3.18*0.03/0.1, g, 0.03)
}

// A mark is all that one-mark glass has: its capacity, or nothing.
func TestLeastVolumeOfOneMark(t *testing.T) {
	flask := quamFlask()
	near.Absolute(t, "u at the mark", 0.053, flask.Uncertainty(100), 5e-4)
	for share, want := range map[float64]float64{0.01: 100, 0.0011: 100, 0.001: 0} {
		mL, ok := flask.Least(share)
		assert.Equal(t, want, mL)
		assert.Equal(t, want > 0, ok)
	}
}

func TestLeastOfNone(t *testing.T) {
	_, ok := (&Balance{Name: "scale", Capacity: 5, Readability: 1}).Least(0.1)
	assert.Equal(t, false, ok)
	k := tenCylinder()
	k.Bias.Limit = 9
	_, ok = k.Least(0.1)
	assert.Equal(t, false, ok)
	_, ok = (&Balance{Name: "scale", Capacity: 5, Readability: 10}).Least(0.1) // no reading at all
	assert.Equal(t, false, ok)
}

// A cylinder is filled, a pipette is emptied: what stays counts in the latter only.
func TestUncertaintyOfOneUse(t *testing.T) {
	k := tenCylinder()
	want := k.Uncertainty(10)
	k.Retained = Retained{Mean: 1, Spread: Stated{1, true}, Known: true}
	assert.Equal(t, want, k.Uncertainty(10))
	p := oneMarkPipette()
	p.Retained = Retained{Mean: 1, Spread: Stated{1, true}, Known: true}
	near.Relative(t, "u", 1, p.Uncertainty(10), 1e-3)
}

func TestUncertaintyOfWhatCannotBe(t *testing.T) {
	assert.PanicsWithValue(t, "equipment: 11 mL is more than the cylinder holds: 10 mL", func() { tenCylinder().Uncertainty(11) })
	assert.PanicsWithValue(t, "equipment: 0 g shows as 0.00 g on the scale; the least it can show is 0.01 g", func() { scale().Uncertainty(0) })
}

// The greatest number of steps that a kit may have is searched at once.
func TestLeastOfManySteps(t *testing.T) {
	displayLimit := quantity.Limits.DisplaySteps
	b := &Balance{Name: "scale", Capacity: displayLimit.Most, Readability: 1, Span: 0.001 / 1.96 * 1.7320508}
	_, ok := b.Least(0.001)
	assert.Equal(t, false, ok)
	k := tenCylinder()
	k.Division, k.Bias.Limit = k.Capacity/displayLimit.Most, 9
	_, ok = k.Least(0.1)
	assert.Equal(t, false, ok)
}
