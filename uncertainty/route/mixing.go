package route

import (
	"fmt"

	"minim/equipment"
	"minim/uncertainty"
)

// alcohol is the volume fraction of ethanol in liquids that are ethanol and
// water.
var alcohol = map[string]float64{"water": 0, "ethanol": 1, "ethanol 96 %": 0.96}

// knownMixture reports whether the contraction of a liquid with the solvent of
// the prep can be computed.
func (p *Prep) knownMixture(liquid string) bool {
	_, first := alcohol[liquid]
	_, second := alcohol[p.Solvent.Name]
	return first && second
}

// contracted appends the volume (a + b)(1 - ε) of a liquid mixed with a volume b
// of the solvent. ε is 0 for one and the same liquid, what the step states, or
// for ethanol and water that of OIML R 22 at the intended volumes.
func (c *compiler) contracted(i int, a, b uncertainty.Node, liquid string) uncertainty.Node {
	m, p := c.model, c.prep
	sum := m.Add(a, b)
	epsilon := c.route.Steps[i].Contraction.Value
	switch {
	case c.route.Steps[i].Contraction.Known || liquid == p.Solvent.Name:
	case p.knownMixture(liquid):
		epsilon = equipment.AlcoholContraction(m.Intended(a), alcohol[liquid], m.Intended(b), alcohol[p.Solvent.Name])
		c.notes.Assume(fmt.Sprintf("%s and %s mix with a contraction of %s %% (OIML R 22, solute left out)", liquid, p.Solvent.Name, short(100*epsilon)))
	default:
		c.notes.LeaveOut(fmt.Sprintf("contraction on mixing %s and %s (not stated)", liquid, p.Solvent.Name))
	}
	if epsilon == 0 {
		return sum
	}
	return m.Multiply(sum, m.Constant(1-epsilon))
}
