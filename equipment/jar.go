package equipment

import (
	"fmt"
	"math"

	"minim/uncertainty"
)

// Line is how the pen line of a jar was set: with water, poured in from a
// measure in one or more equal fills.
type Line struct {
	With  *Measure
	Fills int
}

// penLine is the standard uncertainty of where a pen line stands and how thick
// it is, in mm of level (common practice, no source).
const penLine = 0.5

// setLine appends the error of a pen line: that of the volume it was set with,
// and its own. What was wrong when it was set stays wrong, so that it belongs to
// the jar; the bias of the measure is shared with its other uses.
func (k *Measure) setLine(u Use) ([]uncertainty.Node, error) {
	m := u.Model
	set := u
	set.Day, set.StepReading, set.Emptying = Day{Solvent: Solvent{Name: water}}, "", Drained
	nodes := []uncertainty.Node{}
	each := k.Capacity / float64(k.Line.Fills)
	for i := range k.Line.Fills {
		set.Step = fmt.Sprintf("fill %d for the line of the %s", i+1, u.piece(k.Name, k.Count))
		fill, err := k.Line.With.Deliver(set, each)
		if err != nil {
			return nil, err
		}
		nodes = append(nodes, m.Subtract(fill, m.Constant(each)))
	}
	if k.Bore == 0 {
		u.Notes.LeaveOut("thickness of the line on the " + k.Name + " (bore not stated)")
		return nodes, nil
	}
	u.Notes.Assume(fmt.Sprintf("the pen line of the %s is right within %v mm", k.Name, penLine))
	own := u.assumedError(u.piece(k.Name, k.Count), k.Name, "line of the "+k.Name, "mL",
		uncertainty.Normal{Sigma: penLine * perMillimetre(k.Bore)})
	return append(nodes, own), nil
}

// fills is the number of equal fills with which a measure reaches a volume.
func fills(volume float64, with *Measure) int {
	return int(math.Ceil(volume / with.Capacity * (1 - 1e-12)))
}
