package bench

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"minim/equipment"
	"minim/equipment/benchfile"
	"minim/uncertainty/near"
)

// kitWith reads a text with changes.
func kitWith(t *testing.T, text string, changes ...string) (*equipment.Kit, error) {
	t.Helper()
	var list []benchfile.Change
	for _, change := range changes {
		c, err := benchfile.ParseChange("--change", change)
		require.NoError(t, err)
		list = append(list, c)
	}
	return changedKit("bench.toml", []byte(text), list)
}

// A kit with changes is the one whose file says so itself (constructed).
func TestChangedKitReadsAsTheFileWould(t *testing.T) {
	for _, test := range []struct{ change, old, new string }{
		{"0.01 g scale: readability = 0.001 g", "readability = \"0.01 g\"", "readability = \"0.001 g\""},
		{"0.01 g scale: repeatability = \"2 mg\"", "repeatability = \"0.01 g\"", "repeatability = \"2 mg\""},
		{"0.01 g scale: linearity = 0.03 g", "capacity = \"200 g\"", "capacity = \"200 g\"\nlinearity = \"0.03 g\""},
		{"0.01 g scale: price = 80 EUR", "capacity = \"200 g\"", "capacity = \"200 g\"\nprice = \"80 EUR\""},
		{"1 mL graduated: class = A", "capacity = \"1 mL\"\nclass = \"B\"", "capacity = \"1 mL\"\nclass = \"A\""},
		{"10 mL cylinder: retained = { mean = \"0.1 mL\" }", "retained = { mean = \"0.04 mL\", spread = \"0.02 mL\" }", "retained = { mean = \"0.1 mL\" }"},
		{"10 mL cylinder: count = 2", "clinging", "count = 2\nclinging"},
		{"25 mL flask: class = B", "capacity = \"25 mL\"\nclass = \"A\"", "capacity = \"25 mL\"\nclass = \"B\""},
		{"0.001 g scale: name = the new one", "name = \"0.001 g scale\"", "name = \"the new one\""},
	} {
		require.Contains(t, withCandidates, test.old)
		want := parseKit(t, strings.Replace(withCandidates, test.old, test.new, 1))
		got, err := kitWith(t, withCandidates, test.change)
		require.NoError(t, err)
		want.Digest, want.Source = got.Digest, got.Source // of the file as it is
		assert.Equal(t, want, got, test.change)
	}
}

// One property is changed, and what is stated beside it stays: s = 0.01 g on a
// scale that then reads to 0.001 g.
func TestChangedReadabilityLeavesTheRest(t *testing.T) {
	kit, err := kitWith(t, statedKit, "0.01 g scale: readability = 0.001 g")
	require.NoError(t, err)
	assert.Equal(t, &equipment.Balance{
		Name: "0.01 g scale", Capacity: 200, Readability: 0.001, Repeatability: equipment.Spread{S: 0.01, Known: true}, Count: 1,
	}, kit.Balances[0])
}

func TestSeveralChanges(t *testing.T) {
	kit, err := kitWith(t, statedKit, "0.01 g scale: capacity = 20 g", "10 mL cylinder: class = A", "0.01 g scale: readability = 0.001 g")
	require.NoError(t, err)
	assert.Equal(t, []float64{20, 0.001}, []float64{kit.Balances[0].Capacity, kit.Balances[0].Readability})
	assert.Equal(t, 0.1, kit.Measure("10 mL cylinder").Bias.Limit) // ISO 4788 class A, 10 mL
	same, err := kitWith(t, statedKit)
	require.NoError(t, err)
	assert.Equal(t, parseKit(t, statedKit), same)
}

