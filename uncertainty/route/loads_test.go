package route

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"minim/report/words/note"
	"minim/uncertainty/near"
)

// coarse is a scale of 200 g by 0.01 g whose s is all rounding, right within 0.03 g.
const coarse = `
[[balance]]
name = "balance"
capacity = "200 g"
readability = "0.01 g"
repeatability = "0.004 g"
linearity = "0.03 g"
`

const ofDye = "name = \"dye\"\nspecific-volume = \"0.6 mL/g\"\ndensity = \"1.5 g/mL\""

// thrice dilutes 1.00 g to 10.00 g so often, on a balance.
func thrice(t *testing.T, kit string, n int, vessel string) *Result {
	t.Helper()
	dilute := `{ weigh-aliquot = "1.00 g", on = "balance"` + vessel + ` }, { weigh-up-to = "10.00 g", on = "balance" }, `
	x := recipe{target: fmt.Sprintf("%g %% w/w", math.Pow(10, -float64(n))), solute: ofDye, more: stockOf("1 % w/w"), steps: fromStock + strings.Repeat(dilute, n)}
	r := only(t, parse(t, kit, x.text()))
	return r
}

// One scale three times, at the same loads: its error of linearity is one and the same, so
// that three dilutions have three times the u of one, 5.3 %, and not √3 times, 3.1 %. Closed
// form for ±0.03 g: of one dilution the errors at 1 g, 10 g and nothing enter with the weights
// 1, -1/10 and -9/10 of 1 g; the local parts bring 0.03²/6·1.82, the curve 0.03²/6·(1.82 -
// 1.8·√3/2), since 1 g is halfway between the nodes at nothing and 1 % of the capacity, and
// 10 g is at 5 %, with which nothing has nothing in common; the roundings 0.01²/12·1.82.
func TestOneScaleThrice(t *testing.T) {
	skipIfSlow(t)
	linear := 0.03 * 0.03 / 6 * (2*1.82 - 1.8*math.Sqrt(3)/2)
	rounding := 0.01 * 0.01 / 12 * 1.82
	near.Relative(t, "one", math.Sqrt(linear+rounding), relativeUncertainty(thrice(t, coarse, 1, "")), 0.001)
	three := relativeUncertainty(thrice(t, coarse, 3, ""))
	near.Relative(t, "three", math.Sqrt(9*linear+3*rounding), three, 0.002)
	near.Absolute(t, "nearly that of an error that is common to all", 0.053, three, 0.001)

	// Drawn anew in each reading it is not: √3 times two terms.
	anew := strings.Replace(coarse, "linearity =", "linearity-law = \"independent\"\nlinearity =", 1)
	two := 0.03 * 0.03 / 3 * 1.82
	near.Relative(t, "anew", math.Sqrt(3*(two+rounding)), relativeUncertainty(thrice(t, anew, 3, "")), 0.002)

	// In a flask of 61 g the curve at the two loads is nearly the same, and the local parts stay.
	flask := relativeUncertainty(thrice(t, coarse, 3, `, vessel = "61 g"`))
	assert.Less(t, flask, three)
	assert.Greater(t, flask, 3*math.Sqrt(0.03*0.03/6*1.82))
}

// In vessels of different mass the local parts are independent, but where the gross load of one
// weighing is the tare of another; and near each other the curve is common.
func TestVesselsOfDifferentMass(t *testing.T) {
	steps := func(first, second string) string {
		return fromStock + `{ weigh-aliquot = "1.00 g", on = "balance", vessel = "` + first + `" }, { weigh-up-to = "10.00 g", on = "balance" }, ` +
			`{ weigh-aliquot = "1.00 g", on = "balance" }, { weigh-up-to = "10.00 g", on = "balance", vessel = "` + second + `" }, `
	}
	u := func(first, second string) float64 {
		x := recipe{target: "0.01 % w/w", solute: ofDye, more: stockOf("1 % w/w"), steps: steps(first, second)}
		return relativeUncertainty(only(t, parse(t, coarse, x.text())))
	}
	local, rounding := 0.03*0.03/6*1.82, 0.01*0.01/12*1.82
	near.Relative(t, "one vessel", math.Sqrt(4*local+2*rounding), u("61.00 g", "61.00 g"), 0.02)
	near.Relative(t, "two vessels", math.Sqrt(2*local+2*rounding), u("61.00 g", "63.50 g"), 0.02)
}

