package equipment

import (
	"math"

	"minim/uncertainty"
)

// Law says how the errors of linearity at two loads go together.
type Law string

const (
	// InTwoParts: half of the variance is a curve over the range, half is local to a load.
	InTwoParts Law = ""
	// Independent: each reading has an error of its own, as in EURACHEM/CITAC CG 4, example
	// A2, where the limit counts for tare and gross as two independent terms.
	Independent Law = "independent"
)

// end is one of the two loads between which a mass is weighed: what stands on the pan, the
// step that read it, and the code of an error of that reading alone.
type end struct {
	pan  Pan
	step uncertainty.Owner
	code uncertainty.Code
}

// linearity appends the error of linearity of a mass, which is that at the gross load less that
// at the tare.
//
// The error e within the limit L has the variance L²/3 at every load, also near zero, where
// scales have dead bands (quantitativecafe.com/2021/12/02/scale-accuracy-issues). It is one
// and the same each time that a load is weighed on a piece:
//
//	e(x) = c(x) + l(x)
//
// with a curve c and a part l that belongs to the load, and is independent for loads more
// than two digits apart. Both have the variance L²/6 and, at a node of the curve, are
// triangular within L. So a mass has a u between L/√3, for tare and gross near to each other,
// and √2 times that. The two together may pass the limit, with a chance of 1/12 at a node (a sum
// of four equal rectangles): two independent parts of equal variance that never do, and have L²/3
// together, do not exist, since a rectangle is no such sum. That the two are equal is judgement: nothing published splits the
// linearity of a balance.
func (b *Balance) linearity(u Use, gross, tare end) uncertainty.Node {
	m, limit := u.Model, b.linearWithin()
	switch {
	case limit == 0:
		return m.Constant(0)
	case b.Law == Independent:
		return m.Subtract(b.ofReading(u, gross), b.ofReading(u, tare))
	}
	return m.Name(b.inTwoParts(u, loads{gross.pan, tare.pan}), influence(with(u.Step, b.Name), linearityError, "g", nil))
}

// inTwoParts appends the error of the curve and of the local parts, and what a check weight says
// of it.
func (b *Balance) inTwoParts(u Use, of loads) uncertainty.Node {
	c := b.nearestCheck(of.gross.grams)
	if c == nil {
		return b.linear(u, of)
	}
	unscaled := *b
	unscaled.Span = 0
	return b.given(u, c, b.linear(u, of), unscaled.covariance(of, b.bare(c)))
}

// linear appends the error of linearity between two loads in its two parts.
func (b *Balance) linear(u Use, of loads) uncertainty.Node {
	if b.linearWithin() == 0 {
		return u.Model.Constant(0)
	}
	e := u.Model.Subtract(b.ofLoad(u, of.gross), b.ofLoad(u, of.tare))
	for _, c := range b.curves() {
		e = b.curve(u, e, c, of)
	}
	return e
}

// curve of the error over the range. Its value at node k is z_k + z_k+1, of independent parts z,
// rectangular within the limit, times a scale that goes by the load.
type curve struct {
	code  uncertainty.Code
	limit float64
	scale func(Pan) float64
}

// curves are that of a limit which is the same at all loads, and what an assumed one has beyond.
func (b *Balance) curves() [2]curve {
	limit := b.linearWithin()
	return [2]curve{
		{linearCurve, limit / 2, func(p Pan) float64 { return 1 }},
		{linearGrowing, limit / math.Sqrt2, func(p Pan) float64 { return b.beyondDigits(p.grams) / limit }},
	}
}

// ofReading appends the error of a reading that has one of its own.
func (b *Balance) ofReading(u Use, e end) uncertainty.Node {
	in := b.influence(e.step, e.code, uncertainty.PlusMinus(b.limitAt(e.pan.grams)))
	in.Assumed = !b.Linearity.Known
	return u.Model.Influence(in)
}

// ofLoad appends l(x).
func (b *Balance) ofLoad(u Use, p Pan) uncertainty.Node {
	local := b.ofPiece(u, p.local, uncertainty.Peaked(b.linearWithin()))
	local.At = Digits(3*p.third, b.Readability)
	return u.Model.Influence(local)
}

