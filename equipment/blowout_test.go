package equipment

import (
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"minim/equipment/benchfile"
	"minim/uncertainty"
	"minim/uncertainty/near"
)

const exactPipette = "[[pipette]]\nname = \"x\"\nkind = \"one-mark\"\ncapacity = \"10 mL\"\ntolerance = \"0 mL\"\n"

const serological = "[[pipette]]\nname = \"x\"\nkind = \"graduated\"\ncapacity = \"10 mL\"\ndivision = \"0.1 mL\"\ntolerance = \"0 mL\"\n"

// A pipette with a ring is adjusted with its last drop: blown out it gives its mark; the drop left,
// it is 0.10 mL short (five people, eight deliveries, s = 0.05 mL:
// trabalhosfeitos.com/ensaios/Relatorio/821595.html). One without a ring is adjusted without
// the drop, and blown out it gives too much.
func TestMadeForBlowOut(t *testing.T) {
	for _, test := range []struct {
		text     string
		emptying Emptying
		value, u float64
	}{
		{serological + "made-for-blow-out = true", BlownOut, 10, 0},
		{serological + "made-for-blow-out = true", drained, 9.90, 0.05},
		{serological + "made-for-blow-out = true", Rinsed, 10 - 0.02*0.10, 0.02 * 0.05},
		{serological + "made-for-blow-out = true\nretained = { mean = \"0.08 mL\", spread = \"0.02 mL\" }", drained, 9.92, 0.02},
		{serological + "made-for-blow-out = true\nretained = { mean = \"0.08 mL\", spread = \"0.02 mL\" }", BlownOut, 10, 0},
		{serological, BlownOut, 10.10, 0.05},
		{serological, drained, 10, 0},
		{serological + "made-for-blow-out = false", BlownOut, 10.10, 0.05},
	} {
		u := quiet()
		u.Emptying = test.emptying
		got := delivered(t, one(t, test.text), u, 10)
		near.Relative(t, test.text+string(test.emptying), test.value, got.Value, 1e-12)
		near.Absolute(t, test.text+string(test.emptying), test.u, got.StandardUncertainty, 1e-12)
		assert.Equal(t, 10.0, got.Intended)
	}
}

// What is said of it: that the drop is missing is a warning, what the film does is not counted.
func TestMadeForBlowOutIsSaid(t *testing.T) {
	k := one(t, serological+"made-for-blow-out = true")
	for emptying, want := range map[Emptying]said{
		BlownOut: {NotCounted: []string{"scatter of what stays in the x as it delivers"}},
		drained: {
			Warnings: []string{"the x is made to be blown out: left in its tip, its last drop is missing from what it gives; say blown-out = true in the step where it is blown out"},
			Assumed:  []string{"the last drop in the tip of the x is about 0.1 mL"},
		},
		Rinsed: {
			Assumed:    []string{"the last drop in the tip of the x is about 0.1 mL", "a rinse leaves 2 % of what stayed behind"},
			NotCounted: []string{"the film that is rinsed out of the x, beyond what it is adjusted to deliver"},
		},
	} {
		u := quiet()
		u.Emptying = emptying
		delivered(t, k, u, 10)
		assert.Equal(t, want, worded(u.Notes), emptying)
	}
	assert.Equal(t, []Emptying{BlownOut, drained}, []Emptying{k.AsMeant(10), k.AsMeant(4)})
	assert.Equal(t, drained, one(t, serological).AsMeant(10))
	near.Absolute(t, "by itself it is used as it is meant to be", 0.5*0.1/math.Sqrt(6), k.Uncertainty(10), 1e-12)
}

