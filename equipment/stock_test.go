package equipment

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"minim/uncertainty/near"
)

func known(t *testing.T, name string) *StockSubstance {
	t.Helper()
	s, found := FindStock(name)
	require.True(t, found, name)
	return s
}

// Densities that were printed elsewhere than the rows of the table, at 20 °C unless said: each
// lies within the limit that the table has for bottles of that strength, and the last digit
// of what is printed.
//
//	ammonia            a table of 1880, specific gravity at about 15.5 °C, where it is about 0.002 higher
//	hydrochloric acid  a table of reagent strengths: 36 to 38 % 1.18 to 1.19
//	nitric acid        the column of 20 °C of Perry, quoted: 65 % 1.39, 70 % 1.41
//	acetic acid        labels of glacial acid, 1.05 (common practice, no source)
//	phosphoric acid    a registration dossier: 50 % 1.33 to 1.34, 75 % 1.57 to 1.58; 85 % 1.69 and, at 25 °C, 1.685
//	hydrogen peroxide  an encyclopaedia: 30 % 1.11, 35 % 1.13, 50 % 1.20, 70 % 1.29
//	sodium hydroxide   a second table: 28 % 1.3064, 40 % 1.4300
//	glycerol           CRC: 10 % 1.0215, 30 % 1.0717, 50 % 1.1254, 70 % 1.1810, 90 % 1.2351
//	isopropanol        Lebo 1921
//	potassium hydroxide  a table at 18 °C: 10 % 1.091, 30 % 1.290; CRC: 10 % 1.0873, 30 % 1.2813
//	hypochlorite       trade product 1.13 to 1.30 (EN 901:2013): 120 g/L of available chlorine 1.157 to 1.168
func TestStockDensitiesOfHandbooks(t *testing.T) {
	for name, printed := range map[string][][3]float64{ // % w/w, g/mL, digit
		"ammonia":             {{10.12, 0.960, 0.002}, {24.02, 0.910, 0.002}, {26.98, 0.900, 0.002}},
		"hydrochloric acid":   {{37, 1.185, 0.005}},
		"nitric acid":         {{65, 1.39, 0.005}, {70, 1.41, 0.005}},
		"acetic acid":         {{99.7, 1.05, 0.005}},
		"phosphoric acid":     {{50, 1.335, 0.005}, {75, 1.575, 0.005}, {85, 1.69, 0.005}},
		"hydrogen peroxide":   {{30, 1.11, 0.005}, {35, 1.13, 0.005}, {50, 1.20, 0.005}, {70, 1.29, 0.005}},
		"sodium hydroxide":    {{28, 1.3064, 0.0001}, {40, 1.4300, 0.0001}},
		"glycerol":            {{10, 1.0215, 0.0001}, {30, 1.0717, 0.0001}, {50, 1.1254, 0.0001}, {70, 1.1810, 0.0001}, {90, 1.2351, 0.0001}},
		"isopropanol":         {{9.58, 0.9829, 0.0001}, {21.39, 0.9685, 0.0001}, {33.17, 0.9459, 0.0001}, {43.02, 0.9242, 0.0001}, {53.07, 0.8987, 0.0001}, {65.22, 0.8700, 0.0001}, {74.35, 0.8483, 0.0001}, {85.09, 0.8228, 0.0001}, {90.35, 0.8087, 0.0001}},
		"potassium hydroxide": {{10, 1.091, 0.0005}, {30, 1.290, 0.0005}, {10, 1.0873, 0.0001}, {30, 1.2813, 0.0001}},
		"sodium hypochlorite": {{100 * 0.120 / 1.1625, 1.1625, 0.006}},
	} {
		for _, row := range printed {
			at := known(t, name).At(row[0] / 100)
			assert.InDelta(t, row[1], at.Density, at.Limit+row[2], "%s of %v %%", name, row[0])
		}
	}
}

