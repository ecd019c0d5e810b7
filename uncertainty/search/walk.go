package search

import (
	"errors"
	"sort"

	"minim/equipment"
	"minim/uncertainty/route"
)

// walk is the way through one share of the routes of a pass, from their end. It
// chooses the volumes first, since all routes of the same volumes leave over the
// same, and then the instruments.
type walk struct {
	*search
	share int
	// until is the count of candidates at which a turn is over; wait then ends it, and
	// reports whether there is another.
	until int64
	wait  func() bool
	// known is the front that the walk goes by: that of the search when its turn began,
	// and what it has found since, which is new.
	known *front
	// reached is what all routes leave over that are still to be tried, or more.
	reached float64
	new     []stair
	volumes volumes
	state   state
	ways    []*making // of the route that is built, last first
	rests   []leasts  // what the ways from each number on bring, and the source
	uses    uses
	// solvent is the share of the first solution that is solvent, where solute is dissolved in
	// measured solvent, else 1; begun is what is left over without that solution.
	solvent, begun float64
	solution       factor // of the solute in it
	last           lastWeighing
	err            error
	counts         counts
}

// volumes are those of a route up to where the search stands.
type volumes struct {
	groups []*group // of dilutions, last first
	// least is the relative variance that they bring at the least, ratio the
	// product of their ratios.
	least, ratio, leftOver float64
	// with are the least where the piece that is free is used.
	with leasts
	// expected is what they multiply the expected strength by.
	expected span
}

// counts of a search: ends of routes that were looked at, ways to make a solution that
// were tried, and routes that were worked out.
type counts struct{ built, tried, finished int64 }

// errEnough ends a search that has tried as many candidates as it may.
var errEnough = errors.New("search: as many candidates as may be tried")

func (s *search) newWalk(share int) *walk {
	w := &walk{search: s, share: share, solvent: 1, uses: newUses(len(s.prep.Kit.Measures))}
	w.volumes.ratio, w.volumes.groups, w.ways = 1, make([]*group, 0, s.pass.dilutions), make([]*making, 0, s.pass.dilutions+1)
	w.rests = make([]leasts, s.pass.dilutions+2)
	w.state = s.keys.newState(s.pass.weights)
	w.state.multiply(&s.unit)
	for range s.pass.evaporations() {
		w.state.multiply(&s.evaporated)
	}
	w.volumes.least, w.volumes.with, w.volumes.expected = w.state.own, ofNone(w.state.own), span{w.state.mean, w.state.mean}
	return w
}

// evaporations is how often a solution that was made is taken from.
func (p *pass) evaporations() int {
	if p.from == route.Start {
		return p.dilutions - 1 // a stock was kept closed
	}
	return p.dilutions
}

// operations of every route of the pass.
func (p *pass) operations() int {
	if p.from == route.Start {
		return 2 * p.dilutions
	}
	return 2*p.dilutions + 2
}

// goOn counts an end of routes, and reports whether the walk may go on.
func (w *walk) goOn() bool {
	w.counts.built++
	return w.mayGoOn()
}

// mayGoOn reports whether the walk may go on: when its turn is over it waits for the next.
func (w *walk) mayGoOn() bool {
	if w.err == nil && w.counts.work() >= w.until && !w.wait() {
		w.err = errEnough
	}
	return w.err == nil
}

// work is the number of candidates.
func (c *counts) work() int64 { return c.built + c.tried }

func (c *counts) add(more counts) {
	c.built += more.built
	c.tried += more.tried
	c.finished += more.finished
}

// run goes through all routes of the share.
func (w *walk) run() {
	if w.pass.from == route.Weigh && w.wanted()*w.prep.Volume > w.mostWeighed {
		return
	}
	if w.pass.dilutions > 0 {
		w.extend(w.prep.Volume)
	} else if w.share == 0 || w.pass.weighsLast() {
		w.begin(w.prep.Volume)
	}
}

// extend tries all dilutions that make at least what is needed next, those that
// make little first. It stops at a volume of which too much would be left over;
// of one volume, it stops where what a dilution brings is too much.
//
// Where nothing but the worth counts, it tries first what can be worth most.
func (w *walk) extend(needed float64) {
	if w.judge.worthOnly {
		w.extendBest(needed)
		return
	}
	list := w.pass.dilutionGroups
	from := w.firstOf(list, needed)
	before := w.volumes
	for from < len(list) && w.err == nil {
		w.volumes.leftOver = Volume(before.leftOver + list[from].volume - needed)
		if w.tooMuch() || w.hopeless(before.least) {
			break
		}
		if len(w.volumes.groups) == 0 {
			w.reached = w.volumes.leftOver
		}
		w.extendBy(list[from:list[from].next])
		from = list[from].next
	}
	w.volumes = before
}

// extendBy tries the dilutions of one volume.
func (w *walk) extendBy(list []group) {
	ahead := w.ahead()
	for at := range list {
		g := &list[at]
		if !w.owns(g) {
			continue
		}
		least := w.volumes.least + g.least
		if !w.goOn() || !(least <= ahead.most) {
			break
		}
		if ahead.hopeless(g, least) {
			continue
		}
		if gap := w.gapTo(g); gap == 0 || !ahead.hopeless(g, least+gap) {
			w.try(g, gap)
			if ahead.front != w.known {
				ahead = w.ahead()
			}
		}
	}
}

