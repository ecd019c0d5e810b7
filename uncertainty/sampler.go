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

func (m *Model) newSampler(out Node, s Settings) *sampler {
	v := m.values(out, mean)
	gradient := m.gradient(out, v)
	slopes := uncut(gradient, m.cuts(m.reachable(out)))
	sm := &sampler{progress: s.Progress}
	pilot := m.sharpPilot(out, v, gradient, slopes, s)
	if pilot == nil {
		pilot = newPilot(m.compile(out, slopes), s.Seed)
	} else {
		sm.sharp = sharp.NewTrials(pilot.worker.sharp)
	}
	sm.workers = append(sm.workers, pilot.worker)
	for range runtime.GOMAXPROCS(0) - 1 {
		sm.workers = append(sm.workers, pilot.worker.program.newWorker(s.Seed))
	}
	u, moments := m.linearMoments(slopes)
	sm.control = sharp.NewControl(pilot.values, pilot.linear, v[out], u, moments)
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