// linearWithin is the limit of the error of linearity at small loads. Not stated, two digits
// are assumed, for a scale that has been adjusted with a weight: see limitAt.
func (b *Balance) linearWithin() float64 {
	if b.Linearity.Known {
		return b.Linearity.Value
	}
	return 2 * b.Readability
}

// limitAt is the limit at a load. Not stated, ±max(2 d, 0.1 % of the load) is assumed:
// consumer scales that were checked against better ones erred by up to 2 digits at low load
// and by 7 digits at 106 g (electronics-lab.com/forums/threads/my-4-precision-weights.263339).
func (b *Balance) limitAt(load float64) float64 {
	if b.Linearity.Known {
		return b.Linearity.Value
	}
	return math.Max(2*b.Readability, 0.001*load)
}

// beyondDigits is what an assumed limit has beyond its two digits, in quadrature. It is a
// curve of its own, since what grows with the load is no part of a few digits: of six pieces
// weighed singly and together on a cheap scale the sum was right to the digit
// (cointalk.com/goto/post?id=3362505).
func (b *Balance) beyondDigits(load float64) float64 {
	limit, digits := b.limitAt(load), b.linearWithin()
	return math.Sqrt(math.Max(0, float64(limit*limit)-float64(digits*digits)))
}

// nodes of the curve, as shares of the capacity.
var nodes = [...]float64{0, 0.01, 0.02, 0.05, 0.1, 0.2, 0.5, 1}

// curve adds to an error what a curve is at the gross load less what it is at the tare, each
// times a scale: two neighbouring nodes have a correlation of 1/2, others none.
func (b *Balance) curve(u Use, e uncertainty.Node, c curve, of loads) uncertainty.Node {
	for k, weight := range b.partsBetween(of, c.scale) {
		if weight != 0 {
			z := b.ofPiece(u, c.code, uncertainty.PlusMinus(c.limit))
			z.At = float64(k)
			e = u.Model.Add(e, u.Model.Multiply(u.Model.Constant(weight), u.Model.Influence(z)))
		}
	}
	return e
}

// partsBetween are the weights of the parts of a curve in the error between two loads.
func (b *Balance) partsBetween(of loads, scale func(Pan) float64) (weights [len(nodes) + 1]float64) {
	at, less := b.parts(of.gross.grams, scale(of.gross)), b.parts(of.tare.grams, scale(of.tare))
	for k := range at {
		weights[k] = at[k] - less[k]
	}
	return weights
}

// parts are the weights of the parts of a curve at a load, times a scale. Between two nodes it is
// interpolated, and scaled so that its variance is the same at every load.
func (b *Balance) parts(load, scale float64) (weights [len(nodes) + 1]float64) {
	share, k := math.Min(1, load/b.Capacity), 0
	for k < len(nodes)-2 && share > nodes[k+1] {
		k++
	}
	w := (share - nodes[k]) / (nodes[k+1] - nodes[k])
	scale /= math.Sqrt(1 - w + float64(w*w))
	weights[k], weights[k+1], weights[k+2] = float64((1-w)*scale), scale, float64(w*scale)
	return weights
}

// ofPiece is an error in g that stays the same with a piece.
func (b *Balance) ofPiece(u Use, code uncertainty.Code, d uncertainty.Distribution) uncertainty.Influence {
	in := influence(u.piece(b.Name, b.Count), code, "g", d)
	in.Assumed = !b.Linearity.Known
	return in
}

// noteLinearity says what is assumed of the error of linearity.
func (b *Balance) noteLinearity(u Use, p Pan) {
	if !b.Linearity.Known {
		u.Notes.Assume("linear-within", b.Name)
	}
	if b.Law == Independent || b.linearWithin() == 0 {
		return
	}
	u.Notes.Assume("linear-in-two-parts", b.Name)
	if p.unknown() {
		u.Notes.Assume("vessel-as-no-load", "")
	}
}

// IsLinearity reports whether an influence is of the linearity of a balance, which all
// weighings on it share.
func IsLinearity(code uncertainty.Code) bool {
	switch code {
	case linearAtLoad, linearInBoat, linearInVessel, linearCurve, linearGrowing, checkError:
		return true
	}
	return false
}
