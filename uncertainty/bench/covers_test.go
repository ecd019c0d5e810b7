package bench_test

import (
	"context"
	"fmt"
	"go/parser"
	"go/token"
	"math"
	"math/rand/v2"
	"os"
	"runtime"
	"strconv"
	"strings"
	"sync/atomic"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"minim/uncertainty"
	"minim/uncertainty/bench"
	"minim/uncertainty/parallel"
	"minim/uncertainty/route"
)

// covered is a kind of bench, and within which bounds an interval of 95 % has to hold the truth, in
// 100. σ is 0.3, 1 and 3 times the limit of error, or in %.
type covered struct {
	name        string
	make        func(c coin, ratio float64) made
	ratios      []float64
	least, most float64
}

var (
	threeRatios = []float64{0.3, 1, 3}
	oneRatio    = []float64{1}
)

var coverages = []covered{
	{"piston, 4 readings", aliquots(4, 1), threeRatios, 92, 98},
	{"piston, 6 readings", aliquots(6, 1), threeRatios, 92, 98},
	{"piston, 10 readings", aliquots(10, 1), threeRatios, 92, 98},
	{"pipette with one mark, 4 readings", glass(4), threeRatios, 92, 98},
	{"the same, 6 readings as masses of water", weighedWater, threeRatios, 92, 98},
	{"balance, 4 readings", weighedSolute, threeRatios, 92, 98},
	{"the same, readings of a check weight", checkedSolute, threeRatios, 92, 98},
	{"one σ of 4 readings in nine uses", aliquots(4, 9), threeRatios, 92, 98},
	{"readings at two marks, used at three", twoMarks, threeRatios, 92, 98},
	{"limits alone", limitsAlone, threeRatios, 92, 98},
	{"curve of a balance", byCurve, threeRatios, 92, 98},
	{"stock by its label", byLabel, threeRatios, 92, 98},
	{"stock by the table", byTable, threeRatios, 92, 98},
	{"piston, 2 readings", aliquots(2, 1), threeRatios, 93, 100},
	{"piston, 3 readings", aliquots(3, 1), threeRatios, 93, 100},
	{"two pistons, 2 and 3 readings", twoSets(2, 3), threeRatios, 93, 100},
	{"scatter alone, 2 readings", scatterAlone(2), oneRatio, 94, 96},
	{"scatter alone, 3 readings", scatterAlone(3), oneRatio, 94, 96},
	{"scatter alone, 4 readings", scatterAlone(4), oneRatio, 94, 96},
	{"flask that divides, 5 readings alone", filled, threeRatios, 94, 96},
	{"mean and scatter of 4 readings alone", poured, oneRatio, 94, 96},
}

// holds reports whether the interval that is quoted of a bench holds its truth.
func holds(t testing.TB, b made, seed uint64) bool {
	kit, err := bench.ParseKit("kit.toml", []byte(b.kit))
	require.NoError(t, err, b.kit)
	p, err := bench.ParsePrep("prep.toml", []byte(b.prep), kit)
	require.NoError(t, err, b.prep)
	c, err := route.Evaluate(context.Background(), p, p.Routes, uncertainty.Settings{Trials: 10_000, Seed: seed, Coverage: 0.95})
	require.NoError(t, err)
	r := &c.Results[0]
	require.True(t, r.Possible, "%v %s", r.Reason, b.kit)
	return r.Quoted.Lower <= b.strength && b.strength <= r.Quoted.Upper
}

// covers is the share in 100 of so many benches of a kind.
func (k *covered) covers(t testing.TB, column, times int) float64 {
	var held atomic.Int64
	parallel.Do(times, runtime.GOMAXPROCS(0), func(_, i int) {
		seed := uint64(i)<<8 + uint64(column)
		b := k.make(coin{rand.New(rand.NewPCG(seed, 2026))}, k.ratios[column])
		if holds(t, b, seed+1) {
			held.Add(1)
		}
	})
	return 100 * float64(held.Load()) / float64(times)
}

// times is how many benches of a kind are made: MINIM_COVERAGE, or else a few of the kinds that are
// few, for one σ.
func times(kind, column int) int {
	if n, err := strconv.Atoi(os.Getenv("MINIM_COVERAGE")); err == nil {
		return n
	}
	if few[coverages[kind].name] == coverages[kind].ratios[column] {
		return fewTimes
	}
	return 0
}

// few is what is looked at in every run of the tests, by σ. Were two readings taken as normal, the first would be
// covered in 70 of 100.
var (
	few      = map[string]float64{"scatter alone, 2 readings": 1, "one σ of 4 readings in nine uses": 3, "curve of a balance": 0.3}
	fewTimes = 100
)

// TestCoverage makes benches whose truth is known, and looks how often the interval that minim quotes
// holds it: so many of each kind as MINIM_COVERAGE says, 4000 for the table in DEVELOPERS.md, which it
// prints.
func TestCoverage(t *testing.T) {
	for i, k := range coverages {
		row := "| " + k.name
		for column, ratio := range k.ratios {
			n := times(i, column)
			if n == 0 {
				continue
			}
			share := k.covers(t, column, n)
			within := 400 * math.Sqrt(0.95*0.05/float64(n)) // four standard errors
			assert.GreaterOrEqual(t, share, k.least-within, "%s, σ %v", k.name, ratio)
			assert.LessOrEqual(t, share, k.most+within, "%s, σ %v", k.name, ratio)
			row += fmt.Sprintf(" | %.1f", share)
		}
		if os.Getenv("MINIM_COVERAGE") != "" {
			fmt.Printf("%s | %v to %v |\n", row, k.least, k.most)
		}
	}
}

// TestTruthKnowsNoEngine: what makes the benches imports nothing of the project.
func TestTruthKnowsNoEngine(t *testing.T) {
	for _, name := range []string{"truth_test.go", "truthbymass_test.go"} {
		f, err := parser.ParseFile(token.NewFileSet(), name, nil, parser.ImportsOnly)
		require.NoError(t, err)
		for _, in := range f.Imports {
			assert.False(t, strings.HasPrefix(in.Path.Value, `"minim`), in.Path.Value)
		}
	}
}