// A part of the scale runs from line to line, which is two readings, and nothing is in the tip;
// blown out it runs to the tip, which is one.
func TestMadeForBlowOutInPart(t *testing.T) {
	k := one(t, serological+"made-for-blow-out = true")
	for emptying, readings := range map[Emptying]float64{drained: 2, BlownOut: 1} {
		u := alone()
		u.BenchReading, u.Emptying = ordinary, emptying
		got := delivered(t, k, u, 4)
		assert.Equal(t, 4.0, got.Value)
		near.Relative(t, string(emptying), math.Sqrt(readings)*0.5*0.1/math.Sqrt(6), got.StandardUncertainty, 1e-12)
		assert.Equal(t, said{NotCounted: []string{"scatter of what stays in the x as it delivers"}}, worded(u.Notes))
	}
}

// A pipette adjusted to contain gives its mark only when it is rinsed out; else its last drop
// stays, and a film of which nothing is known.
func TestPipetteMarkedIn(t *testing.T) {
	k := one(t, exactPipette+"marked = \"In\"\n")
	for emptying, want := range map[Emptying][2]float64{drained: {9.90, 0.05}, BlownOut: {10, 0}, Rinsed: {10 - 0.02*0.10, 0.02 * 0.05}} {
		u := quiet()
		u.Emptying = emptying
		got := delivered(t, k, u, 10)
		near.Relative(t, string(emptying), want[0], got.Value, 1e-12)
		near.Absolute(t, string(emptying), want[1], got.StandardUncertainty, 1e-12)
		film := []string{"the film that stays in the x, which is adjusted to contain"}
		if emptying == Rinsed {
			film = nil
		}
		assert.Equal(t, film, worded(u.Notes).NotCounted)
	}
}

// A pipette with two marks is read at both, however much of it runs out, and has no last drop.
func TestPipetteWithTwoMarks(t *testing.T) {
	k := one(t, serological+"two-marks = true\nbore = \"8 mm\"\n")
	for _, mL := range []float64{3, 10} {
		u := of(alone(), "ethanol")
		u.BenchReading = ordinary
		got := delivered(t, k, u, mL)
		assert.Equal(t, mL, got.Value) // the meniscus cancels
		assert.Equal(t, set("reading of the x", "second reading of the x"), names(got.Analytic))
	}
	without := one(t, serological+"bore = \"8 mm\"\n")
	near.Absolute(t, "to the tip", -0.013, delivered(t, without, of(quiet(), "ethanol"), 10).Value-10, 0.001)
	_, err := one(t, exactPipette+"two-marks = true\n").Deliver(quiet(), 4)
	impossible(t, "the x measures 10 mL from mark to mark, and cannot measure 4 mL", err)
}

// More than was measured cannot stay: what is stated beyond is cut off, and where its mean is as
// much nothing is left to be measured. Rinsed out or by design the mean may be more.
func TestNoMoreStaysThanWasMeasured(t *testing.T) {
	k := one(t, oneCylinder+"division = \"0.2 mL\"\ntolerance = \"0 mL\"\nclinging = \"0 mL\"\nretained = { mean = \"0.4 mL\", spread = \"0.8 mL\" }\n")
	whole, part := delivered(t, k, quiet(), 10), delivered(t, k, quiet(), 2)
	near.Relative(t, "whole", 9.6, whole.Value, 1e-3)
	assert.Equal(t, uncertainty.GammaBelow(0.4, 0.8, 2), term(part.Analytic, "retained in the x").Distribution)
	s := uncertainty.SummaryOf(term(part.Analytic, "retained in the x").Distribution)
	assert.Equal(t, []float64{0, 2}, []float64{s.Low, s.High})
	near.Relative(t, "part", 2-s.Mean, part.Value, 1e-12)
	_, err := k.Deliver(quiet(), 0.4)
	impossible(t, "0.4 mL is no more than what stays in the x: 0.4 mL", err)
	u := quiet()
	u.Emptying = Rinsed
	near.Relative(t, "rinsed", 0.4-0.02*0.4, delivered(t, k, u, 0.4).Value, 1e-6)
	flat := one(t, oneCylinder+"division = \"0.2 mL\"\ntolerance = \"0 mL\"\nclinging = \"0 mL\"\nretained = \"0.4 mL\"\n")
	assert.Equal(t, uncertainty.Rectangular{Low: 0, High: 0.6}, term(delivered(t, flat, quiet(), 0.6).Analytic, "retained in the x").Distribution)
	assert.Equal(t, uncertainty.Rectangular{Low: 0, High: 0.8}, term(delivered(t, flat, quiet(), 6).Analytic, "retained in the x").Distribution)
	narrow := one(t, oneCylinder+"division = \"0.2 mL\"\ntolerance = \"0 mL\"\nretained = { mean = \"0.4 mL\", spread = \"0.0001 mL\" }\n")
	_, err = narrow.Deliver(quiet(), 0.4004)
	impossible(t, "0.4004 mL is no more than what stays in the x: 0.4 mL", err)
}

