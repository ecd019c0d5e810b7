package bench

import (
	"fmt"

	"minim/equipment/benchfile"
	"minim/uncertainty/route"
)

// readLadder reads the strengths and the two instruments of a ladder.
func (p prepReader) readLadder(t *benchfile.Table) *route.Ladder {
	texts := t.Texts("ladder")
	with, in := t.Text("ladder-with"), t.Text("ladder-in")
	if !t.Has("ladder") {
		return nil
	}
	for _, key := range []string{"ladder-with", "ladder-in"} {
		if !t.Has(key) {
			t.FailFor(t, []string{key}, "ladder", "nothing says what the rungs are measured with and made up in", "write ladder-with = \"1 mL pipette\" and ladder-in = \"10 mL flask\", by their names in the kit")
			return nil
		}
	}
	l := new(route.Ladder)
	if with != "" {
		l.With = p.findMeasure(t, "ladder-with", route.Take)
	}
	if in != "" {
		l.In = p.findMeasure(t, "ladder-in", route.MakeUpTo)
	}
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
