package uncertainty

import (
	"encoding/json"
	"fmt"
	"io"
	"math"
	"os"
	"os/exec"
	"runtime"
	"slices"
	"strconv"
	"sync"
	"sync/atomic"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"minim/uncertainty/near"
	"minim/uncertainty/random"
)

// BenchmarkNumpy compares Simulate with the same model in vectorised numpy
// (testdata/speed/dilution.py), and with a bare loop of the same draws and
// arithmetic, by turns in one run:
//
//	NUMPY=python3 go test ./uncertainty -run '^$' -bench Numpy -benchtime 1x
//
// Numpy works out mean, standard deviation and the symmetric interval, which
// must agree; Simulate finds the shortest interval and the standard errors as
// well; the bare loop keeps nothing. Garbage is collected between the runs.
func BenchmarkNumpy(b *testing.B) {
	if os.Getenv("NUMPY") == "" {
		b.Skip("runs only when NUMPY names a Python interpreter that has numpy, as in NUMPY=python3")
	}
	numpy := startNumpy(b)
	for _, trials := range []int{1e6, 1e7} {
		b.Run(fmt.Sprint("trials=", trials), func(b *testing.B) {
			for b.Loop() {
				one, all := race(b, numpy, trials)
				reportSpeeds(b, trials, one, all)
			}
		})
	}
}

// speedRounds is the number of times that each contender runs; the median counts.
const speedRounds = 7

// speeds holds the seconds of each round on one number of processors.
type speeds struct {
	processors            int
	simulate, numpy, bare []float64
}

// race lets all run by turns, on one processor and on all.
func race(b *testing.B, numpy *numpyScript, trials int) (one, all speeds) {
	one.processors, all.processors = 1, runtime.GOMAXPROCS(0)
	defer runtime.GOMAXPROCS(all.processors)
	for seed := range uint64(speedRounds) {
		one.round(b, numpy, trials, seed)
		all.round(b, numpy, trials, seed)
	}
	return one, all
}

func (s *speeds) round(b *testing.B, numpy *numpyScript, trials int, seed uint64) {
	runtime.GOMAXPROCS(s.processors)
	var mc MonteCarlo
	m, strength := speedModel()
	s.simulate = append(s.simulate, secondsOf(func() {
		mc = simulate(b, m, strength, Settings{Trials: trials, Seed: seed})
	}))
	answer := numpy.evaluate(b, trials, s.processors)
	mustAgree(b, &mc, answer)
	s.numpy = append(s.numpy, answer.Seconds)
	s.bare = append(s.bare, secondsOf(func() { runBare(trials, seed) }))
}

func secondsOf(run func()) float64 {
	runtime.GC()
	start := time.Now()
	run()
	return time.Since(start).Seconds()
}

// reportSpeeds writes a table and the ratios of medians.
func reportSpeeds(b *testing.B, trials int, one, all speeds) {
	table := fmt.Sprintf("%d trials, %d rounds by turns\n", trials, speedRounds)
	table += fmt.Sprintf("%-10s %10s %9s %9s %9s %9s", "", "processors", "median ms", "least", "most", "ns/trial")
	for _, s := range []speeds{one, all} {
		row := func(name string, seconds []float64) {
			table += fmt.Sprintf("\n%-10s %10d %9.1f %9.1f %9.1f %9.1f", name, s.processors, 1e3*median(seconds),
				1e3*slices.Min(seconds), 1e3*slices.Max(seconds), 1e9*median(seconds)/float64(trials))
		}
		row("Simulate", s.simulate)
		row("numpy", s.numpy)
		row("bare loop", s.bare)
	}
	b.Log(table)
	b.ReportMetric(0, "ns/op") // all rounds together: says nothing
	b.ReportMetric(median(one.numpy)/median(one.simulate), "x-numpy,both-on-one")
	b.ReportMetric(median(all.numpy)/median(all.simulate), "x-numpy,both-on-all")
	b.ReportMetric(median(one.numpy)/median(all.simulate), "x-numpy,on-all-against-one")
	b.ReportMetric(100*median(one.bare)/median(one.simulate), "%-of-limit,on-one")
	b.ReportMetric(100*median(all.bare)/median(all.simulate), "%-of-limit,on-all")
}

