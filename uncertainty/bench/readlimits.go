package bench

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"minim/equipment/benchfile"
	"minim/equipment/quantity"
	"minim/uncertainty"
	"minim/uncertainty/route"
	"minim/uncertainty/tolerances"
)

// readLimits reads the table of a search, once the volume and the target are read.
func (p prepReader) readLimits(root *benchfile.Table) {
	t := root.Table("plan")
	l := route.Limits{
		Steps: t.Count("steps", 0), LeftOver: t.Positive("left-over", quantity.Volume), Volume: t.Positive("volume", quantity.Volume),
		Solute: t.Positive("solute", quantity.Mass), Strongest: p.readStrongest(t), Without: p.readWithout(t),
		Prefer: cmp.Or(t.Word("prefer", Preferences()...), p.Limits.Prefer),
	}
	switch {
	case !t.Has("steps"):
		l.Steps = p.Limits.Steps
	case l.Steps > MostSteps:
		t.Fail("steps", fmt.Sprintf("no more than %d dilutions are searched, found %d", MostSteps, l.Steps), "")
	}
	if l.Volume > 0 && l.Volume < p.Volume*(1-1e-9) {
		t.Fail("volume", "is less than the volume wanted, "+quantity.Millilitres(p.Volume), "it is the most that may be made in all")
	}
	solute := root.Table("solute")
	switch {
	case l.Prefer == route.Cheapest && solute != nil && !solute.Has("price") && !root.Table("solvent").Has("price"):
		t.FailFor(solute, []string{"price"}, "prefer", "neither the solute nor the solvent has a price", `state one in its table: price = "3.20 EUR/g"`)
	case l.Prefer == route.Cheapest && solute.Has("price"):
		failStrength(t, "prefer", p.NeedsMass(priceOfSolute))
	}
	if t.Has("solute") {
		failStrength(t, "solute", p.NeedsMass(ofMistake("a limit in grams"))) // by what turns strengths into masses
	}
	p.Limits = l
}

// readStrongest reads a strength that is at least that of the target, in g/mL.
func (p prepReader) readStrongest(t *benchfile.Table) float64 {
	s := p.strength(t, "strongest")
	if s.Value == 0 {
		return 0
	}
	if p.Target.Value > 0 && p.CanCompare(s) && p.InTargetUnit(s) < p.Target.Value*(1-1e-9) {
		t.Fail("strongest", fmt.Sprintf("is weaker than the target, %s", p.Target.Text), "")
	}
	return p.concentration(s)
}

// readWithout reads the names of instruments on the bench.
func (p prepReader) readWithout(t *benchfile.Table) []string {
	names := t.Texts("without")
	for _, name := range names {
		switch {
		case name == "" || p.withoutKit() || slices.Contains(p.Kit.Names(), name):
		case slices.Contains(p.Kit.Candidates.Names(), name):
			t.Fail("without", fmt.Sprintf("the %s is a candidate and not on the bench", name), "leave it out of the list")
		default:
			t.FailWith("without", benchfile.NoSuch(instrumentInKit, name, p.Kit.Names()))
		}
	}
	return names
}

// readLadder reads the strengths and the two instruments of a ladder.
func (p prepReader) readLadder(t *benchfile.Table) *route.Ladder {
	texts := t.Texts("ladder")
	t.Text("ladder-with")
	t.Text("ladder-in")
	if !t.Has("ladder") {
		return nil
	}
	for _, key := range []string{"ladder-with", "ladder-in"} {
		if !t.Has(key) {
			t.FailFor(t, []string{key}, "ladder", "nothing says what the rungs are measured with and made up in", "write ladder-with = \"1 mL pipette\" and ladder-in = \"10 mL flask\", by their names in the kit")
			return nil
		}
	}
	l := &route.Ladder{With: p.findMeasure(t, "ladder-with", route.Take), In: p.findMeasure(t, "ladder-in", route.MakeUpTo)}
	for _, text := range texts {
		s, err := p.ParseStrength(text)
		switch {
		case text == "":
			return nil
		case err != nil:
			failStrength(t, "ladder", err)
			return nil
		case p.Target.Value > 0 && p.InTargetUnit(s) >= p.Target.Value:
			t.Fail("ladder", fmt.Sprintf("%s is not weaker than the target it is made from", text), "")
			return nil
		}
		l.Strengths = append(l.Strengths, s)
	}
	if l.With != nil && l.With.Kind.Traits().Counts {
		t.Fail("ladder-with", "a ladder is not made by the drop", "use a pipette or a cylinder")
	}
	return l
}

