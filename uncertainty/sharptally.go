package uncertainty

import (
	"context"
	"math"
	"runtime"
	"sort"
	"sync"

	"minim/uncertainty/law"
	"minim/uncertainty/parallel"
)

// sharpTally answers questions about the order of the trials of a sharpened run: by the curve of
// D(q), the mean of A - w B, through the places where it was summed up; or by all trials.
type sharpTally struct {
	*sharpening
	n     int
	rests rests
	curve law.Curve // D
	// x and f are F between the first and the last place, close enough for straight lines.
	x, f []float64
	ctx  context.Context // while the run goes on
}

// scratches are used again.
var scratches = sync.Pool{New: func() any { return newScratch(nil) }}

// tally is nil where the run is not sharpened, or turned out not to be what it was taken for.
func (s *sharpTrials) tally(ctx context.Context) *sharpTally {
	if s == nil || s.broken {
		return nil
	}
	d := make([]float64, len(s.q))
	for k, sum := range s.sums {
		d[k] = sum.sum / float64(s.n)
	}
	t := &sharpTally{sharpening: s.sharpening, n: s.n, rests: s.rests, curve: law.NewCurve(s.q, d), ctx: ctx}
	t.fill()
	for _, p := range []float64{s.tail, 1 - s.tail} {
		if !t.linearHolds(t.quantile(p)) {
			return nil
		}
	}
	return t
}

// fill works F out between the places.
func (t *sharpTally) fill() {
	const between = 64
	most := 0.0
	for k := range len(t.q) - 1 {
		for i := range between {
			x := t.q[k] + float64((t.q[k+1]-t.q[k])*(float64(i)/between))
			most = max(most, min(t.byCurve(x), 1))
			t.x, t.f = append(t.x, x), append(t.f, most)
		}
	}
	last := t.q[len(t.q)-1]
	t.x, t.f = append(t.x, last), append(t.f, max(most, min(t.byCurve(last), 1)))
}

func (t *sharpTally) byCurve(q float64) float64 {
	l := t.linearBelow(q)
	return float64(t.weightAt(l)*l) + t.curve.At(q)
}

// probability of less than q. Beyond the first and the last place it falls as that of L does.
func (t *sharpTally) probability(q float64) float64 {
	last := len(t.x) - 1
	switch {
	case q < t.x[0]:
		return shrunk(t.linearBelow(q), t.linearBelow(t.x[0]), t.f[0])
	case q >= t.x[last]:
		return 1 - shrunk(1-t.linearBelow(q), 1-t.linearBelow(t.x[last]), 1-t.f[last])
	}
	i := sort.SearchFloat64s(t.x, q)
	if t.x[i] == q {
		return t.f[i]
	}
	part := (q - t.x[i-1]) / (t.x[i] - t.x[i-1])
	return t.f[i-1] + float64(part*(t.f[i]-t.f[i-1]))
}

// shrunk is what is left of a probability of L, where that is edge there and f here.
func shrunk(l, edge, f float64) float64 {
	if !(edge > 0) {
		return 0
	}
	return f * min(l/edge, 1)
}

// quantile is the inverse.
func (t *sharpTally) quantile(p float64) float64 {
	last := len(t.x) - 1
	switch {
	case p <= t.f[0]:
		edge := t.linearBelow(t.x[0])
		return t.x[0] + min(0, t.linear.law.At(edge*(p/t.f[0]))-t.linear.law.At(edge))
	case p >= t.f[last]:
		edge := 1 - t.linearBelow(t.x[last])
		return t.x[last] + max(0, t.linear.law.At(1-float64(edge*((1-p)/(1-t.f[last]))))-t.linear.law.At(1-edge))
	}
	i := sort.SearchFloat64s(t.f, p)
	part := (p - t.f[i-1]) / (t.f[i] - t.f[i-1])
	return t.x[i-1] + float64(part*(t.x[i]-t.x[i-1]))
}

func (t *sharpTally) size() int { return t.n }

func (t *sharpTally) at(k int) float64 { return t.quantile((float64(k) + 0.5) / float64(t.n)) }

func (t *sharpTally) below(x float64, _ bool) float64 {
	return float64(float64(t.n) * t.probability(x))
}

func (t *sharpTally) shortest(q int) (low, high float64) {
	return shortestBetween(t.quantile, float64(q)/float64(t.n), t.tail)
}

// thinned keeps the curve, and forgets the trials and what they were reckoned with.
func (t *sharpTally) thinned() *sharpTally {
	thin, s := *t, *t.sharpening
	s.kernel = law.Kernel{}
	thin.sharpening, thin.rests = &s, rests{}
	return &thin
}

// inside is the chance of lying within limits, by all trials where they are still there.
func (t *sharpTally) inside(l Limits) estimate {
	if t.rests.base == nil {
		p := max(0, t.probability(l.Upper)-t.probability(l.Lower))
		return estimate{value: p}
	}
	e := t.difference(l.Lower, l.Upper)
	e.value = max(0, min(e.value, 1))
	return e
}

