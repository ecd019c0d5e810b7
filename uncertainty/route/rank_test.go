package route

import (
	"context"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"minim/uncertainty/near"
	"minim/uncertainty/policy"
)

// By how much the strength is off when every reading is a step off, all the same way (closed form,
// constructed): 1.00 g, of which 0.88 is urea, in 40 mL is 2.2 % w/v; a digit of the scale more is
// 0.022, and 0.2 of a division of 1 mL more is 2.2 (1 - 40/40.2). A flask has one mark.
func TestMisread(t *testing.T) {
	for steps, want := range map[string]float64{
		`{ weigh = "1.00 g", on = "scale" }, { make-up-to = "40 mL", in = "cylinder" }`: 0.022 + 2.2*(1-40/40.2),
		`{ weigh = "1.00 g", on = "scale" }, { make-up-to = "25 mL", in = "flask" }`:    0.0352,
		`{ packet = "sachet" }, { make-up-to = "25 mL", in = "flask" }`:                 0,
	} {
		p := aimedPrep(t, "target = \"2 % w/v\"\ntolerance = \"50 % of target\"", steps)
		c, err := Evaluate(context.Background(), p, p.Routes, quick)
		require.NoError(t, err)
		r := &c.Results[0]
		require.True(t, r.Possible, r.Reason)
		if want == 0 {
			assert.Zero(t, r.IfMisread)
			continue
		}
		near.Relative(t, steps, want, r.IfMisread, 1e-9)
	}
}

// A route is judged by what it stays inside with, either way (constructed).
func TestOutsideIfMisread(t *testing.T) {
	p := aimedPrep(t, "target = \"2.2 % w/v\"\ntolerance = \"1.5 % of target\"", `{ weigh = "1.00 g", on = "scale" }, { make-up-to = "40 mL", in = "cylinder" }`)
	c, err := Evaluate(context.Background(), p, p.Routes, quick)
	require.NoError(t, err)
	assert.False(t, p.OutsideIfMisread(&c.Results[0]), "0.0329 of 0.033")
	p.Tolerances[0].Limits.Upper -= 0.0005
	assert.True(t, p.OutsideIfMisread(&c.Results[0]), "0.0329 of 0.0325")
	p.Tolerances = nil
	assert.False(t, p.OutsideIfMisread(&c.Results[0]), "there is no limit")
}

// The readings of a route, as the policy sees them (constructed): one cylinder both takes and is made up
// in, a flask is no reading, and a stock none either.
func TestReadingsOfRoutes(t *testing.T) {
	p := aimedPrep(t, `target = "2 % w/v"`, `{ start = "stock" }, { take = "5 mL", with = "cylinder" }, { make-up-to = "25 mL", in = "flask" }, { take = "15 mL", with = "cylinder" }, { make-up-to = "50 mL", in = "cylinder" }`)
	list := p.Routes[0].Readings()
	assert.Equal(t, 1, policy.FirstLow(list), "5 of 50 mL")
	assert.Equal(t, 4, policy.FirstBothWays(list))
	assert.Equal(t, 3.5, policy.RoundnessIn(list), "5, 15, 50")
	p = aimedPrep(t, `target = "2 % w/v"`, `{ weigh = "1.25 g", on = "scale" }, { make-up-to = "25 mL", in = "cylinder" }, { take = "5 mL", with = "bulb" }, { make-up-to = "20 mL", in = "cylinder" }`)
	list = p.Routes[0].Readings()
	assert.Equal(t, -1, policy.FirstLow(list))
	assert.Equal(t, -1, policy.FirstBothWays(list), "the cylinder dilutes twice")
	assert.Equal(t, 5.0, policy.RoundnessIn(list), "1.25, 25, 20")
}

// Where a smaller instrument of the kind would do (constructed): 10 mL are read well in 10 mL, not in 50;
// a syringe of 5 mL is no cylinder; less than a fifth of the smaller is not read well there.
func TestTooLarge(t *testing.T) {
	p := aimedPrep(t, `target = "2 % w/v"`, `{ weigh = "1.25 g", on = "scale" }, { make-up-to = "10 mL", in = "cylinder" }`)
	large, enough := p.TooLarge(p.Routes[0])
	assert.Nil(t, large)
	assert.Nil(t, enough)
	smaller := *p.Kit.Measures[0]
	smaller.Name, smaller.Capacity = "small", 10
	kit := *p.Kit
	kit.Measures = append(slices.Clip(kit.Measures), &smaller)
	p.Kit = &kit
	large, enough = p.TooLarge(p.Routes[0])
	assert.Equal(t, "cylinder", large.Name)
	assert.Equal(t, "small", enough.Name)
	for _, mL := range []float64{1, 11} {
		large, _ = p.TooLarge(p.Routes[0].With(1, mL))
		assert.Nil(t, large, mL)
	}
}

// A word for a hazard or a price makes a solute dear; that none is known does not.
func TestDear(t *testing.T) {
	p := &Prep{Volume: 20, LeastChance: 0.95}
	assert.False(t, p.Ask().Dear)
	p.Solute.Hazards = []string{"none known"}
	assert.False(t, p.Ask().Dear)
	p.Solute.Hazards = []string{"irritant"}
	assert.True(t, p.Ask().Dear)
	p.Solute.Hazards, p.Solute.Price.Amount, p.Solute.Price.Currency = nil, 3, "EUR"
	assert.True(t, p.Ask().Dear)
}
