package equipment

import (
	"cmp"
	"math"
	"slices"

	"minim/equipment/quantity"
	"minim/report/words/note"
	"minim/uncertainty"
)

// tellOwn says how the means of own readings count, and what to make of those that are far off.
func (k *Measure) tellOwn(u Use) {
	n := u.Notes
	for i := range k.Judged {
		j := &k.Judged[i]
		mean := ML(quantity.Round(j.Mean, 5))
		switch {
		case !j.says(u):
			if !slices.ContainsFunc(k.Judged, func(o Judged) bool { return o.says(u) }) {
				n.LeaveOut("own-of-another-liquid", k.Name, j.Liquid, cmp.Or(u.Day.Solvent.Name, water))
			}
			continue
		case j.Standing == NotTold:
			n.LeaveOut("own-mean-not-told", k.Name, mean)
			continue
		case j.Standing == OfOthers:
			n.LeaveOut("own-mean-of-others", k.Name, mean)
			continue
		case j.Standing == Few && j.Liquid != "":
			n.LeaveOut("own-mean-few-of-liquid", k.Name, int(j.Readings()), j.Where(), mean)
		case j.Standing == Few:
			n.LeaveOut("own-mean-few", k.Name, int(j.Readings()), j.Where(), mean, j.Off())
		}
		switch {
		case j.isTooFar() && j.Standing == Alone:
			n.Warn("own-mean-far", k.Name, int(j.Readings()), j.Where(), mean, j.Off(), k.timesLimit(j), k.notAs(j))
		case j.isTooFar() && j.Standing == Few:
			n.Warn("own-few-far", k.Name, int(j.Readings()), j.Where(), mean, j.Off(), k.timesLimit(j))
		case j.Chance < farOff:
			n.Warn("own-mean-odd", k.Name, int(j.Readings()), j.Where(), mean, j.Off(), 100*j.Chance)
		}
		k.tellGrounds(n, j)
	}
}

// Where readings were taken: at 10 mL, at 10 mL with ethanol.
func (j *Judged) Where() note.Note {
	if j.Liquid != "" {
		return note.Of("mark-with-liquid", "", ML(j.Mark), j.Liquid)
	}
	return note.Of("mark", "", ML(j.Mark))
}

// tellGrounds says what the mean of readings rests on.
func (k *Measure) tellGrounds(n *Notes, j *Judged) {
	if j.markAssumed {
		n.Assume("own-mean-at-capacity", k.Name, ML(j.Mark))
	}
	if j.together && j.Counts() {
		n.Assume("own-scatter-pooled", k.Name)
	}
	switch liquid := cmp.Or(j.Liquid, k.DropOf); {
	case j.Weighed && j.Density > 0:
		n.Assume("weighed-liquid", k.Name, liquid, j.Temperature, j.Within, j.Density)
	case j.Weighed:
		n.Assume("weighed-water", k.Name, j.Temperature, j.Within)
	}
}

// Off is by how much a mean lies off, of what the mark and all else let expect.
func (j *Judged) Off() note.Note {
	switch percent := 100 * (j.Mean - j.Expected) / j.Mark; {
	case percent <= -0.005:
		return note.Of("lies-low", "", -percent)
	case percent >= 0.005:
		return note.Of("lies-high", "", percent)
	}
	return note.Of("lies-right", "")
}

// timesLimit is how many times its limit, or its standard uncertainty, a mean lies off.
func (k *Measure) timesLimit(j *Judged) note.Note {
	prior := k.ofPiece(j.Mark)
	s := uncertainty.SummaryOf(prior.Of)
	if math.IsInf(s.High, 1) {
		return note.Of("times-uncertainty", "", math.Abs(j.Mean-j.Expected)/s.StandardUncertainty)
	}
	return note.Of("times-limit", "", math.Abs(j.Mean-j.Expected)/((s.High-s.Low)/2))
}

// notAs is what a piece is not whose readings lie too far off. Where they lie within the limit, it
// may be all that is said of it, however few pieces lie there.
func (k *Measure) notAs(j *Judged) note.Note {
	if s := uncertainty.SummaryOf(k.ofPiece(j.Mark).Of); math.Abs(j.Mean-j.Expected) <= (s.High-s.Low)/2 && !math.IsInf(s.High, 1) {
		return note.Of("at-edge-of-limit", "")
	}
	if k.Bias.ClassLimit && k.Class != nil {
		return note.Of("not-of-class", "", k.Class.String())
	}
	return note.Of("not-as-stated", "")
}