// What a vessel weighs is said not to be known.
func TestLoadsAreSaid(t *testing.T) {
	const bare = "a vessel of unstated mass counts as no load"
	for vessel, said := range map[string]bool{"": true, `, vessel = "61 g"`: false} {
		text := strings.Join(note.Texts(thrice(t, coarse, 1, vessel).Notes.Assumed), "; ")
		assert.Contains(t, text, "the linearity of the balance errs by a curve over the range and by a part local to each load")
		assert.Equal(t, said, strings.Contains(text, bare))
	}
}

// By weighing back, and by a tare of its own, a mass is the difference of two readings: both
// scatter and are rounded. Of 0.100 g with s = 0.001 g and a linearity of 0.002 g, u is
// √(2 s² + L²/3), on a zeroed boat √(s² + L²/3); the curve is the same at loads so near.
func TestDifferencesOfTwoReadings(t *testing.T) {
	kit := strings.NewReplacer(`readability = "0.01 g"`, `readability = "0.001 g"`, `repeatability = "0.01 g"`, `repeatability = "0.001 g"`, `linearity = "0.02 g"`, `linearity = "0.002 g"`).Replace(exactKit)
	linear := 0.002 * 0.002 / 3
	for options, variance := range map[string]float64{
		`, left-behind = "0 g"`: 1e-6 + linear, `, weighed-back = true`: 2e-6 + linear, `, tare = "separate", left-behind = "0 g"`: 2e-6 + linear,
	} {
		x := recipe{target: "1 g/L", steps: `{ weigh = "0.100 g", on = "balance"` + options + ` }, ` + toMark}
		near.Relative(t, options, math.Sqrt(variance)/0.1, relativeUncertainty(only(t, parse(t, kit, x.text()))), 0.001)
	}
}

// Buoyancy of solute and solvent together (JCGM 101, 9.3.1.2: 1.2 kg/m³ of air, weights of
// 8 g/mL): of 1 g of 1.5 g/mL and 99 g of water the air lifts the solute less than the water,
// so that there is less of it than is meant: (1 - 0.0012/0.9982)/(1 - 0.0012/1.5)·0.99 + 0.01
// - 1 = -0.04 %. The solute alone would be 0.064 % more. The same by the total, and of a
// packet, of which the content is no weighing, -0.104 % in 99 g of water. Of a solute whose
// density is not stated nothing is corrected.
func TestBuoyancyOfSolventAndSolute(t *testing.T) {
	shift := func(solute, more, steps string) float64 {
		x := recipe{target: "1 % w/w", solute: solute, more: more, steps: steps}
		r := only(t, parse(t, coarse, x.text()))
		return 100 * (r.Analytic.Value/r.Intended - 1)
	}
	const weigh, solvent, total = `{ weigh = "1.00 g", on = "balance", left-behind = "0 g" }, `, `{ dissolve-in = "99.00 g", on = "balance" }, `, `{ weigh-up-to = "100.00 g", on = "balance", vessel = "50 g" }, `
	by := func(density float64) float64 { return (1 - 0.0012/8) / (1 - 0.0012/density) }
	want := 100 * (by(1.5)/(0.01*by(1.5)+0.99*by(0.9982)) - 1)
	near.Absolute(t, "by hand", -0.04, want, 0.001)
	near.Absolute(t, "dissolved", want, shift(ofDye, "", weigh+solvent), 1e-3)
	near.Absolute(t, "up to a total", want, shift(ofDye, "", weigh+total), 1e-3)
	packet := "[[packet]]\nname = \"sachet\"\ncontent = \"1 g\""
	near.Absolute(t, "a packet", 100*(1/(0.01+0.99*by(0.9982))-1), shift("name = \"dye\"", packet, `{ packet = "sachet" }, `+solvent), 1e-3)
	near.Absolute(t, "not known", 0, shift("name = \"dye\"", "", weigh+solvent), 1e-6)
	near.Absolute(t, "not known, up to a total", 0, shift("name = \"dye\"", "", weigh+total), 1e-6)
}
