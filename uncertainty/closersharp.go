package uncertainty

import (
	"context"
	"runtime"
	"slices"

	"minim/uncertainty/parallel"
	"minim/uncertainty/portable"
	"minim/uncertainty/random"
	"minim/uncertainty/sharp"
	"minim/uncertainty/statistics"
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
	target       float64
	first, other *sharp.Sharpening
	linear       float64 // P
	weight       float64
	workers      [][2]*worker
	seed         uint64
}

// newDuel is nil where there is nothing to be gained.
func newDuel(target float64, first, other Quantity, s Settings) *duel {
	d := &duel{target: target, seed: s.Seed}
	streams := other.beside(first.Model)
	a, b := first.split(first.Model.ownStreams()), other.split(streams)
	if a == nil || b == nil {
		return nil
	}
	r := a.share(b)
	laws := [3]*sharp.Linear{first.Model.drawnPart(a.own, s.Coverage), other.Model.drawnPart(b.own, s.Coverage), first.Model.drawnPart(a.shared, s.Coverage)}
	whole := [2]*sharp.Linear{first.Model.drawnPart(added(a.own, a.shared), s.Coverage), other.Model.drawnPart(added(b.own, b.shared), s.Coverage)}
	if laws[0] == nil || laws[1] == nil || whole[0] == nil || whole[1] == nil || whole[0].Law.Coarse || whole[1].Law.Coarse {
		return nil
	}
	d.first = &sharp.Sharpening{Linear: whole[0], Y: a.y, Smooth: -1}
	d.linear = sharp.LinearChance(laws, a.y-target, b.y-target, r)
	cuts := other.Model.cuts(other.Model.reachable(other.Node))
	own := *whole[1]
	own.Slopes = b.own // of which the smooth one is
	pilot := other.Model.smoothest(whole[1], other.Model.canBeSmooth(&own), b.y, cuts, Settings{Seed: s.Seed, Coverage: 1}, func(as *sharp.Sharpening) *program {
		return other.Model.compileWith(other.Node, make([]float64, len(b.own)), streams, as)
	})
	if pilot == nil || pilot.off > hardlyOff {
		return nil
	}
	d.other = pilot.worker.sharp
	p := first.Model.compileWith(first.Node, make([]float64, len(a.own)), first.Model.ownStreams(), d.first)
	for range runtime.GOMAXPROCS(0) {
		d.workers = append(d.workers, [2]*worker{p.newWorker(s.Seed), pilot.worker.program.newWorker(s.Seed)})
	}
	d.weigh()
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

// block is A - w B, summed up over one block of trials; false where the smooth influence is not as
// it must be.
func (d *duel) block(w [2]*worker, b, n int) (sum statistics.Squares, sound bool) {
	a, bs, sound := d.chances(w, b, n)
	for i, x := range a {
		x -= float64(d.weight * bs[i])
		sum.Take(x)
	}
	return sum, sound
}

// chances A and B of each trial of a block.
func (d *duel) chances(w [2]*worker, b, n int) (ofOutput, ofLinear []float64, sound bool) {
	first, _ := w[0].run(b)
	values, _ := w[1].run(b)
	rests := d.other.NewRests(n)
	sound = d.other.Record(w[1].asideOf(values[:n]), rests)
	ofOutput, ofLinear = d.other.Closer(w[1].aside.block, rests, first[:n], d.first.Output(w[0].aside.block, n), d.target)
	return ofOutput, ofLinear, sound
}

// weigh finds the weight in the blocks of a pilot.
func (d *duel) weigh() {
	var a, b []float64
	for block := range pilotBlocks {
		ofOutput, ofLinear, _ := d.chances(d.workers[0], -1-block, random.BlockSize)
		a, b = append(a, ofOutput...), append(b, ofLinear...)
	}
	d.weight, _ = sharp.Regress(a, b, 0)
}

// chance from so many trials, with its standard error; false where it cannot be told.
func (d *duel) chance(ctx context.Context, trials int) (e statistics.Estimate, ok bool) {
	blocks, sound := make([]statistics.Squares, random.Blocks(trials)), make([]bool, random.Blocks(trials))
	if parallel.Until(ctx, len(blocks), len(d.workers), func(worker, b int) {
		blocks[b], sound[b] = d.block(d.workers[worker], b, min(random.BlockSize, trials-b*random.BlockSize))
	}) != nil {
		return e, false
	}
	var all statistics.Squares
	for _, b := range blocks {
		all.Add(b)
	}
	e = all.Mean(float64(trials))
	e.Value = max(0, min(e.Value+float64(d.weight*d.linear), 1))
	return e, !slices.Contains(sound, false) && portable.IsFinite(all.Square)
}
