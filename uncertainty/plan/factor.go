package plan

import (
	"minim/uncertainty"
	"minim/uncertainty/route"
	"slices"
)

// factor is what a part of a route multiplies the strength by, with the
// influences that others share by number.
type factor struct {
	mean, own, fourth float64
	// low is the least that the factor of one measurement can be.
	low    float64
	shared []part
}

// part is the relative contribution of a shared influence.
type part struct {
	key      int
	relative float64
}

// keys numbers the influences that factors share.
type keys map[uncertainty.Identity]int

func (k keys) of(id uncertainty.Identity) int {
	if _, known := k[id]; !known {
		k[id] = len(k)
	}
	return k[id]
}

// factor turns that of a step into one with numbered influences.
func (k keys) factor(f route.Factor) factor {
	g := factor{mean: f.Mean, low: f.Low, own: f.Own, fourth: f.Fourth}
	for _, s := range f.Shared {
		g.shared = append(g.shared, part{k.of(s.Influence), s.Relative})
	}
	return g
}

// times is the product of two factors.
func (f factor) times(g factor) factor {
	product := factor{mean: f.mean * g.mean, own: f.own + g.own, fourth: f.fourth + g.fourth}
	product.shared = append(append([]part(nil), f.shared...), g.shared...)
	return product.tidied()
}

// inverse is one over the factor.
func (f factor) inverse() factor { return f.weighted(-1, 1/f.mean) }

// weighted is what the uncertainty of the factor does by a power of it, or by the weight
// that it has in a sum, to something of that mean.
func (f factor) weighted(by, mean float64) factor {
	g := factor{mean: mean, own: f.own * by * by, fourth: f.fourth * by * by * by * by}
	for _, p := range f.shared {
		g.shared = append(g.shared, part{p.key, p.relative * by})
	}
	return g
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
