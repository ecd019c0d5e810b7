package law

import (
	"math"
	"math/bits"
	"sort"
	"sync"

	"minim/uncertainty/portable"
)

// Law is the distribution function of a sum: exact at the edges of its cells, with a straight
// density between them.
type Law struct {
	low, width float64
	through    []float64 // the probability of less than each edge, from low on
	// Coarse: tails reach so far that the cells are not as narrow as they should be.
	Coarse bool
}

// widths of cells: so many of the scale of a sum at the most, of which reachOfLight are taken in
// on either side besides what is cut off.
const (
	cellsPerScale = 102.4
	reachOfLight  = 20
	fewestCells   = 1 << 12
)

// Law of the sum; nil where it has no extent, or none that is a number.
func (s *Sum) Law() *Law {
	scale := s.Scale()
	reach := s.reach + float64(reachOfLight*math.Sqrt(s.light))
	if !(scale > 0) || math.IsInf(reach*cellsPerScale, 0) || math.IsInf(1/scale, 0) || math.IsInf(scale*scale, 0) {
		return nil
	}
	wanted := int(min(math.Ceil(2*reach/scale*cellsPerScale), mostCells))
	cells := min(max(1<<bits.Len(uint(wanted-1)), fewestCells), mostCells)
	low, width := -reach, 2*reach/float64(cells)
	in := scratches.Get().(*scratch)
	defer scratches.Put(in)
	phi := in.phi[:cells/2+1]
	clear(phi)
	n := s.characteristic(phi, math.Pi/reach)
	for i := range s.tables {
		s.tables[i].multiply(in, phi, n, low, width)
	}
	l := in.fromCharacteristic(phi, n, low, width)
	l.Coarse = wanted == mostCells && width*cellsPerScale > 2*scale
	return l
}

// scratch is space for a transform, which is used again.
type scratch struct {
	phi, y, z []complex128
	x         []float64
}

var scratches = sync.Pool{New: func() any {
	const half = mostCells / 2
	return &scratch{make([]complex128, half+1), make([]complex128, half+1), make([]complex128, half), make([]float64, mostCells)}
}}

// fromCharacteristic is the inverse transform: with w_k = πk/reach the probability of cell j, from
// low + j width on, is
//
//	1/n Σ φ(w_k) sin(w_k width/2)/(w_k width/2) e^(-i w_k x_j)
//
// x_j being its middle: the factor is the mean over the cell, so that the sum is that of a
// series which falls off faster by one power of k.
func (in *scratch) fromCharacteristic(phi []complex128, n int, low, width float64) *Law {
	cells := 2 * (len(phi) - 1)
	step := mostCells / cells
	y := phi // conjugated, since the series is real
	for k := range n {
		turn := turns()[k*step]
		factor := 1.0
		if k > 0 {
			factor = imag(turn) / (math.Pi * (float64(k) / float64(cells)))
		}
		if k%2 == 1 {
			factor = -factor
		}
		y[k] = times(conjugate(phi[k]), complex(factor*real(turn), factor*imag(turn)))
	}
	y[cells/2] = complex(real(y[cells/2]), 0)
	l := &Law{low: low, width: width, through: make([]float64, cells+1)}
	sum := 0.0
	for j, p := range realSeriesIn(y, in.z[:cells/2], in.x[:cells]) {
		sum += p / float64(cells)
		l.through[j+1] = max(l.through[j], min(sum, 1)) // but for rounding it never falls
	}
	return l
}

// Below is the probability of less than x.
func (l *Law) Below(x float64) float64 {
	at := (x - l.low) / l.width
	switch {
	case !(at > 0):
		return 0
	case at >= float64(len(l.through)-1):
		return 1
	}
	i := int(at)
	v, p, slope := at-float64(i), l.through[i+1]-l.through[i], l.slope(i)
	return l.through[i] + float64(v*(p-float64(slope/2*(1-v))))
}

// slope is by how much the probability that a cell had with the density at its end exceeds that
// with the density at its beginning, from the cells on either side; less where it would reach
// beyond theirs (van Leer, Towards the ultimate conservative difference scheme IV, J. Comput.
// Phys. 23, 1977).
func (l *Law) slope(i int) float64 {
	if i == 0 || i == len(l.through)-2 {
		return 0
	}
	p := l.through[i+1] - l.through[i]
	before, after := p-(l.through[i]-l.through[i-1]), l.through[i+2]-l.through[i+1]-p
	if before*after <= 0 {
		return 0
	}
	return math.Copysign(min(math.Abs(before+after)/2, 2*math.Abs(before), 2*math.Abs(after)), before)
}

// At is the quantile of a probability: the least x that is not less than so many.
func (l *Law) At(p float64) float64 {
	i := sort.Search(len(l.through)-2, func(i int) bool { return l.through[i+1] >= p })
	part, in, rest := 0.0, l.through[i+1]-l.through[i], p-l.through[i]
	if in > 0 && rest > 0 {
		slope := l.slope(i)
		start := in - float64(slope/2)
		part = min(2*rest/(start+math.Sqrt(max(0, float64(start*start)+float64(2*slope*rest)))), 1)
	}
	return l.low + float64(l.width*(float64(i)+part))
}

// Node is a quantile with the probability that it stands for.
type Node struct{ At, Weight float64 }

// Nodes are n quantiles by which an expectation is a sum: those of the normal probabilities of equal
// steps, far out to either side (the trapezoidal rule, which such an integral takes to many digits).
func (l *Law) Nodes(n int) []Node {
	const far = 5.5
	list, sum := make([]Node, n), 0.0
	for i := range list {
		z := far * (2*(float64(i)+0.5)/float64(n) - 1)
		list[i] = Node{l.At(portable.NormalCDF(z)), density(z)}
		sum += list[i].Weight
	}
	for i := range list {
		list[i].Weight /= sum
	}
	return list
}
