package search

import (
	"maps"
	"slices"

	"minim/uncertainty"
	"minim/uncertainty/route"
)

// factor is what a part of a route multiplies the strength by, with the
// influences that others share by number.
type factor struct {
	mean, own float64
	// low is the least that the factor of one measurement can be.
	low    float64
	shared []part
	// scatter is what of own comes from sets of readings, by their numbers.
	scatter []ofSet
}

// ofSet is the relative variance from a set of readings.
type ofSet struct {
	set      int
	variance float64
}

// part is the relative contribution of a shared influence.
type part struct {
	key      int
	relative float64
}

// keys numbers the influences that factors share, and the sets of readings.
type keys struct {
	influences map[uncertainty.Identity]int
	sets       map[uncertainty.Set]int
	// degrees of freedom of each set, and the set of each influence, -1 for none.
	degrees []float64
	setOf   []int
	// ofPieces: an influence belongs to one of several pieces alike, and another piece has one
	// of its own.
	ofPieces []bool
}

func newKeys() *keys {
	return &keys{influences: make(map[uncertainty.Identity]int), sets: make(map[uncertainty.Set]int)}
}

// clone is a copy that others may come to.
func (k *keys) clone() *keys {
	return &keys{maps.Clone(k.influences), maps.Clone(k.sets), slices.Clone(k.degrees), slices.Clone(k.setOf), slices.Clone(k.ofPieces)}
}

// of is the number of an influence, found from readings or not.
func (k *keys) of(id uncertainty.Identity, readings route.Readings) int {
	if _, known := k.influences[id]; !known {
		k.influences[id] = len(k.influences)
		k.setOf = append(k.setOf, k.set(readings))
		k.ofPieces = append(k.ofPieces, id.OfPieces())
	}
	return k.influences[id]
}

// set is the number of a set of readings, -1 for none.
func (k *keys) set(r route.Readings) int {
	if r == (route.Readings{}) {
		return -1
	}
	if _, known := k.sets[r.Set]; !known {
		k.sets[r.Set] = len(k.sets)
		k.degrees = append(k.degrees, r.DegreesOfFreedom)
	}
	return k.sets[r.Set]
}

// factor turns that of a step into one with numbered influences and sets.
func (k *keys) factor(f route.Factor) factor {
	g := factor{mean: f.Mean, low: f.Low, own: f.Own}
	for _, s := range f.Shared {
		g.shared = append(g.shared, part{k.of(s.Influence, s.Readings), s.Relative})
	}
	for _, s := range f.Scatter {
		g.scatter = append(g.scatter, ofSet{k.set(s.Readings), s.Variance})
	}
	return g
}

// times is the product of two factors.
func (f factor) times(g factor) factor {
	product := factor{mean: f.mean * g.mean, own: f.own + g.own}
	product.shared = append(append([]part(nil), f.shared...), g.shared...)
	product.scatter = append(append([]ofSet(nil), f.scatter...), g.scatter...)
	return product.tidied()
}

// inverse is one over the factor.
func (f factor) inverse() factor { return f.weighted(-1, 1/f.mean) }

// weighted is what the uncertainty of the factor does by a power of it, or by the weight
// that it has in a sum, to something of that mean.
func (f factor) weighted(by, mean float64) factor {
	g := factor{mean: mean}
	g.weigh(&f, by)
	return g
}

// weigh takes in what a factor is uncertain by, with a weight.
func (f *factor) weigh(g *factor, by float64) {
	f.own += float64(g.own * by * by)
	for _, p := range g.shared {
		f.shared = append(f.shared, part{p.key, p.relative * by})
	}
	for _, s := range g.scatter {
		f.scatter = append(f.scatter, ofSet{s.set, s.variance * by * by})
	}
}

// tidied adds up the parts of one influence.
func (f factor) tidied() factor {
	var sums []part
	for _, p := range f.shared {
		if at := slices.IndexFunc(sums, func(s part) bool { return s.key == p.key }); at >= 0 {
			sums[at].relative += p.relative
		} else {
			sums = append(sums, p)
		}
	}
	f.shared = sums
	return f
}

// ofAdding is the factor a/(a + b) of an aliquot a to which the volume b is
// added: both enter with the weight b/(a + b).
func ofAdding(a, b factor) factor {
	share := b.mean / (a.mean + b.mean)
	return a.weighted(share, a.mean/(a.mean+b.mean)).times(b.weighted(-share, 1))
}
