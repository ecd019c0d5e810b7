package uncertainty

import (
	"context"
	"math"
	"runtime"
	"slices"

	"minim/uncertainty/law"
	"minim/uncertainty/parallel"
)

// duel is the question whether one quantity comes closer to a target than the first, with few
// trials. Each has a linear part of what is its own, and one of what both share,
//
//	L_first = own + S,  L = own' + r S
//
// so that the chance under both, P, is a double integral over three laws, and the chance itself
//
//	P w + mean of A - w B
//
// where A is that of c, and B that of L, to lie within the distance of the first, over all values of an
// influence of its own, the smooth one. Any r will do; the best is by least squares. What both have
// in part in common, as one unknown σ of readings, is left out of either linear part.
type duel struct {
	target  float64
	first   *champion
	other   *sharpening
	linear  float64 // P
	weight  float64
	program *program // of the other
	seed    uint64
	space   *space
}

// newDuel is nil where there is nothing to be gained.
func newDuel(ctx context.Context, target float64, first *champion, other Quantity, s Settings, in *space) *duel {
	d := &duel{target: target, seed: s.Seed, space: in}
	streams := other.beside(first.Model)
	a, b := first.split(first.Model.ownStreams()), other.split(streams)
	if a == nil || b == nil {
		return nil
	}
	r := a.share(b)
	laws := [3]*linearPart{first.Model.linearPart(a.own, s.Coverage), other.Model.linearPart(b.own, s.Coverage), first.Model.linearPart(a.shared, s.Coverage)}
	d.first = first.with(added(a.own, a.shared), a.y)
	whole := [2]*linearPart{d.first.linear, other.Model.linearPart(added(b.own, b.shared), s.Coverage)}
	if laws[0] == nil || laws[1] == nil || whole[0] == nil || whole[1] == nil || whole[0].law.Coarse || whole[1].law.Coarse {
		return nil
	}
	d.linear = linearChance(laws, a.y-target, b.y-target, r)
	cuts := other.Model.cuts(other.Model.reachable(other.Node))
	own := *whole[1]
	own.slopes = b.own // of which the smooth one is
	pilot := other.Model.smoothest(ctx, whole[1], other.Model.bySize(&own), b.y, cuts, Settings{Seed: s.Seed, Coverage: 1}, in, func(sharp *sharpening) *program {
		return other.program(besideFirst, streams, sharp)
	})
	if pilot == nil || pilot.off > hardlyOff {
		return nil
	}
	d.other, d.program = pilot.worker.sharp, pilot.worker.program
	d.weigh(ctx)
	return d
}

// split are the slopes of a quantity, those that are its own and those that it shares, with the
// streams that tell.
type split struct {
	of          *Model
	y           float64
	own, shared []float64
	key, scales []uint64
}

// split puts all slopes among its own; nil where influences are correlated.
func (q *Quantity) split(keys streams) *split {
	if len(q.Model.groups) > 0 {
		return nil
	}
	v := q.Model.values(q.Node, mean)
	s := &split{of: q.Model, y: v[q.Node], own: q.Model.gradient(q.Node, v)}
	s.shared = make([]float64, len(s.own))
	for i := range s.own {
		s.key = append(s.key, keys.influence(i))
	}
	for k := range q.Model.scales {
		s.scales = append(s.scales, keys.scale(k))
	}
	return s
}

// share moves to the shared slopes what both have, those of the other being r times those of the
// first, and returns r.
func (a *split) share(b *split) (r float64) {
	number := make(map[uint64]int)
	for i, key := range a.key {
		number[key] = i
	}
	type pair struct{ a, b int }
	var pairs []pair
	square, product := 0.0, 0.0
	a.leaveOut(b)
	b.leaveOut(a)
	for j, key := range b.key {
		i, both := number[key]
		if !both || a.own[i] == 0 && b.own[j] == 0 {
			continue
		}
		pairs = append(pairs, pair{i, j})
		u := a.of.influences[i].Distribution.summary().StandardUncertainty
		x, y := float64(u*a.own[i]), float64(u*b.own[j])
		square += float64(x * x)
		product += float64(x * y)
	}
	if square > 0 {
		r = product / square
	}
	for _, p := range pairs {
		a.shared[p.a], b.shared[p.b] = a.own[p.a], float64(r*a.own[p.a])
		a.own[p.a], b.own[p.b] = 0, 0
	}
	return r
}

// leaveOut leaves out what is drawn with a scale that the other has as well.
func (s *split) leaveOut(other *split) {
	for i, k := range s.of.scaleOf {
		if k >= 0 && slices.Contains(other.scales, s.scales[k]) {
			s.own[i] = 0
		}
	}
}

func added(a, b []float64) []float64 {
	sum := make([]float64, len(a))
	for i := range a {
		sum[i] = a[i] + b[i]
	}
	return sum
}

