package equipment

import (
	"math"
	"slices"

	"minim/equipment/quantity"
	"minim/uncertainty"
)

// ofLiquid reports whether readings are of another liquid than water, which is the one of a use.
func (j *Judged) ofLiquid(u Use) bool {
	return j.Liquid != "" && (SameLiquid(j.Liquid, u.Day.Solvent.Name) || u.Solution != "" && SameLiquid(j.Liquid, u.Solution))
}

// says reports whether readings say something of a use: those of its liquid, and those of water of
// the piece itself, whatever it is used with.
func (j *Judged) says(u Use) bool { return j.Liquid == "" || j.ofLiquid(u) }

// ownAt is what readings say of the error of the piece at a mark, or next to it where nothing was
// measured there: nil where no mean counts. Readings of the liquid go before those of water.
func (k *Measure) ownAt(u Use, mark float64) (nearest *Judged) {
	for i := range k.Judged {
		j := &k.Judged[i]
		switch {
		case !j.Counts() || j.whole || !j.says(u):
		case nearest == nil, nearest.Liquid == "" && j.Liquid != "",
			nearest.Liquid == j.Liquid && math.Abs(j.Mark-mark) < math.Abs(nearest.Mark-mark):
			nearest = j
		}
	}
	return nearest
}

// ownHeld is what readings say of all that comes out, or is held, at a mark: nil where they say
// nothing.
func (k *Measure) ownHeld(u Use, of Held, mark float64) (own *Judged) {
	for i := range k.Judged {
		j := &k.Judged[i]
		if j.Counts() && j.Of == of && j.says(u) && sameVolume(j.Mark, mark) && (own == nil || j.Liquid != "") {
			own = j
		}
	}
	return own
}

// wholeDelivery is what readings say of all that comes out of what was not adjusted to deliver,
// and drains: nil where they say nothing.
func (k *Measure) wholeDelivery(u Use, mark float64) *Judged {
	if j := k.ownHeld(u, Delivered, mark); j != nil && j.whole && u.Emptying == drained {
		return j
	}
	return nil
}

// beside is the share of the meniscus of the liquid that counts beside what readings say: all of it
// where it stands once and they are of water, nothing where it cancels between two readings of one
// bore. What readings of the liquid say holds it already, as far as it is carried to another mark.
func (j *Judged) beside(k *Measure, mark float64, readings int) (share float64) {
	if readings == 1 {
		share = 1
	}
	if j != nil && j.Liquid != "" && !(j.Of == Delivered && k.BetweenMarks(j.Mark, drained)) {
		share -= k.carried(j, mark)
	}
	return share
}

// carried is the factor by which the error at the mark of the readings counts at another one. With
// a cushion of air what a liquid does grows with the volume.
func (k *Measure) carried(j *Judged, mark float64) float64 {
	switch {
	case j.whole || sameVolume(j.Mark, mark):
		return 1
	case k.growsWith(j):
		return k.Limit(mark) / k.Limit(j.Mark)
	case j.Liquid != "" && k.Cushion:
		return k.Bias.BetweenMarks * (mark / j.Mark)
	}
	return k.Bias.BetweenMarks
}

// growsWith: the error that readings say grows as the limit does, with the volume.
func (k *Measure) growsWith(j *Judged) bool {
	return (k.Bias.ByClass || k.Bias.Share > 0) && !(j.Liquid != "" && k.Cushion)
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
	if sameVolume(j.Mark, mark) {
		return []uncertainty.Node{at}
	}
	nodes := []uncertainty.Node{m.Multiply(at, m.Constant(k.carried(j, mark)))}
	if k.growsWith(j) {
		return nodes
	}
	r := k.Bias.BetweenMarks
	if common := r * (1 - r); common > 0 && limit > 0 {
		nodes = append(nodes, k.partOfBias(u, biasCommon, 0, limit, common))
	}
	if r < 1 && limit > 0 {
		nodes = append(nodes, k.partOfBias(u, biasOwn, mark, limit, 1-r))
	}
	return nodes
}

// byReadings is the error that readings say. Where nothing else is uncertain of a mean that counts
// alone, or the scatter makes most of one that counts beside the limit, it has the one unknown standard
// deviation of all uses by them.
func (k *Measure) byReadings(j *Judged, owner uncertainty.Owner, code uncertainty.Code) uncertainty.Influence {
	if j.Liquid != "" {
		code += uncertainty.Code(" beside " + liquidName(j.Liquid))
	}
	in := influence(owner, code, "mL", j.error)
	in.At, in.DegreesOfFreedom, in.Ground = quantity.Round(j.Mark, 7), j.degreesOfFreedom, k.groundOf(j)
	in.Assumed, in.AssumedShape, in.AssumedPart, in.Flat = j.flat != nil, j.flat != nil, j.assumedPart, j.flat
	if j.degreesOfFreedom > 0 && j.degreesOfFreedom == j.DegreesOfFreedom {
		in.Set, in.Most = j.Set(k.Name), j.Mark
	}
	return in
}

// scatterMeasured reports whether own readings hold the scatter of what comes out, or is held.
func (k *Measure) scatterMeasured(u Use, of Held) bool {
	return slices.ContainsFunc(k.Judged, func(j Judged) bool { return j.Of == of && j.says(u) })
}
