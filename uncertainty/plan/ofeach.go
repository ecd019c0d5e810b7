package plan

import (
	"context"

	"minim/uncertainty"
	"minim/uncertainty/route"
)

// mostOfEach routes of a list are simulated to choose one of it.
const mostOfEach = 40

// OfEach are of some lists of routes, assessed and not simulated, those that the policy chooses of
// each: what is chosen is simulated, and chosen again, until it stays.
func OfEach(ctx context.Context, p *route.Prep, lists [][]route.Result, s uncertainty.Settings) ([]route.Result, error) {
	l := &pool{prep: p, options: Options{Settings: s, Limits: route.Limits{Prefer: route.Usual}}}
	of, tried := make([][]int, len(lists)), make([]int, len(lists))
	for i, list := range lists {
		for _, r := range list {
			of[i] = append(of[i], len(l.results))
			l.add(r, doubtOf(&r))
		}
	}
	for {
		var chosen []route.Result
		var again []int
		for i, places := range of {
			at := l.choose(places)
			chosen = append(chosen, l.results[at])
			if l.settled[at] {
				continue
			}
			if tried[i]++; tried[i] == mostOfEach {
				of[i] = l.simulatedOf(places)
			}
			again = append(again, at)
		}
		if len(again) == 0 {
			return chosen, nil
		}
		if err := l.simulate(ctx, again); err != nil {
			return nil, err
		}
	}
}

// simulatedOf are those of some places whose routes were simulated.
func (l *pool) simulatedOf(places []int) (some []int) {
	for _, at := range places {
		if l.simulated[at] {
			some = append(some, at)
		}
	}
	return some
}
