package route

import (
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"minim/equipment/benchfile"
	"minim/report/words/influence"
	"minim/uncertainty/near"
)

const hydrate = `kit = "kit.toml"
target = "2 g/L"
volume = "20 mL"
[solute]
name = "gallate"
weighed-as = "gallate hydrate"
FORM
[solvent]
name = "water"
[[route]]
name = "direct"
steps = [{ weigh = "0.35 g", on = "scale" }, { make-up-to = "50 mL", in = "cylinder" }]
`

func assessed(t *testing.T, target, form string) (*Prep, Result) {
	t.Helper()
	kit, err := ParseKit("kit.toml", []byte(wholeKit))
	require.NoError(t, err)
	text := strings.NewReplacer("FORM", form, "2 g/L", target).Replace(hydrate)
	p, err := ParsePrep("prep.toml", []byte(text), kit)
	require.NoError(t, err)
	r, err := p.Assess(p.Routes[0], 0.95)
	require.NoError(t, err)
	require.True(t, r.Possible, r.Reason)
	return p, r
}

// Two molar masses are a form factor: c = m (M/Mw)/V, 0.35 g · 310/346 in 50 mL is
// 6.27168 g/L, and c/M in mol/L does not know M (constructed).
func TestTwoMolarMassesAreAFormFactor(t *testing.T) {
	const masses = "molar-mass = \"310 g/mol\"\nweighed-molar-mass = \"346 g/mol\""
	p, a := assessed(t, "2 g/L", masses)
	_, b := assessed(t, "2 g/L", "form-factor = 0.895953757225433526")
	near.Relative(t, "by two molar masses", 7*310.0/346, a.Analytic.Value, 1e-12)
	near.Relative(t, "by a form factor", a.Analytic.Value, b.Analytic.Value, 1e-12)
	near.Relative(t, "its uncertainty", a.Analytic.StandardUncertainty, b.Analytic.StandardUncertainty, 1e-9)
	near.Relative(t, "the content", 310.0/346, p.SoluteContent(), 1e-12)
	_, c := assessed(t, "20 mmol/L", masses)
	near.Relative(t, "in mmol/L", 7000/346.0, c.Analytic.Value, 1e-12)
	assert.Equal(t, []string{"gallate", "gallate hydrate"}, []string{p.Solute.Name, p.Solute.Weighed()})
}

// The uncertainty of a molar mass is an influence: Mw of 343 to 349 g/mol, rectangular, has
// u = 3/√3 g/mol, and contributes c u/Mw (constructed). For mol/L the molar mass of what is
// meant cancels, that of what is weighed does not.
func TestMolarMassesAreInfluences(t *testing.T) {
	const masses = "molar-mass = { from = \"309 g/mol\", to = \"311 g/mol\" }\nweighed-molar-mass = { from = \"343 g/mol\", to = \"349 g/mol\" }"
	for target, c := range map[string]struct{ value, meant float64 }{
		"2 g/L":     {7 * 310.0 / 346, 7 * 310.0 / 346 / 310 / math.Sqrt(3)},
		"20 mmol/L": {7000 / 346.0, 0},
	} {
		_, r := assessed(t, target, masses)
		found := map[string]float64{}
		for i := range r.Analytic.Budget {
			if line := &r.Analytic.Budget[i]; strings.HasPrefix(influence.Name(&line.Influence), "molar mass") {
				found[line.Owner.Name] = math.Abs(line.Contribution)
			}
		}
		near.Relative(t, "weighed, "+target, c.value/346*math.Sqrt(3), found["gallate hydrate"], 1e-3) // the mean of c is off by the second order
		near.Equal(t, "meant, "+target, c.meant, found["gallate"], 1e-12, 1e-3)
	}
}

// What is asked of the keys of the two forms.
func TestMistakesOfForms(t *testing.T) {
	kit, err := ParseKit("kit.toml", []byte(wholeKit))
	require.NoError(t, err)
	for _, c := range []struct{ form, message, hint string }{
		{"form-factor = 0.9\nmolar-mass = \"310 g/mol\"\nweighed-molar-mass = \"346 g/mol\"",
			"form-factor: the two molar masses say already how much of the substance is in what is weighed", "leave form-factor out, or weighed-molar-mass"},
		{"weighed-molar-mass = \"346 g/mol\"",
			"weighed-molar-mass: is half of a ratio: the molar mass of the substance that the strength counts is not stated", "state molar-mass as well"},
		{"molar-mas = \"310 g/mol\"\nweighed-molar-mass = \"346 g/mol\"",
			"unknown key `molar-mas` in the solute", "write `molar-mass`"},
		{"molar-mass = \"310 g/mol\"\nweighed-molar-mass = \"3.46 g/mol\"",
			"weighed-molar-mass: is less than a tenth of molar-mass", "molar-mass is of the substance that the strength counts, weighed-molar-mass of what is weighed"},
		{"molar-mass = \"310\"\nweighed-molar-mass = \"346 g/mol\"", `molar-mass: "310" has no unit`, "add the unit: g/mol or kg/mol"},
	} {
		_, err := ParsePrep("prep.toml", []byte(strings.ReplaceAll(hydrate, "FORM", c.form)), kit)
		all, _ := benchfile.Told(err)
		if assert.Len(t, all, 1, "%v", err) {
			assert.Equal(t, c.message, all[0].Message)
			assert.True(t, strings.HasPrefix(all[0].Hint, c.hint), all[0].Hint)
		}
	}
}
