package uncertainty

import (
	"context"
	"math"
	"runtime"
	"sync"
	"sync/atomic"
)

// blockSize is the number of trials in a block. It is part of the identity of
// the random streams: another size gives other draws.
const blockSize = 512

// sample fills values with independent draws of a node, block by block on all
// processors, and returns their moments.
func (m *Model) sample(ctx context.Context, out Node, seed uint64, values []float64) (moments, error) {
	program := m.compile(out)
	center := m.Expected(out)
	blocks := make([]moments, (len(values)+blockSize-1)/blockSize)
	var next atomic.Int64
	var wait sync.WaitGroup
	for range min(runtime.GOMAXPROCS(0), len(blocks)) {
		wait.Add(1)
		go func() {
			defer wait.Done()
			w := program.newWorker(seed)
			for ctx.Err() == nil {
				b := int(next.Add(1)) - 1
				if b >= len(blocks) {
					return
				}
				part := values[b*blockSize : min((b+1)*blockSize, len(values))]
				copy(part, w.run(b))
				blocks[b] = momentsOf(part, center)
			}
		}()
	}
	wait.Wait()
	return merge(blocks), ctx.Err()
}

// moments are sums of deviations from a center, which keeps their digits.
type moments struct {
	n, center, sum, squares float64
}

func momentsOf(values []float64, center float64) moments {
	s := moments{n: float64(len(values)), center: center}
	for _, v := range values {
		d := v - center
		s.sum += d
		s.squares += float64(d * d)
	}
	return s
}

// merge adds the sums of the blocks in their order.
func merge(blocks []moments) moments {
	total := moments{center: blocks[0].center}
	for _, b := range blocks {
		total.n += b.n
		total.sum += b.sum
		total.squares += b.squares
	}
	return total
}

func (s moments) meanAndDeviation() (mean, deviation float64) {
	d := s.sum / s.n
	return s.center + d, math.Sqrt(max(0, (s.squares-float64(s.n*d*d))/(s.n-1)))
}

// step is one node to be evaluated: an influence to be drawn, or an operation
// on the slots of two earlier nodes.
type step struct {
	node
	slot int
	key  uint64
	dist Distribution
}

// program is the part of a model that one output needs, in order, with a slot
// of one block of trials for each node. Constants fill their slot once.
type program struct {
	constants, steps []step
	slots            int
}

func (m *Model) compile(out Node) program {
	var p program
	slotOf := make([]int, out+1)
	for i, needed := range m.reachable(out) {
		if !needed {
			continue
		}
		st := step{node: m.nodes[i], slot: p.slots}
		slotOf[i] = p.slots
		p.slots++
		switch st.op {
		case opConstant:
			p.constants = append(p.constants, st)
			continue
		case opInfluence:
			in := &m.influences[st.left]
			st.key, st.dist = in.streamKey(), in.Distribution
		default:
			st.left, st.right = Node(slotOf[st.left]), Node(slotOf[st.right])
		}
		p.steps = append(p.steps, st)
	}
	return p
}

// worker runs a program on one processor.
type worker struct {
	program
	seed   uint64
	source *source
	slot   [][]float64
}

func (p program) newWorker(seed uint64) *worker {
	w := &worker{program: p, seed: seed, source: newSource(), slot: make([][]float64, p.slots)}
	for i := range w.slot {
		w.slot[i] = make([]float64, blockSize)
	}
	for _, st := range p.constants {
		for i := range w.slot[st.slot] {
			w.slot[st.slot][i] = st.value
		}
	}
	return w
}

// run evaluates one block and returns the values of the output, which is the
// last slot; they hold until the next run.
func (w *worker) run(block int) []float64 {
	for i := range w.steps {
		st := &w.steps[i]
		dst := w.slot[st.slot]
		if st.op == opInfluence {
			w.source.key(w.seed, st.key, block)
			st.dist.fill(dst, w.source)
			continue
		}
		apply(st.op, dst, w.slot[st.left], w.slot[st.right])
	}
	return w.slot[w.slots-1]
}

func apply(o op, dst, a, b []float64) {
	a, b = a[:len(dst)], b[:len(dst)]
	switch o {
	case opAdd:
		for i := range dst {
			dst[i] = a[i] + b[i]
		}
	case opSubtract:
		for i := range dst {
			dst[i] = a[i] - b[i]
		}
	case opMultiply:
		for i := range dst {
			dst[i] = a[i] * b[i]
		}
	case opDivide:
		for i := range dst {
			dst[i] = a[i] / b[i]
		}
	}
}
