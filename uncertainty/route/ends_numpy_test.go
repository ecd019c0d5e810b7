//go:build unix

package route

import (
	"context"
	"fmt"
	"math"
	"runtime"
	"syscall"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"minim/uncertainty"
	"minim/uncertainty/independent"
	"minim/uncertainty/near"
)

// endsPart of the standard deviation is the standard error that both ends are to have.
const endsPart = 0.001

// fewest trials of a run, and the most that are sharpened.
const fewest, mostFew = 10_000, 60_000

// BenchmarkEndsNumpy compares, on one processor, how long it takes until both ends of the interval of each
// route of the demo have a standard error of a thousandth of u: Simulate with as few trials as that takes,
// and plain trials of the same model in numpy, as many as they need.
//
//	NUMPY=python3 go test ./uncertainty/route -run '^$' -bench EndsNumpy -benchtime 1x
//
// Neither counts its start. All ends must agree. With -short numpy draws a part of its trials, and the time
// of the others is added in proportion.
func BenchmarkEndsNumpy(b *testing.B) {
	most := 100_000_000
	if testing.Short() {
		most = 500_000
	}
	for b.Loop() {
		numpy := make(map[string]map[string]independent.Figure)
		for _, f := range independent.Run(b, independentFolder, "ends.py", most) {
			if numpy[f.Of] == nil {
				numpy[f.Of] = make(map[string]independent.Figure)
			}
			numpy[f.Of][f.Quantity] = f
		}
		require.Len(b, numpy, 7)
		table := fmt.Sprintf("%-22s %10s %8s %8s %10s %8s %7s", "route", "trials", "ms", "off", "of numpy", "ms", "factor")
		var ours, theirs float64
		p, err := LoadPrep(sevenRoutes, "")
		require.NoError(b, err)
		for _, r := range p.Routes {
			other, there := numpy[r.Name]
			if !there {
				continue
			}
			_, c, err := p.assess(r, 0.95)
			require.NoError(b, err)
			a, seconds := sharpEnds(b, c)
			for i, end := range []string{"lower", "upper"} {
				f := other[end]
				near.Absolute(b, r.Name+", "+end, f.Value, a.ends[i], f.Within(a.errs[i]))
			}
			of := other["seconds"].Value / other["trials"].Value * other["needed"].Value
			table += fmt.Sprintf("\n%-22s %10d %8.2f %8.5f %10.0f %8.0f %7.0f", r.Name, a.trials, 1e3*seconds,
				a.off(), other["needed"].Value, 1e3*of, of/seconds)
			ours, theirs = ours+seconds, theirs+of
		}
		b.Log(table + "\noff: the standard error of the ends, in u")
		b.ReportMetric(0, "ns/op") // both together: says nothing
		b.ReportMetric(1e3*ours, "ms")
		b.ReportMetric(1e3*theirs, "numpy-ms")
		b.ReportMetric(theirs/ours, "x-numpy")
	}
}

// averaged are the ends of several runs, each with its own seed, by their numbers of trials.
type averaged struct {
	trials     int
	ends, errs [2]float64
	u          float64
}

func (a *averaged) add(mc *uncertainty.MonteCarlo) {
	old, more := float64(a.trials), float64(mc.Trials)
	all := old + more
	for i, end := range [2][2]float64{{mc.Lower, mc.LowerError}, {mc.Upper, mc.UpperError}} {
		a.ends[i] = (old*a.ends[i] + more*end[0]) / all
		a.errs[i] = math.Hypot(old*a.errs[i], more*end[1]) / all
	}
	a.u = (old*a.u + more*mc.StandardDeviation) / all
	a.trials += mc.Trials
}

// off is the larger standard error of both, in u.
func (a *averaged) off() float64 { return max(a.errs[0], a.errs[1]) / a.u }

// sharpEnds simulates until both ends are sure enough, on one processor, at first with the least number of trials and
// then with what is missing, and returns the seconds of processor time that all of it takes: the least of a few times,
// of which the first fills tables that serve all routes.
func sharpEnds(b *testing.B, c *compiler) (a averaged, least float64) {
	before := runtime.GOMAXPROCS(1)
	defer runtime.GOMAXPROCS(before)
	least = math.Inf(1)
	for range 5 {
		runtime.GC()
		a = averaged{}
		start := processorTime(b)
		for seed, trials := uint64(1), fewest; trials > 0; seed++ {
			mc, err := c.model.Simulate(context.Background(), c.strength, uncertainty.Settings{Trials: trials, Seed: seed})
			require.NoError(b, err)
			a.add(&mc)
			trials = 0
			if part := a.off() / endsPart; part > 1 {
				trials = max(fewest, min(int(1.05*(part*part-1)*float64(a.trials)), mostFew))
			}
		}
		least = min(least, (processorTime(b) - start).Seconds())
	}
	return a, least
}

func processorTime(b *testing.B) time.Duration {
	var used syscall.Rusage
	require.NoError(b, syscall.Getrusage(syscall.RUSAGE_SELF, &used))
	return time.Duration(used.Utime.Nano() + used.Stime.Nano())
}
