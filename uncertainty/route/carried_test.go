package route

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"minim/equipment/benchfile"
	"minim/report/words/note"
	"minim/uncertainty"
	"minim/uncertainty/near"
)

// A prep whose strengths are all of one kind, with two routes from a stock and a ladder.
const fromStockOnly = `kit = "kit.toml"
target = "5 UNIT"
volume = "20 mL"
tolerance = ["10 % of target", "0.4 UNIT"]
ladder = ["1 UNIT"]
ladder-with = "pipette"
ladder-in = "cylinder"
[bench]
temperature = "23 °C"
within = "2 °C"
[solute]
name = "gallate"
PROPERTY
solubility = "70 UNIT"
[solvent]
name = "water"
evaporation = "2 % of volume"
[[hazard]]
from = "3 UNIT"
words = ["irritant"]
[[stock]]
name = "strong"
strength = { value = "40 UNIT", expanded = "0.6 UNIT", k = 2 }
volume = "30 mL"
loss = "3 % of strength"
[plan]
strongest = "40 UNIT"
[[route]]
name = "one dilution"
steps = [
  { start = "strong" },
  { take = "5 mL", with = "pipette" },
  { make-up-to = "40 mL", in = "cylinder" },
]
[[route]]
name = "strengthened"
steps = [
  { start = "strong" },
  { take = "2 mL", with = "pipette" },
  { add = "30 mL", with = "cylinder" },
  { strengthen = "2 mL", of = "strong", with = "pipette" },
]
`

// Where target and stock are in one unit the property that would make a mass of them
// cancels: stated or not, every figure is the same (constructed).
func TestOneUnitNeedsNoProperty(t *testing.T) {
	skipIfSlow(t)
	kit, err := ParseKit("kit.toml", []byte(wholeKit))
	require.NoError(t, err)
	for _, c := range []struct {
		unit, property, soluteUnit string
		perGram                    float64 // of the solute's own unit
	}{
		{"mmol/L", `molar-mass = "250 g/mol"`, "mol", 1 / 250.0},
		{"% v/v", `density = "0.8 g/mL"`, "mL", 1 / 0.8},
		{"U/mL", `activity = "4 U/mg"`, "U", 4000},
	} {
		read := func(property string) *Prep {
			text := strings.NewReplacer("UNIT", c.unit, "PROPERTY", property).Replace(fromStockOnly)
			p, err := ParsePrep("prep.toml", []byte(text), kit)
			require.NoError(t, err, c.unit)
			return p
		}
		with, without := read(c.property), read("")
		assert.True(t, with.CountsMass())
		assert.False(t, without.CountsMass())
		assert.Equal(t, c.soluteUnit, without.SoluteUnit())
		assert.Equal(t, with.Hazards[0].From.Value, without.Hazards[0].From.Value)
		near.Relative(t, c.unit, with.Limits.Strongest*c.perGram, without.Limits.Strongest, 1e-12)
		few := uncertainty.Settings{Trials: 10000}
		stated, err := Compare(t.Context(), with, "", few)
		require.NoError(t, err)
		unstated, err := Compare(t.Context(), without, "", few)
		require.NoError(t, err)
		for i := range with.Routes {
			a, b := &stated.Results[i], &unstated.Results[i]
			require.True(t, a.Possible && b.Possible, "%s%s", a.Reason, b.Reason)
			near.Relative(t, c.unit, a.Analytic.Value, b.Analytic.Value, 1e-12)
			near.Relative(t, c.unit, a.Analytic.StandardUncertainty, b.Analytic.StandardUncertainty, 1e-9)
			near.Relative(t, c.unit, a.Ladder[0].Analytic.Value, b.Ladder[0].Analytic.Value, 1e-12)
			near.Relative(t, c.unit, a.Inside[1].Normal, b.Inside[1].Normal, 1e-9)
			near.Relative(t, c.unit, a.SoluteGrams*c.perGram, b.SoluteUsed, 1e-12)
			assert.Equal(t, 0.0, b.SoluteGrams)
			assert.Equal(t, len(note.Texts(a.Notes.Warnings)), len(note.Texts(b.Notes.Warnings)), "the solubility")
		}
	}
}

