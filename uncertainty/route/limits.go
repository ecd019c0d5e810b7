package route

import (
	"fmt"
	"slices"

	"minim/equipment"
	"minim/equipment/benchfile"
	"minim/equipment/quantity"
)

// Limits of a search for routes. Zero means no limit, or the default.
type Limits struct {
	// Steps is the greatest number of dilutions; -1 when not stated.
	Steps int
	// LeftOver is the most that may be left over, Volume the most that may be made
	// in all, in mL.
	LeftOver, Volume float64
	// Solute is the most that may be used, in g.
	Solute float64
	// Strongest is the concentration of the strongest solution that may be made, in
	// g/mL.
	Strongest float64
	// Without names the instruments that are not to be used.
	Without []string
	// Prefer is the policy of the recommendation.
	Prefer string
}

// mostDilutions that a search may be asked for.
const mostDilutions = 5

// cheapest is the policy that needs prices.
const cheapest = "cheapest"

// Preferences lists the words for the policy of a recommendation.
func Preferences() []string {
	return []string{"least-left-over", "tightest", "fewest", "least-solute", cheapest}
}

// readLimits reads the table of a search, once the volume and the target are read.
func (p *Prep) readLimits(root *benchfile.Table) Limits {
	t := root.Table("plan")
	l := Limits{
		Steps:     t.Count("steps", 0),
		LeftOver:  t.Positive("left-over", quantity.Volume),
		Volume:    t.Positive("volume", quantity.Volume),
		Solute:    t.Positive("solute", quantity.Mass),
		Strongest: p.readStrongest(t),
		Without:   p.readWithout(t),
		Prefer:    t.Word("prefer", Preferences()...),
	}
	switch {
	case !t.Has("steps"):
		l.Steps = -1
	case l.Steps > mostDilutions:
		t.Fail("steps", fmt.Sprintf("no more than %d dilutions are searched, found %d", mostDilutions, l.Steps), "")
	}
	if l.Volume > 0 && l.Volume < p.Volume*(1-1e-9) {
		t.Fail("volume", "is less than the volume wanted, "+equipment.Millilitres(p.Volume), "it is the most that may be made in all")
	}
	if l.Prefer == cheapest && !root.Table("solute").Has("price") && !root.Table("solvent").Has("price") {
		t.Fail("prefer", "neither the solute nor the solvent has a price", `state one in its table: price = "3.20 EUR/g"`)
	}
	return l
}

// readStrongest reads a strength that is at least that of the target, in g/mL.
func (p *Prep) readStrongest(t *benchfile.Table) float64 {
	s := p.strength(t, "strongest")
	if s.Value == 0 {
		return 0
	}
	if p.Target.Value > 0 && p.inTargetUnit(s) < p.Target.Value*(1-1e-9) {
		t.Fail("strongest", fmt.Sprintf("is weaker than the target, %s", p.Target.Text), "")
	}
	concentration, _ := p.gramsPerML(s) // that it can be converted, strength has seen
	return concentration
}

// readWithout reads the names of instruments on the bench.
func (p *Prep) readWithout(t *benchfile.Table) []string {
	names := t.Texts("without")
	for _, name := range names {
		switch {
		case name == "" || slices.Contains(p.Kit.Names(), name):
		case slices.Contains(p.Kit.Candidates.Names(), name):
			t.Fail("without", fmt.Sprintf("the %s is a candidate and not on the bench", name), "leave it out of the list")
		default:
			t.FailChoice("without", "instrument in the kit", name, p.Kit.Names(), "")
		}
	}
	return names
}
