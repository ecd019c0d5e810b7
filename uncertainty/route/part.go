package route

import (
	"math"

	"minim/uncertainty"
	"minim/uncertainty/hazards"
)

// part is what a step brings to the solution that is being made, as intended.
type part struct {
	// ml is its volume; a solid counts 1 mL for each g, which is more than it takes up in
	// solution. grams is its mass, where it was weighed or is the solute itself.
	ml, grams float64
	// concentration in g/mL of a solution; nothing of it holds for solvent and for the
	// solute itself.
	concentration uncertainty.Node
	kind          partKind
	// foreign: its solvent is not that of the prep.
	foreign bool
}

type partKind int

const (
	partSolution partKind = iota
	partSolvent
	partSolid
	partLiquid // the solute itself, as a liquid
)

// brings notes what the step at hand brings.
func (c *compiler) brings(p part) { c.parts[c.at] = p }

// bringsSolid notes a mass in g of solute.
func (c *compiler) bringsSolid(grams float64) {
	c.brings(part{ml: grams, grams: grams, kind: partSolid})
}

// expected is the concentration of a part in g/mL, infinite for the solute itself.
func (c *compiler) expected(p part) float64 {
	switch p.kind {
	case partSolvent:
		return 0
	case partSolution:
		return c.model.Expected(p.concentration)
	}
	return math.Inf(1)
}

// HazardsAt are the words for a solution whose strength lies in an interval, in the unit of the
// target.
func (p *Prep) HazardsAt(lower, upper float64) hazards.OfSolution {
	h := hazards.At(p.Hazards, p.Solute.Hazards, lower, upper)
	h.Kind = hazards.StrongByName(p.Solute.Name, p.Solute.WeighedAs)
	h.StrongByName = h.Kind != "" && len(h.Solution) == 0 && len(h.Undiluted) > 0
	h.Vapour = p.vapourAt(upper)
	return h
}

// vapourAt is what a solution of a strength gives off, or the solute itself where that is infinite, of its assay.
func (p *Prep) vapourAt(strength float64) *hazards.Vapour {
	v := hazards.Vapours(p.Solute.Name)
	switch itself := math.IsInf(strength, 1); {
	case v == nil || itself && p.Solute.WeighedAs != "":
		return nil
	case itself && p.Solute.Assay.Known:
		return v.AtFraction(p.Solute.Assay.Value)
	case itself:
		return v.AtFraction(1)
	}
	return v.At(p.ConcentrationOf(strength), p.SoluteUnit() == "mol", p.Solute.As)
}

// hazardsOfPart are the words for what a step brings; for the solute itself those of every
// strength hold.
func (c *compiler) hazardsOfPart(p part) hazards.OfSolution {
	if p.kind == partSolution {
		return c.hazardsOf(p.concentration)
	}
	return c.prep.HazardsAt(math.Inf(1), math.Inf(1))
}

// hazardsOf are the words for a solution of a concentration in g/mL, which may lie anywhere
// in its coverage interval.
func (c *compiler) hazardsOf(concentration uncertainty.Node) hazards.OfSolution {
	for s, l := range c.stocks {
		if l.concentration == concentration {
			return c.hazardsOfStock(s, l, anyCoverage)
		}
	}
	if len(c.prep.Hazards) == 0 && hazards.Vapours(c.prep.Solute.Name) == nil {
		return c.prep.HazardsAt(0, 0) // the same words at any strength
	}
	a, err := c.mixed(concentration, anyCoverage)
	if err != nil { // nothing is known of it, so that every word may hold
		return c.prep.HazardsAt(0, math.Inf(1))
	}
	return c.prep.HazardsAt(c.prep.StrengthOf(max(0, a.Lower())), c.prep.StrengthOf(a.Upper()))
}

// hazardsOfStock are the words for the strength that a stock can have at most, which is
// without the loss; the lower end is with it.
func (c *compiler) hazardsOfStock(s *Stock, l *liquid, coverage float64) hazards.OfSolution {
	_, aged, _ := c.strengthOf(l, coverage)
	fresh, upper := *s, math.Inf(1)
	fresh.Loss = 0
	other := c.prep.newCompiler(&Route{})
	if l, err := other.stock(&fresh); err == nil {
		_, most, _ := other.strengthOf(l, coverage)
		_, upper = other.asStated(l, &fresh, coverage, 0, max(most.Upper, aged.Upper))
	}
	lower, upper := c.asStated(l, s, coverage, aged.Lower, upper)
	return c.prep.HazardsAt(lower, upper)
}

// leastWarming in g/mL is 1 % w/v. A weaker solution gave off its heat when it was made, and
// does not warm what it is diluted with so that one would have to cool it (common practice,
// no source).
const leastWarming = 0.01

// warms reports whether a part with hazards may warm what it goes into: all does that must go
// into the solvent, but a weak solution in the same solvent of which only nothing is stated.
func (c *compiler) warms(h hazards.OfSolution, p part) bool {
	if !h.IntoSolvent() || !h.Unknown() || p.kind != partSolution || p.foreign || !c.prep.CountsMass() {
		return h.IntoSolvent()
	}
	a, err := c.model.Propagate(p.concentration, anyCoverage)
	return err != nil || !(a.Upper() < leastWarming) || !(a.Mixed().Upper() < leastWarming)
}
