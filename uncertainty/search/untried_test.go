package search

import (
	"context"
	"math"
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

// missing are the routes of a pass that one search finds and another does not.
func missing(whole, some []found, dilutions int, from route.Verb) (list []found) {
	for _, f := range whole {
		if f.Dilutions == dilutions && f.Route.Steps[0].Verb == from && !strings.Contains(describe(some)[0]+strings.Join(describe(some), "\n"), describe([]found{f})[0]) {
			list = append(list, f)
		}
	}
	return list
}

// Where a search is cut short it says of each pass, begun or not, what all routes leave over that it has not tried
// and that no other beats: each that the whole search finds and it does not leaves over as much or more.
// Where that is said of none, nothing is missing.
func TestWhatIsNotTriedLeavesMore(t *testing.T) {
	smallbench.SkipIfSlow(t)
	preps := map[string]*route.Prep{"small": smallbench.On(t, smallbench.Prep, smallbench.Kit)}
	for name, path := range map[string]string{"demo": "../../cmd/minim/demo/dye.toml", "workshop": "../../testdata/benches/violin-workshop/preservative.toml", "pistons": "../../testdata/benches/pistons/enzyme.toml"} {
		p, err := read.LoadPrep(context.Background(), path, "")
		require.NoError(t, err)
		preps[name] = p
	}
	said, proven := 0, 0
	for name, p := range preps {
		for _, all := range []bool{false, true} {
			steps := 3
			if all {
				steps = 2
			}
			_, whole := cutShort(t, p, steps, 0, all)
			for _, work := range []int64{1, 1000, 10_000, 50_000, 200_000, 1_000_000} {
				s, some := cutShort(t, p, steps, work, all)
				text := strings.Join(note.Texts(s.NotSearched), "\n")
				assert.Equal(t, s.CutShort, strings.Contains(text, "are tried"))
				if s.CutShort && strings.Contains(text, " or more)") {
					said++
				}
				for n := 0; n <= steps; n++ {
					for _, from := range []route.Verb{route.Weigh, route.UsePacket, route.Measured, route.Start} {
						least := math.Inf(1)
						for _, stage := range s.stages() {
							if code := stage.name; stage.prepare != nil && (code.String() == passName(n, from, nil).String() || strings.Contains(code.String(), passName(n, from, nil).String()+" in which")) {
								of, err := s.leastOf(context.Background(), stage, 0)
								require.NoError(t, err)
								least = min(least, of)
							}
						}
						for _, f := range missing(whole, some, n, from) {
							assert.GreaterOrEqual(t, f.merit.leftOver, least-1e-9, "%s, %d candidates: %s", name, work, describe([]found{f})[0])
							if f.Route.Steps[0].Verb != route.Weigh || f.Route.Steps[len(f.Route.Steps)-1].Verb != route.WeighUpTo {
								assert.GreaterOrEqual(t, f.merit.leftOver, s.Untried-1e-9, "%s, %d candidates", name, work)
							}
						}
						if math.IsInf(least, 1) {
							proven++
						}
					}
				}
			}
		}
	}
	assert.Positive(t, said)
	assert.Positive(t, proven)
}
