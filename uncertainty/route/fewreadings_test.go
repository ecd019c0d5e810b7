package route

import (
	"context"
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"minim/report/words/note"
	"minim/uncertainty"
	"minim/uncertainty/near"
)

// readKitOf is a kit of pistons without error, known from readings in mL, and a flask without error.
func readKitOf(readings map[string]string) string {
	var kit strings.Builder
	for _, name := range []string{"p2", "p3", "p4", "stated"} {
		if readings[name] != "" {
			kit.WriteString("[[pipette]]\nname = \"" + name + "\"\nkind = \"piston\"\ncapacity = \"1 mL\"\nstandard-uncertainty = \"0.0001 mL\"\n" + readings[name] + "\n")
		}
	}
	return kit.String() + "[[flask]]\nname = \"f10\"\ncapacity = \"10 mL\"\nstandard-uncertainty = \"0.0001 mL\"\nreading = \"none\"\nclinging = \"0 mL\"\ncount = 9\n"
}

var fewReadings = map[string]string{
	"p2": `readings = ["0.990 mL", "1.010 mL"]`, "p3": `readings = ["0.990 mL", "1.010 mL", "1.000 mL"]`,
	"p4": `readings = ["0.990 mL", "1.010 mL", "0.985 mL", "1.015 mL"]`, "stated": `repeatability = "0.01 mL"`,
}

// onePart takes 1 mL of the stock n times, and makes it up to 10 mL.
func onePart(name, with string, n int) string {
	return "[[route]]\nname = \"" + name + "\"\nsteps = [ { start = \"stock\" }, " + strings.Repeat(`{ take = "1 mL", with = "`+with+`" }, `, n) + `{ make-up-to = "10 mL", in = "f10" } ]` + "\n"
}

const dyed = "[solute]\nname = \"dye\"\n[solvent]\nname = \"water\"\n[[stock]]\nname = \"stock\"\nstrength = \"10 g/L\"\n"

// The chance that a pipette is within 2 % which is known from two or three readings, in
// closed form: 2/π arctan x for one degree of freedom and x/√(2 + x²) for two, x the limit over s. A normal
// distribution has 84.3 and 95.4.
func TestChanceFromFewReadings(t *testing.T) {
	p := parse(t, readKitOf(fewReadings), "target = \"1 g/L\"\nvolume = \"10 mL\"\ntolerance = \"2 % of target\"\n"+dyed+
		onePart("two", "p2", 1)+onePart("three", "p3", 1)+onePart("four", "p4", 1)+onePart("stated", "stated", 1))
	c := compareAll(t, p)
	x := 0.02 / (0.01 * math.Sqrt2)
	for name, want := range map[string]float64{"two": 2 / math.Pi * math.Atan(x), "three": 2 / math.Sqrt(6), "stated": 0.9545} {
		r := named(t, c, name)
		near.Absolute(t, name+", simulated", want, r.Chance(), 5*math.Sqrt(0.25/100_000)+5e-4)
		near.Absolute(t, name+", by the t-distribution", want, r.Inside[0].Normal, 5e-4)
		assert.False(t, p.Meets(r) && name != "stated", name)
	}
	two := named(t, c, "two")
	near.Relative(t, "U", 12.706*0.01*math.Sqrt2, two.Analytic.ExpandedUncertainty, 1e-3)
	near.Relative(t, "interval", 2*12.706*0.01*math.Sqrt2, two.Quoted.Upper-two.Quoted.Lower, 0.03)
	assert.Equal(t, []bool{true, true, false, false}, []bool{
		math.IsNaN(two.MonteCarlo.StandardDeviation), math.IsNaN(named(t, c, "three").MonteCarlo.StandardDeviation),
		math.IsNaN(named(t, c, "four").MonteCarlo.StandardDeviation), math.IsNaN(named(t, c, "stated").MonteCarlo.StandardDeviation)})
	assert.Equal(t, []string{"two readings of the p2 tell little of how it scatters: with four that scatter alike what it adds to the give or take would be 4 times smaller"}, note.Texts(two.Notes.Warnings))
	assert.Empty(t, named(t, c, "three").Notes.Warnings)
	// Of strengths that are accepted with a chance of 95 in 100, none for two readings; for
	// four the limits less t_95(3) s, which is 2.353 s, nearly.
	assert.False(t, two.Inside[0].Acceptance.Permits(1))
	near.Relative(t, "t", 4.303, uncertainty.CoverageFactor(0.95, named(t, c, "three").Analytic.DegreesOfFreedom), 1e-3)
}

// The strengths that are accepted go by Student's t (JCGM 106, 8.3.2): with a tolerance of
// 20 % they end 2.353 s within the limits for four readings (t_0.95(3), JCGM 100, table G.2 for 90 %), and 1.645 s
// for a standard deviation that is stated.
func TestAcceptanceFromFewReadings(t *testing.T) {
	p := parse(t, readKitOf(fewReadings), "target = \"1 g/L\"\nvolume = \"10 mL\"\ntolerance = \"20 % of target\"\nleast-chance = \"95 %\"\n"+dyed+
		onePart("four", "p4", 1)+onePart("stated", "stated", 1))
	c := compareAll(t, p)
	for name, factor := range map[string]float64{"four": 2.353, "stated": 1.645} {
		r := named(t, c, name)
		near.Absolute(t, name, 1.2-factor*r.Analytic.StandardUncertainty, r.Inside[0].Acceptance.Upper, 0.01*r.Analytic.StandardUncertainty)
	}
}

