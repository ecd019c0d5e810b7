package equipment

import (
	"encoding/csv"
	"math"
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"minim/uncertainty/near"
)

func pure(name string) []Part { return []Part{{name, 1}} }

// Losses through five mouths at 20 °C in mg/min, worked out from the formula apart from this code:
// a low beaker of 50 mL, 40 mm wide, 10 and 40 mm below its rim; a cylinder of 10 mL, 13 mm wide,
// and a bottle neck of 12 mm, 30 mm below; the neck of a flask, 9 mm wide, 40 mm below. Wide
// surfaces are chilled by what leaves them.
func TestEvaporatesThroughAMouth(t *testing.T) {
	for mouth, want := range map[Mouth]map[string]float64{
		{40, 10}: {"water": 1.105, "ethanol": 6.632 * 0.85, "isopropanol": 4.850 * 0.9, "acetone": 42.055 * 0.6},
		{40, 40}: {"water": 0.368, "ethanol": 2.211 * 0.85, "isopropanol": 1.617 * 0.9, "acetone": 14.018 * 0.6},
		{13, 30}: {"water": 0.050, "ethanol": 0.300, "isopropanol": 0.220, "acetone": 1.904},
		{9, 40}:  {"water": 0.019, "ethanol": 0.116, "isopropanol": 0.085, "acetone": 0.734},
		{12, 30}: {"water": 0.043, "ethanol": 0.258, "isopropanol": 0.189, "acetone": 1.636},
	} {
		for name, mg := range want {
			grams, unknown := mouth.Evaporates(pure(name), 1, 20)
			near.Absolute(t, name, mg, 1000*grams, 0.0006+0.001*mg)
			assert.Empty(t, unknown)
			near.Relative(t, name+", an hour", 60, 1e9*func() float64 { g, _ := mouth.Evaporates(pure(name), 60, 20); return g }()/(1e9*grams), 1e-12)
		}
	}
	// By hand: ethanol in the beaker, half an hour: 170 mg of 31.6 g.
	grams, _ := Mouth{40, 10}.Evaporates(pure("ethanol"), 30, 20)
	near.Absolute(t, "by hand, mg", 170, 1000*grams, 1)
	warm, _ := Mouth{13, 30}.Evaporates(pure("ethanol"), 1, 25)
	cold, _ := Mouth{13, 30}.Evaporates(pure("ethanol"), 1, 20)
	near.Relative(t, "at 25 °C", 1.091/0.792, warm/cold, 1e-12)
	cool, _ := Mouth{13, 30}.Evaporates(pure("ethanol"), 1, 15)
	near.Relative(t, "at 15 °C", 0.792/1.091, cool/cold, 1e-12)
}

// The drying rates of coatings say that ethanol goes 4.7 times as fast as water and acetone 4.0
// times as fast as ethanol (butyl acetate 1: 5.6, 1.4 of 95 %, 0.3; one source); a formula for still
// pools has 0.187 mg/(cm² min) for water. All lie within the factor of 2 that is stated.
func TestEvaporationAgainstOtherFigures(t *testing.T) {
	open := func(name string) float64 { g, _ := Mouth{100, 0}.Evaporates(pure(name), 1, 20); return g }
	for what, ratio := range map[string]float64{
		"ethanol over water": open("ethanol") / open("water") / 4.7, "acetone over ethanol": open("acetone") / open("ethanol") / 4.0,
		"water": 1000 * open("water") / (math.Pi / 4 * 100) / 0.187,
	} {
		assert.InDelta(t, 0, math.Log(ratio), math.Log(2), what)
	}
}

// Of a mixture each part counts by twice its share, and never more than as if it were pure; spirit
// is its ethanol and its water. What no table has is named.
func TestEvaporationOfMixtures(t *testing.T) {
	m := Mouth{13, 30}
	of := func(parts ...Part) float64 { g, _ := m.Evaporates(parts, 1, 20); return g }
	ethanol, water := of(pure("ethanol")...), of(pure("water")...)
	near.Relative(t, "a tenth of ethanol", 0.2*ethanol+water, of(Part{"ethanol", 0.1}, Part{"water", 0.9}), 1e-12)
	near.Relative(t, "half", ethanol+water, of(Part{"ethanol", 0.5}, Part{"water", 0.5}), 1e-12)
	near.Relative(t, "spirit", ethanol+0.08*water, of(Part{"ethanol 96 %", 1}), 1e-12)
	_, unknown := m.Evaporates([]Part{{"water", 0.5}, {"sea buckthorn oil", 0.5}}, 1, 20)
	assert.Equal(t, []string{"sea buckthorn oil"}, unknown)
	assert.Zero(t, of(pure("glycerol")...))
	_, unknown = m.Evaporates(pure("propylene glycol"), 1, 20)
	assert.Empty(t, unknown)
}

