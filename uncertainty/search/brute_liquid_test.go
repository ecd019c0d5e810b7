package search

import (
	"fmt"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"minim/uncertainty/route"
	"minim/uncertainty/smallbench"
)

// Of liquids that are measured out, by volume and in drops, and of stocks in another solvent, the
// search leaves over no more than the enumeration of all routes at each level and number of
// measurements, but for half a mL or 5 %: it puts routes together without the meniscus and the
// contraction of mixtures. What it finds is among all routes (constructed, on random kits).
func TestLiquidsByVolumeAreNearlyExact(t *testing.T) {
	smallbench.SkipIfSlow(t)
	const kits = uint64(8)
	compared := map[bool]int{}
	for seed := range kits {
		for _, stock := range []bool{false, true} {
			p := randomLiquid(t, rand.New(rand.NewPCG(seed, 7)), stock)
			all := slices.DeleteFunc(bruteForce(t, p, 1), func(r route.Result) bool { // to a stock in another solvent none is added
				return stock && r.Route.Steps[2].Verb == route.Add
			})
			compared[stock] += nearlyExact(t, p, all)
		}
	}
	assert.GreaterOrEqual(t, compared[false], 10)
	assert.Positive(t, compared[true])
}

// reached reports whether a list has a route of as high a level and as few measurements that
// leaves over so many times as much at most, and some mL.
func reached(list []found, one found, times, mL float64) bool {
	for _, f := range list {
		if f.merit.level >= one.merit.level && f.merit.operations <= one.merit.operations && f.merit.leftOver <= one.merit.leftOver*times+mL {
			return true
		}
	}
	return false
}

// randomLiquid is a kit of few instruments with a target in % v/v, or with a stock in another
// solvent.
func randomLiquid(t *testing.T, r *rand.Rand, stock bool) *route.Prep {
	pick := func(list ...string) string { return list[r.IntN(len(list))] }
	var kit strings.Builder
	for i := range 1 + r.IntN(2) {
		size := []float64{1, 2, 5}[r.IntN(3)] // with few numbered marks, so that there are few routes
		fmt.Fprintf(&kit, "[[pipette]]\nname = \"pipette %d\"\nkind = \"graduated\"\ncapacity = \"%v mL\"\nnumbered = \"%v mL\"\nclass = \"B\"\ncount = %d\n", i, size, size/2, 1+r.IntN(2))
	}
	if r.IntN(2) == 0 {
		kit.WriteString("[[dropper]]\nname = \"dropper\"\n")
	}
	for i := range 1 + r.IntN(2) {
		size := []float64{10, 25, 50}[r.IntN(3)]
		fmt.Fprintf(&kit, "[[cylinder]]\nname = \"cylinder %d\"\ncapacity = \"%v mL\"\nnumbered = \"%v mL\"\nclass = \"B\"\nclinging = \"0.05 mL\"\n", i, size, size/2)
	}
	prep := fmt.Sprintf("target = \"%v %% v/v\"\nvolume = \"%d mL\"\ntolerance = %q\n", []float64{10, 4, 1, 0.2}[r.IntN(4)], 5+r.IntN(15), pick("10 % of target", "20 % of target", "30 % of target")) +
		fmt.Sprintf("[solute]\nname = \"oil\"\n[solvent]\nname = %q\n", pick("water", "ethanol"))
	if stock {
		prep = fmt.Sprintf("target = \"%v %% w/v\"\nvolume = \"%d mL\"\ntolerance = %q\n", []float64{1, 0.5, 0.2}[r.IntN(3)], 5+r.IntN(15), pick("10 % of target", "20 % of target", "30 % of target")) +
			"[solute]\nname = \"dye\"\n[solvent]\nname = \"water\"\n[[stock]]\nname = \"strong\"\nsolvent = \"ethanol\"\nstrength = \"5 % w/v\"\n"
	}
	return smallbench.On(t, prep, kit.String())
}