// One standard deviation from four readings in nine aliquots: the factor is that of three
// degrees of freedom, 3.18 (JCGM 100, table G.2), not 2.05 of 27, and so is the interval.
func TestNineUsesOfFourReadings(t *testing.T) {
	p := parse(t, readKitOf(fewReadings), "target = \"9 g/L\"\nvolume = \"10 mL\"\ntolerance = \"4 % of target\"\n"+dyed+onePart("nine", "p4", 9))
	r := named(t, compareAll(t, p), "nine")
	s := 0.01 * math.Sqrt(13.0/6)
	near.Relative(t, "u", 3*s, r.Analytic.StandardUncertainty, 1e-3)
	near.Absolute(t, "ν", 3, r.Analytic.DegreesOfFreedom, 0.01)
	near.Absolute(t, "k", 3.18, r.Analytic.CoverageFactor, 0.005)
	near.Relative(t, "simulated", 3.182*3*s, (r.MonteCarlo.Upper-r.MonteCarlo.Lower)/2, 0.02)
	near.Relative(t, "SD", math.Sqrt(3)*3*s, r.MonteCarlo.StandardDeviation, 0.02)
	assert.Equal(t, uncertainty.Cause(""), r.CrossCheck.Cause)
}

// A flask that was filled three times divides: its errors are cut, which is said; that of the
// pipette is not.
func TestCutIsSaid(t *testing.T) {
	kit := readKitOf(fewReadings) + "[[flask]]\nname = \"own\"\ncapacity = \"10 mL\"\nstandard-uncertainty = \"0.0001 mL\"\nclinging = \"0 mL\"\nreadings = [\"9.9 mL\", \"10.1 mL\", \"10.0 mL\"]\n"
	p := parse(t, kit, "target = \"1 g/L\"\nvolume = \"10 mL\"\n"+dyed+strings.ReplaceAll(onePart("own", "p3", 1), "f10", "own"))
	r := named(t, compareAll(t, p), "own")
	assert.Contains(t, note.Texts(r.Notes.Assumed), "where a volume or a mass divides, errors are cut that would leave nothing of what is measured with the own, or twice of it (repeatability of the own)")
}

// Digits can be asked for where there is no standard deviation.
func TestDigitsOfFewReadings(t *testing.T) {
	p := parse(t, readKitOf(fewReadings), "target = \"1 g/L\"\nvolume = \"10 mL\"\n"+dyed+onePart("two", "p2", 1))
	c, err := Compare(context.Background(), p, "", uncertainty.Settings{Digits: 1, Seed: 1})
	require.NoError(t, err)
	assert.True(t, named(t, c, "two").Possible)
}

// Beside larger influences two readings still make the tails: the hint is there with the factor of
// their own interval, that of t for one and three degrees of freedom (12.71/3.18), the cross-check
// names them, and they are said to make most of the interval though not of the variance. The rounding of the
// balance stands between in one, a flask in the other.
func TestTwoReadingsBesideOthers(t *testing.T) {
	kit := "[[balance]]\nname = \"scale\"\ncapacity = \"200 g\"\nreadability = \"0.01 g\"\nreadings = [\"1.00 g\", \"1.01 g\"]\nlinearity = \"0.02 g\"\n" +
		"[[flask]]\nname = \"f100\"\ncapacity = \"100 mL\"\nclass = \"A\"\nclinging = \"0 mL\"\n" +
		"[[flask]]\nname = \"f100b\"\ncapacity = \"100 mL\"\nclass = \"A\"\nclinging = \"0 mL\"\nreadings = [\"99.9 mL\", \"100.1 mL\"]\n"
	p := parse(t, kit, "target = \"1 % w/v\"\nvolume = \"100 mL\"\n[solute]\nname = \"salt\"\n[solvent]\nname = \"water\"\n"+
		"[[route]]\nname = \"one\"\nsteps = [ { weigh = \"1.00 g\", on = \"scale\" }, { make-up-to = \"100 mL\", in = \"f100\" } ]\n"+
		"[[route]]\nname = \"much\"\nsteps = [ { weigh = \"5.00 g\", on = \"scale\" }, { make-up-to = \"100 mL\", in = \"f100b\" } ]\n")
	c := compareAll(t, p)
	one, much := named(t, c, "one"), named(t, c, "much")
	assert.Equal(t, []string{"two readings of the scale tell little of how it scatters: with four that scatter alike what it adds to the give or take would be 4 times smaller"}, note.Texts(one.Notes.Warnings))
	assert.Equal(t, uncertainty.Cause("few-readings"), one.CrossCheck.Cause)
	assert.Len(t, note.Texts(much.Notes.Warnings), 2)
	assert.Equal(t, uncertainty.Cause("few-readings"), much.CrossCheck.Cause)
	assert.Less(t, one.Analytic.ByGroup()[0].Sum, 1.0)
}
