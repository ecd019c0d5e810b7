package search

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
	// signature tells routes of equal merit apart, so that their order is always the
	// same.
	signature string
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
		list = append(list, found{r, s.judge.merit(&r), s.places.signature(r.Route)})
	}
	return unbeaten(list), nil
}

// unbeaten keeps what no other beats.
func unbeaten(list []found) []found {
	slices.SortFunc(list, func(a, b found) int {
		return cmp.Or(a.merit.compare(b.merit), cmp.Compare(a.signature, b.signature))
	})
	var kept []found
	for _, f := range list {
		if !slices.ContainsFunc(kept, func(k found) bool { return k.merit.beats(f.merit) }) {
			kept = append(kept, f)
		}
	}
	return kept
}

// route puts a chain into words that the model understands.
func (c *chain) route() *route.Route {
	r := &route.Route{Steps: slices.Clone(c.begin)}
	if c.source != nil {
		first := c.source.step
		if first.Verb == route.Weigh {
			first.Amount = c.reading
		}
		r.Steps = []route.Step{first}
		if first.Verb == route.Start && c.source.by != nil {
			r.Steps = append(r.Steps, c.source.by.step)
		}
	}
	if c.pieces != nil && c.pieces[2*len(c.ways)] > 1 {
		r.Steps[len(r.Steps)-1].Piece = c.pieces[2*len(c.ways)]
	}
	for i := len(c.ways) - 1; i >= 0; i-- {
		r.Steps = append(r.Steps, c.withPieces(i, c.ways[i].steps())...)
	}
	return r
}

// places are those of instruments, stocks and packets in their files, from 1 on: routes
// are put in order by them, and not by names.
type places map[any]int

func placesIn(p *route.Prep) places {
	of := make(places)
	placed(of, p.Kit.Balances)
	placed(of, p.Kit.Measures)
	placed(of, p.Stocks)
	placed(of, p.Packets)
	return of
}

// placed puts a list behind those that have their places.
func placed[T any](of places, list []*T) {
	for _, one := range list {
		of[one] = len(of) + 1
	}
}

// signature holds all that the steps of a route do, and with what.
func (of places) signature(r *route.Route) string {
	var text strings.Builder
	for i := range r.Steps {
		s := &r.Steps[i]
		place := of[s.Measure]
		switch {
		case s.Balance != nil:
			place = of[s.Balance]
		case s.Measure == nil && s.Stock != nil:
			place = of[s.Stock]
		case s.Packet != nil:
			place = of[s.Packet]
		}
		fmt.Fprintf(&text, "%s %v %06d.%d ", s.Verb, s.Amount, place, s.Piece)
	}
	return text.String()
}
