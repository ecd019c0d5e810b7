package equipment

// KeptBack is what a solution must hold beyond what is measured out of it, in mL: 0.1 mL for what its
// vessel keeps, as cylinders do which are poured (see retainedWhenPoured), and for what evaporates, and a twentieth
// of what is taken for what rinses the instrument (common practice, no source).
func KeptBack(taken float64) float64 { return 0.1 + float64(taken/20) }

// retained is what the kit states, or what is assumed.
func (k *Measure) retained(u Use) (r Retained, assumed bool) {
	keeps := k.Kind.Traits().keeps
	switch {
	case k.Retained.Known:
		return k.Retained, false
	case k.leavesDrop() && u.Emptying == drained && k.holdsRetained(u):
		return Retained{}, false
	case k.leavesDrop() && u.Emptying == drained:
		u.Notes.LeaveOut("scatter-of-retained", k.Name)
		return Retained{}, false
	case keeps == filmByCapacity || keeps == unknownFilm:
		return k.retainedWhenPoured(u)
	case u.Emptying == BlownOut && keeps == pressedEmpty:
		return Retained{}, false // it is made to be pressed empty
	case k.Class != nil && k.Class.DeadSpace > 0:
		u.Notes.Assume("dead-space", k.Name, ML(k.Class.DeadSpace), k.Class.String(), k.Class.DeadSpaceTrust)
		return Retained{Mean: k.Class.DeadSpace / 2, Known: true}, true
	case k.Capacity < 1:
		u.Notes.LeaveOut("retained-in-tip", k.Name)
		return Retained{}, false
	}
	drop, code := lastDrop(k.Capacity)
	u.Notes.Assume(code, k.Name, ML(drop.Mean))
	return drop, true
}

// lastDrop is what stays in the tip of a pipette, and the code of the note that says so. From 5 mL on 0.10 mL with a
// standard deviation of 0.05 mL: five people delivered 1 to 4 mL eight times with
// a graduated pipette, with the drop left and with the drop expelled
// (trabalhosfeitos.com/ensaios/Relatorio/821595.html). Smaller ones: 0.01 to
// 0.05 mL (from memory); below 1 mL there is no figure.
func lastDrop(capacity float64) (r Retained, code string) {
	if capacity >= 5 {
		return Retained{Mean: 0.10, Spread: Stated{0.05, true}, Known: true}, "last-drop"
	}
	return Retained{Mean: 0.03, Spread: Stated{0.0115, true}, Known: true}, "last-drop-from-memory"
}

// retainedWhenPoured is what a cylinder adjusted to contain keeps when it is
// poured out, by capacity in mL, unknown by half of it; see [Measure.keptByPours].
// Measured near 10 mL (five deliveries, pt.scribd.com/doc/55952279, and three,
// studymode.com/essays/Accuracy-And-Precision-137415.html) and 50 mL (two,
// bartleby.com/essay/Lab-report-calibration-of-volumetric-flask-PKJE4S43VJ);
// the other sizes follow the film that gravity leaves in 10 s, √(νL/gt), and one
// hanging drop.
var retainedWhenPoured = map[float64]float64{5: 0.08, 10: 0.10, 25: 0.15, 50: 0.25, 100: 0.40}

func (k *Measure) retainedWhenPoured(u Use) (Retained, bool) {
	mean, ok := retainedWhenPoured[k.Capacity]
	if k.Kind.Traits().keeps != filmByCapacity || !ok {
		u.Notes.LeaveOut("retained-when-poured", k.Name)
		return Retained{}, false
	}
	u.Notes.Assume("keeps-when-poured", k.Name, ML(mean))
	return Retained{Mean: mean, Spread: Stated{mean / 2, true}, Known: true, poured: true}, true
}
