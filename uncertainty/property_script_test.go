package uncertainty

import (
	"fmt"
	"math"
	"strings"

	"minim/uncertainty/distribution"
)

// script reads a model from bytes:
//
//	N m s, R a b, T a b, A a b, G m s, S m s ν, Z a b β, I a b d
//	                                       push an influence: normal, rectangular,
//	                                       distribution.Triangular, arcsine, gamma, Student t,
//	                                       trapezoidal, inexact rectangular
//	D ν                                    degrees of freedom of the next one
//	c x                                    push a constant
//	+ - * / s o                            operations, s and o sine and cosine
//	d, p i                                 push the last node, or node i, again
//	r x                                    correlate the last two influences
//
// where a letter is a number: see number. What is not understood is skipped.
type script struct {
	data    []byte
	m       Model
	stack   []Node
	last    []Node // influences
	degrees float64
}

func (s *script) model() (*Model, Node, bool) {
	for len(s.data) > 0 && len(s.m.nodes) < 100 {
		s.step()
	}
	if len(s.stack) == 0 {
		return nil, 0, false
	}
	return &s.m, s.pop(), true
}

func (s *script) next() byte {
	if len(s.data) == 0 {
		return 0
	}
	b := s.data[0]
	s.data = s.data[1:]
	return b
}

func (s *script) pop() Node {
	n := s.stack[len(s.stack)-1]
	if len(s.stack) > 1 { // the last one stays
		s.stack = s.stack[:len(s.stack)-1]
	}
	return n
}

func (s *script) step() {
	switch b := s.next(); {
	case strings.IndexByte("NRTAGSZI", b) >= 0:
		s.influence(b)
	case b == 'D':
		s.degrees = math.Abs(s.number())
	case b == 'c':
		s.stack = append(s.stack, s.m.Constant(s.number()))
	case b == 'r' && len(s.last) > 1:
		r := max(-1, min(s.number(), 1))
		_ = s.m.Correlate(s.last[len(s.last)-2:], pair(r)) // refused for some
	case len(s.stack) > 0:
		s.operation(b)
	}
}

func (s *script) operation(b byte) {
	switch b {
	case 'd':
		s.stack = append(s.stack, s.stack[len(s.stack)-1])
	case 'p':
		s.stack = append(s.stack, Node(int(s.next())%len(s.m.nodes)))
	case 's':
		s.stack = append(s.stack, s.m.Sine(s.pop()))
	case 'o':
		s.stack = append(s.stack, s.m.Cosine(s.pop()))
	case '+', '-', '*', '/':
		right := s.pop()
		left := s.pop()
		op := map[byte]func(a, b Node) Node{'+': func(a, b Node) Node { return s.m.Add(a, b) }, '-': s.m.Subtract, '*': s.m.Multiply, '/': s.m.Divide}[b]
		s.stack = append(s.stack, op(left, right))
	}
}

// influence pushes one, unless the numbers are not those of a distribution,
// which the engine refuses by a panic of its own.
func (s *script) influence(kind byte) {
	var d Distribution
	x, y := s.number(), s.number()
	switch kind {
	case 'N':
		d = Normal{Mu: x, Sigma: math.Abs(y)}
	case 'R':
		d = Rectangular{Low: min(x, y), High: max(x, y)}
	case 'T':
		d = distribution.Triangular{Low: min(x, y), High: max(x, y)}
	case 'A':
		d = Arcsine{min(x, y), max(x, y)}
	case 'Z':
		d = Trapezoidal{min(x, y), max(x, y), math.Abs(s.number())}
	case 'I':
		d = InexactRectangular{min(x, y), max(x, y), math.Abs(s.number())}
	case 'G':
		d = Gamma{Mu: math.Abs(x), Sigma: math.Abs(y)}
	case 'S':
		d = StudentT{Mu: x, Sigma: math.Abs(y), Nu: math.Abs(s.number())}
	}
	defer func() {
		if p := recover(); p != nil && !strings.HasSuffix(fmt.Sprint(p), "is not a distribution") {
			panic(p)
		}
	}()
	n := s.m.Influence(Influence{Code: Code(fmt.Sprint(len(s.m.influences))), Distribution: d, DegreesOfFreedom: s.degrees})
	s.degrees = 0
	s.stack, s.last = append(s.stack, n), append(s.last, n)
}

// number reads a digit as it is, a letter as one of some numbers that are likely
// to make trouble, and any other byte with the next one as a power of two.
func (s *script) number() float64 {
	b := s.next()
	if '0' <= b && b <= '9' {
		return float64(b - '0')
	}
	x, known := map[byte]float64{
		'-': -1, 'a': 0.1, 'b': 0.01, 'e': 1e-9, 'f': 1e-20, 'g': 1e-100, 'h': 1e-154, 'i': 1e-200, 'j': 1e-300, 'k': 5e-324, 'l': 2.2e-308,
		'E': 1e9, 'F': 1e20, 'G': 1e100, 'H': 1e154, 'I': 1e200, 'J': 1e300, 'K': math.MaxFloat64, 'L': math.MaxFloat64 / 4,
		'w': -1e-12, 'x': -1e12, 'y': 1e-12, 'z': 1e300, 'Z': -1e300, 'A': 0.999999999, 'B': 1.0000000000000002, 'C': -0.5, ' ': 10,
	}[b]
	if !known {
		x = math.Ldexp(1+float64(b)/256, 8*int(s.next())-1024)
	}
	return x
}
