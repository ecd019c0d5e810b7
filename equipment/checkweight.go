package equipment

import (
	"math"
	"slices"
	"sync"

	"minim/equipment/quantity"
	"minim/report/words/note"
	"minim/uncertainty"
)

// CheckWeight is a weight that readings of a balance were taken with: its conventional mass in g,
// and the standard uncertainty of that, from its class, OIML R 111, or from a certificate.
type CheckWeight struct {
	Mass, Uncertainty float64
	// Class is "" with a certificate; Trust is that of its limit.
	Class, Trust string
}

// WeightRow are the limits of error of weights of a nominal mass, in mg; 0 where there is none.
type WeightRow struct {
	Nominal float64 `csv:"nominal_g"`
	E2      float64 `csv:"E2_mg,none"`
	F1      float64 `csv:"F1_mg,none"`
	F2      float64 `csv:"F2_mg,none"`
	M1      float64 `csv:"M1_mg,none"`
	M2      float64 `csv:"M2_mg,none"`
	M3      float64 `csv:"M3_mg,none"`
	Source  string  `csv:"source"`
	Trust   string  `csv:"trust"` // as in [Class]
}

var weights = sync.OnceValue(func() []WeightRow { return readTable[WeightRow](tableFiles, "weights") })

// Weights are all rows of the limits of check weights.
func Weights() []WeightRow { return slices.Clone(weights()) }

// Limits are those of the [WeightClasses].
func (r *WeightRow) Limits() []float64 { return []float64{r.E2, r.F1, r.F2, r.M1, r.M2, r.M3} }

// WeightClasses are those of check weights, the best first.
func WeightClasses() []string { return []string{"E2", "F1", "F2", "M1", "M2", "M3"} }

// WeightOfClass is a weight of a class: its limit of error L, rectangular, so that u = L/√3. It is
// not found where there is none of that nominal mass in g.
func WeightOfClass(nominal float64, class string) (w CheckWeight, found bool) {
	for _, row := range weights() {
		limit := row.Limits()[slices.Index(WeightClasses(), class)]
		if sameVolume(row.Nominal, nominal) && limit > 0 {
			return CheckWeight{nominal, limit / 1000 / math.Sqrt(3), class, row.Trust}, true
		}
	}
	return CheckWeight{}, false
}

// Check is what readings of a check weight say of a balance.
type Check struct {
	// Spread has the readings, in g.
	Spread
	Weight   CheckWeight
	Standing Standing
	// Chance is how likely the mean lies as far off as it does, or further, by what is known of the
	// balance and of the weight.
	Chance float64
	// variance of the error there before it was read, in g².
	variance float64
	// scatter by which the mean is judged, of few readings that of all sets together.
	scatter Spread
	// error is what is to be added to a reading there, in g.
	error            uncertainty.Distribution
	degreesOfFreedom float64
	assumedPart      float64
}

// Counts reports whether the mean counts.
func (c *Check) Counts() bool { return c.Standing == Combined || c.Standing == Alone }

// Compared reports whether there is something that the mean is compared with.
func (c *Check) Compared() bool { return c.Standing != OfOthers && c.Standing != Unused }

// off is by how much the mean of the readings is above the mass of the weight, in g.
func (c *Check) off() float64 { return c.Mean - c.Weight.Mass }

// Judge weighs the readings of check weights against what the kit says of the balance: the error of
// linearity between nothing and the load, and of the sensitivity, as the model has them, is the prior,
// which is triangular: the difference of two errors that are rectangular within the limit
// is so. The mean of the readings has a t likelihood, with the uncertainty of the weight.
func (b *Balance) Judge() {
	var sets []Spread
	for i := range b.Checks {
		sets = append(sets, b.Checks[i].Spread)
	}
	for i := range b.Checks {
		c := &b.Checks[i]
		c.Chance = 1
		c.scatter, _ = c.pooled(sets)
		switch {
		case b.Count > 1:
			c.Standing = OfOthers
			continue
		case b.Law == Independent || b.Weighing.Known:
			c.Standing = Unused
			continue
		}
		c.variance = b.covariance(b.bare(c), b.bare(c))
		prior := uncertainty.Prior{Of: uncertainty.Peaked(max(math.Sqrt(6*c.variance), 1e-9*b.Readability))}
		m := c.measured()
		c.Chance = prior.Chance(m)
		switch {
		case c.scatter.DegreesOfFreedom < leastNu:
			c.Standing = Few
		case c.Chance < tooFar:
			c.Standing = Alone
			c.error, c.degreesOfFreedom = byReadingsAlone(m)
		default:
			c.Standing = Combined
			m, c.degreesOfFreedom = c.ofSet(m, &c.scatter)
			c.error = prior.Given(m)
			c.assumedPart = partOf(prior, c.error)
		}
	}
}

// measured is what the readings say of what is to be added to one.
func (c *Check) measured() uncertainty.Measured {
	m := c.Spread.measured(c.scatter, c.Weight.Uncertainty)
	m.Mean = -c.off()
	return m
}

// loads are that of a mass and what stood on the pan when it was zeroed.
type loads struct{ gross, tare Pan }

// bare is the load of a check weight, on the bare pan.
func (b *Balance) bare(c *Check) loads {
	zero := b.loaded(0, linearAtLoad, math.Inf(-1))
	return loads{b.Under(zero, c.Weight.Mass), zero}
}

