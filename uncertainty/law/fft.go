package law

import (
	"math"
	"math/bits"
	"sync"

	"minim/uncertainty/portable"
)

// mostCells is the greatest number of cells of a law, a power of 2.
const mostCells = 1 << 14

// turns are e^(iπk/mostCells) for 0 <= k <= mostCells.
var turns = sync.OnceValue(func() []complex128 {
	all := make([]complex128, mostCells+1)
	for k := range all {
		sin, cos := portable.Sincos(math.Pi * (float64(k) / mostCells))
		all[k] = complex(cos, sin)
	}
	return all
})

// times is the product of two complex numbers, whose parts are not fused.
func times(a, b complex128) complex128 {
	return complex(float64(real(a)*real(b))-float64(imag(a)*imag(b)), float64(real(a)*imag(b))+float64(imag(a)*real(b)))
}

func conjugate(a complex128) complex128 { return complex(real(a), -imag(a)) }

// transform replaces x by Σ x_k e^(2πi jk/n) for 0 <= j < n = len(x), a power of 2 up to
// mostCells (Cooley and Tukey, An algorithm for the machine calculation of complex Fourier
// series, Math. Comp. 19, 1965).
func transform(x []complex128) {
	n := len(x)
	shift := 64 - bits.TrailingZeros(uint(n))
	for i := range x {
		if j := int(bits.Reverse64(uint64(i)) >> shift); i < j {
			x[i], x[j] = x[j], x[i]
		}
	}
	w := turns()
	for half := 1; half < n; half *= 2 {
		step := mostCells / half
		for from := 0; from < n; from += 2 * half {
			low, high := x[from:from+half], x[from+half:from+2*half]
			for k := range low {
				a, b := low[k], times(high[k], w[k*step])
				low[k], high[k] = a+b, a-b
			}
		}
	}
}

// realSeries returns the real numbers Σ y_k e^(2πi jk/n) over 0 <= k < n, where y_(n-k) is the
// conjugate of y_k, from y_0 to y_(n/2): by a transform of half the length, whose real parts
// are the numbers at even j and whose imaginary parts those at odd j. y is used up.
func realSeries(y []complex128) []float64 {
	return realSeriesIn(y, make([]complex128, len(y)-1), make([]float64, 2*len(y)-2))
}

// realSeriesIn is realSeries with space for what it works with and for what it returns.
func realSeriesIn(y, z []complex128, x []float64) []float64 {
	half := len(y) - 1
	w, step := turns(), mostCells/half
	for k := range z {
		a, b := y[k], conjugate(y[half-k])
		odd := times(a-b, w[k*step])
		z[k] = a + b + complex(-imag(odd), real(odd))
	}
	transform(z)
	for j, v := range z {
		x[2*j], x[2*j+1] = real(v), imag(v)
	}
	return x
}

// spectrum returns Σ x_j e^(2πi jk/n) for 0 <= k <= n/2 = len(x)/2, likewise by a transform of
// half the length, with space for what it works with and for what it returns.
func spectrum(x []float64, z, y []complex128) []complex128 {
	half := len(x) / 2
	w, step := turns(), mostCells/half
	for j := range z {
		z[j] = complex(x[2*j], x[2*j+1])
	}
	transform(z)
	for k := range y {
		a, b := z[k%half], conjugate(z[(half-k)%half])
		even, odd := a+b, times(a-b, w[k*step])
		y[k] = complex((real(even)+imag(odd))/2, (imag(even)-real(odd))/2)
	}
	return y
}
