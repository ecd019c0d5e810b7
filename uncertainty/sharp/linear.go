package sharp

import "minim/uncertainty/law"

// Linear is L = Σ slope (x - mean) of a model with its exact law. What is drawn from a
// t-distribution has tails that reach too far to be tabulated: each such part of L counts as
// most where it is more, in the law and in the trials alike.
type Linear struct {
	Law    *law.Law
	Slopes []float64 // of the influences, by their numbers
	Part   []int     // that each influence belongs to, 0 for all that is not cut off
	Most   []float64 // of each part
	Scale  float64   // of L: its standard deviation where nothing is cut off
}
