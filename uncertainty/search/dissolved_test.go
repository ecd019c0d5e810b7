package search

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"minim/uncertainty/near"
	"minim/uncertainty/route"
	"minim/uncertainty/smallbench"
)

const dissolvedKit = `
[[balance]]
name = "scale"
capacity = "100 g"
readability = "0.01 g"
[[pipette]]
name = "pipette"
kind = "graduated"
capacity = "5 mL"
numbered = "1 mL"
class = "B"
[[cylinder]]
name = "cylinder"
capacity = "50 mL"
numbered = "10 mL"
class = "B"
clinging = "0.05 mL"
`

// What is put together of the factors of a solid, or of a packet, in measured solvent and of one
// dilution is what the model says of the route as a whole: mean, variance and what it leaves over.
// The solution has a fifth of its volume of solute, so that a wrong share would be seen (closed
// form dC/C = k dA/A - k dV/V - C dβ; constructed).
func TestDissolvedByFactors(t *testing.T) {
	p := smallbench.On(t, `target = "1 % w/v"
volume = "8 mL"
tolerance = "20 % of target"
bench = { temperature = "23 °C", within = "3 °C", vessels = "closed" }
[solute]
name = "salt"
assay = { from = "96 %", to = "100 %" }
specific-volume = { from = "0.4 mL/g", to = "0.5 mL/g" }
[solvent]
name = "water"
[[packet]]
name = "sachet"
content = { from = "0.9 g", to = "1.1 g" }
`, dissolvedKit)
	s := atAnyChance(t, p, quick(1))
	b := s.Bench
	compared := map[route.Verb]int{}
	for _, from := range []route.Verb{route.Weigh, route.UsePacket} {
		s.pass = newPass(b, from, nil)
		s.pass.dilutions = 1
		for i := range b.dissolved {
			for k := range b.dilutions {
				first, diluted := &b.dissolved[i], &b.dilutions[k]
				if first.volume > 5 || diluted.aliquot > first.volume || diluted.pullsBothWays() {
					continue
				}
				w, c := s.newWalk(0), chain{source: s.pass.sources[0], reading: first.volume / 2}
				f := c.source.factor
				if from == route.Weigh {
					weighed, err := s.weighings[c.source].nearest(c.reading * c.source.intended)
					require.NoError(t, err)
					f, c.reading = weighed.factor, weighed.reading
				}
				w.known = s.front
				w.put(diluted)
				w.put(first)
				c.ways = w.ways
				r, err := p.Assess(c.route(), 0.95)
				require.NoError(t, err)
				require.True(t, w.dissolve(c.source, &f, first))
				w.state.multiply(&w.solution)
				if r.Possible {
					compared[from]++
					near.Relative(t, "mean", r.Analytic.Value, w.state.mean, 1e-9)
					near.Relative(t, "uncertainty", r.Analytic.StandardUncertainty/r.Analytic.Value, w.state.uncertainty(), 1e-9)
				}
			}
		}
	}
	assert.Greater(t, compared[route.Weigh], 20)
	assert.Greater(t, compared[route.UsePacket], 20)
}

// Where there is nothing to make up in, solute is dissolved in measured solvent: 0.1 g in 10 mL,
// of which the solid is 0.04 mL, are 0.996 % w/v (closed form, constructed).
func TestDissolvedWithoutAVessel(t *testing.T) {
	p := smallbench.On(t, `target = "0.996 % w/v"
volume = "10 mL"
tolerance = "10 % of target"
[solute]
name = "salt"
specific-volume = "0.4 mL/g"
[solvent]
name = "water"
`, `[[balance]]
name = "scale"
capacity = "5 g"
readability = "0.001 g"
[[pipette]]
name = "pipette"
kind = "one-mark"
capacity = "10 mL"
class = "A"
`)
	list := foundOn(t, p, quick(0))
	steps := list[0].Route.Steps
	require.Equal(t, route.DissolveIn, steps[1].Verb)
	near.Relative(t, "reading", 0.1, steps[0].Amount, 1e-9)
	near.Relative(t, "made", 10.04, list[0].MadeML, 1e-9)
	near.Relative(t, "intended", 100*0.1/10.04, list[0].Intended, 1e-9)
}
