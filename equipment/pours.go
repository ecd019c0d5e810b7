package equipment

import (
	"math"

	"minim/uncertainty"
)

// How far what stays in a poured cylinder is known, as shares of its mean. The mean is unknown by
// half of it, rectangular, since a vessel and who pours it have their own: sets by different people
// differ by about as much. Each pour scatters by a quarter of it: five pours by one gave 0.101 mL
// with s = 0.024 mL (pt.scribd.com/doc/55952279).
var (
	halfUnknown   = 0.5 * math.Sqrt(3)
	quarterOfPour = 0.25 * math.Sqrt(6)
)

// keptByPours appends what stays of a volume when it is poured out, no more than most:
//
//	X = X̄ (1 + e)
//
// X̄ is one and the same for all pours of a piece, e is made anew, triangular. A known scatter
// of use holds e already.
func (k *Measure) keptByPours(u Use, r Retained, most float64) uncertainty.Node {
	m, greatest := u.Model, r.Mean*(1+halfUnknown)
	mean := influence(k.owner(u), retainedCode, "mL", uncertainty.Rectangular{Low: r.Mean * (1 - halfUnknown), High: greatest})
	mean.Assumed = true
	stays := m.Influence(mean)
	if k.knownScatter(u) {
		return stays
	}
	scatter := k.ofUse(u, pourScatter, uncertainty.Peaked(min(quarterOfPour, most/greatest-1)))
	scatter.Unit, scatter.Assumed = "", true
	return m.Multiply(stays, m.Add(m.Constant(1), m.Influence(scatter)))
}
