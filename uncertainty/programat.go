package uncertainty

import "minim/uncertainty/sharp"

// pointsOf are those of the smooth influence.
func pointsOf(s *sharp.Sharpening) [sharp.Points]operand {
	return [sharp.Points]operand{{-1, s.Mean - s.Size}, {-1, s.Mean}, {-1, s.Mean + s.Size}}
}

// isPointed reports whether a node depends on the smooth influence.
func (c *compiler) isPointed(i Node) bool { _, yes := c.pointed[i]; return yes }

func (c *compiler) dependsOnSmooth(n *node) bool {
	return c.isPointed(n.left) && n.op >= opSine || c.isPointed(n.right) && n.op >= opAdd
}

// operandAt is where a node is with the smooth influence at its points.
func (c *compiler) operandAt(i Node) [sharp.Points]operand {
	if at, yes := c.pointed[i]; yes {
		return at
	}
	o := c.at[i]
	return [sharp.Points]operand{o, o, o}
}

// compileAt returns the operation of a node on what its operands are at the points. What are
// constants there is worked out at once.
func (c *compiler) compileAt(i Node, o op) (steps []step) {
	n := &c.m.nodes[i]
	left, right := c.operandAt(n.left), [sharp.Points]operand{}
	if o >= opAdd {
		right = c.operandAt(n.right)
	}
	var at [sharp.Points]operand
	for k := range at {
		if left[k].isConstant() && (o < opAdd || right[k].isConstant()) {
			at[k] = operand{-1, n.of(left[k].constant, right[k].constant)}
			continue
		}
		at[k] = operand{slot: c.slot()}
		steps = append(steps, step{op: o, left: left[k], right: right[k], dst: at[k].slot})
	}
	c.pointed[i] = at
	return steps
}
