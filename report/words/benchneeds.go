package words

import (
	"fmt"
	"slices"
	"strings"

	"minim/equipment/quantity"
	"minim/report/page"
	"minim/report/words/verb"
	"minim/uncertainty"
	"minim/uncertainty/route"
)

// needs lists materials, instruments and bottles.
func (p *Paper) needs() []page.Fact {
	q, b := p.Prep, newSheetBench(p)
	var list []page.Fact
	if amount := soluteNeeded(p.route()); amount != "" {
		list = append(list, page.Fact{q.Solute.Weighed(), amount + b.toSpare() + when(q.Solute.Assay.Known, ", "+assayWords(q))})
	}
	seen := make(map[*route.Stock]bool)
	for _, s := range p.route().Steps {
		switch {
		case s.Stock != nil && seen[s.Stock]:
		case s.Stock != nil:
			seen[s.Stock] = true
			list = append(list, page.Fact{s.Stock.Name, fmt.Sprintf("a stock of %s %s", quantity.Number(s.Stock.Strength.Value), s.Stock.Unit.Name)})
		case s.Packet != nil:
			list = append(list, page.Fact{s.Packet.Name, "a packet of " + q.Solute.Weighed()})
		}
	}
	list = append(list, page.Fact{q.Solvent.Name, "about " + volume(b.solventNeeded()) + ", and some for rinsing"},
		page.Fact{"instruments", strings.Join(p.instrumentNames(), ", ")})
	var bottles []string
	for i, n := range b.bottle {
		if n == 0 {
			continue
		}
		holds := b.solutions[n-1].MadeML
		if b.order(i).Gas {
			holds *= 2 // it is swirled there, open
		}
		bottles = append(bottles, fmt.Sprintf("%d: about %s %s (holds at least %s%s)", n, quantity.Decimal(p.prep().StrengthOf(b.solutions[n-1].Concentration), 2), q.Target.Unit.Name, volume(holds), verb.EmptyMost(&b.route.Steps[i], false)))
	}
	return append(list, page.Fact{"bottles", "dry, with " + b.caps() + ", labelled " + p.bottlesLabelled() + ", and " + strings.Join(bottles, "; ")}, page.Fact{"besides", p.besides()})
}

// bottlesLabelled says what stands on the bottles: each may hold other liquids where a stock
// is in another one.
func (p *Paper) bottlesLabelled() string {
	if all := handled(p.prep(), p.result()); slices.ContainsFunc(all, func(h route.Handled) bool { return h.Last && len(h.Solvents) > 1 }) {
		return "with what is in each and its hazards"
	}
	return labelled(p.prep()) + " with its hazards"
}

// firstUses calls look with each instrument of the route, by its name, and the step that is
// the first to use it.
func (p *Paper) firstUses(look func(name string, s *route.Step)) {
	seen := make(map[string]bool)
	for i := range p.route().Steps {
		s := &p.route().Steps[i]
		if name := instrument(s); name != "" && !seen[name] {
			seen[name] = true
			look(name, s)
		}
	}
}

// instrumentNames are the instruments of the route, each once, with what kind they are.
func (p *Paper) instrumentNames() (names []string) {
	p.firstUses(func(name string, s *route.Step) {
		if s.Measure != nil && s.Measure.Kind.Traits().EitherMark {
			name += either(s.Measure.Division == 0, " (one mark)", " (graduated)")
		}
		names = append(names, name)
	})
	return names
}

// soluteNeeded is what is weighed of the solute, or measured as a liquid; "" for none.
func soluteNeeded(r *route.Route) string {
	mass, liquid := 0.0, []string(nil)
	for i := range r.Steps {
		switch s := &r.Steps[i]; {
		case s.Verb.Traits().WeighsSolute:
			mass += s.Amount
		case s.Verb.Traits().BringsSolute && s.Measure != nil:
			liquid = append(liquid, measured(s))
		}
	}
	if mass > 0 {
		liquid = append([]string{grams(mass)}, liquid...)
	}
	return strings.Join(liquid, " and ")
}

// solventNeeded is in mL what is added of the solvent: what was made, less what went into
// it of other solutions and liquids.
func (b *sheetBench) solventNeeded() (mL float64) {
	for _, s := range b.solutions {
		mL += s.MadeML
	}
	for i := range b.route.Steps {
		s := &b.route.Steps[i]
		switch {
		case s.Verb.Traits().FromSolution && s.Balance != nil:
			mL -= s.Amount / max(0.5, b.prep().Solvent.Density.Value)
		case s.Verb == route.TakeAll:
			if n := b.before(i); n > 0 {
				mL -= b.solutions[n-1].MadeML
			}
		case s.Measure != nil && s.Rises() && !s.Measure.Kind.Traits().Counts:
			mL -= s.Amount
		}
	}
	return max(0, mL)
}

// before is the number of the last bottle made before a step, 0 for none.
func (b *sheetBench) before(i int) int {
	for i--; i >= 0; i-- {
		if b.bottle[i] > 0 {
			return b.bottle[i]
		}
	}
	return 0
}

// assayWords are "assay 98 %", or from where to where it lies; "" where it is not known.
func assayWords(q *route.Prep) string {
	a := q.Solute.Assay
	if a.Distribution != nil {
		if s := uncertainty.SummaryOf(a.Distribution); a.Known && s.Low > 0 && s.High < 2 {
			return fmt.Sprintf("assay %s to %s %%", quantity.Number(100*s.Low), quantity.Number(100*s.High))
		}
	}
	return when(a.Known, "assay "+quantity.Number(100*a.Value)+" %")
}

// besides is what no kit lists.
func (p *Paper) besides() string {
	b, steps := newSheetBench(p), p.route().Steps
	any := func(has func(s route.Step) bool) bool { return slices.ContainsFunc(steps, has) }
	var parts clauses
	parts.Add(any(func(s route.Step) bool { return s.Verb.Traits().WeighsSolute }) && !p.Prep.Solute.Fluid(), "a spatula")
	if b.weighsOnBoat() {
		parts = append(parts, either(p.Prep.Solute.Fluid(), "a small dry beaker to weigh in", "a weighing boat"), "a funnel or a glass rod")
	}
	parts.Add(any(func(s route.Step) bool { return s.Measure != nil && s.Measure.Kind.Traits().Filler }), "a pipette filler")
	parts.Add(p.Prep.Bench.Temperature.Known, "a thermometer")
	parts = append(parts, b.extras()...)
	parts = append(parts, "two droppers", b.toDrop(), "tissue", "pen and labels", "gloves", "goggles", "a waste for each left-over"+when(b.bringsSolid(), " and for solids"))
	return quantity.Series(parts, "and")
}
