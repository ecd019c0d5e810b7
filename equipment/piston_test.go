package equipment

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"

	"minim/equipment/quantity"
	"minim/uncertainty"
	"minim/uncertainty/near"
)

const onePiston = "[[pipette]]\nname = \"x\"\nkind = \"piston\"\ncapacity = \"1 mL\"\n"

// later is what is said of an edition that another has superseded.
const later = "the limits of ISO 8655-2:2002 are used; of the edition of 2022, which supersedes it, the table was not seen"

// A paper on a 200 to 1000 µL piston pipette, table 2
// (https://studylib.net/doc/26303027/calibration-of-micropipettes-through-gravimetric-solution...;
// the 1000 µL figures also in JIS K 0970:2013, https://jis.eomec.com/jisk09702013/2): by ISO 8655-2:2002 it is allowed 8 µL systematic and 3 µL random at
// 200, 500 and 1000 µL. The first is a limit of which nothing more is known
// (rectangular, GUM 4.3.7), the second a standard deviation.
func TestPistonAtThreeVolumes(t *testing.T) {
	k := one(t, onePiston)
	for _, volume := range []float64{0.2, 0.5, 1} {
		u := alone()
		u.BenchReading = firstTime // it has no scale to be read
		got := delivered(t, k, u, volume)
		bias := "bias of the x at " + quantity.Millilitres(volume)
		assert.Equal(t, set(bias, "repeatability of the x"), names(got.Analytic))
		assert.Equal(t, uncertainty.Rectangular{Low: -0.008, High: 0.008}, term(got.Analytic, bias).Distribution)
		assert.Equal(t, uncertainty.Normal{Sigma: 0.003}, term(got.Analytic, "repeatability of the x").Distribution)
		near.Relative(t, "u, µL", math.Sqrt(64.0/3+9), 1000*got.StandardUncertainty, 1e-12)
		assert.Equal(t, []float64{volume, volume}, []float64{got.Intended, got.Value})
		assert.Equal(t, said{Assumed: []string{"the x has the limits of ISO 8655-2:2002, air", later}}, worded(u.Notes))
	}
	impossible(t, "1.1 mL is more than the x holds: 1 mL", k.Reads(1.1))
	assert.Equal(t, nil, k.Reads(0.0123)) // it is set to any volume
}

// JIS K 0970:2013, a modified adoption of ISO 8655-2: between two nominal volumes
// the limits of the next larger hold; 500 µL is allowed 4 µL and 1.5 µL.
func TestPistonBetweenSizes(t *testing.T) {
	k := one(t, "[[pipette]]\nname = \"x\"\nkind = \"piston\"\ncapacity = \"300 µL\"\nstandard = \"ISO\"\n")
	u := alone()
	got := delivered(t, k, u, 0.3)
	same(t, got.Analytic, "bias of the x at 0.3 mL", 0.004/math.Sqrt(3))
	same(t, got.Analytic, "repeatability of the x", 0.0015)
	assert.Equal(t, said{Assumed: []string{later}}, worded(u.Notes))
	// Form: ISO 8655-5, a 10 mL dispenser is allowed 60 µL and 20 µL (from memory).
	k = one(t, "[[pipette]]\nname = \"x\"\nkind = \"piston\"\ncapacity = \"10 mL\"\nform = \"dispenser\"\n")
	got = delivered(t, k, alone(), 2)
	same(t, got.Analytic, "bias of the x at 2 mL", 0.06/math.Sqrt(3))
	same(t, got.Analytic, "repeatability of the x", 0.02)
}

// A 1000 µL pipette weighed out at four settings, fifteen times each
// (github.com/Biological-Microsystems-Laboratory/micropipette, recomputed): its
// errors lie within what the model allows it, at every setting the same.
func TestPistonAgainstMeasuredPipette(t *testing.T) {
	k := one(t, onePiston)
	for _, set := range []struct{ volume, mean, s float64 }{ // µL
		{1000, 1002.977, 2.249}, {500, 503.412, 0.796}, {200, 204.300, 0.318}, {100, 104.870, 0.873},
	} {
		got := delivered(t, k, alone(), set.volume/1000)
		limit := uncertainty.SummaryOf(term(got.Analytic, "bias of the x at "+quantity.Millilitres(set.volume/1000)).Distribution).High
		assert.Equal(t, true, math.Abs(set.mean-set.volume) < 1000*limit, "%v µL", set.volume)
		assert.Equal(t, true, set.s < 1000*term(got.Analytic, "repeatability of the x").StandardUncertainty, "%v µL", set.volume)
	}
}

// One setting has one bias; two settings, as different marks, correlation 1/2.
// The random errors are each delivery's own.
func TestPistonSettings(t *testing.T) {
	k, u := one(t, onePiston), alone()
	u.Marks = 2
	first, again, other := node(t, k, u, "a", 1), node(t, k, u, "b", 1), node(t, k, u, "c", 0.5)
	whole := 64.0/3 + 9
	near.Relative(t, "one setting", 64.0/3/whole, correlation(t, u, first, again), 1e-9)
	near.Relative(t, "two settings", 64.0/6/whole, correlation(t, u, first, other), 1e-9)
}

// An own limit replaces the systematic one of the class, an own standard deviation
// the random one; with both the class is not asked.
func TestPistonOwnValues(t *testing.T) {
	for _, test := range []struct {
		keys  string
		bias  uncertainty.Distribution
		s     float64
		notes said
	}{
		{`tolerance = "2 % of reading"`, uncertainty.Rectangular{Low: -1, High: 1}, 0.003,
			said{Assumed: []string{"what is not stated of the x is as in ISO 8655-2:2002, air", later}}},
		{`correction = { value = "4 µL", expanded = "2 µL", k = 2 }`, uncertainty.Normal{Mu: 0.004, Sigma: 0.001}, 0.003,
			said{Assumed: []string{"what is not stated of the x is as in ISO 8655-2:2002, air", later}}},
		{`repeatability = "1 µL"`, uncertainty.Rectangular{Low: -0.008, High: 0.008}, 0.001,
			said{Assumed: []string{"the x has the limits of ISO 8655-2:2002, air", later}}},
		{"tolerance = \"5 µL\"\nrepeatability = \"1 µL\"", uncertainty.Rectangular{Low: -0.005, High: 0.005}, 0.001, said{}},
	} {
		u := alone()
		got := delivered(t, one(t, onePiston+test.keys), u, 0.4)
		same(t, got.Analytic, "repeatability of the x", test.s)
		assert.Equal(t, test.notes, worded(u.Notes), test.keys)
		found := false
		for _, c := range got.Budget {
			found = found || c.Distribution == test.bias
		}
		assert.Equal(t, true, found, test.keys)
	}
	got := delivered(t, one(t, onePiston+`tolerance = "2 % of reading"`), alone(), 0.4)
	near.Relative(t, "2 % of 0.4 mL", math.Hypot(0.008/math.Sqrt(3), 0.003), got.StandardUncertainty, 1e-12)
}

// A piston is pressed empty in any case, so that to say so changes nothing. What a
// tip of less than 1 mL keeps is not known, and said.
func TestPistonBlownOut(t *testing.T) {
	u := alone()
	u.Emptying = BlownOut
	assert.Equal(t, 1.0, delivered(t, one(t, onePiston), u, 1).Value)
	small, u := one(t, "[[pipette]]\nname = \"x\"\nkind = \"piston\"\ncapacity = \"10 µL\"\n"), alone()
	assert.Equal(t, 0.0, u.Model.Expected(small.Film(u)))
	assert.Equal(t, []string{"what stays in the tip of the x"}, worded(u.Notes).NotCounted)
}
