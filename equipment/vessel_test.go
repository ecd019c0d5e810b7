package equipment

import (
	"encoding/csv"
	"os"
	"strconv"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"minim/equipment/benchfile"
)

// The rule of thumb for the mass of a vessel against weighed ones and values from memory:
// testdata/vessel_masses.csv has the source of each. It is within a factor of 3.3 of all but
// a small cylinder on a foot.
func TestRuleForVesselMasses(t *testing.T) {
	file, err := os.Open("../testdata/vessel_masses.csv")
	require.NoError(t, err)
	defer file.Close()
	rows, err := csv.NewReader(file).ReadAll()
	require.NoError(t, err)
	require.Greater(t, len(rows), 15)
	for _, row := range rows[1:] {
		number := func(column int) float64 {
			x, err := strconv.ParseFloat(row[column], 64)
			require.NoError(t, err)
			return x
		}
		rule, most := number(2), 1.7
		switch {
		case row[0] == "cylinder on a foot":
			most = 4
		case row[1] == "plastic":
			rule, most = plasticShare*rule, 1.5
		}
		assert.GreaterOrEqual(t, number(3), 0.3*rule, row[0])
		assert.LessOrEqual(t, number(4), most*rule, row[0])
		assert.True(t, row[5] != "" && row[6] != "from memory" || row[5] == "" && row[6] == "from memory", row[0])
	}
}

// A stated mass is taken; what is not stated goes by what the vessel is made of.
func TestVesselMass(t *testing.T) {
	const vessels = `
[[flask]]
name = "glass"
capacity = "50 mL"
class = "A"
[[flask]]
name = "stated"
capacity = "50 mL"
class = "A"
vessel = "38.2 g"
[[beaker]]
name = "plastic"
capacity = "50 mL"
material = "polypropylene"
[[cylinder]]
name = "plastic form"
capacity = "50 mL"
class = "B"
form = "plastic"
[[jar]]
name = "jar"
line = "50 mL"
tolerance = "1 mL"
material = "soda-lime"
`
	kit, err := ParseKit("kit.toml", []byte(vessels))
	require.NoError(t, err)
	for name, want := range map[string]Stated{
		"glass": {50, false}, "stated": {38.2, true}, "plastic": {10, false}, "plastic form": {10, false}, "jar": {50, false},
	} {
		g, stated := kit.Measure(name).VesselMass()
		assert.Equal(t, want, Stated{g, stated}, name)
	}
	for text, want := range map[string]string{
		`vessel = "0 g"`:    "kit.toml:7:10: vessel: must be above 0, found \"0 g\"",
		`vessel = "1e-5 g"`: "kit.toml:7:10: vessel: no vessel of a bench has this mass",
		`vessel = "38 mL"`:  "kit.toml:7:10: vessel: \"38 mL\" is a volume, not a mass",
		`vessel = 38`:       "kit.toml:7:10: vessel: found the number 38, expected a mass in quotes",
	} {
		_, err := ParseKit("kit.toml", []byte("title = \"x\"\n\n[[flask]]\nname = \"f\"\ncapacity = \"50 mL\"\nclass = \"A\"\n"+text+"\n"))
		m, ok := err.(*benchfile.Mistake)
		require.True(t, ok, text)
		assert.Equal(t, want, m.String()+": "+m.Message, text)
	}
}

// A volume of next to nothing is not the mark of a flask (constructed).
func TestNextToNothingIsNoMark(t *testing.T) {
	flask := Measure{Name: "flask", Kind: "flask", Capacity: 25}
	for volume, want := range map[float64]string{1e-9: "the flask has one mark, at 25 mL, and cannot measure 0.000000001 mL", 12.5: "the flask has one mark, at 25 mL, and cannot measure 12.5 mL"} {
		assert.EqualError(t, flask.Reads(volume), want)
	}
	assert.NoError(t, flask.Reads(25))
}
