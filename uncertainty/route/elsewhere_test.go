package route

import (
	"context"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"minim/equipment"
	"minim/uncertainty/near"
	"minim/uncertainty/policy"
)

// aimKit is an invented bench with a coarse and a fine scale.
const aimKit = `
[[balance]]
name = "coarse"
capacity = "200 g"
readability = "0.1 g"
[[balance]]
name = "scale"
capacity = "20 g"
readability = "0.01 g"
[[cylinder]]
name = "cylinder"
capacity = "50 mL"
class = "B"
retained = "0 mL"
[[flask]]
name = "flask"
capacity = "25 mL"
class = "A"
[[pipette]]
name = "bulb"
kind = "one-mark"
capacity = "5 mL"
class = "A"
[[syringe]]
name = "syringe"
capacity = "5 mL"
[[dropper]]
name = "dropper"
`

// aimedPrep is a prep of urea that is weighed as an invented hydrate of which 0.88 is urea,
// with one route.
func aimedPrep(t *testing.T, head, steps string) *Prep {
	t.Helper()
	return parse(t, aimKit, head+`
volume = "20 mL"
[solute]
name = "urea"
weighed-as = "urea hydrate"
form-factor = 0.88
[solvent]
name = "water"
[[stock]]
name = "stock"
strength = "5 % w/v"
[[packet]]
name = "sachet"
content = "0.5 g"
[[route]]
name = "route"
steps = [ `+steps+" ]\n")
}

// A route that aims elsewhere is told of the reading that brings it to the target, in the
// order in which readings are simple to change, and the chance that it then has is the one
// that it has when that is done (constructed: the amounts by hand, 0.88 in 1 g).
func TestWhatBringsARouteToTheTarget(t *testing.T) {
	skipIfSlow(t)
	const within = "target = \"0.6 % w/v\"\ntolerance = \"8 % of target\""
	for _, c := range []struct {
		name, head, steps string
		off               float64
		step              int
		reading           float64
	}{
		{"a hydrate forgotten: 0.30 g for 0.341 g", within,
			`{ weigh = "0.30 g", on = "scale" }, { make-up-to = "50 mL", in = "cylinder" }`, 0.88 - 1, 1, 0.34},
		{"too much", within, `{ weigh = "0.40 g", on = "scale" }, { make-up-to = "50 mL", in = "cylinder" }`, 0.4*0.88/0.3 - 1, 1, 0.34},
		{"weighed in a vessel", within, `{ weigh = "0.30 g", on = "scale" }, { weigh-up-to = "50.00 g", on = "coarse" }`, -0.1187, 1, 0.34},
		{"of two weighings the first", within, `{ weigh = "0.15 g", on = "scale" }, { weigh = "0.15 g", on = "scale" }, { make-up-to = "50 mL", in = "cylinder" }`, -0.12, 1, 0.19},
		{"a scale too coarse: the aliquot", within,
			`{ weigh = "1.0 g", on = "coarse" }, { make-up-to = "25 mL", in = "flask" }, { take = "5 mL", with = "syringe" }, { make-up-to = "25 mL", in = "flask" }`,
			35.2*5/25/6 - 1, 3, 4.3},
		{"from a stock with a full syringe: the final mark", within, `{ start = "stock" }, { take = "5 mL", with = "syringe" }, { make-up-to = "50 mL", in = "cylinder" }`, 5.0/6 - 1, 3, 42},
		{"from a stock, less", within, `{ start = "stock" }, { take = "3.5 mL", with = "syringe" }, { make-up-to = "25 mL", in = "flask" }`, 3.5*5/25/0.6 - 1, 2, 3},
		{"from a packet: the final mark", within, `{ packet = "sachet" }, { make-up-to = "50 mL", in = "cylinder" }`, 0.88/0.6 - 1, 0, 0},
		{"from a packet that is diluted: the final mark", within,
			`{ packet = "sachet" }, { make-up-to = "25 mL", in = "flask" }, { take = "5 mL", with = "bulb" }, { take = "5 mL", with = "bulb" }, { make-up-to = "26 mL", in = "cylinder" }`,
			0.176/26/0.006 - 1, 5, 29},
		{"nothing but fixed marks", within, `{ packet = "sachet" }, { make-up-to = "25 mL", in = "flask" }`, 0.44/0.15 - 1, 0, 0},
		{"one limit", "target = \"0.6 % w/v\"\nnot-below = \"0.55 % w/v\"", `{ weigh = "0.30 g", on = "scale" }, { make-up-to = "50 mL", in = "cylinder" }`, -0.12, 1, 0.34},
	} {
		p := aimedPrep(t, c.head, c.steps)
		result, err := Compare(context.Background(), p, "", quick)
		require.NoError(t, err)
		r := &result.Results[0]
		e := r.Elsewhere
		require.NotNil(t, e, c.name)
		near.Absolute(t, c.name, r.Analytic.Value/p.Target.Value-1, e.Off, 1e-12)
		near.Absolute(t, c.name+", off", c.off, e.Off, 0.001)
		assert.Equal(t, c.step, e.Step, c.name)
		if e.Step == 0 {
			continue
		}
		near.Absolute(t, c.name+", reading", c.reading, e.Amended.Amount, 1e-9)
		taken := p.Routes[0].With(e.Step-1, e.Amended.Amount)
		again, err := Evaluate(context.Background(), p, []*Route{taken}, quick)
		require.NoError(t, err)
		assert.Equal(t, again.Results[0].Chance(), e.Chance, c.name)
		assert.Equal(t, again.Results[0].Intended, e.Intended, c.name)
		assert.InDelta(t, 1, again.Results[0].Analytic.Value/p.Target.Value, HalfWidth(p)/4, c.name)
		assert.Greater(t, e.Chance, r.Chance(), c.name)
		assert.True(t, again.Results[0].Enough(p.Volume), c.name)
	}
}

