package bench

import (
	"context"
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"minim/uncertainty"
	"minim/uncertainty/contest"
	"minim/uncertainty/near"
	"minim/uncertainty/record"
	"minim/uncertainty/route"
)

const published = "../../testdata/published/"

// few trials are enough where no simulated figure counts.
var few = uncertainty.Settings{Trials: 10_000, Seed: 1}

func evaluate(t *testing.T, p *route.Prep, text string) *record.Made {
	t.Helper()
	r, err := ParseRecord("record.toml", []byte(text), p)
	require.NoError(t, err)
	m, err := record.Evaluate(context.Background(), r, few)
	require.NoError(t, err)
	return m
}

// EURACHEM/CITAC Guide CG 4 (QUAM), example A1, as a record: the plan is another mass at
// another temperature, and what was read is the example. Published: 1002.7 mg/L,
// u = 0.9 mg/L; unrounded 1002.69972 and 0.83519923 (see TestQUAMExampleA1).
func TestQUAMExampleA1AsRecord(t *testing.T) {
	text, err := os.ReadFile(published + "quam-a1/cadmium.toml")
	require.NoError(t, err)
	plan := strings.NewReplacer(`weigh = "100.28 mg"`, `weigh = "100.00 mg"`, `temperature = "20 °C", within = "4 °C"`, `temperature = "22 °C", within = "1 °C"`).Replace(string(text))
	path := t.TempDir() + "/plan.toml"
	require.NoError(t, os.WriteFile(path, []byte(plan), 0o644))
	p, err := LoadPrep(context.Background(), path, published+"quam-a1/bench.toml")
	require.NoError(t, err)
	m := evaluate(t, p, `
route = "A1"
[entries]
1 = { temperature = "20 °C", within = "4 °C", by = "AK", at = "2026-11-28 09:00" }
2 = { step = 1, weigh = "100.28 mg", by = "AK", at = "2026-11-28 09:10" }
3 = { step = 2, make-up-to = "100 mL", by = "AK", at = "2026-11-28 09:20" }
`)
	assert.True(t, m.Finished())
	near.Absolute(t, "c / (mg/L)", 1002.69972, m.AsMade.Analytic.Value, 5e-6)
	near.Absolute(t, "u / (mg/L)", 0.83519923, m.AsMade.Analytic.StandardUncertainty, 5e-9)
	// The plan differs by the mass, 100.28/100 - 1, and by 2 °C of 2.1e-4 /°C.
	require.Len(t, m.Effects, 2)
	assert.Equal(t, 1, m.Effects[0].Step)
	near.Relative(t, "effect of the mass", 0.0028, m.Effects[0].Relative, 1e-9)
	assert.Equal(t, 0, m.Effects[1].Step)
	near.Relative(t, "effect of the temperature", -2*2.1e-4, m.Effects[1].Relative, 1e-3)
}

// A record that says what was planned gives the figures of the plan, to the last digit
// of the simulation, whether the readings are given or left to the plan.
func TestRecordAsPlanned(t *testing.T) {
	skipIfSlow(t)
	p := demoPrep(t)
	want, err := contest.Compare(context.Background(), p, "two dilutions", few)
	require.NoError(t, err)
	planned := &want.Results[0]
	for name, text := range map[string]string{
		"readings": `
route = "two dilutions"
[entries]
1 = { temperature = "20 °C", within = "3 °C" }
2 = { step = 1, weigh = "1.50 g", by = "AK" }
3 = { step = 2, make-up-to = "25 mL", by = "AK" }
4 = { step = 3, take = "2 mL", with = "2 mL pipette", by = "AK" }
5 = { step = 4, make-up-to = "25 mL", by = "AK" }
6 = { step = 5, take = "2.5 mL", by = "AK" }
7 = { step = 6, make-up-to = "20 mL", by = "AK" }
`,
		"done": `
route = "two dilutions"
[entries]
1 = { step = 1, by = "AK" }
2 = { step = 2, by = "AK" }
3 = { step = 3, by = "AK" }
4 = { step = 4, by = "AK" }
5 = { step = 5, by = "AK" }
6 = { step = 6, by = "AK" }
`,
		"the last alone": "route = \"two dilutions\"\n[entries]\n1 = { step = 6, by = \"AK\" }\n",
		"blank":          Template(p, p.Routes[5]),
		"signed":         strings.ReplaceAll(Template(p, p.Routes[5]), `by = ""`, `by = "AK"`), // the temperature stays blank
	} {
		m := evaluate(t, p, text)
		made := m.AsMade
		assert.Equal(t, planned.Analytic, made.Analytic, name)
		assert.Equal(t, planned.MonteCarlo.Mean, made.MonteCarlo.Mean, name)
		assert.Equal(t, planned.MonteCarlo.Lower, made.MonteCarlo.Lower, name)
		assert.Equal(t, planned.Inside, made.Inside, name)
		assert.Equal(t, planned.LeftOverML, made.LeftOverML, name)
		assert.Equal(t, 0.0, m.Difference(), name)
		assert.Empty(t, m.Effects, name)
		assert.Equal(t, name != "blank", m.Finished(), name)
	}
}

// demoPrep is the prep of the demo.
func demoPrep(t *testing.T) *route.Prep {
	t.Helper()
	p, err := LoadPrep(context.Background(), "../../cmd/minim/demo/dye.toml", "")
	require.NoError(t, err)
	return p
}
