package plan

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
	// whole is the route itself, where it is made by weighing.
	whole *route.Route
}

// state is what is known of a route from its end up to where the search stands.
type state struct {
	pulls []pull

	mean, own float64
	// sum is that of the relative contributions to each shared influence;
	// squares adds up their squares for each kind of influence.
	sum     []float64
	squares [4]float64
	undo    []part
	// scatter adds up what of own comes from each set of readings.
	keys    *keys
	scatter []float64
	unset   []ofSet
}

// newState is what is known of a route of which nothing is chosen.
func (k *keys) newState(pulls []pull) state {
	return state{pulls: pulls, mean: 1, sum: make([]float64, len(k.influences)), keys: k, scatter: make([]float64, len(k.sets))}
}

// pull says how the factors of a route can pull at a shared influence.
type pull int

const (
	// oneWay: all factors pull the same way, so that the sum only grows.
	oneWay pull = iota
	// byDilutions: only dilutions pull at it, so that the sum is final once
	// these are chosen.
	byDilutions
	// anyWay: what is still to come may cancel what there is, until the first
	// solution is chosen.
	anyWay
	// atLast: the source pulls at it as well, and may cancel what there is.
	atLast
)

// saved is what comes back when a factor is taken away again.
type saved struct {
	mean, own   float64
	squares     [4]float64
	undo, unset int
}

func (s *state) save() saved {
	return saved{s.mean, s.own, s.squares, len(s.undo), len(s.unset)}
}

func (s *state) restore(v saved) {
	s.mean, s.own = v.mean, v.own
	s.squares = v.squares
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
		s.squares[s.pulls[p.key]] += float64(after*after) - float64(before*before)
	}
	for _, p := range f.scatter {
		s.unset = append(s.unset, ofSet{p.set, s.scatter[p.set]})
		s.scatter[p.set] += p.variance
	}
}

// leastVariance is a lower bound of the relative variance of every route that
// ends like this, where influences of these kinds are final: see the package
// documentation.
func (s *state) leastVariance(final pull) float64 {
	variance := s.own
	for _, squares := range s.squares[:final+1] {
		variance += squares
	}
	return max(0, variance)
}

// uncertainty of a finished route: its relative standard uncertainty.
func (s *state) uncertainty() float64 { return math.Sqrt(s.leastVariance(atLast)) }

// scatters are the variances of a finished route of that value which are known by readings,
// each set as one contribution, and rest is all else.
func (s *state) scatters(value float64) (rest float64, known []mixture.Scatter) {
	rest = s.leastVariance(atLast)
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