// A quarter of the way to a limit is where a route stops aiming at the target. Without a
// limit on that side, or without a tolerance, it may aim where it likes.
func TestWhenARouteAimsElsewhere(t *testing.T) {
	skipIfSlow(t)
	for _, c := range []struct {
		head, weighed string
		elsewhere     bool
	}{
		// 0.34 g makes 0.5984 % w/v, 0.27 % below; 0.35 g is 2.67 % above, 0.36 g 5.6 %.
		{"target = \"0.6 % w/v\"\ntolerance = \"8 % of target\"", "0.34 g", false},
		{"target = \"0.6 % w/v\"\ntolerance = \"8 % of target\"", "0.35 g", true},
		{"target = \"0.6 % w/v\"\ntolerance = \"10.6 % of target\"", "0.35 g", true},
		{"target = \"0.6 % w/v\"\ntolerance = \"10.7 % of target\"", "0.35 g", false},
		{"target = \"0.6 % w/v\"", "0.36 g", false},
		{"target = \"0.6 % w/v\"\nnot-above = \"0.7 % w/v\"", "0.36 g", true},
		{"target = \"0.6 % w/v\"\nnot-above = \"0.75 % w/v\"", "0.36 g", false},
		{"target = \"0.6 % w/v\"\nnot-above = \"0.7 % w/v\"", "0.30 g", false},
		{"target = \"0.6 % w/v\"\nnot-below = \"0.5 % w/v\"", "0.30 g", true},
		{"target = \"0.6 % w/v\"\nnot-below = \"0.6 % w/v\"", "0.33 g", true},
		{"target = \"0.6 % w/v\"\nnot-below = \"0.6 % w/v\"", "0.40 g", false},
		{"target = \"0.6 % w/v\"\nnot-below = \"0.57 % w/v\"\nnot-above = \"0.9 % w/v\"", "0.36 g", false},
		{"target = \"0.6 % w/v\"\nnot-below = \"0.57 % w/v\"\nnot-above = \"0.9 % w/v\"", "0.33 g", true},
	} {
		p := aimedPrep(t, c.head, `{ weigh = "`+c.weighed+`", on = "scale" }, { make-up-to = "50 mL", in = "cylinder" }`)
		result, err := Compare(context.Background(), p, "", quick)
		require.NoError(t, err)
		assert.Equal(t, c.elsewhere, result.Results[0].Elsewhere != nil, "%s, %s", c.head, c.weighed)
	}
}

// dripping is a bench on which of the drops above the mark 0.3 mL are to be expected in 10 mL.
const dripping = `
[[balance]]
name = "scale"
capacity = "20 g"
readability = "0.001 g"
[[cylinder]]
name = "cylinder"
capacity = "10 mL"
class = "A"
clinging = "0.6 mL"
`

// dripped is a prep there of one route that weighs so much urea for 10 g/L.
func dripped(t *testing.T, tolerance, weighed, solute string) *Result {
	t.Helper()
	p := parse(t, dripping, `
target = "10 g/L"
volume = "10 mL"
tolerance = "`+tolerance+`"
[solvent]
name = "water"
[[route]]
name = "route"
steps = [ { weigh = "`+weighed+`", on = "scale" }, { make-up-to = "10 mL", in = "cylinder" } ]
[solute]
name = "urea"
`+solute)
	c, err := Compare(context.Background(), p, "", quick)
	require.NoError(t, err)
	return &c.Results[0]
}

