package bench

import (
	"context"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"minim/equipment"
	"minim/equipment/quantity"
	"minim/uncertainty"
	"minim/uncertainty/contest"
	"minim/uncertainty/route"
	"minim/uncertainty/strengths"
	"minim/uncertainty/tolerances"
)

// A measure that is made of values is the one that a file states in the same words
// (constructed).
func TestMeasureInGoIsAsRead(t *testing.T) {
	for _, c := range []struct {
		kind                  equipment.Kind
		capacity, division    float64
		class, standard, form string
		stated                string
	}{
		{"cylinder", 10, 0, "B", "", "", "class = \"B\""},
		{"cylinder", 50, 0, "A", "ISO", "tall", "class = \"A\"\nstandard = \"ISO\"\nform = \"tall\""},
		{"flask", 25, 0, "A", "ASTM", "", "class = \"A\"\nstandard = \"ASTM\""},
		{"one-mark", 10, 0, "A", "", "", "class = \"A\""},
		{"graduated", 1, 0, "B", "", "", "class = \"B\""},
		{"piston", 0.2, 0, "", "", "direct reusable", "form = \"direct reusable\""},
		{"transfer", 3, 0, "", "", "", ""},
		{"burette", 25, 0.1, "B", "", "", "class = \"B\"\ndivision = \"0.1 mL\""},
		{"syringe", 20, 0, "", "", "", ""},
		{"dropper", 0, 0, "", "", "", ""},
		{"beaker", 250, 50, "", "", "", "division = \"50 mL\""},
		{"conical-flask", 250, 0, "", "", "", ""},
		{"conical-measure", 100, 5, "", "", "", "division = \"5 mL\""},
	} {
		text := "[[" + c.kind.Traits().Table + "]]\nname = \"x\"\n"
		if c.kind.Traits().Table == pipetteTables {
			text += "kind = \"" + string(c.kind) + "\"\n"
		}
		if c.capacity > 0 {
			text += "capacity = \"" + quantity.Millilitres(c.capacity) + "\"\n"
		}
		made := equipment.NewMeasure("x", c.kind)
		made.Capacity, made.Division = c.capacity, c.division
		require.NoError(t, made.Complete(c.class, c.standard, c.form), c.kind)
		assert.Equal(t, parseKit(t, text+c.stated).Measure("x"), made, c.kind)
	}
}

// What cannot be is an error, and no panic.
func TestMeasureInGoThatCannotBe(t *testing.T) {
	odd := equipment.NewMeasure("odd", "flask")
	odd.Capacity = 7
	assert.ErrorContains(t, odd.Complete("A", "ISO", ""), "has no capacity 7 mL")
	assert.ErrorContains(t, equipment.NewMeasure("jar", "jar").Complete("", "", ""), "nothing says how good the line of the jar is")
	own := equipment.NewMeasure("own", "flask")
	own.Capacity, own.Bias.Limit, own.Bias.Stated = 7, 0.1, true
	require.NoError(t, own.Complete("", "", ""))
	assert.Equal(t, 0.1, own.Limit(7))
}

// A prep that is made of values has the result of the one that a file states (constructed).
func TestPrepInGoIsAsRead(t *testing.T) {
	const kitText = oneBalance + "[[flask]]\nname = \"flask\"\ncapacity = \"25 mL\"\nclass = \"A\"\nmaterial = \"borosilicate\"\n"
	const text = `target = "0.5 mol/L"
volume = "25 mL"
tolerance = "5 % of target"
bench = { temperature = "22 °C", within = "2 °C" }
[solute]
name = "sodium chloride"
molar-mass = "58.44 g/mol"
assay = { from = "99 %", to = "100 %" }
[solvent]
name = "water"
[[route]]
name = "direct"
steps = [ { weigh = "0.73 g", on = "x" }, { make-up-to = "25 mL", in = "flask" } ]
`
	kit := parseKit(t, kitText)
	read, err := ParsePrep("p.toml", []byte(text), kit)
	require.NoError(t, err)
	made := route.NewPrep(kit)
	made.Target, err = strengths.Parse("0.5 mol/L")
	require.NoError(t, err)
	made.Volume = 25
	made.Bench.Temperature, made.Bench.Within = equipment.Stated{Value: 22, Known: true}, equipment.Stated{Value: 2, Known: true}
	made.Solute.Name, made.Solute.MolarMass = "sodium chloride", route.Estimate{Value: 58.44, Known: true}
	made.Solute.Assay = route.Between(0.99, 1)
	made.Solvent = route.NewSolvent("water")
	tolerance, err := tolerances.Parse(made, "5 % of target")
	require.NoError(t, err)
	made.Tolerances = []route.Tolerance{tolerance}
	direct := &route.Route{Name: "direct", Steps: []route.Step{
		{Verb: route.Weigh, Amount: 0.73, Balance: kit.Balances[0]}, {Verb: route.MakeUpTo, Amount: 25, Measure: kit.Measures[0]},
	}}
	require.Nil(t, direct.Misplaced())
	require.Empty(t, made.CheckOptions(direct))
	s := uncertainty.Settings{Trials: 10_000, Seed: 1}
	want, err := contest.Compare(context.Background(), read, "", s)
	require.NoError(t, err)
	got, err := route.Evaluate(context.Background(), made, []*route.Route{direct}, s)
	require.NoError(t, err)
	assert.Equal(t, want.Results[0].Analytic, got.Results[0].Analytic)
	assert.Equal(t, want.Results[0].MonteCarlo.Mean, got.Results[0].MonteCarlo.Mean)
	assert.Equal(t, want.Results[0].Inside, got.Results[0].Inside)
	assert.Equal(t, want.Verdict, got.Verdict)
}
