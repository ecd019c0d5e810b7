package uncertainty

import (
	"context"
	"math"
	"runtime"
	"sync"
	"sync/atomic"
)

// sampler draws trials of one output, block by block on all processors.
type sampler struct {
	workers []*worker
	// y is the first-order value, scale the unit that the sums are taken in,
	// as a factor; variance is that of the linear part.
	y, scale, variance float64
	total              sums
	progress           func(trials int)
}

func (m *Model) newSampler(out Node, s Settings) *sampler {
	v := m.values(out, mean)
	gradient := m.gradient(out, v)
	p := m.compile(out, gradient)
	sm := &sampler{y: v[out], variance: m.linearVariance(gradient), progress: s.Progress}
	for range runtime.GOMAXPROCS(0) {
		sm.workers = append(sm.workers, p.newWorker(s.Seed))
	}
	sm.scale = 1 / typicalSize(sm.workers[0], sm.y)
	return sm
}

// linearVariance is the variance of Σ slope (x - mean), infinite where an
// influence has none.
func (m *Model) linearVariance(slopes []float64) float64 {
	c := make([]float64, len(slopes))
	for i, slope := range slopes {
		if slope != 0 {
			c[i] = slope * math.Sqrt(m.influences[i].Distribution.Variance())
		}
	}
	u := combine(c, m.correlate(c))
	return u * u
}

// typicalSize of the deviations from y in the first block; it keeps their fourth
// powers from running out of range.
func typicalSize(w *worker, y float64) float64 {
	values, _ := w.run(0)
	sum := 0.0
	for _, v := range values {
		sum += math.Abs(v-y) / blockSize
	}
	if sum == 0 || !finite(sum) {
		return 1
	}
	return sum
}

// fill draws trials into values, from the given block on, and adds them to the
// total. The digits do not depend on the number of processors: the sums of the
// blocks are added in their order.
func (s *sampler) fill(ctx context.Context, values []float64, firstBlock int) (sums, error) {
	blocks := make([]sums, blocksFor(len(values)))
	var next atomic.Int64
	var wait sync.WaitGroup
	for _, w := range s.workers[:min(len(s.workers), len(blocks))] {
		wait.Add(1)
		go func() {
			defer wait.Done()
			for ctx.Err() == nil {
				b := int(next.Add(1)) - 1
				if b >= len(blocks) {
					return
				}
				part := values[b*blockSize : min((b+1)*blockSize, len(values))]
				drawn, linear := w.run(firstBlock + b)
				copy(part, drawn)
				blocks[b] = sumsOf(part, linear, s.y, s.scale)
			}
		}()
	}
	wait.Wait()
	if err := ctx.Err(); err != nil {
		return sums{}, err
	}
	var round sums
	for _, b := range blocks {
		round.add(b)
	}
	s.total.add(round)
	if s.progress != nil {
		s.progress(len(values))
	}
	return round, nil
}

func blocksFor(trials int) int { return (trials + blockSize - 1) / blockSize }

// mean and deviation of the output, from sums of this sampler.
func (s *sampler) mean(t *sums) estimate {
	e := t.mean()
	return estimate{s.y + e.value/s.scale, e.err / s.scale}
}

func (s *sampler) deviation(t *sums) estimate {
	e := t.deviation(s.variance * s.scale * s.scale)
	return estimate{e.value / s.scale, e.err / s.scale}
}
