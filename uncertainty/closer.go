package uncertainty

import (
	"context"
	"math"
	"runtime"
	"sync"
	"sync/atomic"

	"minim/uncertainty/parallel"
	"minim/uncertainty/portable"
	"minim/uncertainty/random"
	"minim/uncertainty/sharp"
)

// Quantity is a node together with the model that it belongs to.
type Quantity struct {
	Model *Model
	Node  Node

	ready *Ready // by which what was compiled serves again, if any
}

// purpose is what a program is compiled for, beside the smooth influence.
type purpose struct {
	smooth int // its number, -1 for none
	of     use
}

type use int

// A program draws an output by itself, beside the first of several quantities, or as that first.
const (
	alone use = iota
	besideFirst
	asFirst
)

// program without a linear part, with the keys of its random streams.
func (q *Quantity) program(of use, keys streams, as *sharp.Sharpening) *program {
	slopes := make([]float64, len(q.Model.influences))
	if q.ready == nil {
		return q.Model.compileWith(q.Node, slopes, keys, as)
	}
	return q.ready.program(of, keys, slopes, as)
}

// CloserTo returns for each of some quantities the chance that it comes closer
// to a target than the first of them does; ½ for the first itself, and ties
// count half. What one shares with the first, influences of the same owner and code,
// sees the same draws in both, so that only their difference counts. The
// standard error of a chance p is no more than the larger of 0.0005 and ½/√M for M trials, which is what counting
// leaves open at the most; of the settings only their number, the seed and Plain, which
// asks for counting, count. Errors: [Settings.Check], [ZeroDivisorError],
// [ErrNotFinite], and that of the context.
func CloserTo(ctx context.Context, target float64, quantities []Quantity, s Settings) ([]float64, error) {
	if len(quantities) == 0 {
		return nil, nil
	}
	s = s.WithDefaults()
	if err := s.Check(); err != nil {
		return nil, err
	}
	chances := make([]float64, len(quantities))
	chances[0] = 0.5
	for _, q := range quantities {
		if err := q.Model.checkDivisors(q.Model.reachable(q.Node)); err != nil {
			return nil, err
		}
	}
	done, first := make([]bool, len(quantities)), newChampion(quantities[0], s)
	parallel.Do(len(quantities)-1, len(quantities), func(_, i int) {
		i++
		done[i] = sharpCloser(ctx, target, first, quantities[i], s, &chances[i])
	})
	var programs []*program
	var counted []int
	for i, q := range quantities {
		if !done[i] {
			programs = append(programs, q.program(besideFirst, q.beside(quantities[0].Model), nil))
			counted = append(counted, i)
		}
	}
	if len(programs) == 1 {
		return chances, ctx.Err()
	}
	points, err := countCloser(ctx, target, programs, s)
	if err != nil {
		return nil, err
	}
	for k, i := range counted {
		chances[i] = float64(points[k].Load()) / float64(2*s.Trials)
	}
	return chances, nil
}

// spaces are used again.
var spaces = sync.Pool{New: func() any { return new(sharp.Space) }}

// sharpCloser finds a chance by few trials, and reports whether that is as sure as by counting.
func sharpCloser(ctx context.Context, target float64, first *champion, other Quantity, s Settings, chance *float64) bool {
	if s.Plain || ctx.Err() != nil {
		return false
	}
	in := spaces.Get().(*sharp.Space)
	defer spaces.Put(in)
	in.Clear()
	d := newDuel(ctx, target, first, other, s, in)
	if d == nil {
		return false
	}
	for _, trials := range []int{min(fewestTrials, s.Trials), min(sharp.MostTrials, s.Trials)} {
		e, ok := d.chance(ctx, trials)
		if *chance = e.Value; !ok {
			return false
		}
		if e.Err <= max(printedChance, 0.5/math.Sqrt(float64(s.Trials))) { // what counting leaves open at the most
			return true
		}
	}
	return false
}

// countCloser gives each program two points for each trial in which it comes
// closer than the first, and one for a tie.
func countCloser(ctx context.Context, target float64, programs []*program, s Settings) ([]atomic.Int64, error) {
	points := make([]atomic.Int64, len(programs))
	var strange atomic.Bool
	processors := runtime.GOMAXPROCS(0)
	workers := make([][]*worker, processors)
	for i := range workers {
		for _, p := range programs {
			workers[i] = append(workers[i], p.newWorker(s.Seed))
		}
	}
	err := parallel.Until(ctx, random.Blocks(s.Trials), processors, func(processor, b int) {
		first, _ := workers[processor][0].run(b)
		first = first[:min(random.BlockSize, s.Trials-b*random.BlockSize)]
		for i, w := range workers[processor] {
			values, _ := w.run(b)
			n, isFinite := pointsAgainst(first, values, target)
			points[i].Add(n)
			if !isFinite {
				strange.Store(true)
			}
		}
	})
	if strange.Load() {
		return nil, ErrNotFinite
	}
	return points, err
}

func pointsAgainst(first, values []float64, target float64) (points int64, isFinite bool) {
	sum := 0.0
	for i, f := range first {
		a, b := math.Abs(values[i]-target), math.Abs(f-target)
		sum += a
		switch {
		case a < b:
			points += 2
		case a == b:
			points++
		}
	}
	return points, portable.IsFinite(sum)
}
