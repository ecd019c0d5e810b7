package uncertainty

import (
	"cmp"
	"fmt"
	"math"
)

// ZeroDivisorError reports a division by a quantity that could be zero: the
// range that its influences allow holds zero. An influence without bounds
// counts as its mean ± 4 u.
type ZeroDivisorError struct {
	// Divisor is what the node was named, or the influence that it is; an unnamed node has
	// no code.
	Divisor *Influence
	// Low and High are the ends of the range.
	Low, High float64
}

func (e *ZeroDivisorError) Error() string {
	return fmt.Sprintf("division by %s, which may be anything from %.3g to %.3g and so may be zero", cmp.Or(e.Divisor.Code, "something"), e.Low, e.High)
}

// interval is a range of possible values.
type interval struct{ low, high float64 }

func (i interval) holdsZero() bool { return !(i.low > 0 || i.high < 0) }

// Range is what the influences allow a node to be, as it is checked whether a divisor
// can be zero: see [ZeroDivisorError]. It panics when a division on the way fails that
// check.
func (m *Model) Range(n Node) (low, high float64) {
	ranges, err := m.ranges(m.reachable(n))
	if err != nil {
		panic("uncertainty: " + err.Error())
	}
	return ranges[n].low, ranges[n].high
}

// checkDivisors returns a *ZeroDivisorError for the first division among the
// needed nodes whose divisor may be zero.
func (m *Model) checkDivisors(needed []bool) error {
	_, err := m.ranges(needed)
	return err
}

// ranges are those of the needed nodes, by interval arithmetic; the error is that of
// checkDivisors.
func (m *Model) ranges(needed []bool) ([]interval, error) {
	ranges := make([]interval, len(needed))
	for i := range needed {
		if !needed[i] {
			continue
		}
		n := &m.nodes[i]
		if n.op == opDivide && ranges[n.right].holdsZero() {
			r := ranges[n.right]
			return nil, &ZeroDivisorError{m.described(n.right), r.low, r.high}
		}
		ranges[i] = m.rangeOf(n, ranges)
	}
	return ranges, nil
}

func (m *Model) rangeOf(n *node, ranges []interval) interval {
	switch n.op {
	case opConstant:
		return interval{n.value, n.value}
	case opInfluence:
		return practicalSupport(m.influences[n.left].Distribution)
	}
	a := ranges[n.left]
	switch n.op {
	case opSine:
		return sineOf(a)
	case opCosine:
		return sineOf(interval{a.low + math.Pi/2, a.high + math.Pi/2})
	}
	b := ranges[n.right]
	switch n.op {
	case opAdd:
		return interval{a.low + b.low, a.high + b.high}
	case opSubtract:
		return interval{a.low - b.high, a.high - b.low}
	case opMultiply:
		return hull(a.low*b.low, a.low*b.high, a.high*b.low, a.high*b.high)
	default:
		return hull(a.low/b.low, a.low/b.high, a.high/b.low, a.high/b.high)
	}
}

// sineOf is the range of the sine over an interval of angles: that of its ends,
// and 1 or -1 where a crest or a trough lies between them.
func sineOf(a interval) interval {
	low, _ := opSine.unary(a.low)
	high, _ := opSine.unary(a.high)
	r := interval{min(low, high), max(low, high)}
	holds := func(angle float64) bool { // angle + n 2π for some n
		n := math.Ceil((a.low - angle) / (2 * math.Pi))
		return angle+float64(n*2*math.Pi) <= a.high
	}
	if holds(math.Pi / 2) {
		r.high = 1
	}
	if holds(-math.Pi / 2) {
		r.low = -1
	}
	return r
}

func practicalSupport(d Distribution) interval {
	s := d.Summary()
	if math.IsInf(s.Low, 0) {
		s.Low = s.Mean - float64(4*s.StandardUncertainty)
	}
	if math.IsInf(s.High, 0) {
		s.High = s.Mean + float64(4*s.StandardUncertainty)
	}
	return interval{s.Low, s.High}
}

func hull(a, b, c, d float64) interval {
	return interval{min(a, b, c, d), max(a, b, c, d)}
}

// described is what a node was named, or the influence that it is.
func (m *Model) described(n Node) *Influence {
	if named, ok := m.names[n]; ok {
		return named
	}
	if m.nodes[n].op == opInfluence {
		return &m.influences[m.nodes[n].left]
	}
	return new(Influence)
}