// difference of F between two places, by all trials.
func (t *sharpTally) difference(from, to float64) estimate {
	known, n := 0.0, len(t.rests.base)
	at := func(q float64) (weight float64) {
		if math.IsInf(q, 0) {
			return 0
		}
		return t.weightAt(t.linearBelow(q))
	}
	weights := [2]float64{at(from), at(to)}
	if math.IsInf(to, 1) {
		known = 1
	} else {
		known = float64(weights[1] * t.linearBelow(to))
	}
	known -= float64(weights[0] * t.linearBelow(from))
	blocks := t.overBlocks(func(r rests, scratch *scratch) (sum squares) {
		d := scratch.sum[:len(r.base)]
		clear(d)
		for k, q := range []float64{from, to} {
			if math.IsInf(q, 0) {
				continue
			}
			sign := float64(2*k - 1)
			places := scratch.all(q, len(d))
			a, b := t.chances(r, places, places, scratch)
			for i := range d {
				d[i] += float64(sign * (a[i] - float64(weights[k]*b[i])))
			}
		}
		for _, x := range d {
			sum.add(squares{x, float64(x * x)})
		}
		return sum
	})
	e := average(float64(n), blocks.sum, blocks.square)
	e.value += known
	return e
}

// linearHolds reports whether the mean of B is F_L but for chance. Where it is not, the law of L
// is not that of what is drawn.
func (t *sharpTally) linearHolds(q float64) bool {
	sums := t.overBlocks(func(r rests, scratch *scratch) (sum squares) {
		places := scratch.all(q, len(r.base))
		_, b := t.chances(r, places, places, scratch)
		for _, x := range b {
			sum.add(squares{x, float64(x * x)})
		}
		return sum
	})
	e := average(float64(len(t.rests.base)), sums.sum, sums.square)
	return math.Abs(e.value-t.linearBelow(q)) <= float64(mostOff*e.err)+1e-4
}

// mostOff is how many standard errors a mean may be off by chance.
const mostOff = 6

// overBlocks adds up what is made of each block, in their order.
func (t *sharpTally) overBlocks(make1 func(r rests, scratch *scratch) squares) (all squares) {
	n := len(t.rests.base)
	blocks := make([]squares, blocksFor(n))
	parallel.Do(len(blocks), runtime.GOMAXPROCS(0), func(_, b int) {
		if t.ctx == nil || t.ctx.Err() == nil {
			scratch := scratches.Get().(*scratch)
			blocks[b] = make1(t.rests.from(b*blockSize, min((b+1)*blockSize, n)), scratch)
			scratches.Put(scratch)
		}
	})
	for _, b := range blocks {
		all.add(b)
	}
	return all
}

// end is a quantile by all trials, with its standard error, and how many times less its variance is than
// that of sorted trials.
func (t *sharpTally) end(p float64) (e estimate, sharper float64) {
	q := t.quantile(p)
	low, high := t.around(p)
	step := float64((high - low) / 64)
	density := (t.byCurve(q+step) - t.byCurve(q-step)) / (2 * step)
	f := t.difference(math.Inf(-1), q)
	for range 4 {
		by := (p - f.value) / density
		if math.Abs(p-f.value) < 1e-8 || !(low <= q+by && q+by <= high) {
			break
		}
		q += by
		f = t.difference(math.Inf(-1), q)
	}
	if math.Abs(p-f.value) > max(1e-6, f.err/20) {
		q = bisect(low, high, func(q float64) bool { return t.difference(math.Inf(-1), q).value < p })
		f = t.difference(math.Inf(-1), q)
	}
	off := max(f.err/density, lawError*t.linear.scale)
	plain := math.Sqrt(p*(1-p)/float64(t.n)) / density
	return estimate{q, off}, max(1, min(float64((plain/off)*(plain/off)), mostSharper))
}

// around are the two places between which F passes p.
func (t *sharpTally) around(p float64) (low, high float64) {
	k := sort.Search(len(t.q)-2, func(k int) bool { return t.byCurve(t.q[k+1]) >= p })
	return t.q[k], t.q[k+1]
}

// lawError is how far, in units of the size of L, a quantile may be off because its law is a table.
const lawError = 1e-6

// mostSharper is where an interval counts as exact.
const mostSharper = 1e6

// takeEnds fills in what follows from the order of the trials.
func (mc *MonteCarlo) takeEnds(t *sharpTally) {
	mc.tally = t
	lower, atLower := t.end(t.tail)
	upper, atUpper := t.end(1 - t.tail)
	mc.Lower, mc.LowerError, mc.Upper, mc.UpperError = lower.value, lower.err, upper.value, upper.err
	mc.Sharper = min(atLower, atUpper)
	mc.ShortestLower, mc.ShortestUpper = t.shortest(int(math.Round((1 - 2*t.tail) * float64(t.n))))
	if mc.Upper-mc.Lower < mc.ShortestUpper-mc.ShortestLower {
		mc.ShortestLower, mc.ShortestUpper = mc.Lower, mc.Upper
	}
}
