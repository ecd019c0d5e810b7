package search

import (
	"math"

	"minim/uncertainty/mixture"
	"minim/uncertainty/route"
)

// chain is a finished route: its ways to make solutions, last first, and its
// source.
type chain struct {
	ways    []*making
	source  *source
	reading float64 // of the balance, in g
	// pieces that the ways take and fill, in their order, and the source at last, where there
	// are several alike.
	pieces []int
	// mayBeNothing: the volume of its first solution may be so badly known that it is not possible.
	mayBeNothing bool
	// begin is what is weighed up last, and all before it; there is no source then.
	begin []route.Step
}

// state is what is known of a route from its end up to where the search stands.
type state struct {
	weights []float64

	mean, own float64
	// sum is that of the relative contributions to each shared influence. Squares adds up
	// their squares, least what of them counts before a route is finished.
	sum            []float64
	squares, least float64
	undo           []part
	// scatter adds up what of own comes from each set of readings.
	keys    *keys
	scatter []float64
	unset   []ofSet
}

// newState is what is known of a route of which nothing is chosen.
func (k *keys) newState(weights []float64) state {
	return state{weights: weights, mean: 1, sum: make([]float64, len(k.influences)), keys: k, scatter: make([]float64, len(k.sets))}
}

// grow makes room for influences that came up since.
func (s *state) grow() {
	for len(s.sum) < len(s.keys.influences) {
		s.sum = append(s.sum, 0)
	}
	for len(s.weights) < len(s.sum) {
		s.weights = append(s.weights, 0)
	}
	for len(s.scatter) < len(s.keys.sets) {
		s.scatter = append(s.scatter, 0)
	}
}

// saved is what comes back when a factor is taken away again.
type saved struct {
	mean, own, squares, least float64
	undo, unset               int
}

func (s *state) save() saved {
	return saved{s.mean, s.own, s.squares, s.least, len(s.undo), len(s.unset)}
}

func (s *state) restore(v saved) {
	s.mean, s.own = v.mean, v.own
	s.squares, s.least = v.squares, v.least
	for i := len(s.undo) - 1; i >= v.undo; i-- {
		s.sum[s.undo[i].key] = s.undo[i].relative
	}
	s.undo = s.undo[:v.undo]
	for i := len(s.unset) - 1; i >= v.unset; i-- {
		s.scatter[s.unset[i].set] = s.unset[i].variance
	}
	s.unset = s.unset[:v.unset]
}

// multiply takes in a factor.
func (s *state) multiply(f *factor) {
	s.mean *= f.mean
	s.own += f.own
	for _, p := range f.shared {
		before := s.sum[p.key]
		after := before + p.relative
		s.undo = append(s.undo, part{p.key, before})
		s.sum[p.key] = after
		more := float64(after*after) - float64(before*before)
		s.squares += more
		s.least += float64(more * s.weights[p.key])
	}
	for _, p := range f.scatter {
		s.unset = append(s.unset, ofSet{p.set, s.scatter[p.set]})
		s.scatter[p.set] += p.variance
	}
}

// leastVariance is a lower bound of the relative variance of every route that ends like
// this: see the package documentation.
func (s *state) leastVariance() float64 { return max(0, s.own+s.least) }

// variance is the relative variance of a finished route.
func (s *state) variance() float64 { return max(0, s.own+s.squares) }

// uncertainty of a finished route: its relative standard uncertainty.
func (s *state) uncertainty() float64 { return math.Sqrt(s.variance()) }

// scatters are the variances of a finished route of that value which are known by readings,
// each set as one contribution, and rest is all else, so much less where several pieces
// share the uses.
func (s *state) scatters(value, less float64) (rest float64, known []mixture.Scatter) {
	rest = s.variance() - less
	for set, variance := range s.scatter {
		for key, of := range s.keys.setOf[:len(s.sum)] {
			if of == set {
				variance += float64(s.sum[key] * s.sum[key])
			}
		}
		if variance > 0 {
			rest -= variance
			known = append(known, mixture.Scatter{Variance: variance * value * value, DegreesOfFreedom: s.keys.degrees[set]})
		}
	}
	return max(0, rest) * value * value, known
}
