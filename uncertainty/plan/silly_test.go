package plan

import (
	"math"
	"testing"

	"minim/uncertainty/smallbench"

	"github.com/stretchr/testify/assert"
)

// TestOneSidedTolerance: far more than a least strength is not what is wanted, though
// it is surely not below it (constructed).
func TestOneSidedTolerance(t *testing.T) {
	p := smallbench.On(t, "target = \"0.5 % w/v\"\nnot-below = \"0.48 % w/v\"\n"+smallbench.PacketPrep, smallbench.Kit)
	for _, m := range searched(t, p, quick(2)).Front {
		assert.Less(t, math.Abs(m.Analytic.Value-0.5), 0.05*1.001, m.Route.Name)
	}
}

// TestSolubility: no solution on the way is stronger than may be made; a stock that is
// stronger may be used (constructed).
func TestSolubility(t *testing.T) {
	p := smallbench.On(t, "target = \"0.5 % w/v\"\ntolerance = \"10 % of target\"\n"+smallbench.PacketPrep, smallbench.Kit)
	o := quick(2)
	o.Strongest = 0.03
	fromStock := false
	for _, m := range searched(t, p, o).Front {
		steps := m.Route.Steps
		fromStock = fromStock || steps[0].Stock != nil
		if steps[0].Packet != nil {
			assert.GreaterOrEqual(t, steps[1].Amount, 1/0.03*0.999, m.Route.Name)
		}
	}
	assert.Equal(t, true, fromStock)
}

// TestVolumeThatCouldBeNothing: no route uses a volume that is so badly known that it
// could be nothing (constructed).
func TestVolumeThatCouldBeNothing(t *testing.T) {
	p := smallbench.On(t, smallbench.Prep, smallbench.Kit+`
[[beaker]]
name = "beaker"
capacity = "50 mL"
division = "10 mL"
tolerance = "20 mL"
`)
	for _, m := range searched(t, p, quick(1)).Front {
		assert.Equal(t, true, m.Possible && m.Informative, m.Route.Name)
		for _, s := range m.Route.Steps {
			if s.Measure != nil && s.Measure.Name == "beaker" {
				assert.Greater(t, s.Amount, 19.9, m.Route.Name)
			}
		}
	}
}
