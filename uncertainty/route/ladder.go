package route

import (
	"minim/equipment"
	"minim/report/words/note"
	"minim/uncertainty"
	"minim/uncertainty/hazards"
	"minim/uncertainty/mixed"
	"minim/uncertainty/strengths"
)

// Ladder is a series of strengths, each made from the solution that a route
// ends in: an aliquot of it made up to the mark of one vessel.
type Ladder struct {
	Strengths []strengths.Strength
	// With measures the aliquots, In is the vessel, filled to its capacity.
	With, In *equipment.Measure
}

// Rung is one strength of a ladder. Its aliquot is the share of the vessel that
// the rung is of the target.
type Rung struct {
	Strength strengths.Strength
	// TakeML is the aliquot in mL.
	TakeML float64
	// Reason says why the bench cannot do it; nothing when it can.
	Reason note.Note
	// Uninformative says that its strength could be nothing; nothing where it could not.
	Uninformative note.Note
	// Analytic is the strength of the rung, in the unit of the target.
	Analytic uncertainty.Analytic
	// Hazards are the words for its strength. IntoSolvent: the aliquot goes into the solvent;
	// Bath and Gas are as in [Order].
	Hazards                hazards.OfSolution
	IntoSolvent, Bath, Gas bool
	// Ratio is this strength over that of the rung before, of which the stock
	// that both come from cancels; nil for the first, where one of the two cannot be
	// done, and where the one before could be nothing.
	Ratio *uncertainty.Analytic
}

// aliquot is the volume that a rung takes.
func (p *Prep) aliquot(s strengths.Strength) float64 {
	return p.Ladder.In.Capacity * p.InTargetUnit(s) / p.Target.Value
}

// rungsOf makes a model of a route for its ladder alone, and evaluates that.
func (p *Prep) rungsOf(r *Route, coverage float64) ([]Rung, error) {
	if p.Ladder == nil {
		return nil, nil
	}
	c, err := p.compile(r)
	if err != nil {
		return nil, err
	}
	return c.rungs(coverage)
}

// rungs appends the rungs to the model of a finished route and evaluates them.
func (c *compiler) rungs(coverage float64) ([]Rung, error) {
	l := c.prep.Ladder
	if l == nil {
		return nil, nil
	}
	from := c.model.Constant(0) // what comes after is not known otherwise yet
	var rungs []Rung
	var before *uncertainty.Node
	for i, s := range l.Strengths {
		rung := Rung{Strength: s, TakeML: c.prep.aliquot(s)}
		node, err := c.rung(i, rung.TakeML)
		switch reason, no := equipment.WhyNot(err); {
		case no:
			rung.Reason, before = reason, nil
			rungs = append(rungs, rung)
			continue
		case err != nil:
			return nil, err
		}
		if _, err := c.model.Change(from, c.prep.Known); err != nil {
			return nil, err
		}
		from = node
		if rung.Analytic, err = c.mixed(node, coverage); err != nil {
			return nil, err
		}
		rung.Uninformative = couldBeNothing(rung.Analytic.Lower(), rung.Analytic.Upper(), c.prep.Target.Unit)
		c.arrangeRung(&rung)
		if before != nil {
			ratio, err := c.mixed(c.model.Divide(node, *before), coverage)
			switch {
			case err == nil:
				rung.Ratio = &ratio
			case withoutResult(err).None():
				return nil, err
			}
		}
		before = &node
		rungs = append(rungs, rung)
	}
	return rungs, nil
}

// rung takes the aliquot a from what is left and appends c = stock · a / V in
// the unit of the target.
func (c *compiler) rung(i int, take float64) (uncertainty.Node, error) {
	l, m := c.prep.Ladder, c.model
	whole := l.In.Capacity
	of, in := c.rungUse(i, l.With), c.rungUse(i, l.In)
	of.Day = c.dayOf(c.current.medium)
	of.Emptying = l.With.AsMeant(take)
	a, err := l.With.Deliver(of, take)
	if err != nil {
		return 0, err
	}
	made := c.current.medium
	if take < whole {
		made = made.UpTo(take, c.solvent, whole)
		in.Day = c.dayOf(made)
	}
	v, err := l.In.Contain(in, whole)
	if err != nil {
		return 0, err
	}
	if v, err = c.leftOfRung(i, v, made); err != nil {
		return 0, err
	}
	if err := c.draw(c.current, a, take, 0); err != nil {
		return 0, err
	}
	c.call(v, volumeInVessel, l.In.Name, "mL")
	concentration := m.Divide(m.Multiply(c.current.concentration, a), v)
	c.noteTraces(concentration)
	return c.toUnit(&liquid{concentration: concentration, medium: c.current.medium}, c.prep.Target.Unit)
}

// leftOfRung is what is left of a rung as of any solution that is made up to a mark.
func (c *compiler) leftOfRung(i int, v uncertainty.Node, made mixed.Liquid) (uncertainty.Node, error) {
	mouth, closes := c.prep.Ladder.In.Mouth(c.prep.Ladder.In.Capacity)
	if closes || c.prep.Bench.Closed {
		return v, nil
	}
	return c.standsOpen(standing{
		owner: c.owner(uncertainty.Rung, i+1), amount: equipment.ML(c.prep.Ladder.In.Capacity), where: note.Of("in-vessel", c.prep.Ladder.In.Name), minutes: MakeUpTo.Traits().open,
		mouth: mouth, liquid: made, grams: c.prep.Ladder.In.Capacity * c.likelyDensity(made),
	}, v)
}

// arrangeRung finds the words that hold for a rung, and what goes first in it.
func (c *compiler) arrangeRung(r *Rung) {
	of, whole := c.hazardsOf(c.current.concentration), c.prep.Ladder.In.Capacity
	solvent := hazards.OfSolution{Solution: c.prep.Solvent.Hazards}
	r.Hazards = c.prep.HazardsAt(r.Analytic.Lower(), r.Analytic.Upper())
	r.IntoSolvent = of.IntoSolvent()
	r.Gas = of.GivesOffGas() || r.Hazards.GivesOffGas() || solvent.GivesOffGas()
	aliquot := part{ml: r.TakeML, concentration: c.current.concentration}
	r.Bath = c.warms(of, aliquot) && r.TakeML > whole/4*(1+1e-9) // less than twice as much of solvent goes first
}

func (c *compiler) rungUse(i int, k *equipment.Measure) equipment.Use {
	return equipment.Use{
		Model: c.model, Notes: &c.notes, Day: c.day,
		Step:         c.owner(uncertainty.Rung, i+1),
		BenchReading: c.prep.Bench.Reading,
		Marks:        len(c.marks[pieceOf{k, 1}]), LineMarks: c.lineMarks(k),
	}
}