// linearChance is the chance that own' + r S + y' is smaller in size than own + S + y. It goes
// through the values of the narrower of own and own', as whose function the chance is smoother.
func linearChance(laws [3]*linearPart, y, other, r float64) float64 {
	shared := []law.Node{{At: 0, Weight: 1}}
	if laws[2] != nil {
		shared = laws[2].law.Nodes(64)
	}
	narrow, wide := laws[0], laws[1]
	turned := narrow.scale > wide.scale
	if turned {
		narrow, wide = wide, narrow
	}
	nodes := narrow.law.Nodes(300)
	sum := 0.0
	for _, s := range shared {
		a, b := s.At+y, other+float64(r*s.At)
		if turned {
			a, b = b, a
		}
		sum += float64(s.Weight * wide.smaller(b, nodes, a))
	}
	if turned {
		return 1 - sum
	}
	return sum
}

// smaller is the chance that this part and b is smaller in size than a value of another and a.
func (l *linearPart) smaller(b float64, other []law.Node, a float64) float64 {
	sum := 0.0
	for _, n := range other {
		d := math.Abs(n.At + a)
		sum += float64(n.Weight * (l.law.Below(d-b) - l.law.Below(-d-b)))
	}
	return sum
}

// fighter draws the other of a duel, on one processor.
type fighter struct {
	*worker
	rests                    rests
	upperLinear, lowerLinear []float64
}

func (d *duel) newFighter() *fighter {
	in := d.space
	return &fighter{d.program.newWorkerIn(d.seed, in), d.other.newRests(blockSize, in), in.numbers(blockSize), in.numbers(blockSize)}
}

// block is A - w B, summed up over one block of trials; false where the smooth influence is not as
// it must be.
func (d *duel) block(f *fighter, first firstDraws, b, n int) (sum squares, sound bool) {
	a, bs, sound := d.chances(f, first, b, n)
	for i, x := range a {
		x -= float64(d.weight * bs[i])
		sum.add(squares{x, float64(x * x)})
	}
	return sum, sound
}

// chances A and B of each trial of a block.
func (d *duel) chances(f *fighter, first firstDraws, b, n int) (ofOutput, ofLinear []float64, sound bool) {
	drawn, linear := first.block(b, n)
	values, _ := f.run(b)
	rests := f.rests.from(0, n)
	sound = f.record(values[:n], rests)
	scratch := f.aside.scratch
	upper, lower := scratch.sum[:n], scratch.other[:n]
	upperLinear, lowerLinear := f.upperLinear[:n], f.lowerLinear[:n]
	for i, c := range drawn {
		by, byLinear := math.Abs(c-d.target), math.Abs(linear[i]-d.target)
		upper[i], lower[i] = d.target+by, d.target-by
		upperLinear[i], lowerLinear[i] = d.target+byLinear, d.target-byLinear
	}
	below, belowLinear := d.other.chances(rests, lower, lowerLinear, scratch)
	copy(lower, below)
	copy(lowerLinear, belowLinear)
	below, belowLinear = d.other.chances(rests, upper, upperLinear, scratch)
	for i := range lower {
		upper[i], upperLinear[i] = below[i]-lower[i], belowLinear[i]-lowerLinear[i]
	}
	return upper, upperLinear, sound
}

// linearOf works out y + L of each trial.
func (a *aside) linearOf(s *sharpening, sum []float64) {
	for k, part := range a.parts {
		most := s.linear.most[k]
		for i := range sum {
			if k == 0 {
				sum[i] = s.y + part[i]
			} else {
				sum[i] += max(-most, min(part[i], most))
			}
		}
	}
}

// weigh finds the weight in the blocks of a pilot.
func (d *duel) weigh(ctx context.Context) {
	n := pilotBlocks * blockSize
	a, b := d.space.numbers(n)[:0], d.space.numbers(n)[:0]
	f, first := d.newFighter(), d.first.drawn(ctx, 0)
	for block := range pilotBlocks {
		if ctx.Err() != nil {
			return
		}
		ofOutput, ofLinear, _ := d.chances(f, first, -1-block, blockSize)
		a, b = append(a, ofOutput...), append(b, ofLinear...)
	}
	d.weight, _ = regress(a, b, 0)
}

// chance from so many trials, with its standard error; false where it cannot be told.
func (d *duel) chance(ctx context.Context, trials int) (e estimate, ok bool) {
	first := d.first.drawn(ctx, trials)
	blocks, sound := make([]squares, blocksFor(trials)), make([]bool, blocksFor(trials))
	fighters := make([]*fighter, runtime.GOMAXPROCS(0))
	for i := range fighters {
		fighters[i] = d.newFighter()
	}
	parallel.Do(len(blocks), len(fighters), func(worker, b int) {
		if ctx.Err() != nil {
			return
		}
		blocks[b], sound[b] = d.block(fighters[worker], first, b, min(blockSize, trials-b*blockSize))
	})
	var all squares
	for _, b := range blocks {
		all.add(b)
	}
	e = average(float64(trials), all.sum, all.square)
	e.value = max(0, min(e.value+float64(d.weight*d.linear), 1))
	return e, !slices.Contains(sound, false) && finite(all.square)
}
