package rescue

import (
	"context"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"minim/uncertainty"
	"minim/uncertainty/route"
	"minim/uncertainty/smallbench"
)

// edgeRescue is what can be done with a bottle that is too weak, on an invented bench, when
// so much is asked for.
func edgeRescue(t *testing.T, least float64) *Rescue {
	t.Helper()
	p := smallbench.On(t, `target = "1 g/L"
volume = "30 mL"
tolerance = "1.5 % of target"
[solute]
name = "exemplate"
[solvent]
name = "water"
[[stock]]
name = "strong"
strength = "50 g/L"
`, "shape = \"rectangular\"\n"+syringeKit)
	p.LeastChance = least
	bottle, err := Bottle(p, "0.9 g/L, give or take 0.011 g/L, 30 mL")
	require.NoError(t, err)
	found, err := Find(context.Background(), p, &route.Route{Name: "bottle", Steps: []route.Step{{Verb: route.Start, Stock: bottle}}}, uncertainty.Settings{Trials: 100_000, Seed: 1})
	require.NoError(t, err)
	return found
}

// What is said of a way and of the batch as it is goes by simulated chances, on a knife's
// edge as well: where the normal approximation says good enough and the simulation does
// not, or the other way round, the search does not stop at that way.
func TestRescueOnAKnifesEdge(t *testing.T) {
	used := edgeRescue(t, 0.5)
	chance := used.used().Inside[0]
	require.NotEqual(t, chance.Normal, chance.Simulated)
	easy := used.Tried
	for name, least := range map[string]float64{"between the two": (chance.Normal + chance.Simulated) / 2, "at the simulated one": chance.Simulated} {
		found := edgeRescue(t, least)
		assert.Equal(t, found.used().Chance() >= least, found.Verdict.Meets, name)
		if !found.Verdict.Meets {
			assert.Greater(t, found.Tried, easy, "%s: all is tried before it is said that none is good enough", name)
		}
	}
}

// The chance of the batch as it is, is that which a comparison gives of it.
func TestRescueSimulatesTheBatchAsItIs(t *testing.T) {
	found := edgeRescue(t, 0.95)
	c, err := route.Evaluate(context.Background(), found.Prep, []*route.Route{found.Batch.Route}, found.Settings)
	require.NoError(t, err)
	assert.Equal(t, c.Results[0].Chance(), found.Batch.Chance())
	assert.Equal(t, c.Results[0].Quoted, found.Batch.Quoted)
}