// readTolerances reads `tolerance`, one text or several, or the one-sided
// `not-above` and `not-below`.
func (p prepReader) readTolerances(t *benchfile.Table) []route.Tolerance {
	if t.Has("not-above") || t.Has("not-below") {
		return p.readOneSided(t)
	}
	var list []route.Tolerance
	texts := t.Texts("tolerance")
	if t.Has("tolerance") && len(texts) == 0 {
		t.Fail("tolerance", "the list of tolerances is empty", "leave tolerance out, or write \"8 % of target\"")
	}
	for _, text := range texts {
		if text == "" {
			return nil
		}
		tolerance, err := tolerances.Parse(p.Prep, text)
		if err != nil {
			failStrength(t, "tolerance", err)
			return nil
		}
		list = append(list, tolerance)
	}
	return list
}

func (p prepReader) readOneSided(t *benchfile.Table) []route.Tolerance {
	if t.Has("tolerance") {
		t.Fail("tolerance", "a tolerance and a one-sided limit are both stated", "state tolerance, or not-above and not-below")
	}
	tol := route.Tolerance{Stated: true, Limits: uncertainty.Limits{Lower: math.Inf(-1), Upper: math.Inf(1)}}
	const rounding = 1e-9 // of the conversion from another unit
	var said []string
	for _, side := range []struct {
		key   string
		limit *float64
	}{{"not-below", &tol.Limits.Lower}, {"not-above", &tol.Limits.Upper}} {
		if s := p.strength(t, side.key); p.CanCompare(s) {
			*side.limit = p.InTargetUnit(s)
			said = append(said, strings.ReplaceAll(side.key, "-", " ")+" "+s.Text)
		}
	}
	tol.Text = strings.Join(said, ", ")
	switch {
	case tol.Limits.Lower >= tol.Limits.Upper:
		t.Fail("not-above", "the upper limit is not above the lower", "")
	case tolerances.TooNarrow(p.Prep, tol.Text, tol.Limits) != nil:
		t.FailWith("not-above", tolerances.TooNarrow(p.Prep, tol.Text, tol.Limits))
	case p.Target.Value > tol.Limits.Upper*(1+rounding):
		t.Fail("not-above", fmt.Sprintf("the target, %s, is above it", p.Target.Text), "")
	case p.Target.Value < tol.Limits.Lower*(1-rounding):
		t.Fail("not-below", fmt.Sprintf("the target, %s, is below it", p.Target.Text), "")
	}
	return []route.Tolerance{tol}
}

// readLeastChance reads the chance of being inside that is asked for.
func (p prepReader) readLeastChance(t *benchfile.Table) {
	if !t.Has("least-chance") {
		return
	}
	p.LeastChance = t.Positive("least-chance", quantity.Share)
	if p.LeastChance >= 1 {
		t.Fail("least-chance", "a chance of 100 % cannot be promised", "write \"95 %\"")
	}
}

// MostSteps is the greatest number of dilutions that a search may be asked for.
const MostSteps = 5

// Preferences lists those by which a search may recommend, the usual one first.
func Preferences() []string {
	return []string{route.Usual, route.LeastLeftOver, route.Tightest, route.Fewest, route.LeastSolute, route.Cheapest}
}
