package route

import (
	"fmt"
	"slices"

	"minim/equipment/benchfile"
	"minim/equipment/quantity"
)

// Limits of a search for routes. Zero means no limit, but for Steps.
type Limits struct {
	// Steps is the greatest number of dilutions.
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

// DefaultSteps is the greatest number of dilutions of a search unless stated
// otherwise, and MostSteps the greatest that it may be asked for.
const (
	DefaultSteps = 3
	MostSteps    = 5
)

// The preferences by which a search recommends one route. Each chooses among the
// routes whose chance of being inside reaches what is asked for; where none does, the
// greatest chance decides. The first goes unless another is stated.
const (
	LeastLeftOver = "least-left-over" // nearest the target, where there is no tolerance
	Tightest      = "tightest"        // least relative expanded uncertainty
	Fewest        = "fewest"          // operations
	LeastSolute   = "least-solute"
	Cheapest      = "cheapest" // by the prices that the prep states
)

// Preferences lists them.
func Preferences() []string {
	return []string{LeastLeftOver, Tightest, Fewest, LeastSolute, Cheapest}
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
		l.Steps = DefaultSteps
	case l.Steps > MostSteps:
		t.Fail("steps", fmt.Sprintf("no more than %d dilutions are searched, found %d", MostSteps, l.Steps), "")
	}
	if l.Prefer == "" {
		l.Prefer = LeastLeftOver
	}
	if l.Volume > 0 && l.Volume < p.Volume*(1-1e-9) {
		t.Fail("volume", "is less than the volume wanted, "+quantity.Millilitres(p.Volume), "it is the most that may be made in all")
	}
	solute := root.Table("solute")
	switch {
	case l.Prefer == Cheapest && solute != nil && !solute.Has("price") && !root.Table("solvent").Has("price"):
		t.FailFor(solute, []string{"price"}, "prefer", "neither the solute nor the solvent has a price", `state one in its table: price = "3.20 EUR/g"`)
	case l.Prefer == Cheapest && solute.Has("price"):
		p.needMass(t, "prefer", "the price of the solute")
	}
	if t.Has("solute") {
		p.needMass(t, "solute", "a limit in grams")
	}
	return l
}

// needMass refuses what is stated by mass where the prep does not say what turns its
// strengths into masses.
func (p *Prep) needMass(t *benchfile.Table, key, what string) {
	if !p.CountsMass() {
		failStrength(t, key, p.lacks(what, "", &bases[p.own].needs))
	}
}

// readStrongest reads a strength that is at least that of the target, in g/mL.
func (p *Prep) readStrongest(t *benchfile.Table) float64 {
	s := p.strength(t, "strongest")
	if s.Value == 0 {
		return 0
	}
	if p.Target.Value > 0 && p.canCompare(s) && p.inTargetUnit(s) < p.Target.Value*(1-1e-9) {
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
		case name == "" || p.withoutKit() || slices.Contains(p.Kit.Names(), name):
		case slices.Contains(p.Kit.Candidates.Names(), name):
			t.Fail("without", fmt.Sprintf("the %s is a candidate and not on the bench", name), "leave it out of the list")
		default:
			t.FailChoice("without", "instrument in the kit", name, p.Kit.Names(), "")
		}
	}
	return names
}