// median of an odd number of values.
func median(x []float64) float64 { return slices.Sorted(slices.Values(x))[len(x)/2] }

// numpyScript is the script at work: a process that answers requests, so that
// neither its start nor its imports are timed.
type numpyScript struct {
	in  io.Writer
	out *json.Decoder
}

type numpyAnswer struct {
	Trials                        int
	Seconds, Mean, Std, Low, High float64
}

func startNumpy(b *testing.B) *numpyScript {
	cmd := exec.Command(os.Getenv("NUMPY"), "../testdata/speed/dilution.py")
	cmd.Stderr = os.Stderr
	in, err := cmd.StdinPipe()
	require.NoError(b, err)
	out, err := cmd.StdoutPipe()
	require.NoError(b, err)
	require.NoError(b, cmd.Start())
	b.Cleanup(func() {
		require.NoError(b, in.Close())
		require.NoError(b, cmd.Wait())
	})
	return &numpyScript{in, json.NewDecoder(out)}
}

func (s *numpyScript) evaluate(b *testing.B, trials, threads int) (a numpyAnswer) {
	_, err := fmt.Fprintln(s.in, trials, threads)
	require.NoError(b, err)
	require.NoError(b, s.out.Decode(&a))
	return a
}

// mustAgree fails unless each figure is within five standard errors of the
// difference between two independent runs of so many trials.
func mustAgree(b *testing.B, mc *MonteCarlo, numpy numpyAnswer) {
	if mc.Trials != numpy.Trials {
		b.Fatalf("numpy ran %d trials, Simulate %d", numpy.Trials, mc.Trials)
	}
	agree := func(what string, ours, numpys, ofOneTrial float64) {
		if e := ofOneTrial * math.Sqrt(2/float64(mc.Trials)); !(math.Abs(ours-numpys) <= 5*e) {
			b.Fatalf("%s: Simulate has %v, numpy %v, the standard error of the difference is %v", what, ours, numpys, e)
		}
	}
	u := mc.StandardDeviation
	agree("mean", mc.Mean, numpy.Mean, u)
	agree("standard deviation", u, numpy.Std, u*math.Sqrt(kurtosis(mc)-1)/2)
	agree("lower end", mc.Lower, numpy.Low, quantileScatter(mc, 0.025))
	agree("upper end", mc.Upper, numpy.High, quantileScatter(mc, 0.975))
}

func kurtosis(mc *MonteCarlo) float64 {
	const n = 10_000
	sum := 0.0
	for i := range n {
		z := (mc.Quantile((float64(i)+0.5)/n) - mc.Mean) / mc.StandardDeviation
		sum += z * z * z * z
	}
	return sum / n
}

// quantileScatter is the standard error of the p-quantile times √M: √(p(1-p))
// over the density there.
func quantileScatter(mc *MonteCarlo, p float64) float64 {
	const h = 0.005
	return math.Sqrt(p*(1-p)) * (mc.Quantile(p+h) - mc.Quantile(p-h)) / (2 * h)
}

// speedInputs are the influences of an invented preparation, after a route of a
// weighing and two dilutions.
var speedInputs = [20]Distribution{
	Normal{Mu: 0, Sigma: 0.00913}, PlusMinus(0.005), PlusMinus(0.005), PlusMinus(0.02), // 0 to 3: weighing of 1.5 g
	Rectangular{Low: 0.97, High: 1}, PlusMinus(3), Normal{Mu: 1, Sigma: 1.0 / 3}, // 4 assay, 5 temperature less 20 °C, 6 meniscus
	Peaked(0.04), Normal{Mu: 0, Sigma: 0.0095}, // 7, 8: flask of 25 mL
	Peaked(0.02), Gamma{Mu: 0.03, Sigma: 0.0115}, // 9, 10: pipette of 2 mL and its last drop
	Peaked(0.4), Peaked(0.08), Rectangular{Low: 0, High: 0.05}, // 11 to 13: 25 mL in a cylinder
	Peaked(0.05), Peaked(0.01), Gamma{Mu: 0.1, Sigma: 0.05}, // 14 to 16: pipette of 5 mL and its last drop
	Peaked(0.5), Peaked(0.1), Rectangular{Low: 0, High: 0.05}, // 17 to 19: 20 mL in another
}

