package plan

import (
	"context"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"minim/uncertainty/smallbench"
)

// No search weighs, measures or empties from a packet what is a gas, stated or by its name, nor weighs out what is had as a
// solution alone; from a stock of it routes are found, and without one the gas is the reason (constructed).
func TestNoGasIsTakenOut(t *testing.T) {
	smallbench.SkipIfSlow(t)
	const rest = "volume = \"20 mL\"\ntolerance = \"15 % of target\"\n[solvent]\nname = \"water\"\n[solute]\nhazards = [\"none known\"]\ndensity = \"1 g/mL\"\n"
	const packet = "[[packet]]\nname = \"packet\"\ncontent = \"0.2 g\"\n"
	const measured = "[[route]]\nname = \"measured\"\nsteps = [ { measure = \"1 mL\", with = \"pipette\" }, { make-up-to = \"20 mL\", in = \"cylinder\" } ]\n"
	for solute, packets := range map[string]bool{"name = \"butane\"\n": false, "name = \"x\"\nstate = \"gas\"\n": false, "name = \"ammonia\"\n": true} {
		for target, strong := range map[string]string{"target = \"1 % w/v\"\n": "10 % w/v", "target = \"1 % v/v\"\n": "10 % v/v"} {
			text := target + rest + solute + "[[stock]]\nname = \"stock\"\nstrength = \"" + strong + "\"\n" + packet + measured
			found, err := Search(context.Background(), smallbench.On(t, text, smallbench.Kit), quick(1))
			require.NoError(t, err, text)
			for _, m := range found.Front {
				first := m.Route.Steps[0].Verb.Traits()
				assert.False(t, first.BringsSolute && (!packets || first.WeighsSolute), "%s: %s", solute, m.Route.Name)
			}
			assert.NotEmpty(t, found.Front, solute)
		}
		_, err := Search(context.Background(), smallbench.On(t, "target = \"1 % w/v\"\n"+rest+solute, smallbench.Kit), quick(1))
		var none *NoRouteError
		require.ErrorAs(t, err, &none)
		assert.Equal(t, !packets, none.Reason.Code == "is-gas", solute)
	}
}
