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

// simulated evaluates routes that were found and chooses one; use is -1 where none turns
// out to be possible. Which of them are shown may hang on the one that is chosen. Those
// that are shown are simulated with all the trials asked for, so that they show what a
// comparison shows of them; the others with fewer.
func simulated(ctx context.Context, p *route.Prep, list []found, o Options, shown func(c *route.Comparison, use int) []int) (all *route.Comparison, use int, err error) {
	routes := make([]*route.Route, len(list))
	for i := range list {
		routes[i] = list[i].Route
	}
	nameAll(routes)
	if all, err = route.Evaluate(ctx, p, routes, Fewer(o.Settings)); err != nil {
		return nil, -1, err
	}
	for settled := make(map[*route.Route]bool); ; {
		if all = possible(all); len(all.Results) == 0 {
			return all, -1, nil
		}
		use = choose(all, o.Prefer)
		if Fewer(o.Settings).Trials == o.Settings.WithDefaults().Trials {
			return all, use, nil // all were simulated as is asked for
		}
		var places []int
		for _, at := range shown(all, use) {
			if r := all.Results[at].Route; !settled[r] {
				settled[r], places = true, append(places, at)
			}
		}
		if len(places) == 0 {
			return all, use, nil
		}
		if err := again(ctx, all, places, o.Settings); err != nil {
			return nil, -1, err
		}
	}
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

// again simulates some routes of a comparison with other settings, which are then its
// own.
func again(ctx context.Context, all *route.Comparison, places []int, s uncertainty.Settings) error {
	routes := make([]*route.Route, len(places))
	for i, at := range places {
		routes[i] = all.Results[at].Route
	}
	c, err := route.Evaluate(ctx, all.Prep, routes, s)
	if err != nil {
		return err
	}
	for i, at := range places {
		all.Results[at] = c.Results[i]
	}
	all.Settings = c.Settings
	return nil
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