// Between its rows ethanol goes by the formula of OIML R 22, within its limit, though the table
// knows some strengths only.
func TestStockOfEthanol(t *testing.T) {
	for percent := 1.0; percent <= 100; percent++ {
		at := known(t, "ethanol").At(percent / 100)
		assert.InDelta(t, AlcoholDensity(percent/100), at.Density, 0.0003, "%v %%", percent)
	}
}

// Every row gives itself, in a table that rises, and falls, without a jump: the slope is that of
// the densities to both sides, and the concentration rises with the strength, so that its
// inverse is one.
func TestStockTableIsOneCurve(t *testing.T) {
	for _, s := range Stocks() {
		require.NotEmpty(t, s.rows, s.Name)
		for _, r := range s.rows {
			at := s.At(r.Percent / 100)
			near.Relative(t, s.Name, r.Density, at.Density, 1e-12)
			assert.Equal(t, r.Limit, at.Limit, s.Name)
			assert.Equal(t, r.Trust, at.Trust, s.Name)
			assert.Contains(t, []string{"two sources", "one source", "derived", fromMemory}, r.Trust)
			assert.NotEmpty(t, r.Source)
		}
		for w := 0.002; w < s.Most()-0.001; w += 0.0131 {
			at, more := s.At(w), s.At(w+1e-7)
			assert.InDelta(t, at.Slope, (more.Density-at.Density)/1e-7, 2e-3, "%s at %v", s.Name, w)
			assert.Greater(t, more.Density*(w+1e-7), at.Density*w, "%s at %v", s.Name, w)
			near.Relative(t, s.Name, w, s.Fraction(w*at.Density), 1e-12)
			near.Relative(t, s.Name, at.Density, 1/(w*at.SpecificVolume+(1-w)/waterAt20()), 1e-12)
		}
		assert.Equal(t, s.At(1).SpecificVolume, s.rows[len(s.rows)-1].phi)
		near.Relative(t, s.Name+" as water", waterAt20(), s.At(0).Density, 1e-12)
		assert.False(t, math.IsNaN(s.At(0).Spread) || s.At(0).Spread == 0, s.Name)
		assert.Zero(t, s.At(0).Limit)
	}
}

// One density belongs to two strengths of acetic acid, whose greatest is near 78 %, and
// sulphuric acid from 95 to 98 % has one within its limit: nothing can be inferred from it.
func TestTrapsOfStocks(t *testing.T) {
	acetic := known(t, "Glacial acetic acid")
	assert.InDelta(t, 1.0644, acetic.At(0.90).Density, 1e-4)
	assert.InDelta(t, 1.0644, acetic.At(0.63).Density, 0.0015)
	assert.Less(t, acetic.At(1).Density, acetic.At(0.8).Density)
	sulphuric := known(t, "sulfuric acid")
	assert.InDelta(t, sulphuric.At(0.95).Density, sulphuric.At(0.98).Density, 0.003)
	assert.Greater(t, known(t, "formalin").At(0.37).Limit, 0.02)
	assert.Greater(t, known(t, "NaOCl").At(0.10).Limit, 0.02)
}

// How much of what the table counts the other form holds (of atomic weights:
// 17.031/35.046, 195.99/141.94, 70.91/74.44).
func TestFormsOfStocks(t *testing.T) {
	near.Relative(t, "NH4OH", 0.4860, known(t, "ammonia").Holds("NH4OH"), 1e-4)
	near.Relative(t, "P2O5", 1/0.7243, known(t, "phosphoric acid").Holds("P2O5"), 2e-4)
	near.Relative(t, "NaOCl", 1/1.0498, known(t, "bleach").Holds("NaOCl"), 1e-4)
	assert.Equal(t, 1.0, known(t, "ammonia").Holds("NH3"))
	assert.Equal(t, 1.0, known(t, "ammonia").Holds(""))
	form, found := known(t, "ammonia").Form(" nh4oh ")
	assert.True(t, found)
	assert.Equal(t, "NH4OH", form)
	_, found = known(t, "ammonia").Form("N")
	assert.False(t, found)
	_, found = FindStock("urea")
	assert.False(t, found)
}
