package law

import (
	"math"
	"runtime"

	"minim/uncertainty/parallel"
	"minim/uncertainty/portable"
)

// Sum lists independent quantities to be added up, each by how it lies about its mean; what is
// cut off at both ends about 0.
type Sum struct {
	variance float64   // of all that are normal
	flat     []float64 // half widths of rectangles
	gammas   []gamma
	tables   []table
	// light is the variance of all that is not cut off, reach what the rest can be at most.
	light, reach, scales float64
}

type gamma struct{ shape, scale float64 }

// table is a quantity known by its distribution function, and cut off at ±most.
type table struct {
	below func(x float64) float64
	most  float64
}

// Normal adds a normal quantity with a standard deviation.
func (s *Sum) Normal(deviation float64) { s.addVariance(&s.variance, float64(deviation*deviation)) }

func (s *Sum) addVariance(to *float64, v float64) {
	*to += v
	s.light += v
}

// Flat adds a rectangular quantity within ±half.
func (s *Sum) Flat(half float64) {
	if half != 0 {
		s.flat = append(s.flat, math.Abs(half))
		s.light += float64(half * half / 3)
	}
}

// Gamma adds a gamma quantity less its mean. A negative scale mirrors it.
func (s *Sum) Gamma(shape, scale float64) {
	if scale != 0 {
		s.gammas = append(s.gammas, gamma{shape, scale})
		s.light += float64(shape * scale * scale)
	}
}

// Bounded adds a quantity with a variance whose distribution function is known, and which lies
// within ±most.
func (s *Sum) Bounded(below func(x float64) float64, variance, most float64) {
	if most > 0 {
		s.tables = append(s.tables, table{below, most})
		s.light += variance
	}
}

// CutOff adds a symmetric quantity of which what lies beyond ±most counts as that; most is some
// of its scale, of which that of the sum is made.
func (s *Sum) CutOff(below func(x float64) float64, scale, most float64) {
	if most > 0 {
		s.tables = append(s.tables, table{below, most})
		s.reach += most
		s.scales += float64(scale * scale)
	}
}

// Scale is the size of the sum: its standard deviation where nothing is cut off.
func (s *Sum) Scale() float64 { return math.Sqrt(s.light + s.scales) }

// characteristic fills φ(w_k) for w_k = k dw with that of all that has it in closed form, and
// returns up to which k it is not next to nothing.
func (s *Sum) characteristic(phi []complex128, dw float64) int {
	phi[0] = 1
	for k := 1; k < len(phi); k++ {
		w := float64(k) * dw
		size, bound, angle := 1.0, 1.0, 0.0
		if s.variance > 0 {
			size = portable.Exp(-w * w * s.variance / 2)
			bound = size
		}
		for _, g := range s.gammas {
			y := float64(w * g.scale)
			modulus := portable.Exp(-g.shape / 2 * portable.Log1p(y*y))
			size *= modulus
			bound *= modulus
			angle += float64(g.shape * (portable.Atan(y) - y))
		}
		for _, a := range s.flat {
			if bound < nothing {
				break
			}
			y := float64(w * a)
			sin, _ := portable.Sincos(y)
			size *= sin / y
			bound *= min(1, 1/y)
		}
		if bound < nothing {
			return k
		}
		sin, cos := 0.0, 1.0
		if angle != 0 {
			sin, cos = portable.Sincos(angle)
		}
		phi[k] = complex(size*cos, size*sin)
	}
	return len(phi)
}

// nothing is a characteristic function that adds nothing to a probability any more.
const nothing = 1e-17

// multiply takes the first n of phi times the characteristic function of a table. The
// probabilities of the cells are those of a quantity moved to the middle of its cell. Their sum
// over e^(iwx) is the function times that of a rectangle as wide as a cell, which is taken off
// again.
func (t *table) multiply(in *scratch, phi []complex128, n int, low, width float64) {
	cells := 2 * (len(phi) - 1)
	masses := in.x[:cells]
	clear(masses)
	first := max(0, int((-t.most-low)/width))
	last := min(cells-1, int((t.most-low)/width))
	under := t.below(-t.most) // and this much lies at -most
	through := t.atEnds(first, last, low, width)
	before := under
	for j, p := range through {
		masses[first+j] = p - before
		before = p
	}
	over := 1 - before
	series := spectrum(masses, in.z[:cells/2], in.y[:cells/2+1])
	for k := range n {
		// The middle of cell j is low + (j + ½) width, and low is -width cells/2.
		turn := turns()[k*(mostCells/cells)]
		if k%2 == 1 {
			turn = -turn
		}
		f := times(series[k], turn)
		if k > 0 {
			angle := math.Pi * (float64(k) / float64(cells))
			by := angle / imag(turns()[k*(mostCells/cells)])
			f = complex(by*real(f), by*imag(f))
		}
		if under > 0 || over > 0 {
			w := math.Pi * float64(k) / -low
			sin, cos := portable.Sincos(w * t.most)
			f += complex(float64((under+over)*cos), float64((over-under)*sin))
		}
		phi[k] = times(phi[k], f)
	}
}

// endsAtOnce are worked out by one processor at a time.
const endsAtOnce = 256

// atEnds is the distribution function at the ends of the cells from first to last, of which the last may reach
// beyond most.
func (t *table) atEnds(first, last int, low, width float64) []float64 {
	through := make([]float64, last-first+1)
	parallel.Do((len(through)+endsAtOnce-1)/endsAtOnce, runtime.GOMAXPROCS(0), func(_, part int) {
		for i := part * endsAtOnce; i < min((part+1)*endsAtOnce, len(through)); i++ {
			through[i] = t.below(min(low+float64(float64(first+i+1)*width), t.most))
		}
	})
	return through
}
