package uncertainty

import (
	"cmp"
	"context"
	"math"
	"slices"

	"minim/uncertainty/parallel"
	"minim/uncertainty/random"
	"minim/uncertainty/sharp"
)

// pilotBlocks are drawn to fit what makes a run sharper. They are blocks of their own, with
// numbers below 0, so that what is fitted does not know the trials it is used on.
const pilotBlocks = 4

// pilot is a first sample, with the worker that drew it.
type pilot struct {
	worker         *worker
	values, linear []float64
	rests          sharp.Rests // of a sharpened run
	// off is how far, in units of the size of L or of how far x1 moves it, the output may be from
	// what it is taken for.
	off float64
	// gain is how many times less the variance of the better end is than that of sorted trials.
	gain float64
}

// newPilot draws the pilot of a run, and lets each block be looked at.
func newPilot(ctx context.Context, program *program, seed uint64, in *sharp.Space, look func(p *pilot, b int, values []float64)) *pilot {
	n := pilotBlocks * random.BlockSize
	p := &pilot{worker: program.newWorkerIn(seed, in), values: in.Numbers(n), linear: in.Numbers(n)}
	_ = parallel.Until(ctx, pilotBlocks, 1, func(_, b int) { // whoever draws on sees that it is done
		v, l := p.worker.run(-1 - b)
		copy(p.values[b*random.BlockSize:], v)
		copy(p.linear[b*random.BlockSize:], l)
		if look != nil {
			look(p, b, v)
		}
	})
	return p
}

// newPilots draws the pilot of a sharpened run, of each of some ways to take the same trials.
func newPilots(ctx context.Context, drawn *program, ways []*sharp.Sharpening, seed uint64, in *sharp.Space) []*pilot {
	pilots := make([]pilot, len(ways))
	for k, way := range ways {
		pilots[k].rests = way.NewRests(pilotBlocks*random.BlockSize, in)
	}
	first := newPilot(ctx, drawn, seed, in, func(p *pilot, b int, values []float64) {
		block := p.worker.asideOf(values)
		for k, way := range ways {
			p, rests := &pilots[k], pilots[k].rests.From(b*random.BlockSize, (b+1)*random.BlockSize)
			if !math.IsInf(p.off, 1) {
				if way.Record(block, rests) {
					p.off = max(p.off, way.Off(values, rests))
				} else {
					p.off = math.Inf(1)
				}
			}
		}
	})
	list := make([]*pilot, len(ways))
	for k, way := range ways {
		p, as, worker := &pilots[k], *drawn, *first.worker
		as.sharp, worker.program = way, &as
		p.worker, p.values, p.linear = &worker, first.values, first.linear
		list[k] = p
	}
	return list
}

// How far off an output may be so that it counts as what it is taken for, and so that it is worth it.
const (
	hardlyOff  = 1e-6
	mostOffset = 0.02
)

// Of the influences those are tried as the smooth one that make so much of L, at most so many.
const (
	leastSmooth = 0.14
	mostSmooth  = 5
)

// sharpPilot draws the pilot of a sharpened run with the largest influence that can be the smooth
// one; nil where nothing is won by it.
func (r *Ready) sharpPilot(ctx context.Context, y float64, gradient, slopes []float64, s Settings) *pilot {
	if s.Plain || s.Digits == 0 && s.Trials > sharp.MostTrials {
		return nil
	}
	m, linear := r.model, r.drawnPart(gradient, s.Coverage)
	if linear == nil || linear.Law.Coarse {
		return nil
	}
	best := m.smoothest(ctx, linear, m.bySize(linear), y, m.cuts(r.needed), s, &r.space, func(as *sharp.Sharpening) *program {
		return r.program(alone, m.ownStreams(), slopes, as)
	})
	if best == nil || best.gain < leastGain {
		return nil
	}
	return best
}

// smoothest draws the pilot with each influence of a list that can be the smooth one, until the output is
// exactly what it is taken for; if it never is, that by which most is won.
func (m *Model) smoothest(ctx context.Context, linear *sharp.Linear, list []int, y float64, cuts []float64, s Settings, in *sharp.Space, compile func(*sharp.Sharpening) *program) (best *pilot) {
	for _, i := range list {
		bent := &sharp.Sharpening{Linear: linear, Y: y, Tail: (1 - s.Coverage) / 2}
		if !m.smoothInfluence(bent, i, cuts[i]) {
			continue
		}
		straight := *bent
		straight.Straight = true
		for _, p := range newPilots(ctx, compile(bent), []*sharp.Sharpening{&straight, bent}, s.Seed, in) {
			if ctx.Err() != nil {
				return nil
			}
			as := p.worker.sharp
			if as.Exact = p.off <= hardlyOff; p.off <= mostOffset {
				p.gain = as.Lay(p.values, p.rests, in)
			}
			if as.Exact {
				return p
			}
			if best == nil || p.gain > best.gain {
				best = p
			}
		}
	}
	return best
}

// bySize lists the influences that are worth being the smooth one, the largest first.
func (m *Model) bySize(l *sharp.Linear) (list []int) {
	size := func(i int) float64 {
		return math.Abs(l.Slopes[i]) * m.influences[i].Distribution.Summary().StandardUncertainty
	}
	for i := range l.Slopes {
		if size(i) >= leastSmooth*l.Scale {
			list = append(list, i)
		}
	}
	slices.SortStableFunc(list, func(a, b int) int { return cmp.Compare(size(b), size(a)) })
	return list[:min(len(list), mostSmooth)]
}

// leastGain is how many times the variance of one end must become less.
const leastGain = 2