// covariance of the errors of two loads, each less that of its tare, in g²: of what both have of
// the curves, of the local parts, and of the sensitivity; see [Balance.linearity].
func (b *Balance) covariance(x, y loads) float64 {
	limit := b.linearWithin()
	sum := float64(x.net() * y.net() * b.Span * b.Span / 3)
	for _, curve := range b.curves() {
		p, q := b.partsBetween(x, curve.scale), b.partsBetween(y, curve.scale)
		for k := range p {
			sum += float64(p[k] * q[k] * curve.limit * curve.limit / 3)
		}
	}
	local := func(p, q Pan) float64 {
		if p.local == q.local && p.third == q.third {
			return float64(limit * limit / 6)
		}
		return 0
	}
	return sum + local(x.gross, y.gross) - local(x.gross, y.tare) - local(x.tare, y.gross) + local(x.tare, y.tare)
}

func (x *loads) net() float64 { return x.gross.grams - x.tare.grams }

// nearestCheck is the check weight nearest to a load whose readings count, nil where there is none.
func (b *Balance) nearestCheck(load float64) (nearest *Check) {
	for i := range b.Checks {
		c := &b.Checks[i]
		if c.Counts() && (nearest == nil || math.Abs(c.Weight.Mass-load) < math.Abs(nearest.Weight.Mass-load)) {
			nearest = c
		}
	}
	return nearest
}

// found appends by how much the error at a check weight, as it was found, is other than that which
// the parts of the model have:
//
//	found = e - (Σ a_k z_k + l(W) - l(0) + W s)
//
// A part z' = z + cov(z, e)/var(e) found is then what is known of it given e: at the load itself the
// error is e, and elsewhere as much of it as the correlation carries (constructed).
func (b *Balance) found(u Use, c *Check) uncertainty.Node {
	m, at := u.Model, b.bare(c)
	in := influence(u.piece(b.Name, b.Count), checkError, "g", c.error)
	in.At, in.DegreesOfFreedom = quantity.Round(c.Weight.Mass, 7), c.degreesOfFreedom
	if in.Ground = c.ground(); c.Standing == Combined {
		in.Ground.By = uncertainty.ObservedWithin
	}
	in.Assumed, in.AssumedPart = c.assumedPart > 0 && !b.Linearity.Known, c.assumedPart
	if c.degreesOfFreedom > 0 && c.degreesOfFreedom == c.DegreesOfFreedom {
		in.Set, in.Most = c.Set(b.Name), c.Weight.Mass
	}
	prior := b.linear(u, at)
	if b.Span > 0 {
		prior = m.Add(prior, m.Multiply(m.Constant(at.net()), b.span(u)))
	}
	return m.Subtract(m.Influence(in), prior)
}

// given adds to the error of a load what readings of a check weight say of it, a covariance being
// that with the error there.
func (b *Balance) given(u Use, c *Check, e uncertainty.Node, covariance float64) uncertainty.Node {
	if c == nil || covariance == 0 || c.variance == 0 {
		return e
	}
	m := u.Model
	return m.Add(e, m.Multiply(m.Constant(covariance/c.variance), b.found(u, c)))
}

// tellChecks says how the means of check weights count.
func (b *Balance) tellChecks(n *Notes) {
	for i := range b.Checks {
		c := &b.Checks[i]
		weight, mean := c.Weight.Called(), G(quantity.Round(c.Mean, 7))
		switch {
		case c.Standing == OfOthers:
			n.LeaveOut("check-of-others", b.Name, weight, mean)
		case c.Standing == Unused:
			n.LeaveOut("check-unused", b.Name, weight, mean)
		case c.Standing == Few:
			n.LeaveOut("check-few", b.Name, int(c.Readings()), weight, mean, c.Far())
		default:
			n.Assume("check-carried", b.Name, weight)
			if c.scatter.DegreesOfFreedom > c.DegreesOfFreedom {
				n.Assume("check-scatter-pooled", b.Name)
			}
		}
		switch {
		case c.Standing == Alone:
			n.Warn("check-far", b.Name, int(c.Readings()), weight, mean, c.Far(), rarely(c.Chance))
		case c.Standing == Few && c.Chance < tooFar:
			n.Warn("check-few-far", b.Name, int(c.Readings()), weight, mean, c.Far(), rarely(c.Chance))
		case c.Chance < farOff:
			n.Warn("check-odd", b.Name, int(c.Readings()), weight, mean, c.Far(), rarely(c.Chance))
		}
		if c.Weight.Trust == fromMemory {
			n.Remember("limit-of-weight", b.Name, G(c.Weight.Mass), c.Weight.Class)
		}
	}
}

// Far is "0.003 g high".
func (c *Check) Far() note.Note {
	switch off := quantity.Round(c.off(), 2); {
	case off < 0:
		return note.Of("shows-low", "", G(-off))
	case off > 0:
		return note.Of("shows-high", "", G(off))
	}
	return note.Of("lies-right", "")
}

// Called is "100 g of class F1", or "100.0012 g" of one with a certificate.
func (w CheckWeight) Called() note.Note {
	if w.Class != "" {
		return note.Of("weight-of-class", "", G(w.Mass), w.Class)
	}
	return note.Of("weight", "", G(quantity.Round(w.Mass, 9)))
}

// rarely is how many in 100 a chance is.
func rarely(chance float64) note.Note {
	if chance < 1e-4 {
		return note.Of("hardly-any", "")
	}
	return note.Of("so-many", "", 100*chance)
}
