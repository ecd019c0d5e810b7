package bench

import (
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"minim/equipment"
	"minim/uncertainty/near"
)

const ownFlask = "[[flask]]\nname = \"x\"\ncapacity = \"10 mL\"\ntolerance = \"0.1 mL\"\n"

const ownCylinder = "[[cylinder]]\nname = \"x\"\ncapacity = \"10 mL\"\ndivision = \"0.2 mL\"\ntolerance = \"0.3 mL\"\n"

func TestOwnReadings(t *testing.T) {
	k := parseKit(t, ownCylinder+"readings = [ { of = \"delivered\", at = \"10 mL\", values = [\"9.9 mL\", \"9.80 mL\"] },\n"+
		"{ of = \"contained\", at = \"5 mL\", weighed = [\"4.98 g\", \"4.99 g\", \"4.98 g\"], temperature = \"20 °C\", within = \"2 °C\", span = \"0.3 % of reading\" } ]\n").Measure("x")
	poured, held := k.Own[0], k.Own[1]
	near.Relative(t, "mean", 9.85, poured.Mean, 1e-12)
	assert.Equal(t, []any{equipment.Delivered, 10.0, 2.0, false}, []any{poured.Of, poured.At, poured.Readings(), poured.Held})
	near.Relative(t, "the finest digit", 0.01, poured.Digit, 1e-12)
	assert.False(t, poured.Weighed)
	near.Relative(t, "by Z at 20 °C", 1.0028512*14.95/3, held.Mean, 1e-6)
	near.Relative(t, "digit", 0.01*1.0028512, held.Digit, 1e-6)
	assert.Equal(t, []any{equipment.Contained, 5.0, true, 20.0, 2.0}, []any{held.Of, held.At, held.Weighed, held.Temperature, held.Within})
	near.Relative(t, "common: 2 °C, 50 hPa and the span", held.Mean*math.Hypot(math.Hypot(2*2.07e-4, 5.2e-5), 0.003)/math.Sqrt(3), held.Common, 2e-3)
	assert.Equal(t, []equipment.Spread{held.Spread}, k.Repeatability.Elsewhere)
	near.Relative(t, "s", math.Sqrt(0.005), k.Repeatability.S, 1e-9)
	one := parseKit(t, ownFlask+"readings = { values = [\"10.01 mL\", \"10.02 mL\"] }").Measure("x")
	plain := parseKit(t, ownFlask+"readings = [\"10.01 mL\", \"10.02 mL\"]").Measure("x")
	assert.Equal(t, plain, one, "a table that says no more than the list")
}

func TestOwnReadingsMistakes(t *testing.T) {
	const values = `values = ["10.0 mL", "10.1 mL"]`
	for text, want := range map[string]string{
		"{ of = \"delivered\", " + values + " }":                                                                    `of: "delivered" is not one of contained`,
		"{ of = \"held\", " + values + " }":                                                                         `of: "held" is not one of contained`,
		"{ at = \"5 mL\", " + values + " }":                                                                         "at: the x has one mark, at 10 mL, and cannot measure 5 mL",
		"{ at = \"0 mL\", " + values + " }":                                                                         "at: must be above 0",
		"{ at = \"10 mL\" }":                                                                                        "there are no readings in it",
		"{ values = [\"10.0 mL\"] }":                                                                                "values: a repeatability needs at least two readings",
		"{ weighed = [\"10.0 g\", \"9.9 g\"] }":                                                                     "weighed: the temperature of the water is not stated",
		"{ weighed = [\"10.0 mL\", \"9.9 g\"], temperature = \"20 °C\" }":                                           `weighed: "10.0 mL" is a volume, not a mass`,
		"{ weighed = [\"10.0 g\", \"9.9 g\"], temperature = \"90 °C\" }":                                            "temperature: water is not weighed at this temperature",
		"{ weighed = [\"10.0 g\", \"9.9 g\"], temperature = \"20 °C\", within = \"30 °C\" }":                        "within: this says nothing of the temperature",
		"{ weighed = [\"10.0 g\", \"9.9 g\"], temperature = \"20 °C\", " + values + " }":                            "weighed: values and weighed are both stated",
		"{ at = \"10 mL\", values = [\"1.00 mL\", \"1.01 mL\"] }":                                                   "at: the readings are 1.005 mL on average",
		"{ " + values + ", span = \"0.1 %\" }":                                                                      "does not say of what",
		"{ " + values + ", mark = \"10 mL\" }":                                                                      "unknown key `mark`",
		"[ { " + values + " }, { " + values + " } ]":                                                                "there are readings of the same at the same mark already",
		"{ liquid = \"hide glue\", weighed = [\"9.9 g\", \"9.8 g\"], temperature = \"20 °C\" }":                     "weighed: the density of hide glue is not known",
		"{ density = \"0.998 g/mL\", weighed = [\"9.9 g\", \"9.8 g\"], temperature = \"20 °C\" }":                   "density: that of water follows from its temperature",
		"{ liquid = \"ethanol\", weighed = [\"7.9 g\", \"7.8 g\"], density = \"9 g/mL\", temperature = \"20 °C\" }": "density: \"9 g/mL\" is not likely",
		"{ liquid = \"ethanol\", weighed = [\"7.9 g\", \"7.8 g\"] }":                                                "weighed: the temperature of the ethanol is not stated",
		"[ { liquid = \"ethanol\", " + values + " }, { liquid = \"Absolute  ethanol\", " + values + " } ]":          "there are readings of the same at the same mark already",
		"[ { " + values + " }, \"10 mL\" ]":                                                                         "expected a table",
		"{ " + values + " }\nrepeatability = \"0.1 mL\"":                                                            "repeatability and readings are both stated",
	} {
		_, err := ParseKit("k", []byte(ownFlask+"readings = "+text+"\n"))
		if assert.Error(t, err, text) {
			assert.Contains(t, err.Error(), want, text)
			assert.Equal(t, 1, strings.Count(err.Error(), "k:"), "%s\n%v", text, err)
		}
	}
}

// Readings of a balance are what it shows: alike, they scatter by 0.41 of a digit, and finer than the
// display they are a mistake that has both figures.
func TestReadingsOfABalance(t *testing.T) {
	const scale = "[[balance]]\nname = \"x\"\ncapacity = \"200 g\"\nreadability = \"0.01 g\"\n"
	b := parseKit(t, scale+"readings = [\"1.00 g\", \"1.0 g\", \"1.000 g\"]\n").Balance("x")
	near.Relative(t, "s", 0.01/math.Sqrt(6), b.Repeatability.S, 1e-12)
	assert.True(t, b.Repeatability.ByDigit)
	b = parseKit(t, scale+"readings = [\"99.99 g\", \"100.01 g\"]\n").Balance("x")
	near.Relative(t, "s", 0.02/math.Sqrt2, b.Repeatability.S, 1e-9)
	_, err := ParseKit("k", []byte(scale+"readings = [\"1.00 g\", \"1.0004 g\", \"1.0006 g\"]\n"))
	require.Error(t, err)
	assert.Contains(t, err.Error(), "readings: \"1.0004 g\" is finer than the display shows, which has steps of 0.01 g")
}
