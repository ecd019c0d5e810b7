package uncertainty

import (
	"context"
	"runtime"

	"minim/uncertainty/parallel"
)

// sampler draws trials of one output, block by block on all processors.
type sampler struct {
	workers  []*worker
	control  control
	total    sums
	progress func(trials int)
	sharp    *sharpTrials // nil where the order of the trials is all that counts
}

func (m *Model) newSampler(out Node, s Settings) *sampler {
	v := m.values(out, mean)
	gradient := m.gradient(out, v)
	slopes := uncut(gradient, m.cuts(m.reachable(out)))
	sm := &sampler{progress: s.Progress}
	pilot := m.sharpPilot(out, v[out], gradient, slopes, s)
	if pilot == nil {
		pilot = newPilot(m.compile(out, slopes), s.Seed)
	} else {
		sm.sharp = newSharpTrials(pilot.worker.sharp)
	}
	sm.workers = append(sm.workers, pilot.worker)
	for range runtime.GOMAXPROCS(0) - 1 {
		sm.workers = append(sm.workers, pilot.worker.program.newWorker(s.Seed))
	}
	sm.control = m.newControl(pilot, v[out], slopes)
	return sm
}

// fill draws trials into values, from the given block on, and adds them to the
// total. The digits do not depend on the number of processors: the sums of the
// blocks are added in their order.
func (s *sampler) fill(ctx context.Context, values []float64, firstBlock int) error {
	blocks := make([]sums, blocksFor(len(values)))
	if s.sharp != nil {
		s.sharp.extend(len(values))
	}
	parallel.Do(len(blocks), len(s.workers), func(worker, b int) {
		if ctx.Err() != nil {
			return
		}
		part := values[b*blockSize : min((b+1)*blockSize, len(values))]
		drawn, linear := s.workers[worker].run(firstBlock + b)
		copy(part, drawn)
		blocks[b] = s.control.sum(part, linear)
		if s.sharp != nil {
			s.sharp.take(s.workers[worker], part, b)
		}
	})
	if err := ctx.Err(); err != nil {
		return err
	}
	for _, b := range blocks {
		s.total.add(b)
	}
	if s.sharp != nil {
		s.sharp.addUp(len(values))
	}
	if s.progress != nil {
		s.progress(len(values))
	}
	return nil
}

func blocksFor(trials int) int { return (trials + blockSize - 1) / blockSize }
