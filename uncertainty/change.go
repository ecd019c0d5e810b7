package uncertainty

import (
	"fmt"
	"slices"

	"minim/uncertainty/portable"
)

// Change is what is known of some influences of a model in place of what it was made with, or the
// value of a constant that has a name. Which they are is told by Code and Group, or one alone by
// Only. Of Factor, Distribution and Value one counts, the first that is there.
type Change struct {
	// Code and Group of all that change; they do not count where Only is given.
	Code  Code
	Group Group
	// Only is the one that changes: the [Influence.Identity] of a line of a budget, or of what a
	// constant is named as.
	Only Identity
	// Factor is how many times as large the standard uncertainty becomes, about the same mean (a
	// distribution that is cut off at zero may move it), or of a constant the value. It is not
	// negative; 0 stands for none.
	Factor float64
	// Distribution in place of the one that there was, in the unit of the influence, and the value
	// that the plan intends then.
	Distribution Distribution
	Nominal      float64
	// Value of a constant, in its unit.
	Value float64
}

// StructureError reports a change that a model cannot take over as it stands: it has to be made anew.
type StructureError struct {
	// Of is the influence or the constant.
	Of *Influence
	// Why it cannot, as a code: "exact" of a constant that is to have a distribution, "no-single-value" of an influence
	// that is to have none, "degrees-of-freedom" and "correlated" of what others go by as well; "not-a-factor",
	// "not-finite" and "no-distribution" of what can be nowhere.
	Why string
}

func (e *StructureError) Error() string { return fmt.Sprintf("%s: %s", e.Of.Code, e.Why) }

func (c *Change) of(in *Influence) bool {
	if c.Only != (Identity{}) {
		return in.Identity() == c.Only
	}
	return in.Code == c.Code && in.Group == c.Group
}

// Change takes over changes of what was appended from a node on, 0 for all, one after the other. It
// reports which of them this model has anything of. Nodes stay what they are, and so do the random
// streams. The error is a *[StructureError], after which the model is of no use.
func (m *Model) Change(from Node, list []Change) (found []bool, err error) {
	found = make([]bool, len(list))
	for k := range list {
		if found[k], err = m.change(from, &list[k]); err != nil {
			return nil, err
		}
	}
	return found, nil
}

func (m *Model) change(from Node, c *Change) (found bool, err error) {
	for n := from; int(n) < len(m.nodes); n++ {
		if m.nodes[n].op != opInfluence {
			continue
		}
		i := int(m.nodes[n].left)
		if c.of(&m.influences[i]) {
			found = true
			if err := m.changeInfluence(i, c); err != nil {
				return true, err
			}
		}
	}
	for n, name := range m.names {
		if n < from || m.nodes[n].op != opConstant || !c.of(name) {
			continue
		}
		found = true
		value := c.Value
		switch {
		case c.Factor != 0:
			value = m.nodes[n].value * c.Factor
		case c.Distribution != nil:
			return true, &StructureError{name, "exact"}
		}
		if !portable.IsFinite(value) {
			return true, &StructureError{name, "not-finite"}
		}
		m.nodes[n].value = value
	}
	return found, nil
}

// changeInfluence looks at whether all that goes by the distribution of an influence stays as it is.
func (m *Model) changeInfluence(i int, c *Change) error {
	in := &m.influences[i]
	d, nominal := c.Distribution, c.Nominal
	switch {
	case c.Factor < 0 || !portable.IsFinite(c.Factor):
		return &StructureError{in, "not-a-factor"}
	case c.Factor != 0:
		d, nominal = in.Distribution.Widened(c.Factor), in.Nominal
	case d == nil:
		return &StructureError{in, "no-single-value"}
	}
	if !d.Sound() || !portable.IsFinite(nominal) {
		return &StructureError{in, "no-distribution"}
	}
	was := m.unchanged(i)
	if drawnFrom(d) != drawnFrom(in.Distribution) {
		if group, _ := m.groupOf(i); group >= 0 || m.scaleOf[i] >= 0 || in.DegreesOfFreedom > 0 {
			return &StructureError{in, "degrees-of-freedom"}
		}
		in.DegreesOfFreedom = drawnFrom(d)
	}
	if m.isCorrelated(i) && (drawnFrom(d) == 0) != isNormal(d) {
		return &StructureError{in, "correlated"}
	}
	if m.changed == nil {
		m.changed = make(map[int]Influence)
	}
	m.changed[i] = was
	in.Distribution, in.Nominal = d, nominal
	return nil
}

// unchanged is an influence as it was described, by which it is asked for again.
func (m *Model) unchanged(i int) Influence {
	if was, changed := m.changed[i]; changed {
		return was
	}
	return m.influences[i]
}

// drawnFrom are the degrees of freedom of a Student t, 0 of any other distribution.
func drawnFrom(d Distribution) float64 {
	t, _ := d.(StudentT)
	return t.Nu
}

func isNormal(d Distribution) bool { _, yes := d.(Normal); return yes }

// stated is a model as it was made, or as it was at some time.
type stated struct {
	influences []Influence
	constants  []float64 // the values of all nodes
	scales     int
}

func (m *Model) stated() *stated {
	s := &stated{influences: slices.Clone(m.influences), constants: make([]float64, len(m.nodes)), scales: len(m.scales)}
	for i := range m.nodes {
		s.constants[i] = m.nodes[i].value
	}
	return s
}

// restore makes the model what it was; what was appended since is gone.
func (m *Model) restore(s *stated) {
	for id, n := range m.known {
		if int(n) >= len(s.constants) {
			delete(m.known, id)
		}
	}
	for n := range m.names {
		if int(n) >= len(s.constants) {
			delete(m.names, n)
		}
	}
	m.nodes = m.nodes[:len(s.constants)]
	m.influences = slices.Clone(s.influences) // results may point to those that were
	m.keys, m.scaleOf = m.keys[:len(s.influences)], m.scaleOf[:len(s.influences)]
	m.scales = m.scales[:s.scales]
	clear(m.changed)
	for i, value := range s.constants {
		m.nodes[i].value = value
	}
}
