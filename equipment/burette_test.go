package equipment

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"

	"minim/equipment/quantity"
	"minim/uncertainty/near"
)

const oneBurette = "[[burette]]\nname = \"x\"\ncapacity = \"25 mL\"\ndivision = \"0.1 mL\"\nclass = \"B\"\nstandard = \"ISO\"\n"

// ISO 385 class B, 25 mL with 0.1 mL divisions: ±0.1 mL (class 2 of the Russian
// adoption). What runs out lies between two readings, each within half a division
// with ordinary care; so does its whole capacity, since it never runs to the tip.
func TestBuretteReadings(t *testing.T) {
	first, second := "reading of the x", "second reading of the x"
	for volume, readings := range map[float64][]string{10: {first, second}, 24.9: {first, second}, 25: {first, second}} {
		u := alone()
		u.BenchReading = ordinary
		got := delivered(t, one(t, oneBurette), u, volume)
		bias := "bias of the x at " + quantity.Millilitres(volume)
		assert.Equal(t, set(append(readings, bias)...), names(got.Analytic))
		for _, name := range readings {
			same(t, got.Analytic, name, 0.5*0.1/math.Sqrt(6))
		}
		same(t, got.Analytic, bias, 0.1/math.Sqrt(6))
		n := float64(len(readings))
		near.Relative(t, "u", 0.1/math.Sqrt(6)*math.Sqrt(1+n/4), got.StandardUncertainty, 1e-12)
		assert.Equal(t, []float64{volume, volume}, []float64{got.Intended, got.Value})
	}
}

// 15 and 25 mL from a 50 mL burette, five times each (a student's calibration sheet,
// https://tr.scribd.com/document/314787514/Burette-Correction, its slips of subtraction put right): means of 14.987 and 24.994 mL at
// 20 °C lie within class B, s of 0.042 and 0.022 mL within what a first-timer's
// readings give.
func TestBuretteAgainstMeasuredOne(t *testing.T) {
	k := one(t, "[[burette]]\nname = \"x\"\ncapacity = \"50 mL\"\ndivision = \"0.1 mL\"\nclass = \"B\"\n")
	for volume, measured := range map[float64][2]float64{15: {14.987, 0.042}, 25: {24.994, 0.022}} {
		assert.Equal(t, true, math.Abs(measured[0]-volume) < k.Limit(volume))
		u := alone()
		u.BenchReading = firstTime
		k.Bias.Limit = 0
		assert.Equal(t, true, measured[1] < delivered(t, k, u, volume).StandardUncertainty)
		k.Bias.Limit = 0.1
	}
}

// Plastic follows class B of glass (USP, two sources): 100 mL ±1 mL with 1 mL
// divisions. Squat cylinders of ISO 4788 are allowed one of their divisions, 1 mL
// of 10 mL (from memory). Poured, both keep what glass keeps.
func TestPlasticAndSquatCylinders(t *testing.T) {
	for _, c := range []struct {
		form                      string
		capacity, division, limit float64
		keeps                     float64
	}{
		{"plastic", 100, 1, 1, 0.40}, {"squat", 10, 1, 1, 0.10}, {"tall", 100, 1, 1, 0.40}, {"tall", 10, 0.2, 0.2, 0.10},
	} {
		k := one(t, "[[cylinder]]\nname = \"x\"\ncapacity = \""+quantity.Millilitres(c.capacity)+"\"\nclass = \"B\"\nform = \""+c.form+"\"\n")
		u := alone()
		u.BenchReading = Careful
		got := delivered(t, k, u, c.capacity)
		same(t, got.Analytic, "bias of the x at "+quantity.Millilitres(c.capacity), c.limit/math.Sqrt(6))
		same(t, got.Analytic, "reading of the x", 0.2*c.division/math.Sqrt(6))
		near.Relative(t, c.form, c.capacity-c.keeps, got.Value, 1e-12)
		assert.Equal(t, c.capacity, got.Intended)
		assert.Equal(t, c.form != "tall", len(u.Notes.FromMemory) == 1, c.form)
	}
}
