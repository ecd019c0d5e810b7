package search

import (
	"context"
	"fmt"
	"runtime"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"minim/report/words/note"
	"minim/uncertainty/route"
	"minim/uncertainty/smallbench"
)

// manyMarks is a bench of scales with the most lines that are read (constructed).
func manyMarks(n int) string {
	var b strings.Builder
	for i := range n {
		fmt.Fprintf(&b, "[[cylinder]]\nname = \"c%d\"\ncapacity = \"2 L\"\ndivision = \"1 mL\"\nnumbered = \"10 mL\"\ntolerance = \"%d.5 mL\"\n", i, i+1)
	}
	return b.String()
}

// inUse is the memory in MB that is held at the most while something is done, looked at
// every few milliseconds.
func inUse(do func()) float64 {
	ended, most := make(chan struct{}), make(chan uint64)
	go func() {
		var peak uint64
		for {
			var m runtime.MemStats
			runtime.ReadMemStats(&m)
			peak = max(peak, m.Sys-m.HeapReleased)
			select {
			case <-ended:
				most <- peak
				return
			case <-time.After(20 * time.Millisecond):
			}
		}
	}()
	do()
	close(ended)
	return float64(<-most) / 1e6
}

// A kit of many lines takes no more than 300 MB, and a search of it says which marks it
// has not tried.
func TestManyMarksTakeLittleMemory(t *testing.T) {
	smallbench.SkipIfSlow(t)
	p := smallbench.On(t, smallbench.Prep, smallbench.Kit+manyMarks(12))
	for _, fine := range []bool{false, true} {
		mB := inUse(func() {
			o := quick(2)
			o.Fine, o.Work = fine, 100_000
			b, err := NewBench(p, o)
			require.NoError(t, err)
			_, err = b.Find(context.Background())
			require.NoError(t, err)
			assert.Regexp(t, `marks other than one in (10|50|100) of the c0, the c1, .*all would be too many routes`, strings.Join(note.Texts(b.NotSearched), "; "))
		})
		assert.Less(t, mB, 300.0)
	}
}

// Every n-th mark is kept, with the capacity; the rest is said. What the bench can pair
// is kept whole.
func TestThinnedMarks(t *testing.T) {
	p := smallbench.On(t, smallbench.Prep, smallbench.Kit+manyMarks(3))
	all := newTried(p.Kit, true)
	some := all.thinned(10_000)
	assert.LessOrEqual(t, some.pairs(), 10_000)
	for k, marks := range some {
		assert.Contains(t, marks, all[k][len(all[k])-1], "the capacity stays")
		assert.IsIncreasing(t, append([]float64{0}, marks...))
		assert.Subset(t, all[k], marks)
	}
	left := some.leftOut(p.Kit, all)
	assert.Contains(t, strings.Join(note.Texts(left), "\n"), " of the c0, the c1, the c2 (all would be too many routes)")
	assert.Equal(t, all, all.thinned(all.pairs()))
	assert.Empty(t, all.leftOut(p.Kit, all))
}

// TestOneDilutionOfAStockIsSifted: where the pairs of all marks are too many to keep, one
// dilution of a stock still tries each that comes near the target, as it would with all
// pairs at hand.
func TestOneDilutionOfAStockIsSifted(t *testing.T) {
	smallbench.SkipIfSlow(t)
	const prep = "target = \"0.4 % w/v\"\nvolume = \"300 mL\"\ntolerance = \"8 % of target\"\n[[stock]]\nname = \"strong\"\nstrength = \"6 % w/v\"\n" +
		"[solute]\nname = \"x\"\n[solvent]\nname = \"water\"\n"
	p := smallbench.On(t, prep, manyMarks(2))
	o := Options{Limits: route.Limits{Steps: 1}, Fine: true}
	sifted, err := NewBench(p, o)
	require.NoError(t, err)
	require.Greater(t, newTried(p.Kit, true).pairs(), mostPairs)
	require.True(t, sifted.oneFromStocks())
	assert.Empty(t, sifted.NotSearched)
	assert.Less(t, len(sifted.dilutions), mostPairs)

	got, err := newSearch(sifted, o, atLevels(p, 0.95, lower...)).result(context.Background())
	require.NoError(t, err)
	whole := &Bench{prep: p, coverage: 0.95, keys: sifted.keys, unit: sifted.unit, evaporated: sifted.evaporated, sources: sifted.sources, sourceBound: sifted.sourceBound}
	taken, err := whole.factors(route.Take, newTried(p.Kit, true), p.TakenFactor)
	require.NoError(t, err)
	contained, err := whole.factors(route.MakeUpTo, newTried(p.Kit, true), p.ContainedFactor)
	require.NoError(t, err)
	for i := range taken { // a part of all pairs at a time
		whole.addDilutions(taken[i:i+1], contained, everything)
		s := newSearch(whole, o, atLevels(p, 0.95, lower...))
		list, err := s.result(context.Background())
		require.NoError(t, err)
		for _, f := range list {
			assert.False(t, strings.Contains(f.signature, "add"), "made up to marks only")
			beaten := false
			for _, g := range got {
				beaten = beaten || g.merit == f.merit || g.merit.beats(f.merit)
			}
			assert.True(t, beaten, f.signature)
		}
		whole.dilutions = nil
		if i > 400 || i > 40 && !smallbench.Thorough {
			break
		}
	}
}

// TestPiecesAlikeAreNotAllListed: of many instruments alike, all routes of one merit are
// the same but for names; ten of them are kept, the same ten each time.
func TestPiecesAlikeAreNotAllListed(t *testing.T) {
	var kit strings.Builder
	kit.WriteString("[[balance]]\nname = \"scale\"\ncapacity = \"200 g\"\nreadability = \"0.01 g\"\nrepeatability = \"0.01 g\"\nlinearity = \"0.02 g\"\n")
	for i := range 40 {
		fmt.Fprintf(&kit, "[[flask]]\nname = \"f%02d\"\ncapacity = \"50 mL\"\nclass = \"A\"\n", i)
	}
	const prep = "target = \"2 % w/v\"\nvolume = \"20 mL\"\ntolerance = \"8 % of target\"\n[solute]\nname = \"x\"\n[solvent]\nname = \"water\"\n"
	p := smallbench.On(t, prep, kit.String())
	var first []string
	for range 3 {
		b, err := NewBench(p, Options{Limits: route.Limits{Steps: 0}})
		require.NoError(t, err)
		s := newSearch(b, Options{}, newJudge(p, 0.95, tooLittle, enough))
		s.only = true
		list, err := s.result(context.Background())
		require.NoError(t, err)
		require.Len(t, list, mostAlike)
		got := describe(list)
		for i := range got {
			assert.Contains(t, got[i], fmt.Sprintf("f%02d", i))
		}
		if first != nil {
			assert.Equal(t, first, got)
		}
		first = got
	}
}
