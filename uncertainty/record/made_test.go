package record

import (
	"context"
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"minim/uncertainty"
	"minim/uncertainty/near"
	"minim/uncertainty/route"
)

const published = "../../testdata/published/"

// few trials are enough where no simulated figure counts.
var few = uncertainty.Settings{Trials: 10_000, Seed: 1}

func evaluate(t *testing.T, p *route.Prep, text string) *Made {
	t.Helper()
	r, err := Parse("record.toml", []byte(text), p)
	require.NoError(t, err)
	m, err := Evaluate(context.Background(), r, few)
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
	p, err := route.LoadPrep(path, published+"quam-a1/bench.toml")
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
	p := demoPrep(t)
	want, err := route.Compare(context.Background(), p, "two dilutions", few)
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

// Each reading that lies in the room that is given keeps the batch inside, and none
// beyond it does: asked of every reading that the instrument can show.
func TestRoom(t *testing.T) {
	p := demoPrep(t)
	for _, text := range []string{
		"route = \"two dilutions\"\n[entries]\n",
		"route = \"two dilutions\"\n[entries]\n1 = { step = 1, weigh = \"1.55 g\", by = \"AK\" }\n",
		"route = \"two dilutions\"\n[entries]\n1 = { step = 1, weigh = \"1.53 g\", by = \"AK\" }\n2 = { step = 3, take = \"1.97 mL\" }\n",
		"route = \"two dilutions\"\n[entries]\n1 = { step = 1, weigh = \"3.75 g\", by = \"AK\" }\n",
		"route = \"0.25 g, one dilution\"\n[entries]\n",
	} {
		r, err := Parse("record.toml", []byte(text), p)
		require.NoError(t, err)
		made, err := r.Prep.Assess(r.Made, 0.95)
		require.NoError(t, err)
		rooms, err := r.room(&made, 0.95)
		require.NoError(t, err)
		require.NotEmpty(t, rooms)
		for _, room := range rooms {
			s := r.Made.Steps[room.Step-1]
			if room.Fixed {
				assert.Equal(t, "25 mL flask", s.Measure.Name)
				continue
			}
			good, bad := 0, 0
			scale := newReadings(r, room.Step-1, 0.95)
			for n := 1; n <= min(scale.most, 400); n++ { // of the scale up to 4 g
				reading := scale.reading(n)
				inRoom := room.Any && reading >= room.Low-1e-9 && reading <= room.High+1e-9
				if scale.inside(n) {
					good++
				} else {
					bad++
				}
				assert.Equal(t, inRoom, scale.inside(n), "%q step %d reading %v, room %+v", text, room.Step, reading, room)
			}
			require.NoError(t, scale.err)
			assert.Equal(t, room.Any, good > 0)
			assert.Positive(t, bad)
		}
	}
}

// One-sided limits leave one end open.
func TestRoomOfOneLimit(t *testing.T) {
	p := demoPrep(t)
	limited := *p
	limited.Tolerances = []route.Tolerance{{Text: "not above 0.066 % w/v", Limits: uncertainty.Limits{Lower: -1, Upper: 0.066}}}
	r, err := Parse("record.toml", []byte("route = \"two dilutions\"\n[entries]\n"), &limited)
	require.NoError(t, err)
	made, err := limited.Assess(r.Made, 0.95)
	require.NoError(t, err)
	rooms, err := r.room(&made, 0.95)
	require.NoError(t, err)
	for _, room := range rooms {
		switch room.Step {
		case 1, 3, 5: // more makes it stronger
			assert.True(t, room.LowFree, "%+v", room)
			assert.False(t, room.HighFree && room.Step != 3, "%+v", room)
		case 4, 6:
			assert.True(t, room.HighFree, "%+v", room)
			assert.False(t, room.LowFree, "%+v", room)
		}
	}
}

// demoPrep is the prep of the demo.
func demoPrep(t *testing.T) *route.Prep {
	t.Helper()
	p, err := route.LoadPrep("../../cmd/minim/demo/dye.toml", "")
	require.NoError(t, err)
	return p
}
