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
	target  float64
	first   *champion
	other   *sharp.Sharpening
	linear  float64 // P
	weight  float64
	program *program // of the other
	seed    uint64
	space   *sharp.Space
}

// newDuel is nil where there is nothing to be gained.
func newDuel(ctx context.Context, target float64, first *champion, other Quantity, s Settings, in *sharp.Space) *duel {
	d := &duel{target: target, seed: s.Seed, space: in}
	streams := other.beside(first.Model)
	a, b := first.split(first.Model.ownStreams()), other.split(streams)
	if a == nil || b == nil {
		return nil
	}
	r := a.share(b)
	laws := [3]*sharp.Linear{first.Model.drawnPart(a.own, s.Coverage), other.Model.drawnPart(b.own, s.Coverage), first.Model.drawnPart(a.shared, s.Coverage)}
	d.first = first.with(added(a.own, a.shared), a.y)
	whole := [2]*sharp.Linear{d.first.linear, other.Model.drawnPart(added(b.own, b.shared), s.Coverage)}
	if laws[0] == nil || laws[1] == nil || whole[0] == nil || whole[1] == nil || whole[0].Law.Coarse || whole[1].Law.Coarse {
		return nil
	}
	d.linear = sharp.LinearChance(laws, a.y-target, b.y-target, r)
	cuts := other.Model.cuts(other.Model.reachable(other.Node))
	own := *whole[1]
	own.Slopes = b.own // of which the smooth one is
	pilot := other.Model.smoothest(ctx, whole[1], other.Model.canBeSmooth(&own), b.y, cuts, Settings{Seed: s.Seed, Coverage: 1}, in, func(as *sharp.Sharpening) *program {
		return other.program(besideFirst, streams, as)
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
		u := a.of.influences[i].Distribution.Summary().StandardUncertainty
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

// fighter draws the other of a duel, on one processor.
type fighter struct {
	*worker
	rests sharp.Rests
}

func (d *duel) newFighter() *fighter {
	return &fighter{d.program.newWorkerIn(d.seed, d.space), d.other.NewRests(random.BlockSize, d.space)}
}

// block is A - w B, summed up over one block of trials; false where the smooth influence is not as
// it must be.
func (d *duel) block(f *fighter, first firstDraws, b, n int) (sum statistics.Squares, sound bool) {
	a, bs, sound := d.chances(f, first, b, n)
	for i, x := range a {
		x -= float64(d.weight * bs[i])
		sum.Take(x)
	}
	return sum, sound
}

// chances A and B of each trial of a block.
func (d *duel) chances(f *fighter, first firstDraws, b, n int) (ofOutput, ofLinear []float64, sound bool) {
	drawn, linear := first.block(b, n)
	values, _ := f.run(b)
	rests := f.rests.From(0, n)
	sound = d.other.Record(f.asideOf(values[:n]), rests)
	ofOutput, ofLinear = d.other.Closer(f.aside.block, rests, drawn, linear, d.target)
	return ofOutput, ofLinear, sound
}

// weigh finds the weight in the blocks of a pilot.
func (d *duel) weigh(ctx context.Context) {
	n := pilotBlocks * random.BlockSize
	a, b := d.space.Numbers(n)[:0], d.space.Numbers(n)[:0]
	f, first := d.newFighter(), d.first.drawn(ctx, 0)
	for block := range pilotBlocks {
		if ctx.Err() != nil {
			return
		}
		ofOutput, ofLinear, _ := d.chances(f, first, -1-block, random.BlockSize)
		a, b = append(a, ofOutput...), append(b, ofLinear...)
	}
	d.weight, _ = sharp.Regress(a, b, 0)
}

// chance from so many trials, with its standard error; false where it cannot be told.
func (d *duel) chance(ctx context.Context, trials int) (e statistics.Estimate, ok bool) {
	first := d.first.drawn(ctx, trials)
	blocks, sound := make([]statistics.Squares, random.Blocks(trials)), make([]bool, random.Blocks(trials))
	fighters := make([]*fighter, runtime.GOMAXPROCS(0))
	for i := range fighters {
		fighters[i] = d.newFighter()
	}
	if parallel.Until(ctx, len(blocks), len(fighters), func(worker, b int) {
		blocks[b], sound[b] = d.block(fighters[worker], first, b, min(random.BlockSize, trials-b*random.BlockSize))
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
