// Package mixture has the distribution of a sum of what is known well and of what is known from a few
// readings each, whose unknown standard deviations it takes the mean over.
//
// All digits are the same on every machine: see DEVELOPERS.md.
package mixture

import (
	"fmt"
	"math"
	"slices"

	"minim/uncertainty/portable"
)

// Mixture is the distribution, about its middle, of a normal contribution and of others that
// are known from a few readings each. Given the unknown standard deviations σ_k it is normal,
// with the variance
//
//	V = u_r² + Σ_k u_k² (σ_k/s_k)²,  (σ_k/s_k)² = ν_k/χ²_k
//
// (JCGM 101, 6.4.9), so that every chance is a mean over the scales. The Welch-Satterthwaite
// formula takes all of V for one scale, and makes the interval much too narrow where two to
// six readings stand beside much that is known better.
type Mixture struct {
	variances, weights []float64
	// nu is the number of degrees of freedom where there is nothing but one of the
	// contributions, 0 else; variance is all of it with σ_k = s_k.
	nu, variance float64
	// U is the root of the variance with σ_k = s_k.
	U float64
}

// Scatter is the variance of all that is known by one set of readings.
type Scatter struct{ Variance, DegreesOfFreedom float64 }

// smallScatter is the part of a variance below which a scatter counts as known.
const smallScatter = 1e-9

// New is that of a normal contribution with a variance, and of scatters.
func New(rest float64, scatters []Scatter) Mixture {
	x := Mixture{variance: rest}
	for _, s := range scatters {
		x.variance += s.Variance
	}
	x.U = math.Sqrt(x.variance)
	if len(scatters) == 0 {
		return x
	}
	var of scales
	for _, s := range scatters {
		if s.Variance <= smallScatter*x.variance {
			rest += s.Variance
			continue
		}
		if of == nil && x.nu == 0 {
			x.nu, of = s.DegreesOfFreedom, scalesOf(s)
			continue
		}
		x.nu, of = 0, of.add(scalesOf(s))
	}
	if of == nil || rest > smallScatter*x.variance {
		x.nu = 0
	}
	x.variances, x.weights = []float64{rest}, []float64{1}
	if of != nil {
		x.variances, x.weights = nil, nil
		for _, s := range of {
			x.variances, x.weights = append(x.variances, rest+s.variance), append(x.weights, s.weight)
		}
	}
	return x
}

// scales are the variances that a sum of scatters may have, with their weights.
type scales []weightedScale

type weightedScale struct{ variance, weight float64 }

// leastWeight is the density beside the greatest below which a scale is left out.
const leastWeight = 1e-10

// scalesOf is the distribution of u² ν/χ². With χ²/ν = e^2x the density of x is as
//
//	exp(ν (x - (e^2x - 1)/2))
//
// which the trapezoidal rule integrates to 1e-7 with steps of a quarter, or of 0.7 of its width where that
// is less: it is analytic within π/4 of the real axis.
func scalesOf(s Scatter) scales {
	nu := s.DegreesOfFreedom
	step := min(0.25, 0.7/math.Sqrt(2*nu))
	var list scales
	sum := 0.0
	take := func(x float64) bool {
		square := portable.Exp(2 * x)
		weight := portable.Exp(nu * (x - float64((square-1)/2)))
		list, sum = append(list, weightedScale{s.Variance / square, weight}), sum+weight
		return weight >= leastWeight && x > -mostScale
	}
	for i := 0; take(float64(float64(i) * step)); i++ {
	}
	for i := -1; take(float64(float64(i) * step)); i-- {
	}
	for i := range list {
		list[i].weight /= sum
	}
	slices.SortFunc(list, func(a, b weightedScale) int {
		if a.variance < b.variance {
			return -1
		}
		return 1
	})
	return list
}

// mostScale is the logarithm of the greatest σ/s that counts.
const mostScale = 60

// gridStep is that of the logarithms of the variances of a sum of scatters.
const gridStep = 0.1

// add is the distribution of a sum of two independent variances, on a grid of their
// logarithms: what lies between two of its points is shared between them.
func (a scales) add(b scales) scales {
	low, high := a[0].variance+b[0].variance, a[len(a)-1].variance+b[len(b)-1].variance
	first := math.Floor(portable.Log(low) / gridStep)
	weights := make([]float64, int(portable.Log(high)/gridStep-first)+3)
	for _, p := range a {
		for _, q := range b {
			weight := p.weight * q.weight
			if weight < leastWeight {
				continue
			}
			at := portable.Log(p.variance+q.variance)/gridStep - first
			i := int(at)
			weights[i] += float64(weight * (float64(i+1) - at))
			weights[i+1] += float64(weight * (at - float64(i)))
		}
	}
	var list scales
	for i, weight := range weights {
		if weight > 0 {
			list = append(list, weightedScale{portable.Exp((first + float64(i)) * gridStep), weight})
		}
	}
	return list
}

// Inside is the chance that a quantity with this distribution about a value lies between two limits.
func (x *Mixture) Inside(value, lower, upper float64) float64 {
	if x.U == 0 {
		if lower <= value && value <= upper {
			return 1
		}
		return 0
	}
	if nu, alone := x.alone(); alone {
		return portable.StudentBetween((lower-value)/x.U, (upper-value)/x.U, nu)
	}
	p := 0.0
	for i, v := range x.variances {
		u := math.Sqrt(v)
		p += float64(x.weights[i] * portable.StudentBetween((lower-value)/u, (upper-value)/u, math.Inf(1)))
	}
	return min(p, 1)
}

// alone tells the degrees of freedom where there is one contribution and no other.
func (x *Mixture) alone() (nu float64, is bool) {
	if len(x.variances) == 0 {
		return math.Inf(1), true
	}
	return x.nu, x.nu > 0
}

// Half is the half-width of the interval that holds the quantity with a probability. It lies
// between that of a normal distribution with the same variance, and that of Student's t with
// the degrees of freedom of the scatter with the fewest, each at least.
func (x *Mixture) Half(p float64) float64 {
	if !(p > 0 && p < 1) {
		panic(fmt.Sprintf("mixture: coverage probability %v is not between 0 and 1", p))
	}
	if x.U == 0 {
		return 0
	}
	if nu, alone := x.alone(); alone {
		return float64(factor(p, nu) * x.U)
	}
	low := float64(factor(p, math.Inf(1)) * x.U / 2)
	high := 2 * low
	for x.beyond(high) > 1-p {
		low, high = high, 2*high
	}
	h := high
	for range 100 {
		tail, slope := x.beyond(h), x.slope(h)
		if tail > 1-p {
			low = h
		} else {
			high = h
		}
		next := h + float64(h*portable.Log(tail/(1-p))*tail/(slope*h))
		if !(next > low && next < high) {
			next = portable.Middle(low, high)
		}
		if math.Abs(next-h) <= 1e-12*h {
			break
		}
		h = next
	}
	return h
}

// beyond is the chance of lying further than h from the middle, and slope minus its derivative.
func (x *Mixture) beyond(h float64) (p float64) {
	for i, v := range x.variances {
		p += float64(x.weights[i] * 2 * portable.NormalCDF(-h/math.Sqrt(v)))
	}
	return p
}

func (x *Mixture) slope(h float64) (sum float64) {
	for i, v := range x.variances {
		sum += float64(x.weights[i] * math.Sqrt(2/(math.Pi*v)) * portable.Exp(-h*h/(2*v)))
	}
	return sum
}

// factor is the coverage factor of Student's t.
func factor(p, nu float64) float64 { return -portable.StudentQuantile((1-p)/2, nu) }
