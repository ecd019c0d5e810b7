package rescue

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"minim/uncertainty"
	read "minim/uncertainty/bench"
	"minim/uncertainty/near"
	"minim/uncertainty/route"
)

// wanting is a prep of 10 mL of urea in water that lines say more of, on a bench with one cylinder.
func wanting(t *testing.T, lines ...string) *route.Prep {
	t.Helper()
	k, err := read.ParseKit("kit", []byte("[[cylinder]]\nname = \"c\"\ncapacity = \"10 mL\"\nclass = \"B\"\n"))
	require.NoError(t, err)
	text := strings.Join(lines, "\n") + "\nvolume = \"10 mL\"\nsolvent = { name = \"water\" }\n"
	if !strings.Contains(text, "solute = ") {
		text += "solute = { name = \"urea\", specific-volume = \"0.5 mL/g\" }\n"
	}
	p, err := read.ParsePrep("prep", []byte(text), k)
	require.NoError(t, err)
	return p
}

func TestAimed(t *testing.T) {
	p := wanting(t, `target = "1 g/L"`, `tolerance = "5 % of target"`)
	q, err := Aimed(p, "0.3 % w/v")
	require.NoError(t, err)
	assert.Equal(t, "% w/v", q.Target.Unit.Name)
	near.Relative(t, "lower", 0.285, q.Tolerances[0].Limits.Lower, 1e-12)
	near.Relative(t, "upper", 0.315, q.Tolerances[0].Limits.Upper, 1e-12)
	assert.Equal(t, "1 g/L", p.Target.Text, "the prep itself stays")
	_, err = Aimed(p, "0.3 %")
	assert.ErrorContains(t, err, "does not say of what")
	p = wanting(t, `target = "1 g/L"`, `not-above = "1.2 g/L"`)
	for target, kept := range map[string]int{"1.1 g/L": 1, "1.3 g/L": 0, "0.1 % w/v": 0} {
		q, err := Aimed(p, target)
		require.NoError(t, err)
		assert.Len(t, q.Tolerances, kept, target)
	}
}

func TestBottle(t *testing.T) {
	p := wanting(t, `target = "1 g/L"`)
	s, err := Bottle(p, "8 % w/v, give or take 0.2 % w/v, 20 mL")
	require.NoError(t, err)
	assert.Equal(t, []float64{8, 0.1, 20}, []float64{s.Strength.Value, uncertainty.SummaryOf(s.Strength.Distribution).StandardUncertainty, s.Volume.Value})
	for text, message := range map[string]string{
		"8 % w/v":                              `"8 % w/v" does not state a strength and a volume`,
		"8 %, 20 mL":                           `"%" does not say of what: by weight in a volume, by weight, or by volume`,
		"8 % w/v, 20 g":                        `"20 g" is a mass, not a volume`,
		"8 % w/v, 0 mL":                        `no stock has a volume of "0 mL"`,
		"8 % w/v, ± 0.2, 20 mL":                `found "± 0.2" between the strength and the volume`,
		"8 % w/v, 20 mL, 30 mL, 5":             `"8 % w/v, 20 mL, 30 mL, 5" does not state a strength and a volume`,
		"8 % w/v, give or take 2 g/L, 20 mL":   `"2 g/L" is not smaller than the strength, in its unit`,
		"8 % w/v, give or take 9 % w/v, 20 mL": `"9 % w/v" is not smaller than the strength, in its unit`,
		"900 % w/v, 20 mL":                     `no solution has a strength of "900 % w/v"`,
	} {
		_, err := Bottle(p, text)
		assert.EqualError(t, err, message, text)
	}
}

// Of urea in water no density is known by which a mass fraction becomes a concentration.
func TestBottleWithoutADensity(t *testing.T) {
	_, err := Bottle(wanting(t, `target = "10 g/L"`, `solute = { name = "urea" }`), "10 % w/w, 20 mL")
	assert.ErrorContains(t, err, "needs the density of the stock")
}

// Words from 2 g/100 mL hold from there on, whatever the unit of the strength aimed at:
// 2 % w/v is 20 g/L, and with 100 g/mol 0.2 mol/L.
func TestHazardsOfAPrepAimedElsewhere(t *testing.T) {
	p := wanting(t, `target = "1 % w/v"`, `hazard = [{ from = "2 % w/v", words = ["irritant"] }]`, `solute = { name = "urea", molar-mass = "100 g/mol" }`)
	for unit, from := range map[string]float64{"% w/v": 2, "g/L": 20, "mol/L": 0.2} {
		q, err := Aimed(p, "0.5 "+unit)
		require.NoError(t, err)
		for _, share := range []float64{0.99, 1.01} {
			h := q.HazardsAt(share*from, share*from)
			assert.Equal(t, share > 1, len(h.Solution) > 0, unit)
		}
	}
	assert.Equal(t, 2.0, p.Hazards[0].From.Value, "the prep itself stays as it is")
}
