package equipment

import (
	"math"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"minim/uncertainty"
	"minim/uncertainty/near"
)

// A cylinder is at most so wide as its least scale length lets it be, √(4V/πh), and at least so as
// its greatest height less head and foot does; lengths by GOST 1770-74 and from memory. The two are
// in the ratio 0.81 to 0.86, for which 0.85 stands where no height is known.
func TestBoresOfCylinders(t *testing.T) {
	for capacity, h := range map[float64][2]float64{5: {78, 55}, 10: {100, 65}, 25: {128, 85}, 50: {153, 110}, 100: {205, 145}, 250: {272, 200}} {
		c, err := findClass(Class{Kind: "cylinder", Name: "B", Capacity: capacity})
		require.NoError(t, err)
		r, known := c.Bores()
		require.True(t, known)
		near.Absolute(t, "least", 2*math.Sqrt(1000*capacity/(math.Pi*h[0])), r.Least, 0.06)
		near.Absolute(t, "greatest", 2*math.Sqrt(1000*capacity/(math.Pi*h[1])), r.Greatest, 0.06)
		assert.True(t, c.Bore == 0 || c.Bore == r.Greatest)
		near.Absolute(t, "ratio", leastOfGreatest, r.Least/r.Greatest, 0.045)
	}
	near.Absolute(t, "twelve real ones", leastOfGreatest, 57.7/65.6, 0.035)
	astm, err := findClass(Class{Kind: "cylinder", Standard: "ASTM", Name: "B", Capacity: 100})
	require.NoError(t, err)
	r, _ := astm.Bores()
	near.Relative(t, "by the rule", 0.85*29.6, r.Least, 1e-12)
}

// Every bore of a class lies within its range, and each range says where it is from.
func TestBoreRanges(t *testing.T) {
	for _, r := range boreRanges() {
		assert.True(t, r.Least <= r.Greatest && r.Source != "" && r.Note != "", r.Number)
		assert.Contains(t, []string{"one source", fromMemory}, r.Trust)
	}
	for _, c := range Classes() {
		r, known := c.Bores()
		assert.Equal(t, true, c.Bore == 0 || known && r.Least <= c.Bore && c.Bore <= r.Greatest, "%v, %v mL", c, c.Capacity)
	}
}

// What a kit says of the bore is exact; what it does not say is the mean of a range.
func TestBoreOfAMeasure(t *testing.T) {
	const cylinder = "[[cylinder]]\nname = \"x\"\ncapacity = \"10 mL\"\nclass = \"B\"\n"
	for text, want := range map[string][3]float64{
		cylinder:                          {12.65, 11.3, 14},
		cylinder + "bore = \"12.5 mm\"\n": {12.5, 12.5, 12.5},
		cylinder + "form = \"plastic\"\n": {12.65, 11.3, 14},
		cylinder + "standard = \"ASTM\"\ndivision = \"0.2 mL\"\n":                              {0.925 * 15.2, 0.85 * 15.2, 15.2},
		"[[flask]]\nname = \"x\"\ncapacity = \"25 mL\"\nclass = \"A\"\n":                       {9, 8, 10},
		"[[cylinder]]\nname = \"x\"\ncapacity = \"500 mL\"\nclass = \"B\"\n":                   {0.925 * 50.8, 0.85 * 50.8, 50.8},
		"[[cylinder]]\nname = \"x\"\ncapacity = \"1 L\"\nclass = \"B\"\n":                      {0, 0, 0},
		"[[cylinder]]\nname = \"x\"\nform = \"squat\"\ncapacity = \"100 mL\"\nclass = \"B\"\n": {0, 0, 0},
	} {
		k := one(t, text)
		least, greatest := k.widths()
		for i, x := range []float64{k.Bore, least, greatest} {
			near.Absolute(t, text, want[i], x, 1e-9)
		}
	}
}

// 10 mL of ethanol in a cylinder of ISO 4788, 11.3 to 14.0 mm wide: 0.041 to 0.077 mL less, in the
// mean 0.059 (Young-Laplace, solved apart from this code); the range is an influence of the piece.
func TestMeniscusOverABore(t *testing.T) {
	k := one(t, "[[cylinder]]\nname = \"x\"\ncapacity = \"10 mL\"\nclass = \"B\"\nstandard = \"ISO\"\ntolerance = \"0 mL\"\nclinging = \"0 mL\"\nretained = \"0 mL\"\n")
	u := of(quiet(), "ethanol")
	got := contained(t, k, u, 10)
	near.Absolute(t, "the mean", -0.059, got.Value-10, 0.001)
	assert.Equal(t, 10.0, got.Intended)
	bore := term(got.Analytic, "bore of the x")
	assert.Equal(t, []any{uncertainty.Instrument, true, 12.65, uncertainty.Rectangular{Low: 11.3, High: 14}}, []any{bore.Owner.Kind, bore.Assumed, bore.Nominal, bore.Distribution})
	near.Absolute(t, "u of it", (0.077-0.041)/math.Sqrt(12), math.Abs(bore.Contribution), 0.0005)
	assert.Equal(t, []string{
		"the x is 11.3 to 14 mm wide inside at its marks: at most as ISO 4788:2005 class B, tall form has it, at least as its greatest height allows",
		"the meniscus of ethanol is known by computation within a third (none has been measured)",
	}, worded(u.Notes).Assumed)
	assert.Equal(t, []string{"the bore of the x, 12.65 mm (ISO 4788:2005 class B, tall form)"}, worded(u.Notes).FromMemory)
	water := quiet()
	contained(t, k, water, 10)
	assert.Empty(t, slices.Concat(worded(water.Notes).Assumed, worded(water.Notes).FromMemory), "with water the bore is not asked for")
	known := contained(t, one(t, "[[cylinder]]\nname = \"x\"\ncapacity = \"10 mL\"\nclass = \"B\"\nbore = \"14 mm\"\ntolerance = \"0 mL\"\nclinging = \"0 mL\"\n"), of(quiet(), "ethanol"), 10)
	near.Absolute(t, "measured", -0.077, known.Value-10, 0.001)
	assert.Equal(t, "", nameOf(term(known.Analytic, "bore of the x")))
}
