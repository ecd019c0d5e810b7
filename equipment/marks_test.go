package equipment

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"minim/equipment/quantity"
	"minim/uncertainty/near"
)

// The marks of instruments as they are sold, in the decimals that a user would
// write (common practice, no source, for where each starts).
func TestMarks(t *testing.T) {
	piston := func(capacity string) string {
		return "[[pipette]]\nname = \"x\"\nkind = \"piston\"\ncapacity = \"" + capacity + "\"\n"
	}
	graduated := "[[pipette]]\nname = \"x\"\nkind = \"graduated\"\nclass = \"B\"\n"
	for text, want := range map[string][]float64{
		oneFlask + "class = \"A\"\n": {10},
		onePipette:                   {10},
		"[[jar]]\nname = \"j\"\nline = \"250 mL\"\ntolerance = \"5 mL\"\n": {250},
		oneDropper:                                          nil,
		oneCylinder + "class = \"B\"\n":                     {2, 3, 4, 5, 6, 7, 8, 9, 10},
		graduated + "capacity = \"1 mL\"\n":                 {0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9, 1},
		graduated + "capacity = \"5 mL\"\n":                 {1, 1.5, 2, 2.5, 3, 3.5, 4, 4.5, 5},
		"[[syringe]]\nname = \"x\"\ncapacity = \"3 mL\"\n":  {1, 1.5, 2, 2.5, 3},
		"[[syringe]]\nname = \"x\"\ncapacity = \"20 mL\"\n": {5, 10, 15, 20},
		piston("200 µL"):                                    {0.02, 0.04, 0.06, 0.08, 0.1, 0.12, 0.14, 0.16, 0.18, 0.2},
		piston("1000 µL"):                                   {0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9, 1},
		"[[pipette]]\nname = \"x\"\nkind = \"transfer\"\ncapacity = \"1 mL\"\n":                              {0.25, 0.5, 0.75, 1},
		"[[cylinder]]\nname = \"x\"\ncapacity = \"25 mL\"\nclass = \"B\"\n":                                  {5, 10, 15, 20, 25},
		"[[cylinder]]\nname = \"x\"\ncapacity = \"25 mL\"\nclass = \"B\"\nnumbered = \"10 mL\"\n":            {10, 20, 25},
		"[[beaker]]\nname = \"x\"\ncapacity = \"250 mL\"\n":                                                  {50, 100, 150, 200, 250},
		"[[beaker]]\nname = \"x\"\ncapacity = \"300 mL\"\ntolerance = \"10 mL\"\n":                           {300},
		"[[cylinder]]\nname = \"x\"\ncapacity = \"7.5 mL\"\ndivision = \"0.1 mL\"\ntolerance = \"0.1 mL\"\n": {2, 3, 4, 5, 6, 7, 7.5},
	} {
		assert.Equal(t, want, one(t, text).Marks(false), text)
	}
}

func TestFineMarks(t *testing.T) {
	for _, test := range []struct {
		text             string
		first, step, end float64
	}{
		{oneCylinder + "class = \"B\"\n", 2, 0.2, 10},
		{oneBurette, 5, 0.1, 25},
		{"[[syringe]]\nname = \"x\"\ncapacity = \"3 mL\"\n", 0.6, 0.05, 3},
		{"[[pipette]]\nname = \"x\"\nkind = \"piston\"\ncapacity = \"1 mL\"\n", 0.1, 0.01, 1},
		{"[[pipette]]\nname = \"x\"\nkind = \"transfer\"\ncapacity = \"3 mL\"\n", 1, 0.5, 3},
		{"[[beaker]]\nname = \"x\"\ncapacity = \"250 mL\"\n", 50, 50, 250}, // its graduation is not known
		{"[[beaker]]\nname = \"x\"\ncapacity = \"250 mL\"\ndivision = \"10 mL\"\n", 50, 10, 250},
		{onePipette, 10, 1, 10},
	} {
		marks := one(t, test.text).Marks(true)
		assert.Equal(t, []float64{test.first, test.end}, []float64{marks[0], marks[len(marks)-1]}, test.text)
		for i := range marks[1:] {
			near.Relative(t, test.text, test.step, marks[i+1]-marks[i], 1e-9)
		}
	}
}

// Every mark of every row of the class tables is one that the instrument reads, is
// no less than a fifth or a tenth of the capacity, and is written with few digits.
func TestMarksCanBeRead(t *testing.T) {
	for _, c := range classTable() {
		if c.Kind == "dropper" {
			continue
		}
		k := &Measure{Name: c.Kind, Kind: Kind(c.Kind), Capacity: c.Capacity, Division: c.Division, Numbered: c.Numbered}
		for _, fine := range []bool{false, true} {
			marks := k.Marks(fine)
			assert.Equal(t, true, slices.IsSorted(marks) && len(slices.Compact(slices.Clone(marks))) == len(marks), "%v", marks)
			assert.Equal(t, c.Capacity, marks[len(marks)-1])
			assert.GreaterOrEqual(t, marks[0]/c.Capacity, map[bool]float64{true: 0.1, false: 0.2}[k.Kind.Traits().Dial]-1e-12)
			for _, mark := range marks {
				require.NoError(t, k.Reads(mark))
				assert.LessOrEqual(t, len(quantity.Decimal(mark, 9)), 8, "%v of %v", mark, c)
			}
		}
	}
}

// 3 times 0.1 is 0.30000000000000004 in binary (IEEE 754).
func TestDecimal(t *testing.T) {
	tenth := 0.1
	assert.Equal(t, 0.3, decimal(3*tenth))
	for n := 1.0; n < 1000; n++ {
		assert.Equal(t, n/100, decimal(n*0.01))
	}
}

// What is read low on a scale (constructed).
func TestReadWell(t *testing.T) {
	ten := one(t, "[[cylinder]]\nname = \"ten\"\ncapacity = \"10 mL\"\ndivision = \"0.2 mL\"\ntolerance = \"0.2 mL\"\n")
	piston := one(t, "[[pipette]]\nname = \"x\"\nkind = \"piston\"\ncapacity = \"1000 µL\"\n")
	flask, dropper := one(t, oneFlask+"class = \"A\"\n"), one(t, oneDropper)
	for _, test := range []struct {
		of  *Measure
		mL  float64
		low bool
	}{
		{ten, 1.9, true}, {ten, 2, false}, {ten, 10, false}, {piston, 0.09, true}, {piston, 0.1, false}, {flask, 10, false}, {dropper, 3, false},
	} {
		assert.Equal(t, test.low, test.of.IsLow(test.mL), "%s at %v mL", test.of.Name, test.mL)
	}
}
