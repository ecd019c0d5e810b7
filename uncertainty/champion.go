package uncertainty

import (
	"context"
	"runtime"
	"slices"
	"sync"

	"minim/uncertainty/parallel"
	"minim/uncertainty/random"
	"minim/uncertainty/sharp"
)

// champion is the first of some quantities, drawn once for all duels with the others.
type champion struct {
	Quantity
	settings Settings
	slopes   []float64
	linear   *sharp.Linear // nil where there is none
	as       *sharp.Sharpening
	lock     sync.Mutex
	draws    firstDraws
}

// firstDraws are output and y + L of each trial, those of the blocks of a pilot before the others.
type firstDraws struct{ values, linear []float64 }

// block has n trials.
func (f firstDraws) block(b, n int) (values, linear []float64) {
	from := (b + pilotBlocks) * random.BlockSize
	return f.values[from : from+n], f.linear[from : from+n]
}

// newChampion has all slopes of its model.
func newChampion(first Quantity, s Settings) *champion {
	v := first.Model.values(first.Node, mean)
	return (&champion{Quantity: first, settings: s}).with(first.Model.gradient(first.Node, v), v[first.Node])
}

// with is the same quantity with a linear part of given slopes: itself where they are its own.
func (c *champion) with(slopes []float64, y float64) *champion {
	if c.slopes != nil && slices.Equal(slopes, c.slopes) {
		return c
	}
	other := &champion{Quantity: c.Quantity, settings: c.settings, slopes: slopes}
	if other.linear = c.Model.drawnPart(slopes, c.settings.Coverage); other.linear != nil {
		other.as = &sharp.Sharpening{Linear: other.linear, Y: y, Smooth: -1}
	}
	return other
}

// drawn are at least so many trials, and those of a pilot.
func (c *champion) drawn(ctx context.Context, trials int) firstDraws {
	c.lock.Lock()
	defer c.lock.Unlock()
	had, blocks := len(c.draws.values)/random.BlockSize, pilotBlocks+random.Blocks(trials)
	if had >= blocks {
		return c.draws
	}
	more := firstDraws{make([]float64, blocks*random.BlockSize), make([]float64, blocks*random.BlockSize)}
	copy(more.values, c.draws.values)
	copy(more.linear, c.draws.linear)
	p := c.program(asFirst, c.Model.ownStreams(), c.as)
	workers := make([]*worker, runtime.GOMAXPROCS(0))
	parallel.Do(blocks-had, len(workers), func(at, i int) {
		if ctx.Err() != nil {
			return
		}
		if workers[at] == nil {
			workers[at] = p.newWorker(c.settings.Seed)
		}
		b := had + i - pilotBlocks
		values, linear := more.block(b, random.BlockSize)
		drawn, _ := workers[at].run(b)
		copy(values, drawn)
		c.as.Output(workers[at].aside.block, linear)
	})
	c.draws = more
	return more
}
