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
	off  float64
	gain sharp.Gain
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
func newPilots(ctx context.Context, drawn *program, ways []sharp.Sharpening, seed uint64, in *sharp.Space) []*pilot {
	pilots := make([]pilot, len(ways))
	for k := range ways {
		way := &ways[k]
		pilots[k].rests = way.NewRests(pilotBlocks*random.BlockSize, in)
	}
	first := newPilot(ctx, drawn, seed, in, func(p *pilot, b int, values []float64) {
		block := p.worker.asideOf(values)
		for k := range ways {
			way := &ways[k]
			p, rests := &pilots[k], pilots[k].rests.From(b*random.BlockSize, (b+1)*random.BlockSize)
			if !math.IsInf(p.off, 1) {
				if way.Record(block, rests) {
					p.off = max(p.off, way.Off(rests))
				} else {
					p.off = math.Inf(1)
				}
			}
		}
	})
	list := make([]*pilot, len(ways))
	for k := range ways {
		p, as, worker := &pilots[k], *drawn, *first.worker
		as.sharp, worker.program = &ways[k], &as
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
// one, by the linear part of the output or, where that leaves an end unsure, of its logarithm; nil where
// nothing is won by it.
func (r *Ready) sharpPilot(ctx context.Context, v, gradient, slopes []float64, s Settings) *pilot {
	m, out := r.model, r.out
	if s.Plain || s.Digits == 0 && s.Trials > sharp.MostTrials {
		return nil
	}
	cuts := m.cuts(r.needed)
	with := func(linear *sharp.Linear) *pilot {
		if linear == nil || linear.Law.Coarse {
			return nil
		}
		return m.smoothest(ctx, linear, m.canBeSmooth(linear), v[out], cuts, s, &r.space, func(as *sharp.Sharpening) *program {
			return r.program(alone, m.ownStreams(), slopes, as)
		})
	}
	best := with(r.drawnPart(gradient, s.Coverage))
	if best == nil || best.gain.Worse() < sureGain {
		if other := with(m.logarithmicPart(out, v, gradient, s.Coverage)); best == nil || other != nil && other.gain.Worse() > worthGain*best.gain.Worse() {
			best = other
		}
	}
	if best == nil || best.gain.Better() < leastGain {
		return nil
	}
	return best
}

// smoothest draws the pilot with each influence of a list that can be the smooth one, until the output is
// exactly what it is taken for; if it never is, that by which most is won.
func (m *Model) smoothest(ctx context.Context, linear *sharp.Linear, list []int, y float64, cuts []float64, s Settings, in *sharp.Space, compile func(*sharp.Sharpening) *program) (best *pilot) {
	for _, i := range list {
		as := sharp.Sharpening{Linear: linear, Y: y, Tail: (1 - s.Coverage) / 2}
		if !m.smoothInfluence(&as, i, cuts[i]) {
			continue
		}
		for _, p := range newPilots(ctx, compile(&as), ways(as), s.Seed, in) {
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
			if best == nil || p.gain.Worse() > best.gain.Worse() {
				best = p
			}
		}
	}
	return best
}

// ways in which the output may go by the smooth influence.
func ways(as sharp.Sharpening) (list []sharp.Sharpening) {
	for _, raised := range []bool{false, true} {
		for _, straight := range []bool{true, false} {
			if as.Raised, as.Straight = raised, straight; !raised || !as.Linear.Bend[as.Linear.Part[as.Smooth]].IsPlain() {
				list = append(list, as)
			}
		}
	}
	return list
}

// canBeSmooth lists the influences that are worth being the smooth one, the largest first, and before them those in whose
// factor the output need not be raised to a power.
func (m *Model) canBeSmooth(l *sharp.Linear) (list []int) {
	var raised []int
	for _, i := range m.bySize(l.Slopes, leastSmooth*l.Scale) {
		if l.Bend[l.Part[i]].IsPlain() {
			list = append(list, i)
		} else {
			raised = append(raised, i)
		}
	}
	list = append(list, raised...)
	return list[:min(len(list), mostSmooth)]
}

// bySize lists the influences that make a size of a linear part, the largest first.
func (m *Model) bySize(slopes []float64, least float64) (list []int) {
	size := func(i int) float64 {
		return math.Abs(slopes[i]) * m.influences[i].Distribution.Summary().StandardUncertainty
	}
	for i := range slopes {
		if size(i) >= least {
			list = append(list, i)
		}
	}
	slices.SortStableFunc(list, func(a, b int) int { return cmp.Compare(size(b), size(a)) })
	return list
}

// leastGain is how many times the variance of one end must become less, and sureGain how many times that of both ends so
// that no other way is tried; worthGain is how many times more the other must give.
const (
	leastGain = 2
	sureGain  = 1000
	worthGain = 2
)
