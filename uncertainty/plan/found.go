package plan

import (
	"cmp"
	"context"
	"fmt"
	"slices"
	"strings"

	"minim/uncertainty/route"
)

// found is a route that the search has found, evaluated by its model as a whole.
type found struct {
	route.Result
	merit merit
	// words tell routes of equal merit apart, so that their order is always the
	// same.
	words string
}

// found evaluates the chains that the search ended with and keeps those that no
// other beats, those with few operations first, then those with little left over.
func (s *search) found(ctx context.Context) ([]found, error) {
	var list []found
	for _, c := range s.front.chains() {
		if err := ctx.Err(); err != nil {
			return nil, err
		}
		r, err := s.prep.Assess(c.route(), s.coverage)
		if err != nil {
			return nil, err
		}
		if !r.Possible || !r.Informative {
			continue
		}
		list = append(list, found{r, s.judge.merit(&r), wordsOf(r.Route)})
	}
	return unbeaten(list), nil
}

// unbeaten keeps what no other beats.
func unbeaten(list []found) []found {
	slices.SortFunc(list, func(a, b found) int {
		return cmp.Or(a.merit.compare(b.merit), cmp.Compare(a.words, b.words))
	})
	var kept []found
	for _, f := range list {
		if !slices.ContainsFunc(kept, func(k found) bool { return k.merit.beats(f.merit) }) {
			kept = append(kept, f)
		}
	}
	return kept
}

// wordsOf names all that the steps of a route do, and with what.
func wordsOf(r *route.Route) string {
	var words strings.Builder
	for i := range r.Steps {
		s := &r.Steps[i]
		fmt.Fprintf(&words, "%s %v", s.Verb, s.Amount)
		switch {
		case s.Measure != nil:
			words.WriteString(s.Measure.Name)
		case s.Balance != nil:
			words.WriteString(s.Balance.Name)
		case s.Stock != nil:
			words.WriteString(s.Stock.Name)
		case s.Packet != nil:
			words.WriteString(s.Packet.Name)
		}
	}
	return words.String()
}

// route puts a chain into words that the model understands.
func (c *chain) route() *route.Route {
	if c.whole != nil {
		return c.whole
	}
	first := c.source.step
	if first.Verb == route.Weigh {
		first.Amount = c.reading
	}
	r := &route.Route{Steps: []route.Step{first}}
	for i := len(c.ways) - 1; i >= 0; i-- {
		r.Steps = append(r.Steps, c.ways[i].steps()...)
	}
	return r
}
