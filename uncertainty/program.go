package uncertainty

import (
	"minim/uncertainty/distribution"
	"minim/uncertainty/posterior"
	"minim/uncertainty/random"
	"minim/uncertainty/sharp"
)

// program is the part of a model that one output needs, compiled for blocks of
// trials: a list of steps over slots, each slot one block of values. A slot is
// used again as soon as nothing needs its values any more, so that a block
// stays in the nearest cache.
type program struct {
	steps []step
	slots int
	out   operand
	// outAt is the output with the smooth influence at each of three points.
	outAt [sharp.Points]operand
	sharp *sharp.Sharpening // nil where nothing is asked of it
}

// operand is a slot, or a constant.
type operand struct {
	slot     int // -1 for a constant
	constant float64
}

func (o operand) isConstant() bool { return o.slot < 0 }

// step fills the slot dst: with draws of a distribution, with a mixture of
// correlated ones, or with an operation on operands.
type step struct {
	op          op
	dst         int
	left, right operand
	// draw is what an influence is drawn from, and mean its mean.
	draw draw
	mean float64
	// linear is the term that the step adds to the linear part of the model.
	linear linearTerm
	// influence is the number of what is drawn, -1 for what others are mixed of.
	influence int
	// node that the step works out, or of the influence that it was first needed for.
	node Node
	// at are the same operation with the smooth influence at each of its points, where it
	// depends on that one.
	at []step
}

// linearTerm is slope (x - mean) for the influence x in a slot; none when the
// slope is 0.
type linearTerm struct {
	slot        int
	mean, slope float64
	influence   int
	some        bool // false of none
}

// draw is an influence: the stream and the distribution that it is drawn from,
// or the slots of independent unit normals that it is mixed from. Where it is scaled, what
// is drawn is a deviation from the mean, to be multiplied by what the slot scale holds, and
// drawn again where that is more than cut, which is 0 where nothing is.
type draw struct {
	key    uint64
	dist   drawn
	mix    []weighted
	scaled bool
	scale  int
	cut    float64
	sigma  float64         // of what is drawn, where there is a cut, or u of what it is turned into
	told   *posterior.Told // what a Student t is turned into, nil for itself
}

// drawn is what values are drawn from.
type drawn interface {
	Fill(dst []float64, s *random.Source)
}

type weighted struct {
	slot   int
	weight float64
}

// compiler turns nodes into steps.
type compiler struct {
	m       *Model
	streams streams
	p       program
	needed  []bool
	slopes  []float64
	cuts    []float64 // the greatest errors of influences that are cut
	lastUse []Node    // the last node that needs each node
	at      []operand // where the value of each node is
	free    []int     // slots that can be used again
	normals map[int][]int
	scales  map[uint64]int // where the scale with each key is
	uses    []int
	// smooth is the node of the smooth influence, -1 for none, and pointed where the value of
	// each node that depends on it is with that at its points.
	smooth  Node
	pointed map[Node][sharp.Points]operand
	// waiting are the linear terms of influences that only one sum needs: it
	// adds them in passing.
	waiting map[Node]linearTerm
}

// compile returns the program for an output, and for the linear model with the
// slopes given for the influences.
func (m *Model) compile(out Node, slopes []float64) *program {
	return m.compileWith(out, slopes, m.ownStreams(), nil)
}

// compileWith is compile with the keys of the random streams.
func (m *Model) compileWith(out Node, slopes []float64, keys streams, as *sharp.Sharpening) *program {
	return &m.compiled(out, slopes, keys, as).p
}

// compiled is the compiler that has made a program.
func (m *Model) compiled(out Node, slopes []float64, keys streams, as *sharp.Sharpening) *compiler {
	c := &compiler{
		m: m, streams: keys, needed: m.reachable(out), slopes: slopes,
		normals: make(map[int][]int), scales: make(map[uint64]int), waiting: make(map[Node]linearTerm),
		smooth: -1, pointed: make(map[Node][sharp.Points]operand),
	}
	if c.p.sharp = as; as != nil && as.Smooth >= 0 {
		c.smooth = m.known[m.influences[as.Smooth].Identity()]
	}
	c.cuts = m.cuts(c.needed)
	c.uses = m.references(c.needed)
	c.at = make([]operand, out+1)
	c.findLastUses(out)
	for i := range c.needed {
		if c.needed[i] {
			c.at[i] = c.compileNode(Node(i))
		}
	}
	c.p.out = c.at[out]
	c.p.outAt = c.operandAt(out)
	return c
}

func (c *compiler) findLastUses(out Node) {
	c.lastUse = make([]Node, out+1)
	for i := range c.needed {
		n := &c.m.nodes[i]
		if c.needed[i] && n.op >= opSine {
			c.lastUse[n.left] = Node(i)
		}
		if c.needed[i] && n.op >= opAdd {
			c.lastUse[n.right] = Node(i)
		}
	}
	c.lastUse[out] = out + 1
}

// release frees the slots of the operands that node i was the last to need.
func (c *compiler) release(i Node) {
	n := &c.m.nodes[i]
	if n.op < opSine {
		return
	}
	c.releaseOperand(n.left, i)
	if n.op >= opAdd && n.right != n.left {
		c.releaseOperand(n.right, i)
	}
}

func (c *compiler) releaseOperand(of, user Node) {
	if c.lastUse[of] != user {
		return
	}
	list := []operand{c.at[of]}
	if at, yes := c.pointed[of]; yes {
		list = append(list, at[:]...)
	}
	for _, o := range list {
		if !o.isConstant() {
			c.free = append(c.free, o.slot)
		}
	}
}

func (c *compiler) slot() int {
	if last := len(c.free) - 1; last >= 0 {
		s := c.free[last]
		c.free = c.free[:last]
		return s
	}
	c.p.slots++
	return c.p.slots - 1
}

