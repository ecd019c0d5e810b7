package bench

import (
	"fmt"

	"minim/equipment"
	"minim/equipment/benchfile"
	"minim/equipment/quantity"
	"minim/uncertainty/route"
)

// readOpen reads for how long a solution stands open, and how wide.
func readOpen(t *benchfile.Table, s *route.Step) {
	open, mouth := quantity.Limits.Open, quantity.Limits.Mouth
	if s.Open = stated(t, "open", quantity.Duration); t.IsText("open") {
		plausible(t, "open", s.Open.Value, open, fmt.Sprintf("no solution stands open for %q", t.Text("open")), fmt.Sprintf("state at most %v min, and \"0 min\" where it is closed", open.Most))
	}
	if s.Mouth = stated(t, "mouth", quantity.Length); t.IsText("mouth") {
		plausible(t, "mouth", s.Mouth.Value, mouth, fmt.Sprintf("no vessel is %q wide", t.Text("mouth")), fmt.Sprintf("state the width of its opening inside, between %v and %v mm", mouth.Least, mouth.Most))
	}
}

// readOpened reads how often a stock has been opened.
func readOpened(t *benchfile.Table) equipment.Stated {
	if !t.Has("opened") {
		return equipment.Stated{}
	}
	limit := quantity.Limits.Opened
	times := t.Number("opened")
	plausible(t, "opened", times, limit, fmt.Sprintf("no bottle is opened %v times", times), fmt.Sprintf("write a number from %v to %v", limit.Least, limit.Most))
	return equipment.Stated{Value: times, Known: true}
}
