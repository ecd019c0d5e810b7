package equipment

import (
	"math"
	"slices"

	"minim/equipment/quantity"
	"minim/report/words/note"
	"minim/uncertainty"
)

// ownAt is what readings say of the error of the piece at a mark, or next to it where nothing was
// measured there: nil where no mean counts.
func (k *Measure) ownAt(mark float64) (nearest *Judged) {
	for i := range k.Judged {
		j := &k.Judged[i]
		if j.Counts() && !j.whole && (nearest == nil || math.Abs(j.Mark-mark) < math.Abs(nearest.Mark-mark)) {
			nearest = j
		}
	}
	return nearest
}

// ownHeld is what readings say of all that comes out, or is held, at a mark: nil where they say
// nothing.
func (k *Measure) ownHeld(of Held, mark float64) *Judged {
	for i := range k.Judged {
		if j := &k.Judged[i]; j.Counts() && j.Of == of && sameVolume(j.Mark, mark) {
			return j
		}
	}
	return nil
}

// wholeDelivery is what readings say of all that comes out of what was not adjusted to deliver,
// and drains: nil where they say nothing.
func (k *Measure) wholeDelivery(u Use, mark float64) *Judged {
	if j := k.ownHeld(Delivered, mark); j != nil && j.whole && u.Emptying == drained {
		return j
	}
	return nil
}

// ownError appends the error of the piece where its readings count. At another mark it is what the
// correlation between marks leaves of that, and the rest as the limit has it:
//
//	e' = r e + common + own,  variances r (1 - r) and 1 - r of that of the limit
//
// so that each has the variance of the limit before the readings, and any two have the correlation
// r. Where the limit grows with the volume, so does the error.
func (k *Measure) ownError(u Use, j *Judged, mark float64) []uncertainty.Node {
	m, owner, limit := u.Model, k.owner(u), k.Limit(mark)
	if j.whole {
		return []uncertainty.Node{m.Influence(k.byReadings(j, owner, deliveredByReadings))}
	}
	at := m.Influence(k.byReadings(j, owner, biasByReadings))
	switch {
	case sameVolume(j.Mark, mark):
		return []uncertainty.Node{at}
	case k.Bias.ByClass || k.Bias.Share > 0:
		return []uncertainty.Node{m.Multiply(at, m.Constant(limit/k.Limit(j.Mark)))}
	}
	r := k.Bias.BetweenMarks
	nodes := []uncertainty.Node{m.Multiply(at, m.Constant(r))}
	part := func(code uncertainty.Code, at, share float64) {
		if share > 0 && limit > 0 {
			in := k.shaped(influence(owner, code, "mL", k.Bias.Shape.within(limit*math.Sqrt(share))))
			in.At, in.Ground.Figures[0] = quantity.Round(at, 7), limit
			nodes = append(nodes, m.Influence(in))
		}
	}
	part(biasCommon, 0, r*(1-r))
	part(biasOwn, mark, 1-r)
	return nodes
}

// byReadings is the error that readings say. Where they count alone, and nothing else is uncertain
// of their mean, it has the one unknown standard deviation of all uses by them.
func (k *Measure) byReadings(j *Judged, owner uncertainty.Owner, code uncertainty.Code) uncertainty.Influence {
	in := influence(owner, code, "mL", j.error)
	in.At, in.DegreesOfFreedom, in.Ground = quantity.Round(j.Mark, 7), j.degreesOfFreedom, k.groundOf(j)
	if j.degreesOfFreedom > 0 && j.degreesOfFreedom == j.DegreesOfFreedom {
		in.Set, in.Most = j.Set(k.Name), j.Mark
	}
	return in
}

// scatterMeasured reports whether own readings hold the scatter of what comes out, or is held.
func (k *Measure) scatterMeasured(of Held) bool {
	return slices.ContainsFunc(k.Judged, func(j Judged) bool { return j.Of == of })
}

// tellOwn says how the means of own readings count, and what to make of those that are far off.
func (k *Measure) tellOwn(n *Notes) {
	for i := range k.Judged {
		j := &k.Judged[i]
		mean := ML(quantity.Round(j.Mean, 5))
		switch j.Standing {
		case NotTold:
			n.LeaveOut("own-mean-not-told", k.Name, mean)
			continue
		case OfOthers:
			n.LeaveOut("own-mean-of-others", k.Name, mean)
			continue
		case Few:
			n.LeaveOut("own-mean-few", k.Name, int(j.Readings()), ML(j.Mark), mean, j.Off())
		}
		switch {
		case j.TooFar() && j.Standing == Alone:
			n.Warn("own-mean-far", k.Name, int(j.Readings()), ML(j.Mark), mean, j.Off(), k.timesLimit(j), k.notAs())
		case j.Chance < farOff:
			n.Warn("own-mean-odd", k.Name, int(j.Readings()), ML(j.Mark), mean, j.Off(), 100*j.Chance)
		}
		k.tellGrounds(n, j)
	}
}

// tellGrounds says what the mean of readings rests on.
func (k *Measure) tellGrounds(n *Notes, j *Judged) {
	if j.MarkAssumed {
		n.Assume("own-mean-at-capacity", k.Name, ML(j.Mark))
	}
	if j.Pooled && j.Counts() {
		n.Assume("own-scatter-pooled", k.Name)
	}
	if j.Weighed {
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

// notAs is what a piece is not whose readings lie too far off.
func (k *Measure) notAs() note.Note {
	if k.Bias.ClassLimit && k.Class != nil {
		return note.Of("not-of-class", "", k.Class.String())
	}
	return note.Of("not-as-stated", "")
}
