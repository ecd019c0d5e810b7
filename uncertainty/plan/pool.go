package plan

import (
	"context"
	"math"
	"slices"

	"minim/uncertainty"
	"minim/uncertainty/policy"
	"minim/uncertainty/route"
	"minim/uncertainty/search"
)

// pool is what is chosen from: routes that were simulated, and others that are once they would be
// chosen.
type pool struct {
	prep    *route.Prep
	options Options
	results []route.Result
	// found of them were found, the others tuned.
	found int
	// simulated: with how many trials does not matter; settled: with all that are asked for.
	simulated, settled []bool
	// doubts are by how much the chances of those that were not may be too small.
	doubts []float64
}

// doubt is by how much a chance to first order may be too small, beside what it is of the route that
// another is tuned from: routes of which it is that near to what counts are simulated.
const doubt = 0.005

func doubtOf(r *route.Result) float64 {
	if len(r.Inside) == 0 {
		return doubt
	}
	return doubt + max(0, r.Inside[0].Simulated-r.Inside[0].Normal)
}

// figures of a route, of one that was not simulated the best that they may be.
func (l *pool) figures(at int) policy.Figures {
	r := &l.results[at]
	f := l.prep.Figures(r)
	if l.simulated[at] {
		return f
	}
	if len(r.Inside) > 0 {
		f.Chance = l.chance(at)
		return f
	}
	f.Within = bestWithin(l.prep, r)
	return f
}

// chance of a route of being inside, of one that was not simulated the best that it may be.
func (l *pool) chance(at int) float64 {
	inside := &l.results[at].Inside[0]
	if l.simulated[at] {
		return inside.Simulated
	}
	return min(1, inside.Normal+l.doubts[at])
}

// bestWithin is the least that a route that was not simulated may hold the target within, relative to it.
func bestWithin(p *route.Prep, r *route.Result) float64 {
	off, u := math.Abs(r.Analytic.Value-p.Target.Value), r.Analytic.StandardUncertainty
	return max(1.9*u, off+float64(1.6*u)) / p.Target.Value
}

// choose is the place of the route that is recommended of some, by the preference of the options.
func (l *pool) choose(places []int) int {
	var all []policy.Figures
	for _, at := range places {
		all = append(all, l.figures(at))
	}
	least := math.Inf(1)
	var best []int
	for i, at := range places {
		if len(l.prep.Tolerances) > 0 && !(all[i].Usable && all[i].Chance >= l.prep.LeastChance) {
			continue
		}
		switch by := figure(l.prep, l.options.Prefer, &l.results[at], &all[i]); {
		case by < least:
			least, best = by, []int{i}
		case by == least:
			best = append(best, i)
		}
	}
	if len(best) == 0 || len(best) == len(all) || l.options.Prefer == route.Usual {
		return places[l.prep.Ask().Choose(all).Use]
	}
	var some []policy.Figures
	for _, i := range best {
		some = append(some, all[i])
	}
	return places[best[l.prep.Ask().Choose(some).Use]]
}

// figure is what a preference makes small: 0 where the policy decides.
func figure(p *route.Prep, preference string, r *route.Result, f *policy.Figures) float64 {
	switch preference {
	case route.LeastLeftOver:
		if len(p.Tolerances) == 0 {
			return f.Within
		}
		return search.Volume(r.LeftOverML)
	case route.Tightest:
		return r.GiveOrTake()
	case route.Fewest:
		return float64(r.Operations)
	case route.LeastSolute:
		return r.SoluteUsed
	case route.Cheapest:
		cost, _ := Cost(p, r)
		return cost.Amount
	}
	return 0
}

// shown are the places of the best route with each number of measurements, by that number, and
// which of them is recommended. Where the policy would choose fewer measurements of all that were found or simulated,
// it is the roundest with so many that leaves so little over that it stands among those that are shown.
func (l *pool) shown() (places []int, use int) {
	by := make(map[int][]int)
	var numbers []int
	for i := range l.results {
		if l.results[i].Possible {
			n := l.results[i].Operations
			if by[n] == nil {
				numbers = append(numbers, n)
			}
			by[n] = append(by[n], i)
		}
	}
	slices.Sort(numbers)
	for _, n := range numbers {
		places = append(places, l.choose(by[n]))
	}
	if len(places) == 0 {
		return nil, -1
	}
	use = slices.Index(places, l.choose(places))
	first := l.first()
	if l.options.Prefer != route.Usual || first < 0 {
		return places, use
	}
	n := l.results[first].Operations
	if n >= l.results[places[use]].Operations {
		return places, use
	}
	return l.lessRounded(places, use, slices.Index(numbers, n), by[n])
}

