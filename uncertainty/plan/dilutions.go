package plan

import (
	"context"

	"minim/report/words/note"
	"minim/uncertainty/route"
)

// Dilutions finds the routes by volume with just so many dilutions as the options say that no
// other beats, as [Search] does. They are neither simulated nor named; notSearched says
// what was left out.
func Dilutions(ctx context.Context, p *route.Prep, o Options) (routes []*route.Route, notSearched []note.Note, err error) {
	b, err := newBench(p, o)
	if err != nil || len(b.dilutions) == 0 {
		return nil, nil, err
	}
	s := newSearch(b, o, newJudge(p, b.coverage, tooLittle, enough))
	s.fewest, s.byVolume = o.Steps, true
	list, err := s.result(ctx)
	for i := range list {
		routes = append(routes, list[i].Route)
	}
	return routes, s.notSearched, err
}
