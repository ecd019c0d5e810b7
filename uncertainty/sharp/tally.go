package sharp

import (
	"context"
	"math"
	"runtime"
	"sort"

	"minim/uncertainty/law"
	"minim/uncertainty/parallel"
	"minim/uncertainty/portable"
	"minim/uncertainty/random"
	"minim/uncertainty/statistics"
)

// Tally answers questions about the order of the trials of a sharpened run: by the curve of
// D(q), the mean of A - w B, through the places where it was summed up; or by all trials.
type Tally struct {
	*Sharpening
	n     int
	rests Rests
	curve law.Curve // D
	// Lower and Upper are the ends of the symmetric interval.
	Lower, Upper End
	// x and f are F between the first and the last place, close enough for straight lines.
	x, f []float64
	ctx  context.Context // while the run goes on
}

// End is the end of an interval, and how many times less its variance is than that of sorted trials.
type End struct {
	statistics.Estimate
	Sharper float64
}

// Tally is nil where the run is not sharpened, turned out not to be what it was taken for, or is less sure
// of an end than sorted trials are. It looks at the context until it is [Tally.Finish]ed; what it says once that is done is of no use.
func (s *Trials) Tally(ctx context.Context) *Tally {
	if s == nil || s.broken {
		return nil
	}
	d := make([]float64, len(s.q))
	for k, sum := range s.sums {
		d[k] = sum.Sum / float64(s.n)
	}
	t := &Tally{Sharpening: s.Sharpening, n: s.n, rests: s.rests, curve: law.NewCurve(s.q, d), ctx: ctx}
	t.fill()
	if !(t.f[len(t.f)-1] > 0) { // or is no number
		return nil
	}
	if !t.linearHolds(t.quantile(s.Tail)) || !t.linearHolds(t.quantile(1-s.Tail)) {
		return nil
	}
	t.Lower, t.Upper = t.end(s.Tail), t.end(1-s.Tail)
	inside := t.Inside(t.Lower.Value, t.Upper.Value)
	if !(t.Lower.Sharper >= 1 && t.Upper.Sharper >= 1 && inside.Value >= 1-2*s.Tail-float64(3*inside.Err)-1e-6) {
		return nil
	}
	return t
}