// worthShowing are those of some places that are worth being shown beside the one that is recommended: where that has the
// chance that is asked for, none without it that takes more measurements, which buy nothing.
func (l *pool) worthShowing(places []int, use int) []int {
	if used := &l.results[places[use]]; !l.prep.Meets(used) || len(l.prep.Tolerances) == 0 {
		return places
	}
	list := slices.Clone(places[:use+1])
	for _, at := range places[use+1:] {
		if l.prep.Meets(&l.results[at]) {
			list = append(list, at)
		}
	}
	return list
}

// first is the place of the route that is recommended of all that were found or simulated, -1 without any.
func (l *pool) first() int {
	var places []int
	for i := range l.results {
		if l.results[i].Possible && (i < l.found || l.simulated[i]) {
			places = append(places, i)
		}
	}
	if len(places) == 0 {
		return -1
	}
	return l.choose(places)
}

// lessRounded takes in the place at of those that are shown routes that leave less over, of some, until
// one is recommended. Where none is, all stays as it was.
func (l *pool) lessRounded(places []int, use, at int, of []int) ([]int, int) {
	other := slices.Clone(places)
	for other[at] != l.choose(other) {
		of = slices.DeleteFunc(slices.Clone(of), func(i int) bool { return l.results[i].LeftOverML >= l.results[other[at]].LeftOverML })
		if len(of) == 0 {
			return places, use
		}
		other[at] = l.choose(of)
	}
	return other, at
}

// settle simulates what would be shown until all that is was simulated with all the trials asked for.
func (l *pool) settle(ctx context.Context) (places []int, use int, err error) {
	for {
		if err := l.decide(ctx); err != nil {
			return nil, -1, err
		}
		places, use = l.shown()
		again := without(places, l.settled)
		if len(again) == 0 {
			return places, use, nil
		}
		if err := l.simulate(ctx, again, l.options.Settings); err != nil {
			return nil, -1, err
		}
	}
}

// without are those of some places that were not done yet.
func without(places []int, done []bool) (list []int) {
	for _, at := range places {
		if !done[at] && !slices.Contains(list, at) {
			list = append(list, at)
		}
	}
	return list
}

// simulate evaluates some routes.
func (l *pool) simulate(ctx context.Context, places []int, s uncertainty.Settings) error {
	routes := make([]*route.Route, len(places))
	for i, at := range places {
		routes[i] = l.results[at].Route
	}
	c, err := route.Evaluate(ctx, l.prep, routes, s)
	if err != nil {
		return err
	}
	all := l.options.Settings.WithDefaults().Trials
	for i, at := range places {
		l.results[at], l.simulated[at] = c.Results[i], true
		// where fewer trials were enough, more would end with the same
		l.settled[at] = c.Settings.Trials == all || c.Settings.Enough && !l.results[at].MonteCarlo.AtCeiling
	}
	return nil
}

// tune adds to the routes rounder ones: of those with each number of measurements, for half the risk
// and for the chance that is asked for, around those that leave least over.
func (l *pool) tune() error {
	limits := l.options.Search()
	seen := make(map[int]bool)
	for _, base := range l.bases() {
		if seen[base.at] {
			continue
		}
		seen[base.at] = true
		from := l.results[base.at]
		t := tuner{Prep: l.prep, coverage: limits.Coverage, fine: l.options.Fine, base: &from, least: base.least - doubtOf(&from), limits: l.options.Limits}
		t.most = min(t.base.LeftOverML+l.prep.Ask().Near(), limits.MostLeftOver(l.prep))
		if err := t.tune(); err != nil {
			return err
		}
		for _, r := range t.tuned {
			if r.SoluteGrams <= limits.MostSolute() {
				l.add(r, doubtOf(&from))
			}
		}
	}
	l.name()
	return nil
}

// add takes in a route that was not simulated.
func (l *pool) add(r route.Result, doubt float64) {
	l.results, l.simulated, l.settled, l.doubts = append(l.results, r), append(l.simulated, false), append(l.settled, false), append(l.doubts, doubt)
}

// base is the place of a route that others are tuned from, and the chance that they must have.
type base struct {
	at    int
	least float64
}

// bases are the routes that others are tuned from: those that leave least over at each level, and those
// that would be shown.
func (l *pool) bases() (list []base) {
	q := l.prep.Ask()
	levels := []float64{q.Halved(), q.Asked}
	if !q.Tolerant {
		levels = []float64{0}
	}
	for _, level := range levels {
		seen := make(map[int]bool)
		for i := range l.results { // by number of measurements, then by what is left over
			r := &l.results[i]
			if !r.Possible || q.Tolerant && r.Chance() < level || seen[r.Operations] {
				continue
			}
			seen[r.Operations] = true
			list = append(list, base{i, level})
		}
	}
	shown, _ := l.shown()
	for _, at := range shown {
		reached := 0.0
		for _, level := range levels {
			if l.results[at].Chance() >= level {
				reached = max(reached, level)
			}
		}
		list = append(list, base{at, reached})
	}
	return list
}
