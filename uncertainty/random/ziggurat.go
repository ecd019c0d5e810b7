package random

import (
	"math"

	"minim/uncertainty/portable"
)

// The ziggurat of Marsaglia and Tsang (The ziggurat method for generating
// random variables, J. Stat. Softw. 5, 2000): the right half of the density
// f(x) = exp(-x²/2) is covered by 256 layers of equal area. Those above the
// base are rectangles; the base is a rectangle up to tailStart and the tail.
// The layer, the sign and the place in it come from different bits of one draw,
// as Doornik (An improved ziggurat method to generate normal random samples,
// 2005) demands, and the place has 52 bits.

// tailStart is the r of that paper for 256 layers.
const tailStart = 3.6541528853610088

// layer i reaches from 0 to 2^53 scale, and its height from heights[i] to
// heights[i+1]. Places below inner scale are under the density at any height.
type layer struct {
	scale float64
	inner int64
}

var layers, heights = buildLayers()

// buildLayers piles the rectangles up from the base. Their edges are rounded to
// 2^-36, so that they do not hang on the last digits of Exp and Log. Since the heights follow from the rounded edges, the areas stay
// equal, and what is cut off or covered too much is of the order of the square,
// 2^-72. Only the share of the tail in the base is touched, by 2e-11 of itself.
func buildLayers() (layers [256]layer, heights [257]float64) {
	y := density(tailStart)
	area := float64(tailStart*y) + float64(math.Sqrt(math.Pi/2)*portable.Erfc(tailStart/math.Sqrt2))
	edge, next := rounded(area/y), rounded(tailStart)
	for i := range layers {
		layers[i] = layer{scale: edge * 0x1p-53, inner: int64(next/edge*0x1p52) * 2}
		heights[i+1] = y
		edge = next
		y += area / edge
		next = rounded(math.Sqrt(max(0, -2*portable.Log(y))))
	}
	return layers, heights
}

func density(x float64) float64 { return portable.Exp(-x * x / 2) }

func rounded(x float64) float64 { return math.Round(x*0x1p36) * 0x1p-36 }

// ziggurat makes a standard normal value of random bits, and reports whether it
// is inside: if not, [outside] must take over. It takes 98.5 % of all bits.
func ziggurat(bits uint64) (z float64, inside bool) {
	l := &layers[bits&0xff]
	place := int64(bits)>>10 | 1 // odd, so never 0: the sign is fair
	return float64(place) * l.scale, max(place, -place) < l.inner
}

// outside finishes a draw that ziggurat left open, and returns the state that
// follows.
func outside(bits, state uint64) (z float64, after uint64) {
	for {
		z, inside := ziggurat(bits)
		if inside {
			return z, state
		}
		i := bits & 0xff
		if i == 0 {
			x, after := tail(state)
			return math.Copysign(x, z), after
		}
		bits, state = Next(state)
		if heights[i]+float64(Uniform(bits)*(heights[i+1]-heights[i])) < density(z) {
			return z, state
		}
		bits, state = Next(state)
	}
}

// tail draws from the normal distribution beyond tailStart (Marsaglia,
// Generating a variable from the tail of the normal distribution,
// Technometrics 6, 1964).
func tail(state uint64) (x float64, after uint64) {
	for {
		var first, second uint64
		first, state = Next(state)
		second, state = Next(state)
		x := -portable.Log(Uniform(first)) / tailStart
		if -2*portable.Log(Uniform(second)) >= x*x {
			return tailStart + x, state
		}
	}
}

// normal draws one standard normal value.
func normal(state uint64) (z float64, after uint64) {
	bits, state := Next(state)
	return outside(bits, state)
}