// fill works F out between the places.
func (t *Tally) fill() {
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

func (t *Tally) byCurve(q float64) float64 {
	l := t.linearBelow(q)
	return float64(t.weightAt(l)*l) + t.curve.At(q)
}

// probability of less than q. Beyond the first and the last place it falls as that of L does.
func (t *Tally) probability(q float64) float64 {
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
func (t *Tally) quantile(p float64) float64 {
	last := len(t.x) - 1
	switch {
	case p <= t.f[0]:
		edge := t.linearBelow(t.x[0])
		return t.x[0] + min(0, t.linearAt(edge*(p/t.f[0]))-t.linearAt(edge))
	case p >= t.f[last]:
		edge := 1 - t.linearBelow(t.x[last])
		return t.x[last] + max(0, t.linearAt(1-float64(edge*((1-p)/(1-t.f[last]))))-t.linearAt(1-edge))
	}
	i := sort.SearchFloat64s(t.f, p)
	part := (p - t.f[i-1]) / (t.f[i] - t.f[i-1])
	return t.x[i-1] + float64(part*(t.x[i]-t.x[i-1]))
}

func (t *Tally) Size() int { return t.n }

func (t *Tally) At(k int) float64 { return t.quantile((float64(k) + 0.5) / float64(t.n)) }

func (t *Tally) Below(x float64, _ bool) float64 {
	return float64(float64(t.n) * t.probability(x))
}

// Shortest is the shortest interval that spans q ranks.
func (t *Tally) Shortest(ctx context.Context, q int) (low, high float64, err error) {
	low, high = shortest(t.quantile, float64(q)/float64(t.n), t.Tail)
	return low, high, ctx.Err()
}

// Finish ends the run, and returns the error of its context.
func (t *Tally) Finish() error {
	ctx := t.ctx
	t.ctx = context.Background()
	return ctx.Err()
}

// Thinned keeps the curve, and forgets the trials and what they were reckoned with.
func (t *Tally) Thinned() *Tally {
	thin, s := *t, *t.Sharpening
	s.Kernel = law.Kernel{}
	thin.Sharpening, thin.rests = &s, Rests{}
	return &thin
}

// Inside is the chance of lying within limits, by all trials where they are still there.
func (t *Tally) Inside(lower, upper float64) statistics.Estimate {
	if t.rests.base == nil {
		p := max(0, t.probability(upper)-t.probability(lower))
		return statistics.Estimate{Value: p}
	}
	e := t.difference(lower, upper)
	e.Value = max(0, min(e.Value, 1))
	return e
}

// difference of F between two places, by all trials.
func (t *Tally) difference(from, to float64) statistics.Estimate {
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
	blocks := t.overBlocks(func(r Rests, scratch *scratch) (sum statistics.Squares) {
		d := scratch.sum[:len(r.base)]
		clear(d)
		for k, q := range []float64{from, to} {
			if math.IsInf(q, 0) {
				continue
			}
			sign := float64(2*k - 1)
			a, b := t.chancesAt(r, q, scratch)
			for i := range d {
				d[i] += float64(sign * (a[i] - float64(weights[k]*b[i])))
			}
		}
		for _, x := range d {
			sum.Take(x)
		}
		return sum
	})
	e := blocks.Mean(float64(n))
	e.Value += known
	return e
}

// linearHolds reports whether the mean of B is F_L but for chance. Where it is not, the law of L
// is not that of what is drawn.
func (t *Tally) linearHolds(q float64) bool {
	sums := t.overBlocks(func(r Rests, scratch *scratch) (sum statistics.Squares) {
		_, b := t.chancesAt(r, q, scratch)
		for _, x := range b {
			sum.Take(x)
		}
		return sum
	})
	e := sums.Mean(float64(len(t.rests.base)))
	return math.Abs(e.Value-t.linearBelow(q)) <= float64(mostOff*e.Err)+1e-4
}

// mostOff is how many standard errors a mean may be off by chance.
const mostOff = 6

// overBlocks adds up what is made of each block, in their order.
func (t *Tally) overBlocks(make1 func(r Rests, scratch *scratch) statistics.Squares) (all statistics.Squares) {
	n := len(t.rests.base)
	blocks := make([]statistics.Squares, random.Blocks(n))
	_ = parallel.Until(t.ctx, len(blocks), runtime.GOMAXPROCS(0), func(_, b int) { // [Tally.Finish] tells
		scratch := scratches.Get().(*scratch)
		blocks[b] = make1(t.rests.From(b*random.BlockSize, min((b+1)*random.BlockSize, n)), scratch)
		scratches.Put(scratch)
	})
	for _, b := range blocks {
		all.Add(b)
	}
	return all
}

// end is a quantile by all trials, with its standard error.
func (t *Tally) end(p float64) End {
	q := t.quantile(p)
	low, high := t.around(p)
	step := float64((high - low) / 64)
	density := (t.byCurve(q+step) - t.byCurve(q-step)) / (2 * step)
	f := t.difference(math.Inf(-1), q)
	for range 4 {
		by := (p - f.Value) / density
		if math.Abs(p-f.Value) < 1e-8 || !(low <= q+by && q+by <= high) {
			break
		}
		q += by
		f = t.difference(math.Inf(-1), q)
	}
	if math.Abs(p-f.Value) > max(1e-6, f.Err/20) {
		q = portable.Bisect(low, high, func(q float64) bool { return t.difference(math.Inf(-1), q).Value < p })
		f = t.difference(math.Inf(-1), q)
	}
	off := max(f.Err/density, lawError*t.size())
	plain := math.Sqrt(p*(1-p)/float64(t.n)) / density
	return End{statistics.Estimate{Value: q, Err: off}, min(float64((plain/off)*(plain/off)), mostSharper)}
}

// around are the two places between which F passes p.
func (t *Tally) around(p float64) (low, high float64) {
	k := sort.Search(len(t.q)-2, func(k int) bool { return t.byCurve(t.q[k+1]) >= p })
	return t.q[k], t.q[k+1]
}

// lawError is how far, in units of the size of L, a quantile may be off because its law is a table.
const lawError = 1e-6

// mostSharper is where an interval counts as exact.
const mostSharper = 1e6
