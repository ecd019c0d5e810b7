package purchase

import (
	"context"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"minim/uncertainty/route"
	"minim/uncertainty/smallbench"
)

// No balance is worth buying for a route that puts more on it than it carries, vessel and all
// (constructed): 30 g in glass are too much for one that carries 50 g, in plastic they are not.
func TestBuyKeepsToWhatBalancesCarry(t *testing.T) {
	smallbench.SkipIfSlow(t)
	const prep = "target = \"0.2 % w/v\"\nvolume = \"30 mL\"\ntolerance = \"8 % of target\"\n[solute]\nname = \"x\"\n[solvent]\nname = \"water\"\n"
	const kit = "[[balance]]\nname = \"scale\"\ncapacity = \"100 g\"\nreadability = \"0.01 g\"\n[[balance]]\nname = \"small\"\ncapacity = \"50 g\"\nreadability = \"0.01 g\"\n"
	const vessel = "[[jar]]\nname = \"jar\"\nline = \"79 mL\"\ntolerance = \"9 mL\"\n"
	for material, byWeight := range map[string]bool{"": false, "material = \"polypropylene\"\n": true} {
		bought, err := Buy(context.Background(), smallbench.On(t, prep, kit+vessel+material), quick(1))
		require.NoError(t, err)
		small := &bought.Choices[1]
		assert.Equal(t, byWeight, small.Found && small.Best.Route.Steps[len(small.Best.Route.Steps)-1].Verb == route.WeighUpTo)
	}
}

// The best route with each choice is simulated with all the trials that are asked for.
func TestChoicesAreSimulatedInFull(t *testing.T) {
	smallbench.SkipIfSlow(t)
	o := quick(1)
	o.Settings.Trials = 200_000
	b, err := Buy(context.Background(), smallbench.On(t, smallbench.Prep, smallbench.Kit+smallbench.Candidates), o)
	require.NoError(t, err)
	for _, choice := range b.Choices {
		if choice.Found {
			assert.Equal(t, o.Settings.Trials, choice.Best.MonteCarlo.Trials, choice.Name)
		}
	}
}

// The least masses of a purchase: USP <41> asks for 2000 s whatever the tolerance is, 2 s
// within 8 % are 25 s (constructed).
func TestLeastMassesOfChoices(t *testing.T) {
	smallbench.SkipIfSlow(t)
	const kit = "[[balance]]\nname = \"scale\"\ncapacity = \"100 g\"\nreadability = \"0.01 g\"\nrepeatability = \"0.01 g\"\n" +
		"[[balance]]\nname = \"small\"\ncapacity = \"19 g\"\nreadability = \"0.01 g\"\nrepeatability = \"0.01 g\"\n[[cylinder]]\nname = \"c\"\ncapacity = \"25 mL\"\nclass = \"B\"\n"
	const prep = "target = \"2 % w/v\"\nvolume = \"20 mL\"\n[solute]\nname = \"x\"\n[solvent]\nname = \"water\"\n"
	bought, err := Buy(context.Background(), smallbench.On(t, "tolerance = \"8 % of target\"\n"+prep, kit), quick(0))
	require.NoError(t, err)
	assert.InDelta(t, 20.0, bought.Choices[0].LeastByUSP, 1e-9)
	assert.InDelta(t, 0.25, bought.Choices[0].LeastWithin, 1e-9)
	assert.Zero(t, bought.Choices[1].LeastByUSP, "it carries less")
	assert.InDelta(t, 0.25, bought.Choices[1].LeastWithin, 1e-9)
	bought, err = Buy(context.Background(), smallbench.On(t, prep, kit), quick(0))
	require.NoError(t, err)
	assert.InDelta(t, 20.0, bought.Choices[0].LeastByUSP, 1e-9, "it is no matter of the tolerance")
	assert.Zero(t, bought.Choices[0].LeastWithin)
}

// TestBuyWithoutBalance: a bench without a balance is an option as it stands.
func TestBuyWithoutBalance(t *testing.T) {
	smallbench.SkipIfSlow(t)
	kit := smallbench.Kit[len("\n[[balance]]\nname = \"scale\"\ncapacity = \"100 g\"\nreadability = \"0.01 g\"\nrepeatability = \"0.01 g\"\nlinearity = \"0.02 g\"\n"):]
	p := smallbench.On(t, "target = \"0.5 % w/v\"\ntolerance = \"10 % of target\"\n"+smallbench.PacketPrep, kit+smallbench.Candidates)
	b, err := Buy(context.Background(), p, quick(2))
	require.NoError(t, err)
	require.Equal(t, 0, b.Verdict.Present)
	assert.Equal(t, asItIs, b.Choices[0].Name)
	assert.Equal(t, true, b.Choices[0].Meets)
	assert.Nil(t, b.Like)
}
