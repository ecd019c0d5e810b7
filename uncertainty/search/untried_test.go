package search

import (
	"context"
	"math"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"minim/report/words/note"
	read "minim/uncertainty/bench"
	"minim/uncertainty/route"
	"minim/uncertainty/smallbench"
)

// cutShort is a search that may try no more than so many candidates, 0 for all.
func cutShort(t *testing.T, p *route.Prep, steps int, work int64, all bool) (*search, []found) {
	t.Helper()
	o := quick(steps)
	o.Work, o.All = work, all
	b, err := NewBench(p, o)
	require.NoError(t, err)
	s := newSearch(b, o, levelled(p, b.coverage))
	list, err := s.result(context.Background())
	require.NoError(t, err)
	return s, list
}

// sourceVerbs are those that a route by volume may begin with, the last for what is weighed up first.
var sourceVerbs = []route.Verb{route.Weigh, route.UsePacket, route.Measured, route.Start, route.WeighUpTo}

// missing are the routes by volume of a kind of pass that one search finds and another does not.
func missing(whole, some []found, dilutions int, from route.Verb) (list []found) {
	for _, f := range whole {
		verb, made := f.Route.Steps[0].Verb, f.Dilutions
		if slices.ContainsFunc(f.Route.Steps, func(s route.Step) bool { return s.Verb == route.WeighUpTo }) {
			verb, made = route.WeighUpTo, len(f.Route.Steps)/2-1
		}
		if verb == route.WeighUpTo && f.Route.Steps[len(f.Route.Steps)-1].Verb == route.WeighUpTo {
			continue // of what is not diluted by volume then nothing is said
		}
		there := slices.ContainsFunc(some, func(g found) bool { return g.signature == f.signature })
		if made == dilutions && verb == from && !there {
			list = append(list, f)
		}
	}
	return list
}

// bound is what a search says of all passes of a kind together.
func (s *search) bound(t *testing.T, dilutions int, from route.Verb) float64 {
	t.Helper()
	least, kind := math.Inf(1), passName(dilutions, from, nil).String()
	for _, stage := range s.stages() {
		if stage.prepare != nil && strings.Contains(stage.name.String(), kind) {
			of, err := s.leastOf(context.Background(), stage, 0)
			require.NoError(t, err)
			least = min(least, of)
		}
	}
	return least
}

// Where a search is cut short it says of each pass, begun or not, what all routes leave over that it has not tried
// and that no other beats: each that the whole search finds and it does not leaves over as much or more. Where no
// such route can be, nothing is missing.
func TestWhatIsNotTriedLeavesMore(t *testing.T) {
	smallbench.SkipIfSlow(t)
	preps := map[string]*route.Prep{"small": smallbench.On(t, smallbench.Prep, smallbench.Kit)}
	for name, path := range map[string]string{"demo": "../../cmd/minim/demo/dye.toml", "workshop": "../../testdata/benches/violin-workshop/preservative.toml"} {
		p, err := read.LoadPrep(context.Background(), path, "")
		require.NoError(t, err)
		preps[name] = p
	}
	said, useful, proven := 0, 0, 0
	for name, p := range preps {
		for all, steps := range map[bool]int{false: 3, true: 2} {
			_, whole := cutShort(t, p, steps, 0, all)
			for _, work := range []int64{1, 1000, 10_000, 50_000, 200_000, 1_000_000} {
				s, some := cutShort(t, p, steps, work, all)
				untried := s.Untried
				text := strings.Join(note.Texts(s.NotSearched), "\n")
				assert.Equal(t, s.CutShort, strings.Contains(text, "are tried"))
				if strings.Contains(text, " or more)") {
					said++
				}
				for n := range steps + 1 {
					for _, from := range sourceVerbs {
						least := s.bound(t, n, from)
						for _, f := range missing(whole, some, n, from) {
							assert.GreaterOrEqual(t, f.merit.leftOver, max(least, untried), "%s, %d candidates: %s", name, work, describe([]found{f})[0])
							if least > 0 {
								useful++
							}
						}
						if math.IsInf(least, 1) && s.has(from) {
							proven++
						}
					}
				}
			}
		}
	}
	assert.Positive(t, said)
	assert.Positive(t, useful)
	assert.Positive(t, proven)
	t.Log(said, useful, proven)
}
