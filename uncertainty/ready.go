package uncertainty

import (
	"context"

	"minim/uncertainty/sharp"
)

// Ready is an output of a model that is evaluated again and again while what is known of influences
// and constants changes. It keeps what was compiled, and the memory of its runs; what it gives is to
// the last bit what the changed model gives by itself. It serves one goroutine at a time, and the model
// is its own meanwhile: nothing else may extend or change it.
type Ready struct {
	model    *Model
	out      Node
	stated   *stated
	compiled map[purpose]*compiler
	space    sharp.Space
	needed   []bool
	// law of the linear part for the coverage probability lawFor, 0 where there is none yet.
	linear *sharp.Linear
	lawFor float64
}

// Ready keeps an output for many evaluations.
func (m *Model) Ready(out Node) *Ready {
	return &Ready{model: m, out: out, compiled: make(map[purpose]*compiler), needed: m.reachable(out)}
}

// Change makes the model what it was when it was first changed, or taken over, but for some changes:
// each time all of them are to be given. See [Model.Change].
func (r *Ready) Change(list []Change) (found []bool, err error) {
	r.Restore()
	if found, err = r.model.Change(0, list); err != nil {
		r.Restore()
	}
	return found, err
}

// Restore makes the model what it was then. What was appended since is gone.
func (r *Ready) Restore() {
	if r.stated == nil {
		r.stated = r.model.stated()
	}
	r.model.restore(r.stated)
	r.linear, r.lawFor = nil, 0
}

// Take goes on with an output of another model. Where its structure is the same, node by node,
// what was compiled serves again.
func (r *Ready) Take(m *Model, out Node) {
	same := r.isLike(m, out)
	r.model, r.out, r.needed, r.stated = m, out, m.reachable(out), nil
	r.linear, r.lawFor = nil, 0
	if !same {
		clear(r.compiled)
	}
	for _, c := range r.compiled {
		c.m = m
	}
}

// isLike reports whether the structure of another model is the same.
func (r *Ready) isLike(m *Model, out Node) bool {
	if out != r.out || len(m.groups) > 0 {
		return false
	}
	for i, needed := range m.reachable(out) {
		a, b := &r.model.nodes[i], &m.nodes[i]
		if needed != r.needed[i] || needed && (a.op != b.op || a.left != b.left || a.right != b.right) {
			return false
		}
	}
	return true
}

// drawnPart is that of the model as it is.
func (r *Ready) drawnPart(gradient []float64, coverage float64) *sharp.Linear {
	if r.lawFor != coverage {
		r.linear, r.lawFor = r.model.drawnPart(gradient, coverage), coverage
	}
	return r.linear
}

// wholePart is the linear part of the model as it is.
func (r *Ready) wholePart(gradient []float64, coverage float64) *sharp.Linear {
	for i, slope := range gradient {
		if slope != 0 && r.model.isTold(i) {
			return r.model.linearPart(gradient, coverage)
		}
	}
	return r.drawnPart(gradient, coverage)
}

// program for the slopes of the linear part, with the smooth influence of a sharpened run, if any.
func (r *Ready) program(of use, keys streams, slopes []float64, as *sharp.Sharpening) *program {
	key := purpose{-1, of}
	if as != nil {
		key.smooth = as.Smooth
	}
	if c := r.compiled[key]; c != nil {
		c.streams = keys
		if c.again(slopes, r.model.cuts(r.needed), as) {
			return &c.p
		}
	}
	c := r.model.compiled(r.out, slopes, keys, as)
	r.compiled[key] = c
	return &c.p
}

// Quantity is the output as it is, to be compared with others by [CloserTo].
func (r *Ready) Quantity() Quantity { return Quantity{r.model, r.out, r} }

// Simulate is [Model.Simulate] of the model as it is. What it returns holds until the next one, or
// for good after [MonteCarlo.Thin].
func (r *Ready) Simulate(ctx context.Context, s Settings) (MonteCarlo, error) {
	s = s.WithDefaults()
	if err := s.Check(); err != nil {
		return MonteCarlo{}, err
	}
	if s.Enough {
		return r.enough(ctx, s)
	}
	if err := r.model.checkDivisors(r.needed); err != nil {
		return MonteCarlo{}, err
	}
	r.space.Clear()
	one := &run{Settings: s, sampler: r.newSampler(ctx, s), kept: newKeeper(s, &r.space), least: r.model.leastDegrees(r.needed)}
	draw := one.fixed
	if s.Digits > 0 {
		draw = one.adaptive
	}
	if err := draw(ctx); err != nil {
		return MonteCarlo{}, err
	}
	return one.result(ctx)
}
