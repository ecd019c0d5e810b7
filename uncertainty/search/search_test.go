package search

import (
	"context"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"minim/uncertainty/near"
	"minim/uncertainty/route"
	"minim/uncertainty/smallbench"
)

// quick options for up to so many dilutions.
func quick(steps int) Options { return Options{Limits: route.Limits{Steps: steps}} }

// atAnyChance is a search for what no other route beats at any chance.
func atAnyChance(t *testing.T, p *route.Prep, o Options) *search {
	t.Helper()
	b, err := NewBench(p, o)
	require.NoError(t, err)
	return newSearch(b, o, newJudge(p, b.coverage, tooLittle, enough))
}

// foundOn is what is found to choose from, which is something.
func foundOn(t *testing.T, p *route.Prep, o Options) []route.Result {
	t.Helper()
	b, err := NewBench(p, o)
	require.NoError(t, err)
	list, err := b.Find(t.Context())
	require.NoError(t, err)
	require.NotEmpty(t, list)
	return list
}

// Fixed checks on the model (closed forms, constructed): n steps made up to the mark
// with one pipette, 1 mL ± 1 %, and one flask, 10 mL ± 0.5 %, have n √(u² + U²); with
// the diluent from the aliquot's own pipette, the bias cancels.
func TestClosedForms(t *testing.T) {
	p := smallbench.On(t, `
target = "0.001 % w/v"
volume = "1 mL"
[solute]
name = "urea"
[solvent]
name = "water"
[[stock]]
name = "stock"
strength = "10 % w/v"
`, `
[[pipette]]
name = "pipette"
kind = "one-mark"
capacity = "1 mL"
standard-uncertainty = "0.01 mL"
reading = "none"
[[flask]]
name = "flask"
capacity = "10 mL"
standard-uncertainty = "0.05 mL"
reading = "none"
`)
	b, err := NewBench(p, quick(4))
	require.NoError(t, err)
	for n, want := range map[int]float64{1: 0.011180340, 2: 0.022360680, 4: 0.044721360} {
		near.Relative(t, "made up to the mark", want, b.relativeAfter(n, false), 5e-8)
		assert.Less(t, b.relativeAfter(n, true), 1e-9, "own diluent")
	}
}

// relativeAfter is the relative uncertainty of so many dilutions alike.
func (b *Bench) relativeAfter(n int, measured bool) float64 {
	s := b.keys.newState(make([]float64, len(b.keys.influences)))
	for range n {
		for i := range b.dilutions {
			if b.dilutions[i].measured == measured {
				s.multiply(&b.dilutions[i].factor)
			}
		}
	}
	return s.uncertainty()
}

// TestEnoughIsTried: what was not searched is said, and what was found is there.
func TestEnoughIsTried(t *testing.T) {
	p := smallbench.On(t, smallbench.Prep, smallbench.Kit)
	o := quick(2)
	o.Work = 1
	s := atAnyChance(t, p, o)
	require.NoError(t, s.run(context.Background()))
	assert.NotEmpty(t, s.NotSearched)
	assert.Contains(t, s.NotSearched[len(s.NotSearched)-1].String(), "no more than 1 candidates are tried")
}
