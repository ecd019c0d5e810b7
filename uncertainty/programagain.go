package uncertainty

import (
	"minim/uncertainty/distribution"
	"minim/uncertainty/random"
	"minim/uncertainty/sharp"
)

// again takes over what the influences and the constants of the model are now, and reports
// whether the steps are those that would be compiled. Models with correlated influences are always
// compiled anew.
func (c *compiler) again(slopes, cuts []float64, as *sharp.Sharpening) bool {
	if len(c.m.groups) > 0 {
		return false
	}
	for i := range c.p.steps {
		if st := &c.p.steps[i]; st.op == opInfluence && st.influence >= 0 && !c.isAs(&st.draw, st.influence, cuts) {
			return false
		}
	}
	c.slopes, c.cuts, c.p.sharp = slopes, cuts, as
	c.foldAgain()
	for i := range c.p.steps {
		c.stepAgain(&c.p.steps[i])
	}
	c.p.out, c.p.outAt = c.at[len(c.at)-1], c.operandAt(Node(len(c.at)-1))
	return true
}

// isAs reports whether an influence is drawn with a scale, and as a posterior, where a draw is.
func (c *compiler) isAs(d *draw, number int, cuts []float64) bool {
	_, student := c.m.influences[number].Distribution.(StudentT)
	told := c.m.isTold(number)
	return told == (d.told != nil) && d.scaled == (told || student && (c.m.scaleOf[number] >= 0 || cuts[number] > 0))
}

// foldAgain works out all that is constant.
func (c *compiler) foldAgain() {
	for i, needed := range c.needed {
		n := &c.m.nodes[i]
		if !needed {
			continue
		}
		if at, yes := c.pointed[Node(i)]; yes {
			if Node(i) == c.smooth {
				at = pointsOf(c.p.sharp)
			} else {
				left, right := c.operandAt(n.left), c.rightAt(n)
				for k := range at {
					if at[k].isConstant() {
						at[k].constant = n.of(left[k].constant, right[k].constant)
					}
				}
			}
			c.pointed[Node(i)] = at
		}
		switch {
		case !c.at[i].isConstant():
		case n.op == opConstant:
			c.at[i].constant = n.value
		default:
			right := operand{}
			if n.op >= opAdd {
				right = c.at[n.right]
			}
			c.at[i].constant = n.of(c.at[n.left].constant, right.constant)
		}
	}
}

// rightAt is where the right operand of a node is, with the smooth influence at its points, if it has one.
func (c *compiler) rightAt(n *node) (at [sharp.Points]operand) {
	if n.op >= opAdd {
		at = c.operandAt(n.right)
	}
	return at
}

// stepAgain takes over what a step is made of.
func (c *compiler) stepAgain(st *step) {
	n := &c.m.nodes[st.node]
	if t := &st.linear; t.some {
		t.mean, t.slope = c.m.influences[t.influence].Distribution.Summary().Mean, c.slopes[t.influence]
	}
	switch {
	case st.op != opInfluence:
		st.left.constant = c.at[n.left].constant
		if n.op >= opAdd {
			st.right.constant = c.at[n.right].constant
		}
		c.pointsAgain(st, n)
	case st.influence < 0:
		key, nu := c.scaleOf(int(n.left))
		st.draw.key, st.draw.dist = random.Mix(key), rootOfGamma{nu}
	default:
		c.drawAgain(st)
	}
}

// pointsAgain is stepAgain for the same operation with the smooth influence at its points.
func (c *compiler) pointsAgain(st *step, n *node) {
	if len(st.at) == 0 {
		return
	}
	left, right, at := c.operandAt(n.left), c.rightAt(n), c.pointed[st.node]
	k := 0
	for i := range at {
		if !at[i].isConstant() {
			st.at[k].left.constant, st.at[k].right.constant = left[i].constant, right[i].constant
			k++
		}
	}
}

func (c *compiler) drawAgain(st *step) {
	in, d := &c.m.influences[st.influence], &st.draw
	st.mean = in.Distribution.Summary().Mean
	d.key = c.streams.influence(st.influence)
	t, _ := in.Distribution.(StudentT)
	switch {
	case d.told != nil:
		_, nu := c.scaleOf(st.influence)
		posterior := in.Distribution.(Tabulated)
		d.told, d.sigma = distribution.ToldOf(posterior, nu), posterior.Summary().StandardUncertainty
	case d.scaled:
		d.dist, d.cut, d.sigma = Normal{Mu: 0, Sigma: t.Sigma}, c.cuts[st.influence], t.Sigma
	default:
		d.dist = in.Distribution
	}
}
