package search

import "math"

// ahead is what a walk asks of the dilutions of one volume: it has what is left over with them.
type ahead struct {
	*walk
	front *front
	// bars from number at on are those of routes that leave over no less, -1 for that without
	// any; most is the first.
	bars           []bar
	at             int
	most, strength float64 // of what is diluted last, in g/mL
	toCome         int
}

func (w *walk) ahead() ahead {
	a := ahead{walk: w, front: w.known, bars: w.known.barsFor(w.pass.operations()), most: w.judge.least, strength: w.wanted(),
		toCome: w.pass.dilutions - len(w.volumes.groups) - 1}
	if a.at = barAt(a.bars, w.volumes.leftOver); a.at >= 0 {
		a.most = a.bars[a.at].most
	}
	return a
}

// hopeless reports whether all routes that have a dilution in front of what there is are beaten,
// which together bring so much.
func (a *ahead) hopeless(g *group, least float64) bool {
	r := a.pass.remainder
	table, strength := r.of[a.toCome][0], r.strengths.of(a.strength/g.ratio)
	if a.pass.need() == 0 {
		return a.beaten(table, g.aliquot, strength, least, nil)
	}
	with := a.volumes.with.plus(&g.with)
	return a.beaten(table, g.aliquot, strength, least, &with)
}

// beaten reports whether all routes are beaten of which so much is needed: for every left over that
// they may end with, what there is and what a table has of what is still to come, given the
// volume that may be filled, are more than the bar. With is what there is where the piece that is
// free is used, nil without one.
func (a *ahead) beaten(table []float64, needed float64, strength int, least float64, with *leasts) bool {
	r, most := a.pass.remainder, a.most
	for at := a.at; least+r.in(table, r.volumes.count-1, strength) <= most; at++ {
		room := math.Inf(1)
		if at+1 < len(a.bars) {
			room = a.bars[at+1].leftOver - a.volumes.leftOver
		}
		volume := r.volumes.of((needed + room) * (1 + slack))
		if least+r.in(table, volume, strength) <= most && (with == nil || r.with(with, a.pass.need(), a.toCome, volume, strength) <= most) {
			return false
		}
		if at+1 == len(a.bars) {
			break
		}
		most = a.bars[at+1].most
	}
	return true
}