// What counts is where a strength is expected, not the marks that are aimed at: an aim that makes
// up for what shifts it is no mistake, and one that does not is told by how much it falls short
// of the target, 0.3 mL in 10.3 (constructed).
func TestAimThatMakesUpForAShift(t *testing.T) {
	assert.Nil(t, dripped(t, "8 % of target", "0.103 g", "").Elsewhere)
	for _, weighed := range []string{"0.100 g", "0.099 g", "0.110 g"} {
		r := dripped(t, "8 % of target", weighed, "")
		e := r.Elsewhere
		require.NotNil(t, e, weighed)
		near.Absolute(t, weighed, r.Analytic.Value/10-1, e.Off, 1e-12)
		near.Absolute(t, weighed, 0.103, e.Amended.Amount, 1e-9)
		assert.Greater(t, e.Chance, r.Chance(), weighed)
	}
}

// A reading is not proposed that takes more solute than dissolves.
func TestNoReadingBeyondTheSolubility(t *testing.T) {
	for most, step := range map[string]int{"15 g/L": 1, "9.9 g/L": 0} {
		e := dripped(t, "8 % of target", "0.090 g", "solubility = \""+most+"\"\n").Elsewhere
		require.NotNil(t, e, most)
		assert.Equal(t, step, e.Step, most)
	}
}

// A route that is better as it is than with any reading that aims at the target is left
// alone: drops of an unknown liquid, each 0.4 to 1 of one of water, of which 9 are expected to be
// enough; inside are n of them whose size lies between 4.8/n and 7.2/n, which is less often the
// more there are.
func TestBetterAsItIs(t *testing.T) {
	drops := func(n string) *Elsewhere {
		p := parse(t, aimKit, `
target = "0.6 % v/v"
volume = "20 mL"
tolerance = "20 % of target"
[solute]
name = "oil of something"
density = "0.9 g/mL"
[solvent]
name = "water"
[[route]]
name = "drops"
steps = [ { measure = "`+n+` drops", with = "dropper" }, { make-up-to = "50 mL", in = "cylinder" } ]
`)
		c, err := Compare(context.Background(), p, "", quick)
		require.NoError(t, err)
		return c.Results[0].Elsewhere
	}
	assert.Nil(t, drops("9"), "it is expected at the target")
	assert.Nil(t, drops("8"), "it has the better chance")
	if e := drops("20"); assert.NotNil(t, e) {
		assert.Equal(t, 9.0, e.Amended.Amount)
	}
}

// What a route would give with another reading changes neither its figures nor the
// verdict: it is ranked as it is stated.
func TestRankedAsStated(t *testing.T) {
	p := aimedPrep(t, "target = \"0.6 % w/v\"\ntolerance = \"11 % of target\"", `{ weigh = "0.30 g", on = "scale" }, { make-up-to = "50 mL", in = "cylinder" } ]
[[route]]
name = "right"
steps = [ { weigh = "0.34 g", on = "scale" }, { make-up-to = "50 mL", in = "cylinder" }`)
	c, err := Compare(context.Background(), p, "", quick)
	require.NoError(t, err)
	require.NotNil(t, c.Results[0].Elsewhere)
	assert.Nil(t, c.Results[1].Elsewhere)
	assert.Equal(t, 1, c.Verdict.Use)
	assert.Greater(t, c.Results[0].Elsewhere.Chance, 0.95)
	assert.Less(t, c.Results[0].Chance(), 0.95)
	plain, err := Evaluate(context.Background(), p, p.Routes, quick)
	require.NoError(t, err)
	assert.Equal(t, plain.Verdict, c.Verdict)
	assert.Equal(t, plain.Results[0].Inside, c.Results[0].Inside)
	assert.Nil(t, plain.Results[0].Elsewhere, "nobody asked")
	taken := *p
	taken.Routes = []*Route{p.Routes[0].With(0, c.Results[0].Elsewhere.Amended.Amount), p.Routes[1]}
	c, err = Compare(context.Background(), &taken, "", quick)
	require.NoError(t, err)
	assert.Equal(t, policy.Name, c.Verdict.Choice.Fell[0], "once it is taken it is ranked by it, as good as the other in all but its name")
}

// The crossing of a falling and a rising strength, with readings that cannot be done on
// either side (constructed).
func TestCrossing(t *testing.T) {
	for _, c := range []struct {
		planned  float64
		most     int
		rising   bool
		from, to int // what can be done
		at       int // from here on it is too strong, or too weak where it falls
		wantLow  int
		wantHigh int
	}{
		{20, 100, true, 1, 100, 37, 36, 37},
		{20, 100, false, 1, 100, 37, 36, 37},
		{20, 100, true, 10, 30, 37, 30, 31},
		{20, 100, false, 10, 90, 5, 9, 10},
		{50, 100, true, 1, 100, 1000, 99, 100},
		{1, 1, true, 1, 1, 1, 1, 1},
	} {
		low, high := equipment.Crossing(c.planned, c.most, c.rising, func(n int) (yes, possible bool) {
			return (n >= c.at) == c.rising, c.from <= n && n <= c.to
		})
		assert.Equal(t, [2]int{c.wantLow, c.wantHigh}, [2]int{low, high}, "%+v", c)
	}
}
