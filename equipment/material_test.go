package equipment

import (
	"math"
	"slices"
	"testing"
	"testing/fstest"

	"github.com/stretchr/testify/assert"
	"gonum.org/v1/gonum/floats/scalar"
)

func TestMaterialsAreComplete(t *testing.T) {
	trusts := []string{"two sources", "one source", "from memory"}
	for _, name := range liquids().names {
		liquid, found := FindLiquid(name)
		assert.Equal(t, true, found && liquid.Name == name, name)
		assert.Equal(t, true, liquid.Source != "" && slices.Contains(trusts, liquid.Trust), name)
	}
	for _, name := range GlassNames() {
		glass, found := FindGlass(name)
		assert.Equal(t, true, found && glass.Name == name, name)
		assert.Equal(t, true, glass.Source != "" && slices.Contains(trusts, glass.Trust), name)
	}
}

func TestLiquidsAndAliases(t *testing.T) {
	assert.Equal(t, []string{"water", "ethanol", "ethanol 96 %", "acetone", "isopropanol", "white spirit",
		"glycerol", "propylene glycol", "n-decane", "n-nonane", "turpentine"}, liquids().names)
	liquid, _ := FindLiquid("propan-2-ol")
	assert.Equal(t, "isopropanol", liquid.Name)
	liquid, _ = FindLiquid(" Distilled  Water ")
	assert.Equal(t, "water", liquid.Name)
	for _, unknown := range []string{"", "waters", "petrol"} {
		_, found := FindLiquid(unknown)
		assert.Equal(t, false, found, unknown)
	}
}

func TestGlassNamesAndAliases(t *testing.T) {
	assert.Equal(t, []string{"borosilicate", "soda-lime", "polypropylene", "polymethylpentene", "polystyrene",
		"polycarbonate", "polyethylene"}, GlassNames())
	glass, _ := FindGlass("pmp")
	assert.Equal(t, "polymethylpentene", glass.Name)
	_, found := FindGlass("borosilicates")
	assert.Equal(t, false, found)
}

// waterDensity is the formula of Tanaka et al., Metrologia 38 (2001) 301, in g/mL at
// t °C:
//
//	ρ = a5 (1 - (t+a1)² (t+a2) / (a3 (t+a4)))
func waterDensity(t float64) float64 {
	return 0.999974950 * (1 - (t-3.983035)*(t-3.983035)*(t+301.797)/(522528.9*(t+69.34881)))
}

func TestLiquidWater(t *testing.T) {
	water, _ := FindLiquid("water")
	// Tanaka et al. at 20 °C: 998.2067 kg/m³; the table carries five decimals.
	assertMaterialFigure(t, 0.9982067, waterDensity(20), 5e-8)
	assertMaterialFigure(t, 0.9982067, water.Density, 5e-6)
	// γ = -(1/ρ) dρ/dt of the same formula; QUAM takes 2.1e-4 per °C.
	slope := (waterDensity(20.01) - waterDensity(19.99)) / 0.02
	assertMaterialFigure(t, -slope/waterDensity(20), water.Expansion, 5e-7)
	assertMaterialFigure(t, 2.1e-4, water.Expansion, 5e-6)
	// IAPWS R1-76(2014): σ = 235.8 τ^1.256 (1 - 0.625 τ) mN/m, τ = 1 - T/647.096 K.
	tau := 1 - 293.15/647.096
	assertMaterialFigure(t, 235.8*math.Pow(tau, 1.256)*(1-0.625*tau), water.SurfaceTension, 0.005)
	assert.Equal(t, "two sources", water.Trust)
}

// Handbook figures at 20 °C, from memory: density g/mL, expansion 1/°C, surface tension
// mN/m. Wide limits: they catch a slipped digit or a swapped cell.
func TestLiquidsAgainstHandbook(t *testing.T) {
	handbook := map[string]struct{ density, expansion, tension float64 }{
		"ethanol":     {0.7893, 1.09e-3, 22.4},
		"acetone":     {0.7900, 1.43e-3, 23.5},
		"isopropanol": {0.7855, 1.09e-3, 21.3},
		"glycerol":    {1.2613, 0.50e-3, 63.4},
	}
	for name, want := range handbook {
		liquid, _ := FindLiquid(name)
		assertMaterialFigure(t, want.density, liquid.Density, 0.001)
		assertMaterialFigure(t, want.expansion, liquid.Expansion, 3e-5)
		assertMaterialFigure(t, want.tension, liquid.SurfaceTension, 1)
	}
}

// A pure hydrocarbon of the boiling range stands for white spirit: decane and nonane
// bracket its surface tension and expansion within the spread that the note gives.
func TestLiquidWhiteSpiritIsNearDecane(t *testing.T) {
	spirit, _ := FindLiquid("white spirit")
	decane, _ := FindLiquid("n-decane")
	assertMaterialFigure(t, decane.SurfaceTension, spirit.SurfaceTension, 1)
	assertMaterialFigure(t, decane.Expansion, spirit.Expansion, 1e-4)
	assert.Equal(t, "one source", spirit.Trust)
}

