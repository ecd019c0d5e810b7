package plan

import (
	"context"
	"fmt"

	"minim/report/words/verb"
	"minim/uncertainty"
	"minim/uncertainty/route"
)

// searchTrials are simulated of each route that is found, to choose among them.
const searchTrials = 100_000

// newPool simulates routes that were found, of those that turn out to be possible, with few
// trials at first, and adds rounder ones to them.
func newPool(ctx context.Context, p *route.Prep, list []route.Result, o Options) (*pool, error) {
	routes := make([]*route.Route, len(list))
	for i := range list {
		routes[i] = list[i].Route
	}
	nameAll(routes)
	fewer := Fewer(o.Settings)
	all, err := route.Evaluate(ctx, p, routes, fewer)
	if err != nil {
		return nil, err
	}
	l := &pool{prep: p, options: o}
	for i := range all.Results {
		if all.Results[i].Possible {
			l.add(all.Results[i], 0)
			at := len(l.results) - 1
			// where fewer trials were enough, more would end with the same
			l.simulated[at], l.settled[at] = true, fewer.Trials == o.Settings.WithDefaults().Trials || fewer.Enough && !l.results[at].MonteCarlo.AtCeiling
		}
	}
	return l, l.tune()
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
