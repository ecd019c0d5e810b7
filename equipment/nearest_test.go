package equipment

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Constructed: every graduation counts, however small a part of the scale it is.
func TestNearest(t *testing.T) {
	kit, err := ParseKit("kit", []byte(`
[[cylinder]]
name = "cylinder"
capacity = "50 mL"
division = "1 mL"
tolerance = "0.5 mL"
[[syringe]]
name = "syringe"
capacity = "1 mL"
numbered = "0.1 mL"
tolerance = "0.02 mL"
[[pipette]]
name = "piston"
kind = "piston"
capacity = "1000 µL"
tolerance = "8 µL"
[[flask]]
name = "flask"
capacity = "25 mL"
tolerance = "0.04 mL"
[[dropper]]
name = "dropper"
`))
	require.NoError(t, err)
	for _, test := range []struct {
		name string
		mL   float64
		want []float64
	}{
		{"cylinder", 31.4, []float64{31, 32}},
		{"cylinder", 31, []float64{30, 31}},
		{"cylinder", 1.5, []float64{1, 2}}, // 2 % of the capacity
		{"cylinder", 0.2, []float64{1}},
		{"cylinder", 50, []float64{49, 50}},
		{"cylinder", 50.1, nil},
		{"syringe", 0.054, []float64{0.05, 0.06}}, // tenths between the numbers
		{"syringe", 0.001, []float64{0.01}},
		{"piston", 0.123, []float64{0.12, 0.13}},
		{"piston", 0.05, []float64{0.1}}, // not made for less than a tenth
		{"flask", 3, []float64{25}},
		{"flask", 26, nil},
		{"dropper", 0.05, nil},
	} {
		assert.Equal(t, test.want, kit.Measure(test.name).Nearest(test.mL), "%s, %v mL", test.name, test.mL)
	}
}
