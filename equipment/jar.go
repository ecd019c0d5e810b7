package equipment

import (
	"minim/uncertainty"
)

// line is how the pen line of a jar was set: with water, poured in from a
// measure in one or more equal fills of Each mL.
type line struct {
	With  *Measure
	Fills int
	Each  float64
}

// penLine is the standard uncertainty of where a pen line stands and how thick
// it is, in mm of level (common practice, no source).
const penLine = 0.5

// setLine appends the error of a pen line: that of the volume it was set with,
// and its own. What was wrong when it was set stays wrong, so that it belongs to
// the jar; the bias of the measure is shared with its other uses.
func (k *Measure) setLine(u Use) (nodes []uncertainty.Node, err error) {
	m := u.Model
	set := u
	set.Day, set.StepReading, set.Emptying = Day{Solvent: Solvent{Name: water}}, "", k.Line.With.AsMeant(k.Line.Each)
	set.Piece, set.Marks = 0, u.LineMarks
	if u.Day.Known {
		u.Notes.LeaveOut("temperature-of-setting", k.Name)
	}
	for i := range k.Line.Fills {
		set.Step = u.piece(k.Name, k.Count)
		set.Step.Kind, set.Step.Step = uncertainty.Fill, i+1
		fill, err := k.Line.With.Deliver(set, k.Line.Each)
		if err != nil {
			return nil, err
		}
		named := influence(set.Step, fillOfLine, "mL", nil)
		nodes = append(nodes, m.Subtract(m.Name(fill, named), m.Constant(k.Line.Each)))
	}
	if k.Bore == 0 {
		u.Notes.LeaveOut("thickness-of-line", k.Name)
		return nodes, nil
	}
	u.Notes.Assume("pen-line", k.Name, penLine)
	own := influence(u.piece(k.Name, k.Count), penLineCode, "mL", uncertainty.Normal{Sigma: penLine * PerMillimetre(k.Bore)})
	own.Assumed = true
	return append(nodes, m.Influence(own)), nil
}