// All of 2 mL may stay with a chance of 4.7 in 100, of a gamma distribution of mean 0.4 and
// standard deviation 0.8 mL (1 - γ(1/4, 5/4)/Γ(1/4), by hand from the series); of 10 mL it
// cannot. What is rinsed out cannot stay.
func TestMayKeepAll(t *testing.T) {
	k := one(t, oneCylinder+"division = \"0.2 mL\"\ntolerance = \"0 mL\"\nretained = { mean = \"0.4 mL\", spread = \"0.8 mL\" }\n")
	near.Absolute(t, "chance", 0.0474, k.Retained.above(2), 0.0002)
	assert.Equal(t, []bool{true, false, false}, []bool{k.MayKeepAll(quiet(), 2, 0.025), k.MayKeepAll(quiet(), 2, 0.05), k.MayKeepAll(quiet(), 10, 0.025)})
	u := quiet()
	u.Emptying = Rinsed
	assert.Equal(t, false, k.MayKeepAll(u, 2, 0.025))
	flat := one(t, oneCylinder+"division = \"0.2 mL\"\ntolerance = \"0 mL\"\nretained = \"0.4 mL\"\n")
	assert.Equal(t, []bool{true, false}, []bool{flat.MayKeepAll(quiet(), 0.6, 0.025), flat.MayKeepAll(quiet(), 0.8, 0.025)})
	assert.Equal(t, false, one(t, serological).MayKeepAll(quiet(), 0.1, 0.025))
}

// What cannot be both, and limits that are for what is adjusted to deliver.
func TestMistakesOfHowAPipetteRunsOut(t *testing.T) {
	for _, test := range []struct{ keys, first, hint string }{
		{"made-for-blow-out = true\nmarked = \"In\"", "6:21: made-for-blow-out: what is marked In is not adjusted to what leaves it", "leave one of the two out"},
		{"made-for-blow-out = true\ntwo-marks = true", "7:13: two-marks: what runs from mark to mark has no last drop to blow out", "leave one of the two out"},
		{"marked = \"TC\"", `6:10: marked: "TC" is not one of In, Ex`, `write "In", which is the same`},
		{"two-marks = \"yes\"", `6:13: two-marks: found the text "yes", expected true or false without quotes`, "write it without quotes, as in true"},
	} {
		_, err := ParseKit("b.toml", []byte(exactPipette+test.keys))
		mistake := (*benchfile.Mistake)(nil)
		require.ErrorAs(t, err, &mistake, test.keys)
		first, _, _ := strings.Cut(mistake.Error(), "\n")
		assert.Equal(t, []string{"b.toml:" + test.first, test.hint}, []string{first, mistake.Hint})
	}
	_, err := ParseKit("b.toml", []byte("[[pipette]]\nname = \"x\"\nkind = \"one-mark\"\ncapacity = \"10 mL\"\nclass = \"A\"\nmarked = \"In\"\n"))
	assert.ErrorContains(t, err, "5:9: class: the limits of class A are for what is adjusted to deliver, and the x is marked In")
	assert.ErrorContains(t, err, "state its own tolerance")
}
