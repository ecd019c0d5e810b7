package route

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"minim/uncertainty/near"
)

// A cylinder of which more may stay than is measured with it (invented).
const keepsMuch = exactKit + `
[[cylinder]]
name = "c10"
capacity = "10 mL"
division = "0.2 mL"
standard-uncertainty = "0.001 mL"
reading = "none"
clinging = "0 mL"
retained = { mean = "0.4 mL", spread = "0.8 mL" }
[[cylinder]]
name = "badly known"
capacity = "10 mL"
division = "0.2 mL"
standard-uncertainty = "1.5 mL"
reading = "none"
clinging = "0 mL"
retained = "0 mL"
`

// poured takes a volume with an instrument of keepsMuch and makes it up to a mark.
func poured(t *testing.T, mL, with string) *Result {
	t.Helper()
	return only(t, parse(t, keepsMuch, recipe{target: "1 g/L", more: stockOf("10 g/L"), steps: fromStock + `{ take = "` + mL + `", with = "` + with + `" }, ` + toMark}.text()))
}

// No simulated batch has a strength below zero, nor more than what was measured gives.
func TestWhatStaysIsNoMoreThanWasMeasured(t *testing.T) {
	for mL, most := range map[string]float64{"10 mL": 1, "2 mL": 0.2, "0.6 mL": 0.06} {
		r := poured(t, mL, "c10")
		assert.GreaterOrEqual(t, r.MonteCarlo.Quantile(1e-5), -0.0005, mL)
		assert.LessOrEqual(t, r.MonteCarlo.Quantile(1-1e-5), most+0.0005, mL)
		assert.LessOrEqual(t, r.MonteCarlo.Lower, r.Analytic.Value, mL)
		near.Relative(t, "mean", r.Analytic.Value, r.MonteCarlo.Mean, 1e-3)
	}
}

// A volume of which all may stay, or that is known so badly that it could be nothing, says almost
// nothing; a search does not take it.
func TestVolumeThatCouldBeNothing(t *testing.T) {
	for _, test := range []struct{ mL, with, want string }{
		{"10 mL", "c10", ""},
		{"2 mL", "c10", "step 2 measures 2 mL, all of which may stay in the c10: it could be nothing at all"},
		{"10 mL", "badly known", ""},
		{"2 mL", "badly known", "step 2 measures 2 mL, give or take 3.0 mL: it could be nothing at all"},
	} {
		r := poured(t, test.mL, test.with)
		assert.Equal(t, test.want, r.Uninformative.String(), test.mL+" "+test.with)
		assert.Equal(t, test.want == "", r.Informative)
		p := parse(t, keepsMuch, recipe{target: "1 g/L", more: stockOf("10 g/L"), steps: fromStock + `{ take = "` + test.mL + `", with = "` + test.with + `" }, ` + toMark}.text())
		f, err := p.TakenFactor(p.Routes[0].Steps[1])
		assert.NoError(t, err)
		assert.Equal(t, test.want == "", f.Uninformative.None())
	}
}