// 1 mL of a liquid in 50 mL is 2 % v/v whatever it weighs: 100 · 1/50, and 0.9 of that
// with an assay of 90 % (constructed).
func TestVolumeInVolumeNeedsNoDensity(t *testing.T) {
	kit, err := ParseKit("kit.toml", []byte(wholeKit))
	require.NoError(t, err)
	for property, want := range map[string]float64{"": 2, `assay = "90 %"`: 1.8, `density = "0.9 g/mL"`: 2} {
		p, err := ParsePrep("prep.toml", []byte(`kit = "kit.toml"
target = "2 % v/v"
volume = "20 mL"
[solute]
name = "clove oil"
`+property+`
[solvent]
name = "ethanol"
[[route]]
name = "measured"
steps = [{ measure = "1 mL", with = "pipette" }, { make-up-to = "50 mL", in = "cylinder" }]
`), kit)
		require.NoError(t, err)
		r, err := p.Assess(p.Routes[0], 0.95)
		require.NoError(t, err)
		require.True(t, r.Possible, r.Reason)
		near.Relative(t, property, want, r.Analytic.Value, 1e-12)
	}
}

// A property is asked for at the step or the strength that needs it, once.
func TestPropertiesAreAskedForWhereTheyAreNeeded(t *testing.T) {
	kit, err := ParseKit("kit.toml", []byte(wholeKit))
	require.NoError(t, err)
	const needs = "needs the molar mass of the solute, since the target is in mmol/L"
	text := strings.NewReplacer("UNIT", "mmol/L", "PROPERTY", "").Replace(fromStockOnly)
	for _, c := range []struct{ old, new, want string }{
		{`{ start = "strong" }`, `{ weigh = "1.00 g", on = "scale" }, { make-up-to = "50 mL", in = "cylinder" }`, "weigh: a mass of solute " + needs},
		{`{ start = "strong" }`, `{ measure = "1 mL", with = "pipette" }, { make-up-to = "50 mL", in = "cylinder" }`, "measure: a volume of solute " + needs},
		{"{ take = \"5 mL\", with = \"pipette\" },\n  { make-up-to = \"40 mL\", in = \"cylinder\" }", `{ weigh-aliquot = "5.00 g", on = "scale" }, { weigh-up-to = "40.00 g", on = "scale" }`, "weigh-aliquot: a mass of solution " + needs},
		{`"40 mmol/L", expanded = "0.6 mmol/L"`, `"4 g/L", expanded = "0.1 g/L"`, "value: g/L " + needs},
		{`"0.4 mmol/L"`, `"0.4 g/L"`, "tolerance: g/L " + needs},
		{`from = "3 mmol/L"`, `from = "1 % w/v"`, "from: % w/v " + needs},
		{"[plan]", "[plan]\nsolute = \"1 g\"", "solute: a limit in grams " + needs},
		{"[plan]", "[plan]\nprefer = \"cheapest\"", "prefer: neither the solute nor the solvent has a price"},
		{"solubility = \"70 mmol/L\"", "price = \"2 EUR/g\"", ""},
	} {
		require.Contains(t, text, c.old)
		_, err := ParsePrep("prep.toml", []byte(strings.Replace(text, c.old, c.new, 1)), kit)
		if c.want == "" {
			assert.NoError(t, err)
			continue
		}
		all, _ := benchfile.Told(err)
		if assert.Len(t, all, 1, "%v", err) {
			assert.Equal(t, c.want, all[0].Message)
		}
	}
}

// A mistake in the property is the only one, at its own key, whatever the target is in.
func TestMistakeInAPropertyIsToldAtItsKey(t *testing.T) {
	kit, err := ParseKit("kit.toml", []byte(wholeKit))
	require.NoError(t, err)
	for property, c := range map[string]struct{ unit, message string }{
		`molar-mass = "300"`:                                {"mmol/L", `molar-mass: "300" has no unit`},
		`density = "1,05 g/mL"`:                             {"% v/v", `density: "1,05 g/mL" has a comma in its number`},
		`activity = "50 IU/mg"`:                             {"U/mL", `activity: "50 IU/mg" is not an activity`},
		`density = "800 g/mL"`:                              {"% v/v", `density: "800 g/mL" is not likely`},
		`molar-masse = "1 g/mol"`:                           {"mmol/L", "unknown key `molar-masse` in the solute"},
		`molar-mass = { from = "3 g/mol", to = "2 g/mol" }`: {"mmol/L", "to: the upper limit of molar-mass is not above the lower"},
	} {
		text := strings.NewReplacer("UNIT", c.unit, "PROPERTY", property).Replace(fromStockOnly)
		text = strings.Replace(text, `{ start = "strong" }`, `{ weigh = "1.00 g", on = "scale" }, { make-up-to = "50 mL", in = "cylinder" }`, 1)
		text = strings.Replace(text, `"0.4 `+c.unit, `"0.004 % w/v`, 1)
		_, err := ParsePrep("prep.toml", []byte(text), kit)
		all, _ := benchfile.Told(err)
		if assert.Len(t, all, 1, "%s\n%v", property, err) {
			assert.Equal(t, c.message, all[0].Message)
		}
	}
}
