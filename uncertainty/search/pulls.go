package search

import "minim/equipment"

// pullsBothWays reports whether a way to make a solution measures aliquot and solvent with
// one piece, so that its errors cancel.
func (m *making) pullsBothWays() bool {
	return m.taken != nil && m.taken.step.Measure == m.made.step.Measure && m.made.step.Measure.Count <= 1
}

// pulled says how factors pull at a shared influence: by which measure, or that there are many
// or other things, whether it is taken with or filled, and with which signs the influence acts
// on how much it takes or holds, and on the strength of a route.
type pulled struct {
	by                *equipment.Measure
	many, taken, made bool
	volume, route     sign
}

// sign says which signs contributions have.
type sign struct{ minus, plus bool }

func (s *sign) see(relative float64) {
	s.minus, s.plus = s.minus || relative < 0, s.plus || relative > 0
}

func (s sign) one() bool { return !s.minus || !s.plus }

// role of a measurement in a route: taken, or filled or added.
type role struct {
	*measurement
	taken bool
}

// pulls tells how all factors of a bench pull at the shared influences.
func (b *Bench) pulls() []pulled {
	keys := make([]pulled, len(b.keys.influences))
	inRoute := func(f *factor) {
		for _, p := range f.shared {
			keys[p.key].route.see(p.relative)
		}
	}
	seen := make(map[role]bool)
	measured := func(m *measurement, taken bool) {
		if m == nil || seen[role{m, taken}] {
			return
		}
		seen[role{m, taken}] = true
		for _, p := range m.shared {
			k := &keys[p.key]
			k.many = k.many || k.by != nil && k.by != m.step.Measure
			k.by, k.taken, k.made = m.step.Measure, k.taken || taken, k.made || !taken
			k.volume.see(p.relative)
		}
	}
	for _, list := range [][]making{b.firsts, b.dissolved, b.dilutions} {
		for i := range list {
			measured(list[i].taken, true)
			measured(list[i].made, false)
			inRoute(&list[i].factor)
		}
	}
	for i := range b.sources {
		if s := &b.sources[i]; s.by != nil {
			measured(s.by, true)
			inRoute(&s.factor)
		}
	}
	for _, f := range b.unmeasured() {
		inRoute(f)
		for _, p := range f.shared {
			keys[p.key].many = true
		}
	}
	return keys
}

// unmeasured are the factors that no measure brings.
func (b *Bench) unmeasured() []*factor {
	list := []*factor{&b.unit, &b.evaporated}
	for i := range b.sources {
		s := &b.sources[i]
		if s.by == nil {
			list = append(list, &s.factor)
		}
		if s.swelling != nil {
			swelling := s.swelling.inverse()
			list = append(list, &swelling)
		}
	}
	return list
}

// weights tell of each shared influence what part of the square of the sum of all that pull at
// it so far is a lower bound of what it brings to a route. It is all of it where all factors
// of a route pull the same way: all that there are do, or it belongs to one measure, which in
// one route is only taken with or only filled, unless it is free. Of n pieces alike it is an
// n-th, as where each has an equal part of the sum. Otherwise it is nothing.
func (b *Bench) weights(free *equipment.Measure) []float64 {
	weights := make([]float64, len(b.keys.influences))
	for i, k := range b.pulls() {
		oneRole := k.by != nil && !k.many && k.by != free && k.volume.one() && (k.by.Count <= 1 || !k.taken || !k.made)
		if k.route.one() || oneRole {
			weights[i] = 1
		}
		if b.keys.ofPieces[i] && k.by != nil {
			weights[i] /= float64(k.by.Count)
		}
	}
	return weights
}

// uses counts how often each measure of a route is taken with, and how often it is filled or
// adds solvent.
type uses struct{ taken, made []int }

func newUses(measures int) uses { return uses{make([]int, measures), make([]int, measures)} }

// add takes a way to make a solution in, or with -1 away again.
func (u *uses) add(m *making, by int) {
	if m.taken != nil {
		u.taken[m.taken.place] += by
	}
	u.made[m.made.place] += by
}

// bothWays reports whether a measure pulls both ways.
func (u *uses) bothWays(place int) bool { return u.taken[place] > 0 && u.made[place] > 0 }

// refuses reports whether with a way to make a solution a measure of the route pulls both
// ways that may not.
func (u *uses) refuses(m *making, free *equipment.Measure) bool {
	if m.taken != nil && u.made[m.taken.place] > 0 && m.taken.step.Measure != free && m.taken.step.Measure.Count <= 1 {
		return true
	}
	return u.taken[m.made.place] > 0 && m.made.step.Measure != free && m.made.step.Measure.Count <= 1
}
