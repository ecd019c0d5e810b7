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
	space    *space
}

// newSampler draws the pilot as well. What it returns is of no use once the context is done.
func (r *Ready) newSampler(ctx context.Context, s Settings) *sampler {
	m, out := r.model, r.out
	v := m.values(out, mean)
	gradient := m.gradient(out, v)
	slopes := uncut(gradient, m.cuts(r.needed))
	sm := &sampler{progress: s.Progress, space: &r.space}
	pilot := r.sharpPilot(ctx, v[out], gradient, slopes, s)
	if pilot == nil {
		pilot = newPilot(ctx, r.program(alone, m.ownStreams(), slopes, nil), s.Seed, &r.space)
	} else {
		sm.sharp = newSharpTrials(pilot.worker.sharp, &r.space)
	}
	sm.workers = append(sm.workers, pilot.worker)
	for range runtime.GOMAXPROCS(0) - 1 {
		sm.workers = append(sm.workers, pilot.worker.program.newWorkerIn(s.Seed, &r.space))
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
