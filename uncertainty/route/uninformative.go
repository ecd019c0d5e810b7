package route

import (
	"math"

	"minim/equipment"
	"minim/report/words/note"
	"minim/uncertainty"
	"minim/uncertainty/rounding"
	"minim/uncertainty/strengths"
)

// measuredOut is the volume in mL, or in drops, that a step measures out.
type measuredOut struct {
	step   int
	volume uncertainty.Node
	use    equipment.Use
}

// uninformative says which mass weighed, or volume measured out, up to a step, from 0, has a
// coverage interval that reaches zero, so that its reading says almost nothing about the amount.
func (c *compiler) uninformative(coverage float64, upTo int) (note.Note, error) {
	for _, w := range c.masses {
		if w.step > upTo {
			break
		}
		switch a, err := c.least(w.mass, coverage); {
		case err != nil:
			return note.Note{}, err
		case a.Lower() <= 0:
			return note.Of("weighs-nothing", "", w.step+1, equipment.G(c.model.Intended(w.mass)), rounding.TwoDigits(a.ExpandedUncertainty)+" g"), nil
		}
	}
	for _, v := range c.volumes {
		if v.step > upTo {
			break
		}
		if why, err := c.measuresNothing(v, coverage); err != nil || !why.None() {
			return why, err
		}
	}
	return note.Note{}, nil
}

// measuresNothing says why a volume could be nothing: it is known too badly, or all of it may
// stay behind.
func (c *compiler) measuresNothing(v measuredOut, coverage float64) (note.Note, error) {
	s := &c.route.Steps[v.step]
	a, err := c.least(v.volume, coverage)
	switch {
	case err != nil:
		return note.Note{}, err
	case a.Lower() <= 0:
		return note.Of("measures-nothing", "", v.step+1, equipment.ML(c.model.Intended(v.volume)), rounding.TwoDigits(a.ExpandedUncertainty)+" mL"), nil
	case s.Measure.MayKeepAll(v.use, s.Amount, (1-coverage)/2):
		return note.Of("may-all-stay", "", v.step+1, equipment.ML(s.Amount), s.Measure.Name), nil
	}
	return note.Note{}, nil
}

// least propagates what is measured, to see whether it could be nothing. That few readings leave
// a wider interval counts where it can reach that far: with any three sets of two readings or more
// it is no wider than here.
func (c *compiler) least(measured uncertainty.Node, coverage float64) (uncertainty.Analytic, error) {
	a, err := c.model.Propagate(measured, coverage)
	if err != nil || a.Value > uncertainty.CoverageFactor(coverage, 1)*math.Sqrt(3)*a.StandardUncertainty {
		return a, err
	}
	return a.Mixed(), nil
}

// couldBeNothing says that the interval of a strength reaches nothing; nothing where it does not.
func couldBeNothing(lower, upper float64, unit strengths.Unit) note.Note {
	if lower > 0 {
		return note.Note{}
	}
	low, _ := rounding.Expanded(lower, (upper-lower)/2)
	high, _ := rounding.Expanded(upper, (upper-lower)/2)
	return note.Of("strength-nothing", "", low, high, unit.Name)
}
