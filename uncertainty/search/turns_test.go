package search

import (
	"context"
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"minim/report/words/note"
	"minim/uncertainty/parallel"
	"minim/uncertainty/route"
	"minim/uncertainty/smallbench"
)

// said is all that a search of limited work comes to, in words.
func said(t *testing.T, p *route.Prep, work int64, worthOnly bool) string {
	o := quick(2)
	o.Work = work
	s := atAnyChance(t, p, o)
	s.judge.worthOnly = worthOnly
	list, err := s.result(context.Background())
	require.NoError(t, err)
	var words []string
	for i := range list {
		words = append(words, list[i].signature)
	}
	for _, text := range note.Texts(s.NotSearched) {
		words = append(words, "not searched: "+text)
	}
	if work > 0 {
		assert.Less(t, s.counts.work(), work+assessing)
		return fmt.Sprint(strings.Join(words, "\n"), s.counts)
	}
	return strings.Join(words, "\n")
}

// A search that may try no more than so many candidates ends with the same routes, says the
// same of what it has not searched and has tried as many, on 1, 2 and 8 processors, and it
// never tries more. With room for all it leaves nothing out.
func TestLimitIsTheSameOnAnyMachine(t *testing.T) {
	smallbench.SkipIfSlow(t)
	p := smallbench.On(t, smallbench.Prep, smallbench.Kit)
	whole := said(t, p, 0, false)
	assert.NotContains(t, whole, "not searched")
	for worthOnly, works := range map[bool][]int64{false: {1, 7, 1000, 5000, 10_000, 20_000}, true: {1, 7, 300, 700}} {
		for _, work := range works {
			first := smallbench.OnProcessors(1, func() string { return said(t, p, work, worthOnly) })
			assert.Contains(t, first, "not searched")
			for _, n := range []int{2, 8} {
				assert.Equal(t, first, smallbench.OnProcessors(n, func() string { return said(t, p, work, worthOnly) }), "%d candidates on %d processors", work, n)
			}
		}
	}
	assert.Contains(t, said(t, p, 1<<40, false), whole)
}

// What a walk panics with reaches the goroutine that searches, with its place.
func TestPanicOfAWalk(t *testing.T) {
	b, err := NewBench(smallbench.On(t, smallbench.Prep, smallbench.Kit), quick(1))
	require.NoError(t, err)
	o := quick(1)
	s := newSearch(b, o, newJudge(b.prep, b.coverage, tooLittle, enough))
	s.mostWeighed = 1
	s.sources[0].step.Balance = nil // which no bench has
	defer func() {
		fault := parallel.Caught(recover())
		assert.Contains(t, fault.Error(), "nil pointer")
		assert.Regexp(t, `\.go:\d+$`, fault.Place)
	}()
	_ = s.run(context.Background())
	assert.Fail(t, "it must panic")
}
