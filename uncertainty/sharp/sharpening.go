package sharp

import (
	"minim/uncertainty/law"
)

// Sharpening makes the distribution function F of an output c from few trials. Of its linear part
// L the function F_L is known, and one influence x1, the smooth one, is integrated exactly: given
// all others, c is a quotient of two straight lines in x1, so that c <= q and L <= q are
// x1 <= x_c(q) and x1 <= x_L(q), whose chances A and B follow from the distribution function of x1:
//
//	F(q) = w F_L(q) + mean of A - w B
//
// It is unbiased for any w that is fixed before the trials, and for any L whose law is exact, were
// its slopes wrong. Where the model is nearly linear, or a product of powers and L that of its logarithm,
// A - B is small.
type Sharpening struct {
	Linear *Linear
	// Y is the output at the means of the influences.
	Y float64
	// Smooth is the number of x1, Mean its mean, and Size what Kernel, its distribution function, is in
	// units of.
	Smooth     int
	Mean, Size float64
	Kernel     law.Kernel
	Scaled     bool // x1 is drawn with a scale
	// Where c is not straight in x1 its slope has one sign in all trials. Where it is not exactly
	// straight, or a quotient of two straight lines, the trials tell the difference.
	Straight, Exact bool
	// Raised: not c itself is so, but its power in which the factor that x1 belongs to is straight.
	Raised bool
	// Tail is how much lies beyond each end of the interval, 0 where none is asked for.
	Tail float64
	// q are the places at which F is worked out as the trials go on, weight what L counts at
	// the lower and at the upper end.
	q      []float64
	weight [2]float64
}

// Points are the places of x1 at which c is worked out for each trial, Mean and Size below and above it:
// by three of them a quotient of two straight lines is known.
const Points = 3

// slope of L in units of the size of x1.
func (s *Sharpening) slope() float64 { return float64(s.Linear.Slopes[s.Smooth] * s.Size) }

// own is the part of L that x1 belongs to.
func (s *Sharpening) own() int { return s.Linear.Part[s.Smooth] }

// bend is that of the factor that x1 belongs to.
func (s *Sharpening) bend() float64 { return float64(s.Linear.Bend[s.own()]) }

// weightAt is what L counts where F_L is f: between the ends it changes evenly.
func (s *Sharpening) weightAt(f float64) float64 {
	part := max(0, min((f-s.Tail)/(1-float64(2*s.Tail)), 1))
	return s.weight[0] + float64(part*(s.weight[1]-s.weight[0]))
}
