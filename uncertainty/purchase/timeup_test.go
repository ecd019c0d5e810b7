package purchase

import (
	"context"
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"minim/equipment/quantity"
	"minim/uncertainty/plan"
	"minim/uncertainty/smallbench"
	"minim/uncertainty/tolerances"
)

// A line takes what other searches know of balances that read as coarsely or more, with as
// many dilutions (constructed).
func TestCurveTakesWhatIsKnown(t *testing.T) {
	inf := math.Inf(1)
	known := []knownRoute{{2, 0.2, 0.05}, {2, 0.02, 0.04}, {3, 5, 0.001}}
	c := Curve{Dilutions: 2, Readability: []float64{0.001, 0.01, 0.1, 1}, Relative: []float64{0.09, inf, 0.10, 0.3}, CutShort: []bool{false, true, true, true}}
	c.takeKnown(known)
	assert.Equal(t, []float64{0.04, 0.04, 0.05, 0.3}, c.Relative)
	c = Curve{Dilutions: 2, Readability: []float64{0.01, 0.1}, Relative: []float64{0.2, 0.1}, CutShort: []bool{true, false}}
	c.takeKnown(nil)
	assert.Equal(t, []float64{0.1, 0.1}, c.Relative, "the coarser one does as well")
}

// In whatever is said of a purchase, searches that were cut short are marked; without a
// limit none is. A readability that is good enough is never above the line of its dilutions.
func TestPurchaseSaysWhereItWasCutShort(t *testing.T) {
	smallbench.SkipIfSlow(t)
	p := smallbench.On(t, smallbench.Prep, smallbench.Kit)
	for _, limit := range []int64{1, 0} {
		o := quick(2)
		o.Work = limit
		bought, err := Buy(context.Background(), p, o)
		require.NoError(t, err)
		up := limit > 0
		for i := range bought.Choices {
			assert.Equal(t, up, bought.Choices[i].CutShort)
		}
		for _, c := range bought.Curves {
			require.Len(t, c.CutShort, len(c.Relative))
			assert.NotContains(t, c.CutShort, !up)
		}
		for _, e := range bought.BreakEven {
			if up {
				assert.True(t, e.CutShort && e.Readability == 0)
			}
		}
		found, err := plan.Search(context.Background(), p, o)
		if err == nil {
			assert.Equal(t, up, found.CutShort)
		}
	}
}

// What may be left over is shown as it was stated, without the room for rounding.
func TestMostLeftOverIsAsStated(t *testing.T) {
	smallbench.SkipIfSlow(t)
	p := smallbench.On(t, smallbench.Prep, smallbench.Kit)
	o := quick(0)
	for _, c := range []struct{ leftOver, volume, want float64 }{{0, 0, p.Volume}, {50, 0, 50}, {50, p.Volume + 30, 30}, {0, p.Volume + 30, 30}} {
		o.LeftOver, o.Volume = c.leftOver, c.volume
		bought, err := Buy(context.Background(), p, o)
		require.NoError(t, err)
		assert.Equal(t, quantity.Millilitres(c.want), quantity.Millilitres(bought.MostLeftOver))
		assert.InDelta(t, c.want, bought.MostLeftOver, 1e-12)
	}
	assert.Equal(t, "50 mL", quantity.Millilitres(50*(1+1e-9)))
}

// What the lines and the coarsest readability say never contradict each other: where a
// readability is good enough, the line of its dilutions is within the tolerance at the next
// power of ten below it or at it, but for what the expected strength is off.
func TestLinesAgreeWithTheCoarsestReadability(t *testing.T) {
	smallbench.SkipIfSlow(t)
	p := smallbench.On(t, strings.Replace(smallbench.Prep, "8 % of target", "20 % of target", 1), smallbench.Kit)
	o := quick(2)
	bought, err := Buy(context.Background(), p, o)
	require.NoError(t, err)
	seen := 0
	for _, e := range bought.BreakEven {
		for i, d := range bought.Curves[e.Dilutions].Readability {
			if e.Readability == 0 || d > e.Readability {
				continue
			}
			seen++
			assert.Less(t, bought.Curves[e.Dilutions].Relative[i], tolerances.HalfWidth(p)*1.02, "%d dilutions, %v g", e.Dilutions, d)
		}
	}
	assert.Positive(t, seen)
}
