package sharp

import (
	"math"

	"minim/uncertainty/law"
	"minim/uncertainty/portable"
)

// Linear is L = Σ slope (x - mean) of a model with its exact law. What is drawn from a
// t-distribution has tails that reach too far to be tabulated: each such part of L counts as
// most where it is more, in the law and in the trials alike.
//
// Or it is that of the logarithm of the output. There a part may be bent: it counts as that of a
// factor of the output, a power of 1 + bend part. So a product of powers is L exactly.
type Linear struct {
	Law    *law.Law
	Slopes []float64 // of the influences, by their numbers
	Part   []int     // that each influence belongs to, 0 for all that is not cut off
	Most   []float64 // of each part
	Log    bool
	Bend   []Bend  // of each part, 0 where it counts as it is
	Scale  float64 // of L: its standard deviation where nothing is cut off
}

// Add adds a part that counts as most at the most, and returns its number.
func (l *Linear) Add(most float64, bend Bend) int {
	l.Most, l.Bend = append(l.Most, most), append(l.Bend, bend)
	return len(l.Most) - 1
}

// Bend tells what a part counts.
type Bend float64

// IsPlain reports whether the output is straight in the part, or a quotient of straight lines, but for
// what is not of that factor.
func (b Bend) IsPlain() bool { return b == 0 || math.Abs(math.Abs(float64(b))-1) < 1e-9 }

// leastFactor is what a factor is taken for where it is less.
const leastFactor = 1e-3

// Counted is ln (1 + bend part)/bend.
func (b Bend) Counted(part float64) float64 {
	if b == 0 {
		return part
	}
	return portable.Log(max(1+float64(float64(b)*part), leastFactor)) / float64(b)
}

// Part is the inverse.
func (b Bend) Part(counted float64) float64 {
	if b == 0 {
		return counted
	}
	return (portable.Exp(float64(b)*counted) - 1) / float64(b)
}

// counted is what a part counts.
func (l *Linear) counted(k int, part float64) float64 {
	return max(-l.Most[k], min(l.Bend[k].Counted(part), l.Most[k]))
}