// A mistake that comes with a change points at the change, wherever it shows.
func TestMistakesOfChanges(t *testing.T) {
	for _, test := range []struct {
		changes []string
		want    string
	}{
		{[]string{"0.01 g scael: count = 2"}, `--change: there is no instrument in the kit called "0.01 g scael"
   | 0.01 g scael: count = 2
   | ^^^^^^^^^^^^
  perhaps "0.01 g scale" is meant`},
		{[]string{"pipette: count = 2"}, `--change: there is no instrument in the kit called "pipette"
   | pipette: count = 2
   | ^^^^^^^
  choose from 0.01 g scale, 10 mL cylinder, 1 mL graduated, 0.001 g scale, 25 mL flask`},
		{[]string{"0.01 g scale: readabilty = 0.001 g"}, "--change: unknown key `readabilty` in a balance\n" +
			"   | 0.01 g scale: readabilty = 0.001 g\n   |               ^^^^^^^^^^\n" +
			"  write `readability`; the keys of a balance are name, capacity, readability, readings, repeatability, linearity, linearity-law, span, weighing-uncertainty, count, price"},
		{[]string{"25 mL flask: readability = 0.001 g"}, "--change: unknown key `readability` in a candidate flask\n" +
			"   | 25 mL flask: readability = 0.001 g\n   |              ^^^^^^^^^^^\n" +
			"  write `repeatability`; the keys of a candidate flask are name, kind, material, expansion, clinging, retained, readings, repeatability, count, single-use, price, " +
			"capacity, bore, marked, vessel, reading, class, standard, tolerance, standard-uncertainty, correction, between-marks, shape"},
		{[]string{"0.01 g scale: shape = triangular"}, "--change: unknown key `shape` in a balance\n" +
			"   | 0.01 g scale: shape = triangular\n   |               ^^^^^\n" +
			"  the keys of a balance are name, capacity, readability, readings, repeatability, linearity, linearity-law, span, weighing-uncertainty, count, price"},
		{[]string{"0.01 g scale: readability = 0.001"}, `--change: readability: found the number 0.001, expected a mass in quotes
   | 0.01 g scale: readability = 0.001
   |                             ^^^^^
  write it in quotes with its unit, as in "0.001 g"`},
		{[]string{"0.01 g scale: readability = 1 kg"}, `--change: readability: the readability is larger than the capacity
   | 0.01 g scale: readability = 1 kg
   |                             ^^^^
  a 200 g scale may show steps of 0.01 g`},
		{[]string{"0.01 g scale: capacity = 5 mg"}, `--change: with this change, bench.toml:5:15: readability: the readability is larger than the capacity
   | 0.01 g scale: capacity = 5 mg
   |                          ^^^^
  a 200 g scale may show steps of 0.01 g`},
		{[]string{"1 mL graduated: count = 2", "10 mL cylinder: division = 0.3 mL"}, `--change: with this change and those before it, bench.toml:18:9: class: the class table for kind "cylinder", standard "ISO", form "tall", class "B", capacity 10 mL has no division 0.3 mL
   | 10 mL cylinder: division = 0.3 mL
   |                            ^^^^^^
  division can be 0.2 mL, or state an own tolerance and division instead of the class`},
		{[]string{"0.01 g scale: name = 25 mL flask"}, `--change: with this change, bench.toml:31:8: name: there are two instruments called "25 mL flask"
   | 0.01 g scale: name = 25 mL flask
   |                      ^^^^^^^^^^^
  give each its own name, or write count = 2`},
		{[]string{"0.01 g scale: count = 2", "0.01 g scale: count = 2"}, `--change: count of 0.01 g scale is changed twice
   | 0.01 g scale: count = 2
   |                       ^
  keep one of the two`},
	} {
		_, err := kitWith(t, withCandidates, test.changes...)
		assert.EqualError(t, err, test.want)
	}
	// What is wrong with the file itself stands there.
	_, err := kitWith(t, oneFlask, "y: count = 2")
	assert.EqualError(t, err, "bench.toml:1:1: nothing says how good the x is\n  1 | [[flask]]\n    | ^^^^^^^^^\n  state its class (\"A\" or \"B\"), or its own tolerance")
	_, err = benchfile.ParseChange("--change", "0.01 g scale, readability 0.001 g")
	assert.EqualError(t, err, "--change: the change is not of the form NAME: property = VALUE\n   | 0.01 g scale, readability 0.001 g\n"+
		"   | ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^\n  write it as in \"0.01 g scale: readability = 0.001 g\"")
}

// What a kit states of a balance keeps its size in digits, and what it does not
// state follows the readability by itself: all of u scales with d (constructed).
func TestWithReadability(t *testing.T) {
	for _, key := range []string{"", `repeatability = "0.02 g"`, `readings = ["0.50 g", "0.51 g", "0.50 g", "0.49 g"]`, `linearity = "0.03 g"`, `weighing-uncertainty = "8 mg"`} {
		b := parseKit(t, oneBalance+"count = 2\nprice = \"30 EUR\"\n"+key+"\n").Balances[0]
		other := b.WithReadability(0.02)
		assert.Equal(t, "balance reading 0.02 g", other.Name)
		assert.Equal(t, []any{200.0, 2, equipment.Price{}}, []any{other.Capacity, other.Count, other.Price})
		near.Relative(t, "u "+key, 2*b.Uncertainty(0.2), other.Uncertainty(0.2), 1e-12)
		assert.Equal(t, b.Repeatability.DegreesOfFreedom, other.Repeatability.DegreesOfFreedom)
		assert.Equal(t, "x", b.Name, "the balance itself is as it was")
	}
	b := parseKit(t, oneBalance+"repeatability = \"0.03 g\"\nspan = \"0.1 % of reading\"").Balances[0]
	near.Relative(t, "s", 0.003, b.WithReadability(0.001).Repeatability.S, 1e-12)
	assert.Equal(t, 0.001, b.WithReadability(0.001).Span)
	for _, d := range []float64{0, -1} {
		assert.Panics(t, func() { b.WithReadability(d) })
	}
}