// Thermal expansion of the vessel less that of the liquid, in 1/°C.
const inGlass, inPlastic = -0.00109, -0.00065

// speedModel has the strength of the preparation, in g/mL, as its output. As in
// a route, an influence is added where it is first used.
func speedModel() (*Model, Node) {
	m := new(Model)
	in := func(i int) Node { return add(m, strconv.Itoa(i), speedInputs[i]) }
	plus := func(value float64, inputs ...int) Node {
		sum := m.Constant(value)
		for _, i := range inputs {
			sum = m.Add(sum, in(i))
		}
		return sum
	}
	times := func(factor float64, i int) Node { return m.Multiply(m.Constant(factor), in(i)) }
	solute := m.Multiply(plus(1.5, 0, 1, 2, 3), in(4))
	glass := m.Add(m.Constant(1), times(inGlass, 5))
	plastic := m.Add(m.Constant(1), times(inPlastic, 5))
	flask := m.Multiply(m.Subtract(plus(25, 7, 8), times(0.02, 6)), glass)
	c := m.Divide(solute, flask)
	aliquot := m.Multiply(m.Subtract(plus(2.03, 9), in(10)), glass)
	cylinder := m.Multiply(m.Subtract(plus(25, 11, 12, 13), times(0.15, 6)), plastic)
	c = m.Divide(m.Multiply(c, aliquot), cylinder)
	aliquot = m.Multiply(m.Subtract(plus(2.6, 14, 15), in(16)), glass)
	cylinder = m.Multiply(m.Subtract(plus(20, 17, 18, 19), times(0.15, 6)), plastic)
	return m, m.Divide(m.Multiply(c, aliquot), cylinder)
}

// bareBlock is the number of trials that the bare loop draws at a time: the
// draws of all influences stay in the nearest cache.
const bareBlock = 128

// bareLoop is the model written by hand. Nothing is interpreted, kept or
// counted: the limit of what Simulate could reach.
type bareLoop struct {
	source *random.Source
	x      [len(speedInputs)][bareBlock]float64
	y      [bareBlock]float64
}

func (l *bareLoop) run(seed uint64, block int) {
	for i, d := range speedInputs {
		l.source.Key(seed, uint64(i), block)
		d.Fill(l.x[i][:], l.source)
	}
	x := &l.x
	for j := range l.y {
		solute := (1.5 + x[0][j] + x[1][j] + x[2][j] + x[3][j]) * x[4][j]
		glass, plastic := 1+inGlass*x[5][j], 1+inPlastic*x[5][j]
		flask := (25 + x[7][j] + x[8][j] - 0.02*x[6][j]) * glass
		c := solute / flask
		aliquot := (2.03 + x[9][j] - x[10][j]) * glass
		cylinder := (25 + x[11][j] + x[12][j] + x[13][j] - 0.15*x[6][j]) * plastic
		c = c * aliquot / cylinder
		aliquot = (2.6 + x[14][j] + x[15][j] - x[16][j]) * glass
		cylinder = (20 + x[17][j] + x[18][j] + x[19][j] - 0.15*x[6][j]) * plastic
		l.y[j] = c * aliquot / cylinder
	}
}

// runBare runs the bare loop on all processors and throws the values away.
func runBare(trials int, seed uint64) {
	var next atomic.Int64
	var wait sync.WaitGroup
	for range runtime.GOMAXPROCS(0) {
		wait.Add(1)
		go func() {
			defer wait.Done()
			l := &bareLoop{source: new(random.Source)}
			for block := next.Add(1) - 1; block*bareBlock < int64(trials); block = next.Add(1) - 1 {
				l.run(seed, int(block))
			}
		}()
	}
	wait.Wait()
}

// TestBareLoop: the bare loop works out what the model does.
func TestBareLoop(t *testing.T) {
	m, strength := speedModel()
	l := &bareLoop{source: new(random.Source)}
	l.run(1, 0)
	for j := range l.y {
		v := m.values(strength, func(in *Influence) float64 {
			i, err := strconv.Atoi(string(in.Code))
			require.NoError(t, err)
			return l.x[i][j]
		})
		near.Relative(t, "strength", v[strength], l.y[j], 1e-14)
	}
}