func TestLiquidSurfaceTensionMayBeUnknown(t *testing.T) {
	glycol, _ := FindLiquid("propylene glycol")
	assert.Equal(t, 0.0, glycol.SurfaceTension)
}

// Cubic expansion is three times the linear one. ISO 3585: borosilicate glass 3.3 has
// 3.3e-6 per °C; soda-lime glass about 9e-6 (common handbook value, from memory).
func TestGlassExpansion(t *testing.T) {
	borosilicate, _ := FindGlass("borosilicate")
	assertMaterialFigure(t, 3*3.3e-6, borosilicate.Expansion, 1e-12)
	sodaLime, _ := FindGlass("soda-lime")
	assertMaterialFigure(t, 3*9e-6, sodaLime.Expansion, 1e-6)
}

func TestMaterialTableMalformed(t *testing.T) {
	const columns = "name,aliases,expansion_per_K,source,trust,note,plastic"
	const known = columns + ",water_angle_deg,surface_tension_mN_per_m"
	const header = columns + "\n"
	tests := []struct{ table, want string }{
		{"name,expansion\nx,1\n", "equipment: t.csv: want rows under the header " + known},
		{header, "equipment: t.csv: want rows under the header " + known},
		{header + "x,,1e-5,s,one source,\n", "equipment: t.csv: record on line 2: wrong number of fields"},
		{header + "x,,,s,one source,,\n", `equipment: t.csv:2: expansion_per_K is "", want a positive number`},
		{header + "x,,NaN,s,one source,,\n", `equipment: t.csv:2: expansion_per_K is "NaN", want a positive number`},
		{header + "x,,+Inf,s,one source,,\n", `equipment: t.csv:2: expansion_per_K is "+Inf", want a positive number`},
		{header + "x,,-1,s,one source,,\n", `equipment: t.csv:2: expansion_per_K is "-1", want a positive number`},
		{header + "x,,1,s,one source,,no\n", `equipment: t.csv:2: plastic is "no", want yes or nothing`},
		{header + "x,y,1,s,one source,,\ny,,1,s,one source,,\n", `equipment: t.csv:3: name "y" is taken`},
	}
	for _, test := range tests {
		files := fstest.MapFS{"classes/t.csv": {Data: []byte(test.table)}}
		assert.PanicsWithValue(t, test.want, func() { readMaterials[glass](files, "t") })
	}
	assert.PanicsWithValue(t, "equipment: t.csv: open classes/t.csv: file does not exist",
		func() { readMaterials[glass](fstest.MapFS{}, "t") })
}

// A column that a table need not have may be missing or empty, and no other; one that is not
// known may not be there.
func TestTableColumns(t *testing.T) {
	type row struct {
		Name  string   `csv:"name"`
		Parts []string `csv:"parts"`
		Size  float64  `csv:"size_mL|size_g"`
		Share float64  `csv:"share,fraction"`
		Extra float64  `csv:"extra,none"`
	}
	read := func(text string) []row {
		return readTable[row](fstest.MapFS{"classes/t.csv": {Data: []byte(text)}}, "t")
	}
	assert.Equal(t, []row{{Name: "x", Parts: []string{"a", "b"}, Size: 2, Share: 0.5}}, read("name,parts,size_g,share\nx,a|b,2,0.5\n"))
	assert.Equal(t, []row{{Name: "x", Size: 2, Extra: 3}, {Name: "y", Size: 2, Share: 1}}, read("name,parts,size_mL,share,extra\nx,,2,0,3\ny,,2,1,\n"))
	assert.True(t, math.IsNaN(read("name,parts,size_mL,share\nx,,2,\n")[0].Share))
	for _, bad := range []string{"name,parts,share\nx,,1\n", "name,parts,size_mL,share,colour\nx,,2,1,red\n", "name,size_mL,share\nx,2,1\n"} {
		assert.PanicsWithValue(t, "equipment: t.csv: want rows under the header name,parts,size_mL,size_g,share,extra", func() { read(bad) }, bad)
	}
	assert.PanicsWithValue(t, `equipment: t.csv:2: share is "2", want a number from 0 to 1`, func() { read("name,parts,size_g,share\nx,,2,2\n") })
	assert.PanicsWithValue(t, `equipment: t.csv:2: extra is "0", want a positive number`, func() { read("name,parts,size_g,share,extra\nx,,2,1,0\n") })
}

// assertMaterialFigure refuses NaN.
func assertMaterialFigure(t *testing.T, want, got, within float64) {
	t.Helper()
	assert.Equal(t, true, scalar.EqualWithinAbs(want, got, within), "want %v, got %v", want, got)
}