// enough is what a solution must hold of which so much is needed: where that is taken, what stays behind as well.
func (w *walk) enough(needed float64) float64 {
	if len(w.volumes.groups) == 0 {
		return needed
	}
	return needed + equipment.KeptBack(needed)
}

// firstOf is the place of the first group that makes enough, of which so much is needed.
func (w *walk) firstOf(list []group, needed float64) int {
	enough := w.enough(needed) * (1 - 1e-9)
	return sort.Search(len(list), func(i int) bool { return list[i].volume >= enough })
}

// gapTo is what a group brings together with those that are chosen.
func (w *walk) gapTo(g *group) (sum float64) {
	for _, other := range w.volumes.groups {
		sum += w.pass.gaps.between(other, g)
	}
	return sum
}

// try puts a dilution in front of what there is, with which it brings so much more, and goes on
// from there.
func (w *walk) try(g *group, gap float64) {
	before := w.volumes
	defer func() { w.volumes = before }()
	v := &w.volumes
	v.ratio *= g.ratio
	v.least += g.least + gap
	if w.pass.free != nil {
		v.with = v.with.plus(&g.with)
	}
	v.expected = v.expected.times(g.expected)
	v.groups = append(v.groups, g)
	toCome := w.pass.dilutions - len(v.groups)
	switch {
	case w.pass.from == route.Weigh && (w.wanted() > w.strongest || w.wanted()*g.aliquot > w.mostWeighed):
		return // too strong, or more solute than any balance carries or may be used
	case w.outOfReach(toCome):
		return
	case toCome > 0:
		w.extend(g.aliquot)
	default:
		w.begin(g.aliquot)
	}
}

// begin tries all first solutions from which so much is needed, or goes on to the
// stocks.
func (w *walk) begin(needed float64) {
	if w.pass.weighsLast() {
		w.weighUp(needed)
		return
	}
	if !w.pass.hasFirst() {
		w.build(&group{with: ofNone(0)}, needed)
		return
	}
	first, diluted := w.pass.remainder, w.pass.dilutions > 0
	if !diluted || !w.hopelessWith(&first.marked, needed) {
		w.beginMarked(needed)
	}
	if len(w.pass.allDissolved) > 0 && (!diluted || !w.hopelessWith(&first.dissolved, needed)) {
		w.beginDissolved(needed)
	}
}

// beginMarked tries all marks that solute is made up to.
func (w *walk) beginMarked(needed float64) {
	before, list := w.volumes, w.pass.firsts
	for at := w.firstOf(list, needed); at < len(list); at++ {
		f := &list[at]
		w.volumes.leftOver = Volume(before.leftOver + f.volume - needed)
		if !w.goOn() || w.tooMuch() || w.hopeless(before.least) {
			break
		}
		w.build(f, f.volume)
	}
	w.volumes = before
}

// wanted is the concentration that the solution must have which the chosen
// dilutions start from, in g/mL.
func (w *walk) wanted() float64 { return w.prep.Target.Value / w.unit.mean / w.volumes.ratio }

func (w *walk) tooMuch() bool { return w.volumes.leftOver > w.mostLeftOver }

// hopeless reports whether all routes that end like this are beaten, since their
// relative variance is at least this.
func (w *walk) hopeless(leastVariance float64) bool { return !(leastVariance <= w.bar()) }

// bar is the greatest relative variance that a route of the pass may have which
// leaves over what there is already.
func (w *walk) bar() float64 {
	bars := w.known.barsFor(w.pass.operations())
	if at := barAt(bars, w.volumes.leftOver); at >= 0 {
		return bars[at].most
	}
	return w.judge.least
}

// hopelessWith reports whether all routes are beaten that end like this, of which so much is needed, by
// what a table has of all that is to come.
func (w *walk) hopelessWith(table *tables, needed float64) bool {
	ahead := w.ahead()
	return ahead.beaten(table[0], needed, w.pass.remainder.strengths.of(w.wanted()), w.volumes.least, nil)
}

// owns reports whether a dilution, put in front of what there is, belongs to the share of
// the walk: the last two of a route say whose it is, or one where there are no two.
func (w *walk) owns(g *group) bool {
	if len(w.volumes.groups)+1 != min(w.pass.dilutions, 2) {
		return true
	}
	sum := g.number
	for _, other := range w.volumes.groups {
		sum += other.number
	}
	return sum%shares == w.share
}

// offer puts a finished route on the front that the walk goes by, unless it is beaten.
func (w *walk) offer(m merit, c func() chain) {
	if m, worth := w.judge.offered(m); worth && !w.known.beaten(m) {
		if found := c(); !w.refuses(&found) {
			s := w.judge.stair(m, found)
			w.known, w.new = w.known.add(s), append(w.new, s)
		}
	}
}