func (c *compiler) compileNode(i Node) operand {
	n := &c.m.nodes[i]
	switch {
	case n.op == opConstant:
		return operand{-1, n.value}
	case n.op == opInfluence:
		return c.compileInfluence(i)
	}
	st := step{op: n.op, left: c.at[n.left], node: i}
	if n.op >= opAdd {
		st.right = c.at[n.right]
	}
	if st.left.isConstant() && (n.op < opAdd || st.right.isConstant()) {
		return operand{-1, n.of(st.left.constant, st.right.constant)}
	}
	st.linear = c.termInPassing(n)
	if c.dependsOnSmooth(n) {
		st.dst = c.slot()
		st.at = c.compileAt(i, st.op)
		c.release(i)
	} else {
		c.release(i) // before the slot is taken: a step may write over its operand
		st.dst = c.slot()
	}
	c.p.steps = append(c.p.steps, st)
	return operand{slot: st.dst}
}

func (c *compiler) compileInfluence(i Node) operand {
	number := int(c.m.nodes[i].left)
	in := &c.m.influences[number]
	st := step{op: opInfluence, mean: in.Distribution.Summary().Mean, influence: number, node: i}
	if i == c.smooth {
		c.pointed[i] = pointsOf(c.p.sharp)
	}
	t, student := in.Distribution.(StudentT)
	switch g, row := c.m.groupOf(number); {
	case g >= 0:
		st.draw = c.mixture(g, row)
	case c.m.isTold(number):
		st.draw = c.toldNormal(i)
	case student && (c.m.scaleOf[number] >= 0 || c.cuts[number] > 0):
		st.draw = c.scaledNormal(i, t)
	default:
		st.draw = draw{key: c.streams.influence(number), dist: in.Distribution}
	}
	st.dst = c.slot()
	term := linearTerm{st.dst, st.mean, c.slopes[number], number, true}
	if c.uses[i] == 1 && c.summed(i) {
		c.waiting[i] = term
	} else {
		st.linear = term
	}
	c.p.steps = append(c.p.steps, st)
	return operand{slot: st.dst}
}

// summed reports whether the only node that needs i adds it to another, or takes
// it away.
func (c *compiler) summed(i Node) bool {
	n := &c.m.nodes[c.lastUse[i]]
	return (n.op == opAdd || n.op == opSubtract) && n.right == i && n.left != i
}

// termInPassing returns the linear term that a sum is to add, with the influence
// on its right.
func (c *compiler) termInPassing(n *node) linearTerm {
	if n.op < opAdd {
		return linearTerm{}
	}
	if term, found := c.waiting[n.right]; found {
		delete(c.waiting, n.right)
		return term
	}
	return linearTerm{}
}

// mixture returns a draw from the unit normals that a member of a group is mixed from. They
// are drawn when the first member is, and keep their slots.
func (c *compiler) mixture(group, row int) (d draw) {
	g := &c.m.groups[group]
	slots, drawn := c.normals[group]
	if !drawn {
		for _, i := range g.members {
			st := step{op: opInfluence, influence: -1, dst: c.slot(), draw: draw{key: c.streams.influence(i), dist: Normal{Mu: 0, Sigma: 1}}}
			c.p.steps = append(c.p.steps, st)
			slots = append(slots, st.dst)
		}
		c.normals[group] = slots
	}
	u := c.m.influences[g.members[row]].Distribution.Summary().StandardUncertainty
	d.mix = make([]weighted, len(slots))
	for j, s := range slots {
		d.mix[j] = weighted{s, times(u, g.root[row][j])}
	}
	if g.nu > 0 {
		d.scaled, d.scale = true, c.scale(^c.streams.influence(g.members[0]), g.nu, 0)
	}
	return d
}

// scaledNormal returns a draw from a normal distribution that is scaled as others of its set
// of readings are, or for itself.
func (c *compiler) scaledNormal(i Node, t StudentT) draw {
	number := int(c.m.nodes[i].left)
	key, nu := c.scaleOf(number)
	return draw{key: c.streams.influence(number), dist: Normal{Mu: 0, Sigma: t.Sigma}, scaled: true, scale: c.scale(key, nu, i), cut: c.cuts[number], sigma: t.Sigma}
}

// scaleOf are the key and the degrees of freedom of the scale that an influence is drawn with.
func (c *compiler) scaleOf(number int) (key uint64, nu float64) {
	if k := c.m.scaleOf[number]; k >= 0 {
		return c.streams.scale(k), c.m.scales[k].nu
	}
	return ^c.streams.influence(number), drawnFrom(c.m.influences[number].Distribution)
}

// toldNormal is one for a posterior, of which a Student t is made and then its value.
func (c *compiler) toldNormal(i Node) draw {
	number := int(c.m.nodes[i].left)
	key, nu := c.scaleOf(number)
	d := draw{key: c.streams.influence(number), dist: Normal{Mu: 0, Sigma: 1}, scaled: true, scale: c.scale(key, nu, i)}
	posterior := c.m.influences[number].Distribution.(Tabulated)
	d.told, d.sigma = distribution.ToldOf(posterior, nu), posterior.Summary().StandardUncertainty
	return d
}

// scale returns the slot of a scale. It is drawn when it is first asked for, for an influence, and
// keeps its slot.
func (c *compiler) scale(key uint64, nu float64, first Node) int {
	slot, drawn := c.scales[key]
	if !drawn {
		slot = c.slot()
		c.p.steps = append(c.p.steps, step{op: opInfluence, influence: -1, node: first, dst: slot, draw: draw{key: random.Mix(key), dist: rootOfGamma{nu}}})
		c.scales[key] = slot
	}
	return slot
}
