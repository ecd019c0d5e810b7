package plan

import (
	"context"
	"fmt"

	"minim/report/words/verb"
	"minim/uncertainty"
	"minim/uncertainty/route"
)

// searchTrials are simulated of a route that is found, to choose by.
const searchTrials = 100_000

// newPool holds routes that were found, and rounder ones beside them.
func newPool(ctx context.Context, p *route.Prep, list []route.Result, o Options) (*pool, error) {
	l, err := poolOf(p, list, o)
	if err == nil {
		err = l.decide(ctx)
	}
	if err == nil {
		err = l.tune()
	}
	return l, err
}

// poolOf holds routes that were found.
func poolOf(p *route.Prep, list []route.Result, o Options) (*pool, error) {
	l := &pool{prep: p, options: o, found: len(list)}
	for _, r := range list {
		if err := p.Misread(&r); err != nil {
			return nil, err
		}
		l.add(r, doubt)
	}
	l.name()
	return l, nil
}

// name gives each route a name of its own.
func (l *pool) name() {
	routes := make([]*route.Route, len(l.results))
	for i := range l.results {
		routes[i] = l.results[i].Route
	}
	nameAll(routes)
}

// decide simulates routes that were found, with few trials, until what is chosen is the same as if all had been.
func (l *pool) decide(ctx context.Context) error {
	for {
		again := without(l.deciding(), l.simulated)
		if len(again) == 0 {
			return nil
		}
		if err := l.simulate(ctx, again, Fewer(l.options.Settings)); err != nil {
			return err
		}
	}
}

// simulateFound simulates all routes that were found and were not simulated yet, with few trials.
func (l *pool) simulateFound(ctx context.Context) error {
	again := without(l.allFound(), l.simulated)
	if len(again) == 0 {
		return nil
	}
	return l.simulate(ctx, again, Fewer(l.options.Settings))
}

// allFound are the places of all routes that were found.
func (l *pool) allFound() (list []int) {
	for i := range l.found {
		list = append(list, i)
	}
	return list
}

// deciding are the places of the routes that were found by which all are chosen: of those with each number
// of measurements, for each level of chance that the policy knows, the one that leaves least over, and of those that
// are inside when all is misread that one; where none reaches what is asked for, the surest; those that are recommended and shown. Without a
// tolerance, or where the tightest is preferred, any may decide.
func (l *pool) deciding() (list []int) {
	q := l.prep.Ask()
	if !q.Tolerant || l.options.Prefer == route.Tightest {
		return l.allFound()
	}
	type kind struct {
		operations, level int
		misread           bool
	}
	seen, surest := make(map[kind]bool), -1
	for i := range l.found { // by number of measurements, then by what is left over
		r := &l.results[i]
		if !r.Possible {
			continue
		}
		if surest < 0 || l.chance(i) > l.chance(surest) {
			surest = i
		}
		for level, least := range []float64{q.Asked, q.Halved()} {
			if of := (kind{r.Operations, level, l.prep.OutsideIfMisread(r)}); l.chance(i) >= least && !seen[of] {
				seen[of] = true
				list = append(list, i)
			}
		}
	}
	if len(list) == 0 && surest >= 0 {
		list = append(list, surest)
	}
	shown, _ := l.shown()
	for _, at := range append(shown, l.first()) {
		if at >= 0 && at < l.found {
			list = append(list, at)
		}
	}
	return list
}

// Fewer are the settings of the first simulation.
func Fewer(s uncertainty.Settings) uncertainty.Settings {
	short := s.WithDefaults()
	short.Trials = min(short.Trials, searchTrials)
	if short.Check() != nil { // a high coverage probability needs more
		return s
	}
	return short
}

// nameAll gives each route a name of its own.
func nameAll(routes []*route.Route) {
	used := make(map[string]int)
	for _, r := range routes {
		name := verb.Name(r.Steps)
		used[name]++
		if n := used[name]; n > 1 {
			name = fmt.Sprintf("%s (%d)", name, n)
		}
		r.Name = name
	}
}
