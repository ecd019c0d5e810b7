package quantity

import (
	"errors"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Prefixes k, c, m, µ: SI Brochure, 9th edition (2019), table 7. 1 L = 1 dm³,
// so 1 mL = 1 cm³ and 1 kg/m³ = 0.001 g/mL: the same, table 8. A difference of
// 1 K is one of 1 °C: the same, 2.3.1. The wanted numbers are exact: each is
// the float64 nearest to the decimal.
func TestParse(t *testing.T) {
	for _, c := range []struct {
		kind Kind
		text string
		want float64
	}{
		{Mass, "0.01 g", 0.01}, {Mass, "1 mg", 0.001}, {Mass, "7 µg", 7e-6}, {Mass, "0.2 kg", 200}, {Mass, "-0.3 mg", -0.0003},
		{Mass, "+5 g", 5}, {Mass, "005 g", 5}, {Mass, "5E-1g", 0.5}, {Mass, "1e+2 mg", 0.1}, {Mass, "-0 g", 0}, {Mass, "0e99999 g", 0},
		{Volume, "25 mL", 25}, {Volume, "100 µL", 0.1}, {Volume, "100 μL", 0.1}, {Volume, "100 uL", 0.1}, {Volume, "0.3 L", 300},
		{Volume, "5 cm3", 5}, {Volume, "5 cm³", 5}, {Volume, "5mL", 5}, {Volume, " 5\u00a0mL ", 5}, {Volume, "5\u202fmL", 5}, {Volume, "5\u2009mL", 5},
		{Volume, "25 ml", 25}, {Volume, "25ml", 25}, {Volume, "100 µl", 0.1}, {Volume, "100 μl", 0.1}, {Volume, "100 ul", 0.1}, {Volume, "2 l", 2000},
		{Volume, "2 litres", 2000}, {Volume, "5 cc", 5}, {Volume, "5 cm^3", 5}, {Volume, "1 dm³", 1000},
		{Mass, "7 mcg", 7e-6}, {Mass, "7 ug", 7e-6}, {Mass, "7 gram", 7}, {Temperature, "20 C", 20}, {Temperature, "20 ℃", 20}, {Temperature, "20 ºC", 20},
		{Density, "1.05 g/ml", 1.05}, {Density, "1.05 kg/l", 1.05}, {Density, "1.05 g/cc", 1.05}, {Expansion, "2e-4 K⁻¹", 2e-4}, {Expansion, "2e-4 °C^-1", 2e-4},
		{SpecificVolume, "0.6 ml/g", 0.6}, {MolarMass, "58.44 g/mole", 58.44},
		{Length, "1.1 mm", 1.1}, {Length, "1.1 cm", 11}, {Length, "1.1 m", 1100},
		{Temperature, "20 °C", 20}, {Temperature, "-4.5°C", -4.5},
		{Density, "0.789 g/mL", 0.789}, {Density, "0.789 g/cm³", 0.789}, {Density, "789 kg/m³", 0.789}, {Density, "0.789 kg/L", 0.789}, {Density, "0.789 g / mL", 0.789},
		{Expansion, "2.1e-4 /°C", 2.1e-4}, {Expansion, "2.1e-4/K", 2.1e-4}, {Expansion, "2.1e-4 1/K", 2.1e-4}, {Expansion, "0.00021 1/°C", 2.1e-4},
		{MolarMass, "58.44 g/mol", 58.44}, {MolarMass, "0.05844 kg/mol", 58.44},
		{SpecificVolume, "-0.15 mL/g", -0.15}, {SpecificVolume, "0.6 cm3/g", 0.6},
		{Share, "98 %", 0.98}, {Share, "8%", 0.08}, {Share, "0.29 %", 0.0029},
	} {
		got, err := Parse(c.kind, c.text)
		require.NoError(t, err, c.text)
		assert.Equal(t, c.want, got, c.text)
	}
}

// refusal returns the message and the hint of a refused text.
func refusal(t *testing.T, err error) (message, hint string) {
	t.Helper()
	var fault *Error
	require.True(t, errors.As(err, &fault), "%v", err)
	assert.Equal(t, fault.Message, err.Error())
	return fault.Message, fault.Hint
}

func TestParseRefuses(t *testing.T) {
	const volumes, example = "a volume is written in mL, µL, L or cm3", `write a number and its unit, as in "10 mL"`
	const power = "write powers of ten with an e, as in 2.1e-4"
	for _, c := range []struct {
		kind                Kind
		text, message, hint string
	}{
		{Volume, "", `"" is empty`, example},
		{Volume, "  ", `"" is empty`, example},
		{Volume, "mL", `"mL" does not start with a number`, example},
		{Volume, "NaN mL", `"NaN mL" does not start with a number`, example},
		{Volume, "-inf mL", `"-inf mL" does not start with a number`, example},
		{Volume, "+", `"+" does not start with a number`, example},
		{Volume, "5", `"5" has no unit`, "add the unit: mL, µL, L or cm3"},
		{Temperature, "5", `"5" has no unit`, "add the unit: °C"},
		{Mass, "0,5 g", `"0,5 g" has a comma in its number`, "write 0.5 g: a decimal point, not a comma"},
		{Mass, "0,500 g", `"0,500 g" has a comma in its number`, "write 0.500 g: a decimal point, not a comma"},
		{Mass, "12,5", `"12,5" has a comma in its number`, "write 12.5: a decimal point, not a comma"},
		{Volume, "1,000 mL", `"1,000 mL" has a comma in its number`, "write 1.000 mL or 1000 mL: a comma could mean either"},
		{Volume, "1,000,000 mL", `"1,000,000 mL" has separators between its digits`, "write the digits without them, as in 1000 mL"},
		{Volume, "1,000.5 mL", `"1,000.5 mL" has separators between its digits`, "write the digits without them, as in 1000 mL"},
		{Volume, "1'000 mL", `"1'000 mL" has separators between its digits`, "write the digits without them, as in 1000 mL"},
		{Volume, "1_000 mL", `"1_000 mL" has separators between its digits`, "write the digits without them, as in 1000 mL"},
		{Volume, "1 000 mL", `"1 000 mL" has a space in its number`, "write the digits together, as in 1000 mL"},
		{Volume, "1\u202f000 mL", `"1\u202f000 mL" has a space in its number`, "write the digits together, as in 1000 mL"},
		{Mass, ".5 g", `".5 g" has no digit before the decimal point`, "write 0.5 g"},
		{Mass, "-.5 g", `"-.5 g" has no digit before the decimal point`, "write -0.5 g"},
		{Mass, "5. g", `"5. g" has no digit after the decimal point`, "write 5 g"},
		{Mass, "1.2.3 g", `"1.2.3 g" has a number that cannot be read`, "write one decimal point between digits, as in 0.5"},
		{Mass, "1e5.5 g", `"1e5.5 g" has a number that cannot be read`, "write one decimal point between digits, as in 0.5"},
		{Temperature, "−5 °C", `"−5 °C" has a sign that is not read`, "write -5 °C with the plain minus of the keyboard"},
		{Volume, "0x10 mL", `"0x10 mL" is not a decimal number`, "write the number in decimal digits, as in 16 mL"},
		{Expansion, "2.1×10^-4 /K", `"2.1×10^-4 /K" has a power of ten that is not read`, power},
		{Expansion, "2.1 x 10-4 /K", `"2.1 x 10-4 /K" has a power of ten that is not read`, power},
		{Expansion, "10^-4 /K", `"10^-4 /K" has a power of ten that is not read`, power},
		{Mass, "1e400 g", `"1e400 g" is too large a number`, ""},
		{Mass, "-1e99999999999999999999 g", `"-1e99999999999999999999 g" is too large a number`, ""},
		{Mass, "1e306 kg", `"1e306 kg" is too large a number`, ""},
		{Mass, "1e-400 g", `"1e-400 g" is too small a number to be told from zero`, ""},
		{Mass, "1e-99999999999999999999 g", `"1e-99999999999999999999 g" is too small a number to be told from zero`, ""},
		{Mass, "0.0000000000000000000000000000000000000000000000000000000000001 g", `"0.00000000000000000000000000000000000000…" has a number of more than 60 characters`, ""},
		{Volume, "5 g", `"5 g" is a mass, not a volume`, volumes},
		{Expansion, "5 mL", `"5 mL" is a volume, not an expansion coefficient`, "an expansion coefficient is written in /°C, 1/°C, /K or 1/K"},
		{Volume, "10 ML", `"10 ML" has the unit "ML", which is not a unit of volume`, "write mL"},
		{Mass, "10 gr", `"10 gr" has the unit "gr", which is not a unit of mass`, "write g"},
		{Temperature, "20 c", `"20 c" has the unit "c", which is not a unit of temperature`, "write °C"},
		{Volume, "10 UL", `"10 UL" has the unit "UL", which is not a unit of volume`, "write µL"},
		{Volume, "10 M", `"10 M" has the unit "M", which is not a unit of volume`, volumes},
		{Volume, "10 ± 1 mL", `"10 ± 1 mL" has the unit "± 1 mL", which is not a unit of volume`, volumes},
		{Volume, "10\tmL", `"10\tmL" has the unit "\tmL", which is not a unit of volume`, volumes},
		{Mass, "10 G", `"10 G" has the unit "G", which is not a unit of mass`, "write g"},
		{Temperature, "3 K", `"3 K" has the unit "K", which is not a unit of temperature`, "write °C"},
		{Share, "8 % of target", `"8 % of target" says of what, where a plain share belongs`, "write % alone"},
		{Share, "0.98", `"0.98" has no unit`, "add the unit: %"},
	} {
		value, err := Parse(c.kind, c.text)
		message, hint := refusal(t, err)
		assert.Equal(t, c.message, message)
		assert.Equal(t, c.hint, hint, c.text)
		assert.Equal(t, 0.0, value, c.text)
	}
}

func TestParseShareOf(t *testing.T) {
	for text, want := range map[string]struct {
		share float64
		of    string
	}{
		"8 % of target": {0.08, "target"}, "2% of capacity": {0.02, "capacity"}, " 0.2 %  of  full capacity ": {0.002, "full capacity"},
		"1 %\u00a0of reading": {0.01, "reading"}, "-1 % of reading": {-0.01, "reading"},
	} {
		share, of, err := ParseShareOf(text)
		require.NoError(t, err, text)
		assert.Equal(t, want.share, share, text)
		assert.Equal(t, want.of, of, text)
	}
	const ofWhat = `say of what it is a share, as in "8 % of target" or "2 % of capacity"`
	for text, want := range map[string][2]string{
		"8 %":            {`"8 %" does not say of what`, ofWhat},
		"8 % of":         {`"8 % of" does not say of what`, ofWhat},
		"8 mL of target": {`"8 mL of target" is a volume, not a share`, "a share is written in %"},
		"8 of target":    {`"8 of target" has no unit`, "add the unit: %"},
		"8,5 % of x":     {`"8,5 % of x" has a comma in its number`, "write 8.5 % of x: a decimal point, not a comma"},
		"1e999 % of x":   {`"1e999 % of x" is too large a number`, ""},
	} {
		_, _, err := ParseShareOf(text)
		message, hint := refusal(t, err)
		assert.Equal(t, want, [2]string{message, hint}, text)
	}
}

func TestSplit(t *testing.T) {
	for text, want := range map[string]struct {
		number float64
		unit   string
	}{
		"0.65 % w/v": {0.65, "% w/v"}, "0.65%  w / v": {0.65, "% w/v"}, "5 μg/mL": {5, "µg/mL"}, "5 ug/mL": {5, "µg/mL"},
		"1e3 U/mL": {1000, "U/mL"}, "2 mol/L": {2, "mol/L"}, "5 g/l": {5, "g/L"}, "5 mg/ml": {5, "mg/mL"}, "5 U / ml": {5, "U/mL"}, "2 mM": {2, "mM"}, "3 ugly": {3, "ugly"},
	} {
		number, unit, err := Split(text)
		require.NoError(t, err, text)
		assert.Equal(t, want.number, number, text)
		assert.Equal(t, want.unit, unit, text)
	}
	for text, want := range map[string][2]string{
		"0.04":       {`"0.04" has no unit`, "write the unit after the number"},
		"0,65 % w/v": {`"0,65 % w/v" has a comma in its number`, "write 0.65 % w/v: a decimal point, not a comma"},
		"1e999 g/L":  {`"1e999 g/L" is too large a number`, ""},
	} {
		_, _, err := Split(text)
		message, hint := refusal(t, err)
		assert.Equal(t, want, [2]string{message, hint}, text)
	}
}

func TestKindsHaveWordsAndUnits(t *testing.T) {
	for kind := Mass; kind <= Share; kind++ {
		value, err := Parse(kind, "100 "+kind.Unit())
		require.NoError(t, err)
		want := 100.0
		if kind == Share {
			want = 1
		}
		assert.Equal(t, want, value, kind.String())
		assert.Contains(t, kind.Phrase(), kind.String())
	}
	assert.Equal(t, "molar mass", MolarMass.String())
	assert.Equal(t, "Kind(99)", Kind(99).String())
}
