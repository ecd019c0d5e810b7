package uncertainty

import (
	"math"

	"minim/uncertainty/random"
	"minim/uncertainty/sharp"
)

// worker runs a program on one processor.
type worker struct {
	*program
	seed   uint64
	source *random.Source
	slot   [][]float64
	// linear holds Σ slope (x - mean) over the influences of the last block.
	linear []float64
	// aside is what a sharpened run needs of the last block besides.
	aside *aside
}

func (p *program) newWorker(seed uint64) *worker { return p.newWorkerIn(seed, nil) }

func (p *program) newWorkerIn(seed uint64, in *sharp.Space) *worker {
	w := &worker{program: p, seed: seed, source: new(random.Source), slot: make([][]float64, p.slots+1)}
	for i := range w.slot {
		w.slot[i] = in.Numbers(random.BlockSize)
	}
	w.linear = in.Numbers(random.BlockSize)
	if p.sharp != nil {
		w.aside = newAside(p.sharp, in)
	}
	return w
}

// run evaluates one block and returns the values of the output and of the
// linear part; they hold until the next run.
func (w *worker) run(block int) (values, linear []float64) {
	clear(w.linear)
	if w.aside != nil {
		w.aside.block.Clear()
	}
	for i := range w.steps {
		st := &w.steps[i]
		dst := w.slot[st.dst]
		switch {
		case st.op != opInfluence && st.linear.slope != 0:
			w.applyWithTerm(st, dst)
		case st.op != opInfluence:
			w.apply(st, dst)
		default:
			w.draw(st, dst, block)
			if w.aside != nil {
				w.setAside(st, dst)
			}
			if t := st.linear; t.slope != 0 {
				addScaled(w.linear, dst, t.mean, t.slope)
			}
		}
		for k := range st.at {
			w.apply(&st.at[k], w.slot[st.at[k].dst])
		}
	}
	if w.out.isConstant() {
		values = w.slot[w.slots]
		fill(values, w.out.constant)
		return values, w.linear
	}
	return w.slot[w.out.slot], w.linear
}

func (w *worker) draw(st *step, dst []float64, block int) {
	d := &st.draw
	switch {
	case d.mix == nil:
		w.source.Key(w.seed, d.key, block)
		d.dist.Fill(dst, w.source)
	case d.scaled:
		fill(dst, 0)
	default:
		fill(dst, st.mean)
	}
	for _, part := range d.mix {
		addScaled(dst, w.slot[part.slot], 0, part.weight)
	}
	if d.scaled {
		w.scale(d, dst, st.mean)
	}
}

// scale multiplies deviations by their scale, and draws again those that go beyond the cut,
// with the same scale: of all values of a normal distribution those within the cut are left.
func (w *worker) scale(d *draw, dst []float64, mean float64) {
	by := w.slot[d.scale][:len(dst)]
	if w.aside != nil && (d.cut > 0 || d.told != nil) {
		size := 1.0
		if d.told != nil {
			size = d.sigma
		}
		for i, x := range dst {
			w.aside.uncut[i] = mean + float64(size*x*by[i])
		}
	}
	if d.told != nil {
		d.told.Turn(dst, by)
		return
	}
	for i, x := range dst {
		x = float64(x * by[i])
		if d.cut > 0 && math.Abs(x) > d.cut {
			var bits uint64
			bits, w.source.State = random.Next(w.source.State)
			x = float64(d.sigma * by[i] * normalWithin(d.cut/(d.sigma*by[i]), random.Uniform(bits)))
		}
		dst[i] = mean + x
	}
}

func (w *worker) apply(st *step, dst []float64) {
	switch {
	case st.op < opAdd:
		applyUnary(st.op, dst, w.slot[st.left.slot])
	case st.left.isConstant():
		applyConstantLeft(st.op, dst, st.left.constant, w.slot[st.right.slot])
	case st.right.isConstant():
		applyConstantRight(st.op, dst, w.slot[st.left.slot], st.right.constant)
	default:
		apply(st.op, dst, w.slot[st.left.slot], w.slot[st.right.slot])
	}
}

// applyWithTerm adds an influence to the left operand, or takes it away, and adds
// its term to the linear part in the same pass.
func (w *worker) applyWithTerm(st *step, dst []float64) {
	sign := 1.0
	if st.op == opSubtract {
		sign = -1
	}
	t := st.linear
	x, linear := w.slot[t.slot][:len(dst)], w.linear[:len(dst)]
	if st.left.isConstant() {
		for i := range dst {
			v := x[i]
			dst[i] = st.left.constant + float64(sign*v)
			linear[i] += float64(t.slope * (v - t.mean))
		}
		return
	}
	a := w.slot[st.left.slot][:len(dst)]
	for i := range dst {
		v := x[i]
		dst[i] = a[i] + float64(sign*v)
		linear[i] += float64(t.slope * (v - t.mean))
	}
}