// 10 mL of saturated air hold 1.1 mg of ethanol and 5.9 mg of acetone. A bottle that is half full of
// either loses half of that for 10 mL each time: 1.1/2/7893 of it.
func TestEvaporatesWhenOpened(t *testing.T) {
	share, _ := EvaporatesOpened(pure("ethanol"), 0.7893, 1, 20)
	near.Relative(t, "ethanol", 1.105/2/7893, share, 1e-9)
	share, _ = EvaporatesOpened(pure("acetone"), 0.7905, 20, 20)
	near.Relative(t, "acetone", 20*5.892/2/7905, share, 1e-9)
	share, unknown := EvaporatesOpened(pure("water"), 0.998, 5, 25)
	assert.Less(t, share, 1e-4)
	assert.Empty(t, unknown)
}

// Low beakers of 25 to 1000 mL are 32, 40, 48, 58, 68, 103 mm wide and 50, 60, 70, 80, 95, 145 mm high
// inside (from memory of ISO 3819).
func TestBeakersAreOfOneShape(t *testing.T) {
	for mL, want := range map[float64][2]float64{25: {32, 50}, 50: {40, 60}, 100: {48, 70}, 250: {68, 95}, 1000: {103, 145}} {
		m := beaker(mL, 0)
		near.Relative(t, "width", want[0], m.Width, 0.06)
		near.Relative(t, "height", want[1], m.Depth, 0.13)
	}
	half := HalfFull(25)
	near.Absolute(t, "width of one of 50 mL", 40, half.Width, 1e-9)
	near.Absolute(t, "25 mL in it, depth", 40, half.Depth, 0.2)
}

// What closes, and how wide the rest is open.
func TestMouths(t *testing.T) {
	for text, want := range map[string]struct {
		mark   float64
		mouth  Mouth
		closes bool
	}{
		"[[cylinder]]\nname = \"x\"\ncapacity = \"10 mL\"\nclass = \"B\"\nbore = \"13 mm\"\n":                             {10, Mouth{13, 30}, false},
		"[[cylinder]]\nname = \"x\"\ncapacity = \"20 mL\"\ntolerance = \"1 mL\"\ndivision = \"1 mL\"\nbore = \"20 mm\"\n": {10, Mouth{20, 30 + 10000/(math.Pi*100)}, false},
		"[[cylinder]]\nname = \"x\"\ncapacity = \"50 mL\"\ntolerance = \"1 mL\"\ndivision = \"1 mL\"\n":                   {50, Mouth{22, 30}, false},
		"[[beaker]]\nname = \"x\"\ncapacity = \"50 mL\"\ndivision = \"10 mL\"\n":                                          {50, Mouth{40, 60 - 50000/(math.Pi*400)}, false},
		"[[conical-flask]]\nname = \"x\"\ncapacity = \"50 mL\"\ntolerance = \"2 mL\"\ndivision = \"10 mL\"\n":             {50, Mouth{20, 60 - 50000/(math.Pi*400)}, false},
		"[[flask]]\nname = \"x\"\ncapacity = \"50 mL\"\nclass = \"A\"\n":                                                  {50, Mouth{}, true},
		"[[jar]]\nname = \"x\"\nline = \"50 mL\"\ntolerance = \"1 mL\"\n":                                                 {50, Mouth{}, true},
	} {
		m, closes := one(t, text).Mouth(want.mark)
		assert.Equal(t, want.closes, closes, text)
		if !closes {
			near.Absolute(t, text+" width", want.mouth.Width, m.Width, 1e-9)
			near.Absolute(t, text+" depth", want.mouth.Depth, m.Depth, 1e-9)
		}
	}
}

// Each row of the table says where it is from.
func TestEvaporationTableHasSources(t *testing.T) {
	file, err := os.ReadFile("classes/evaporation.csv")
	require.NoError(t, err)
	rows, err := csv.NewReader(strings.NewReader(string(file))).ReadAll()
	require.NoError(t, err)
	require.Len(t, rows, len(vapours())+1)
	for _, v := range vapours() {
		assert.Contains(t, []string{"two sources", "one source", fromMemory}, v.Trust, v.Name)
		assert.NotEmpty(t, v.Source, v.Name)
		assert.Equal(t, v.At20 > 0, v.Air25 > 0, v.Name)
		_, found := FindLiquid(v.Name)
		assert.True(t, found, v.Name)
	}
}
