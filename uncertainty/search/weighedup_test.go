package search

import (
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
`

// What is put together of the factor of solute, or of a packet, that is weighed up to a total and of one
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
		s := atAnyChance(t, p, quick(1))
		b := s.Bench
		compared := map[route.Verb]int{}
		for _, from := range []route.Verb{route.Weigh, route.UsePacket} {
			s.pass = newPass(b, from, nil)
			s.pass.dilutions = 1
			for i := range b.weighedUp {
				for k := range b.dilutions {
					compared[from] += weighedUpAgrees(t, s, &b.weighedUp[i], &b.dilutions[k])
				}
			}
		}
		assert.Greater(t, compared[route.Weigh], 50, volumes)
		assert.Greater(t, compared[route.UsePacket], 20, volumes)
	}
}

// weighedUpAgrees says how many sources were compared.
func weighedUpAgrees(t *testing.T, s *search, total, diluted *making) (compared int) {
	if diluted.aliquot > total.volume || diluted.pullsBothWays() {
		return 0
	}
	for _, source := range s.pass.sources {
		w, step := s.newWalk(0), source.step
		w.known = s.front
		w.put(diluted)
		w.volumes.ratio = diluted.ratio
		amount := source.intended
		if source.isWeighed() {
			step.Amount = step.Balance.Displayed(nearestDigits(total.volume/5, step.Balance))
			amount *= step.Amount
		}
		up, err := w.weighedUps.of(step, total.made)
		require.NoError(t, err)
		if !up.possible {
			continue
		}
		volumes := w.up.shares(up.concentration)
		near.Relative(t, "made", amount/up.concentration, total.volume/volumes.low, 1e-9)
		w.volumes.ratio = s.prep.Target.Value / w.unit.mean / up.concentration
		bound := w.leastWith(total, amount)
		table := s.pass.leastWeighedUp(s.Bench, 0, total.volume/volumes.low, up.concentration, up.concentration)
		w.put(total)
		w.state.multiply(&up.factor)
		c := chain{source: source, reading: step.Amount, ways: w.ways}
		r, err := s.prep.Assess(c.route(), 0.95)
		require.NoError(t, err)
		if !r.Possible {
			continue
		}
		compared++
		near.Relative(t, "mean", r.Analytic.Value, w.state.mean, 1e-9)
		near.Relative(t, "uncertainty", r.Analytic.StandardUncertainty/r.Analytic.Value, w.state.uncertainty(), 1e-9)
		near.Relative(t, "left over", r.LeftOverML, amount/up.concentration-diluted.aliquot+max(0, diluted.volume-s.prep.Volume), 1e-9)
		assert.LessOrEqual(t, bound, w.state.variance()*(1+1e-9), describe([]found{{Result: r}}))
		assert.LessOrEqual(t, table, up.own+squares(&up.factor)*(1+1e-9), describe([]found{{Result: r}}))
	}
	return compared
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
