package search

import (
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"minim/uncertainty/near"
	"minim/uncertainty/route"
	"minim/uncertainty/smallbench"
)

const weighedUpPrep = `target = "1 % w/v"
volume = "8 mL"
tolerance = "20 % of target"
bench = { temperature = "23 °C", within = "3 °C" }
[solute]
name = "salt"
assay = { from = "96 %", to = "100 %" }
specific-volume = { from = "FROM mL/g", to = "TO mL/g" }
[solvent]
name = "water"
[[packet]]
name = "sachet"
content = { from = "0.9 g", to = "1.1 g" }
[[stock]]
name = "strong"
strength = { from = "19 % w/v", to = "21 % w/v" }
`

// What is put together of the factor of solute, of a packet or of a stock that is weighed up to a total and of one
// dilution by volume is what the model says of the route as a whole: mean, variance and what it
// leaves over; and it is no less than what bounds it. The total is weighed on the balance of the solute or on
// another, and the solution is heavier or lighter than its solvent (constructed).
func TestWeighedUpByFactors(t *testing.T) {
	for _, volumes := range []string{"FROM 0.4 TO 0.5", "FROM 1.2 TO 1.3"} {
		of := strings.Fields(volumes)
		p := smallbench.On(t, strings.NewReplacer(of...).Replace(weighedUpPrep), dissolvedKit+`
[[balance]]
name = "fine scale"
capacity = "100 g"
readability = "0.001 g"
span = "0.1 % of reading"
linearity = "0.005 g"
`)
		s := atAnyChance(t, p, quick(2))
		compared := map[route.Verb]int{}
		s.pass = newPass(s.Bench, route.WeighUpTo, nil)
		require.NoError(t, s.pass.about(t.Context(), s.Bench, 1))
		for i := range s.up.round {
			for k := range s.dilutions {
				for n := range s.up.starts {
					if weighedUpAgrees(t, s, i, n, &s.dilutions[k]) {
						compared[s.up.starts[n].part.Verb]++
					}
				}
			}
		}
		assert.Greater(t, compared[route.Weigh], 50, volumes)
		assert.Greater(t, compared[route.UsePacket], 20, volumes)
		assert.Greater(t, compared[route.WeighAliquot], 20, volumes)
	}
}

// weighedUpAgrees reports whether a start and a round total can be compared.
func weighedUpAgrees(t *testing.T, s *search, at, start int, diluted *making) bool {
	u, d, total := s.up, &s.up.starts[start], s.up.round[at]
	if diluted.aliquot > total.Amount/u.solvent || diluted.pullsBothWays() || !d.follows(&total) {
		return false
	}
	part, w := d.part, s.newWalk(0)
	if k := part.Balance; k != nil {
		part.Amount = k.Displayed(nearestDigits(total.Amount/5, k))
	}
	up, err := u.solution(d, part, total)
	require.NoError(t, err)
	if !up.possible {
		return false
	}
	last := w.made(d, part, total)
	bound, concentration := u.least[at][start][u.grams.of(last.fraction*total.Amount)], last.fraction*last.density
	near.Relative(t, "fraction", last.fraction, u.fraction(concentration), 1e-9)
	table := u.leastWeighedUp(total.Amount/last.density, concentration)
	w.put(diluted)
	w.state.multiply(&up.factor)
	c := chain{begin: append(slices.Clip(d.steps), part, total), ways: w.ways}
	r, err := s.prep.Assess(c.route(), 0.95)
	require.NoError(t, err)
	if !r.Possible {
		return false
	}
	near.Relative(t, "mean", r.Analytic.Value, w.state.mean, 1e-9)
	near.Relative(t, "uncertainty", r.Analytic.StandardUncertainty/r.Analytic.Value, w.state.uncertainty(), 1e-9)
	near.Relative(t, "left over", r.LeftOverML, total.Amount/last.density-diluted.aliquot+max(0, diluted.volume-s.prep.Volume), 1e-9)
	for _, least := range []float64{bound, table} {
		assert.LessOrEqual(t, least, up.own+squares(&up.factor)*(1+1e-9), describe([]found{{Result: r}}))
	}
	return true
}

func squares(f *factor) (sum float64) {
	for _, p := range f.shared {
		sum += float64(p.relative * p.relative)
	}
	return sum
}

// Where a coarse scale carries much, solute is weighed up to a total of which a mL is taken: 10 g of 100 g,
// with 1 g/mL of solvent and 0.4 mL/g of solute, are 10/94 g/mL, and 1 mL of it with 10 mL of solvent
// an eleventh of that (closed form, constructed).
func TestWeighedUpWhereMuchIsCarried(t *testing.T) {
	p := smallbench.On(t, `target = "0.9671 % w/v"
volume = "10 mL"
tolerance = "0.6 % of target"
bench = { vessels = "closed" }
[solute]
name = "salt"
specific-volume = "0.4 mL/g"
[solvent]
name = "something"
density = "1 g/mL"
`, `[[balance]]
name = "scale"
capacity = "200 g"
readability = "0.05 g"
[[pipette]]
name = "small"
kind = "one-mark"
capacity = "1 mL"
class = "A"
[[pipette]]
name = "large"
kind = "one-mark"
capacity = "10 mL"
class = "A"
`)
	for _, r := range foundOn(t, p, quick(1)) {
		if s := r.Route.Steps; s[1].Verb == route.WeighUpTo && s[1].Amount == 100 {
			require.Equal(t, route.Take, s[2].Verb)
			near.Relative(t, "reading", 10, s[0].Amount, 1e-9)
			near.Relative(t, "intended", 100*10.0/94/11, r.Intended, 1e-9)
			return
		}
	}
	t.Error("none of what is found is weighed up")
}
