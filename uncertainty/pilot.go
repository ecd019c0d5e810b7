package uncertainty

import (
	"cmp"
	"context"
	"math"
	"slices"

	"minim/uncertainty/parallel"
)

// pilotBlocks are drawn to fit what makes a run sharper. They are blocks of their own, with
// numbers below 0, so that what is fitted does not know the trials it is used on.
const pilotBlocks = 4

// pilot is a first sample, with the worker that drew it.
type pilot struct {
	worker         *worker
	values, linear []float64
	rests          rests // of a sharpened run
	// off is how far, in units of the size of L or of how far x1 moves it, the output may be from
	// what it is taken for.
	off float64
	// gain is how many times less the variance of the better end is than that of sorted trials.
	gain  float64
	space *space
}

// newPilots draws the pilot of a sharpened run, of each of some ways to take the same trials.
func newPilots(ctx context.Context, program *program, ways []*sharpening, seed uint64, in *space) []*pilot {
	first := program.newWorkerIn(seed, in)
	pilots := make([]*pilot, len(ways))
	for k, way := range ways {
		as, worker := *program, *first
		as.sharp, worker.program = way, &as
		pilots[k] = &pilot{worker: &worker, rests: way.newRests(pilotBlocks*blockSize, in), space: in}
	}
	values, linear := in.numbers(pilotBlocks*blockSize), in.numbers(pilotBlocks*blockSize)
	parallel.Do(pilotBlocks, 1, func(_, b int) {
		if ctx.Err() != nil {
			return
		}
		from, to := b*blockSize, (b+1)*blockSize
		v, l := first.run(-1 - b)
		copy(values[from:to], v)
		copy(linear[from:to], l)
		for _, p := range pilots {
			p.look(v, p.rests.from(from, to))
		}
	})
	for _, p := range pilots {
		p.values, p.linear = values, linear
	}
	return pilots
}

// look records a block, and looks at how far off it is.
func (p *pilot) look(values []float64, rests rests) {
	if math.IsInf(p.off, 1) {
		return
	}
	if !p.worker.record(values, rests) {
		p.off = math.Inf(1)
		return
	}
	for i, c := range values {
		size := max(p.worker.sharp.linear.scale, math.Abs(c-rests.base[i]))
		p.off = max(p.off, math.Abs(rests.quotient[i]-c)/size) // NaN stays
	}
}

// newPilot draws the pilot of a run that is not sharpened.
func newPilot(ctx context.Context, program *program, seed uint64, in *space) *pilot {
	p := &pilot{worker: program.newWorkerIn(seed, in), values: in.numbers(pilotBlocks * blockSize), linear: in.numbers(pilotBlocks * blockSize)}
	parallel.Do(pilotBlocks, 1, func(_, b int) {
		if ctx.Err() == nil {
			v, l := p.worker.run(-1 - b)
			copy(p.values[b*blockSize:], v)
			copy(p.linear[b*blockSize:], l)
		}
	})
	return p
}

// How far off an output may be so that it counts as what it is taken for, and so that it is worth it.
const (
	hardlyOff  = 1e-6
	mostOffset = 0.02
)

// mostSharpened is the greatest number of trials that are sharpened: with more the order of the
// trials says enough.
const mostSharpened = 60_000

// Of the influences those are tried as the smooth one that make so much of L, at most so many.
const (
	leastSmooth = 0.14
	mostSmooth  = 5
)

// sharpPilot draws the pilot of a sharpened run with the largest influence that can be the smooth
// one; nil where nothing is won by it.
func (r *Ready) sharpPilot(ctx context.Context, y float64, gradient, slopes []float64, s Settings) *pilot {
	if s.Plain || s.Digits == 0 && s.Trials > mostSharpened {
		return nil
	}
	m, linear := r.model, r.linearPart(gradient, s.Coverage)
	if linear == nil || linear.law.Coarse {
		return nil
	}
	best := m.smoothest(ctx, linear, m.bySize(linear), y, m.cuts(r.needed), s, &r.space, func(sharp *sharpening) *program {
		return r.program(alone, m.ownStreams(), slopes, sharp)
	})
	if best == nil || best.gain < leastGain {
		return nil
	}
	return best
}

