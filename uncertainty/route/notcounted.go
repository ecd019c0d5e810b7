package route

import (
	"slices"
	"strings"

	"minim/equipment"
	"minim/uncertainty"
	"minim/uncertainty/mixed"
)

// What is not counted since nothing is known of it is named where it can matter.
const (
	// adsorbing in g/mL is 10 µg/mL: of a weaker solution walls may take up, and its solvent
	// bring, what counts (common practice, no source).
	adsorbing = 1e-5
	// tapWater in g/mL is 1 % w/v: tap water holds up to a gram of salts in a litre, and
	// what else it is treated with (common practice, no source).
	tapWater = 1e-2
)

// noteTraces names what walls take up of a solution of a concentration, and what its solvent
// holds itself.
func (c *compiler) noteTraces(concentration uncertainty.Node) {
	has, solvent := c.model.Intended(concentration), c.prep.Solvent.Name
	if !c.prep.CountsMass() || !(has > 0) {
		return
	}
	if has < adsorbing {
		c.notes.LeaveOut("adsorption", c.prep.Solute.Name)
	}
	tap := slices.Contains(strings.Fields(strings.ToLower(solvent)), "tap")
	if has < adsorbing || tap && has < tapWater {
		c.notes.LeaveOut("content-of-solvent", c.prep.Solute.Name, solvent)
	}
}

// notePlastic names what passes between an organic liquid and a measure of plastic.
func (c *compiler) notePlastic(k *equipment.Measure, l mixed.Liquid) {
	if k.MeetsPlastic() && l.Organic() {
		c.notes.LeaveOut("plastic-and-liquid", k.Name, l.Name)
	}
}

// noteWater names the water of a solid that is weighed.
func (c *compiler) noteWater() {
	if solid := c.prep.Solute.Weighed(); equipment.DrawsWater(solid) {
		c.notes.LeaveOut("water-of-solid", solid)
	}
}
