package uncertainty

import (
	"context"
	"runtime"

	"minim/uncertainty/parallel"
	"minim/uncertainty/random"
	"minim/uncertainty/sharp"
)

// sampler draws trials of one output, block by block on all processors.
type sampler struct {
	workers  []*worker
	control  sharp.Control
	total    sharp.Sums
	progress func(trials int)
	sharp    *sharp.Trials // nil where the order of the trials is all that counts
}

// newSampler draws the pilot as well. What it returns is of no use once the context is done.
func (r *Ready) newSampler(ctx context.Context, s Settings) *sampler {
	m, in := r.model, &r.space
	v := m.values(r.out, mean)
	gradient := m.gradient(r.out, v)
	slopes := uncut(gradient, m.cuts(r.needed))
	sm := &sampler{progress: s.Progress}
	pilot := r.sharpPilot(ctx, v, gradient, slopes, s)
	if pilot == nil {
		pilot = newPilot(ctx, r.program(alone, m.ownStreams(), slopes, nil), s.Seed, in, nil)
	} else {
		sm.sharp = sharp.NewTrials(pilot.worker.sharp, in)
	}
	sm.workers = append(sm.workers, pilot.worker)
	for range runtime.GOMAXPROCS(0) - 1 {
		sm.workers = append(sm.workers, pilot.worker.program.newWorkerIn(s.Seed, in))
	}
	u, moments := m.linearMoments(slopes)
	sm.control = sharp.NewControl(pilot.values, pilot.linear, v[r.out], u, moments)
	return sm
}

// fill draws trials into values, from the given block on, and adds them to the
// total. The digits do not depend on the number of processors: the sums of the
// blocks are added in their order.
func (s *sampler) fill(ctx context.Context, values []float64, firstBlock int) error {
	blocks := make([]sharp.Sums, random.Blocks(len(values)))
	if s.sharp != nil {
		s.sharp.Extend(len(values))
	}
	if err := parallel.Until(ctx, len(blocks), len(s.workers), func(worker, b int) {
		part := values[b*random.BlockSize : min((b+1)*random.BlockSize, len(values))]
		drawn, linear := s.workers[worker].run(firstBlock + b)
		copy(part, drawn)
		blocks[b] = s.control.Sum(part, linear)
		if s.sharp != nil {
			s.sharp.Take(s.workers[worker].asideOf(part), b)
		}
	}); err != nil {
		return err
	}
	for _, b := range blocks {
		s.total.Add(b)
	}
	if s.sharp != nil {
		s.sharp.AddUp(len(values))
	}
	if s.progress != nil {
		s.progress(len(values))
	}
	return nil
}
