package plan

import (
	"context"
	"slices"

	"minim/uncertainty"
	"minim/uncertainty/policy"
	"minim/uncertainty/route"
)

// mostOfEach routes of a list are simulated to choose one of it.
const mostOfEach = 40

// OfEach are of some lists of routes, assessed and not simulated, those that the policy chooses of
// each, and of the list with the one that it chooses of all that one: what is chosen is simulated, and
// chosen again, until it stays.
func OfEach(ctx context.Context, p *route.Prep, lists [][]route.Result, s uncertainty.Settings) ([]route.Result, error) {
	l := &pool{prep: p, options: Options{Settings: s, Limits: route.Limits{Prefer: route.Usual}}}
	of := make([][]int, len(lists)+1) // all of them at last
	for i, list := range lists {
		for _, r := range list {
			of[i] = append(of[i], len(l.results))
			l.add(r, doubtOf(&r))
		}
		of[len(lists)] = append(of[len(lists)], of[i]...)
	}
	figures, tried := make([]policy.Figures, len(l.results)), make([]int, len(of))
	for i := range figures {
		figures[i] = l.figures(i)
	}
	for {
		chosen := make([]int, len(of))
		var again []int
		for i, places := range of {
			chosen[i] = places[p.Ask().Choose(at(figures, places)).Use]
			if l.settled[chosen[i]] || slices.Contains(again, chosen[i]) {
				continue
			}
			if tried[i]++; tried[i] == mostOfEach {
				of[i] = l.simulatedOf(places)
			}
			again = append(again, chosen[i])
		}
		if len(again) == 0 {
			return l.chosenOf(of, chosen), nil
		}
		if err := l.simulate(ctx, again, s); err != nil {
			return nil, err
		}
		for _, i := range again {
			figures[i] = l.figures(i)
		}
	}
}

// at are the figures at some places.
func at(figures []policy.Figures, places []int) (some []policy.Figures) {
	for _, i := range places {
		some = append(some, figures[i])
	}
	return some
}

// chosenOf are the routes that are chosen of each list but the last, which holds all: the one that is chosen of it
// stands for its list.
func (l *pool) chosenOf(of [][]int, chosen []int) (list []route.Result) {
	last := len(of) - 1
	for i, places := range of[:last] {
		if slices.Contains(places, chosen[last]) {
			chosen[i] = chosen[last]
		}
		list = append(list, l.results[chosen[i]])
	}
	return list
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
