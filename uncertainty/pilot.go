package uncertainty

import (
	"cmp"
	"math"
	"slices"

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

func newPilot(program *program, seed uint64) *pilot {
	p := &pilot{worker: program.newWorker(seed)}
	if program.sharp != nil {
		p.rests = program.sharp.NewRests(pilotBlocks * random.BlockSize)
	}
	for b := range pilotBlocks {
		v, l := p.worker.run(-1 - b)
		p.values, p.linear = append(p.values, v...), append(p.linear, l...)
		if program.sharp != nil {
			rests := p.rests.From(b*random.BlockSize, (b+1)*random.BlockSize)
			if !program.sharp.Record(p.worker.asideOf(v), rests) {
				p.off = math.Inf(1)
				return p
			}
			p.off = max(p.off, program.sharp.Off(rests))
		}
	}
	return p
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
func (m *Model) sharpPilot(out Node, v, gradient, slopes []float64, s Settings) *pilot {
	if s.Plain || s.Digits == 0 && s.Trials > sharp.MostTrials {
		return nil
	}
	cuts := m.cuts(m.reachable(out))
	with := func(linear *sharp.Linear) *pilot {
		if linear == nil || linear.Law.Coarse {
			return nil
		}
		return m.smoothest(linear, m.canBeSmooth(linear), v[out], cuts, s, func(as *sharp.Sharpening) *program {
			return m.compileWith(out, slopes, m.ownStreams(), as)
		})
	}
	best := with(m.drawnPart(gradient, s.Coverage))
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
func (m *Model) smoothest(linear *sharp.Linear, list []int, y float64, cuts []float64, s Settings, compile func(*sharp.Sharpening) *program) (best *pilot) {
	for _, i := range list {
		as := sharp.Sharpening{Linear: linear, Y: y, Tail: (1 - s.Coverage) / 2}
		if !m.smoothInfluence(&as, i, cuts[i]) {
			continue
		}
		compiled := compile(&as)
		for _, as := range ways(as) {
			program := *compiled
			program.sharp = &as
			p := newPilot(&program, s.Seed)
			if as.Exact = p.off <= hardlyOff; p.off <= mostOffset {
				p.gain = as.Lay(p.values, p.rests)
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
		return math.Abs(slopes[i]) * m.influences[i].Distribution.summary().StandardUncertainty
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