// smoothest draws the pilot with each influence of a list that can be the smooth one, until the output is
// exactly what it is taken for; if it never is, that by which most is won.
func (m *Model) smoothest(ctx context.Context, linear *linearPart, list []int, y float64, cuts []float64, s Settings, in *space, compile func(*sharpening) *program) (best *pilot) {
	for _, i := range list {
		bent := &sharpening{linear: linear, y: y, tail: (1 - s.Coverage) / 2}
		if !m.smoothInfluence(bent, i, cuts[i]) {
			continue
		}
		straight := *bent
		straight.straight = true
		for _, p := range newPilots(ctx, compile(bent), []*sharpening{&straight, bent}, s.Seed, in) {
			if ctx.Err() != nil {
				return nil
			}
			as := p.worker.sharp
			if as.exact = p.off <= hardlyOff; p.off <= mostOffset {
				as.lay(p)
			}
			if as.exact {
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
func (m *Model) bySize(l *linearPart) (list []int) {
	size := func(i int) float64 {
		return math.Abs(l.slopes[i]) * m.influences[i].Distribution.summary().StandardUncertainty
	}
	for i := range l.slopes {
		if size(i) >= leastSmooth*l.scale {
			list = append(list, i)
		}
	}
	slices.SortStableFunc(list, func(a, b int) int { return cmp.Compare(size(b), size(a)) })
	return list[:min(len(list), mostSmooth)]
}

// Where F is worked out as the trials go on: at these parts of what lies beyond an end, and nearer
// the middle.
var (
	placesInTail   = []float64{0.03, 0.15, 0.4, 0.7, 1, 1.35, 1.8, 2.5, 4}
	placesInMiddle = []float64{0.17, 0.3, 0.5}
)

// lay chooses the places from the values of a pilot, and the weights, and works out what is won;
// nothing of that where no interval is asked for.
func (s *sharpening) lay(p *pilot) {
	if s.tail == 0 {
		return
	}
	sorted := p.space.numbers(len(p.values))
	copy(sorted, p.values)
	slices.Sort(sorted)
	at := func(p float64) float64 { return sorted[int(p*float64(len(sorted)))] }
	var parts []float64
	for _, part := range placesInTail {
		if part*s.tail < placesInMiddle[0]-0.04 {
			parts = append(parts, part*s.tail)
		}
	}
	parts = append(parts, placesInMiddle...)
	for _, part := range parts {
		s.q = append(s.q, at(part))
		if part < 0.5 {
			s.q = append(s.q, at(1-part))
		}
	}
	slices.Sort(s.q)
	if len(slices.Compact(slices.Clone(s.q))) < len(s.q) || !finite(s.q[0]) || !finite(s.q[len(s.q)-1]) {
		return
	}
	for end, q := range []float64{at(s.tail), at(1 - s.tail)} {
		w, g := s.weigh(p, q)
		s.weight[end] = w
		p.gain = max(p.gain, g)
	}
}

// leastGain is how many times the variance of one end must become less.
const leastGain = 2

// weigh returns what L is to count at q, by the regression of A on B in the pilot, and how many
// times less than that of 0 and 1 the variance is then.
func (s *sharpening) weigh(p *pilot, q float64) (weight, gain float64) {
	a, b := p.space.numbers(len(p.values))[:0], p.space.numbers(len(p.values))[:0]
	scratch := p.worker.aside.scratch
	for at := 0; at < len(p.values); at += blockSize {
		places := scratch.all(q, blockSize)
		ofOutput, ofLinear := s.chances(p.rests.from(at, at+blockSize), places, places, scratch)
		a, b = append(a, ofOutput...), append(b, ofLinear...)
	}
	return regress(a, b, s.tail/10)
}

// regress returns what b is to count beside a, between 0 and 1, and how many times less than that of
// 0 and 1 the variance is then. Where b is the same in all trials it counts whole, unless it is
// nearly 0 or 1.
func regress(a, b []float64, nearly float64) (weight, gain float64) {
	meanA, _ := meanAndVariance(a)
	meanB, varianceB := meanAndVariance(b)
	together := 0.0
	for i := range a {
		together += float64((a[i] - meanA) * (b[i] - meanB))
	}
	switch {
	case varianceB <= 1e-20 && meanB > nearly && meanB < 1-nearly:
		weight = 1
	case varianceB > 0:
		weight = max(0, min(together/(varianceB*float64(len(a)-1)), 1))
	}
	for i := range a {
		a[i] -= float64(weight * b[i])
	}
	_, left := meanAndVariance(a)
	return weight, float64(meanA*(1-meanA)) / left
}
