package search

import (
	"cmp"
	"math"
	"slices"
)

// promise is a dilution with the least relative variance of all routes that it can
// lead to.
type promise struct {
	group *group
	least float64
	gap   float64 // with those that are chosen
}

// extendBest tries the dilutions that make at least what is needed next, in the
// order of what they promise, until that is too much.
func (w *walk) extendBest(needed float64) {
	before := w.volumes
	for _, p := range w.promises(needed) {
		if !w.goOn() || w.hopeless(p.least) {
			break
		}
		w.volumes.leftOver = Volume(before.leftOver + p.group.volume - needed)
		w.try(p.group, p.gap)
	}
	w.volumes = before
}

// promises lists them, the least variance first, within the left over allowed.
func (w *walk) promises(needed float64) []promise {
	list, r := w.pass.dilutionGroups, w.pass.remainder
	toCome := w.pass.dilutions - len(w.volumes.groups) - 1
	before, wanted := w.volumes, w.wanted()
	first := w.firstOf(list, needed)
	var promises []promise
	for at := first; at < len(list); at++ {
		g := &list[at]
		if !w.owns(g) {
			continue
		}
		if !w.goOn() {
			break
		}
		room := w.mostLeftOver - w.volumes.leftOver - (g.volume - needed)
		if room < -slack {
			break
		}
		end, gap := before, w.gapTo(g)
		end.least += g.least + gap
		end.with = end.with.plus(&g.with)
		least := r.whole(&end, w.pass.need(), toCome, r.volumes.of((g.aliquot+math.Max(0, room))*(1+slack)), r.strengths.of(wanted/g.ratio))
		if !w.hopeless(least) {
			promises = append(promises, promise{g, least, gap})
		}
	}
	slices.SortFunc(promises, func(a, b promise) int { return cmp.Compare(a.least, b.least) })
	return promises
}
