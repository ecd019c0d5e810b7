package equipment

import (
	"math"

	"minim/equipment/quantity"
	"minim/uncertainty"
)

// bias is the error of a piece that stays the same each time it is used.
type bias struct {
	// Shape of the distribution: triangle, rectangle, or Gauss.
	Shape Shape
	// Limit is the half-width in mL, or for Gauss the standard uncertainty, to which a Share of
	// the volume measured is added.
	Limit, Share float64
	// Correction in mL that a certificate states, to be added to what is read.
	Correction float64
	// ClassLimit: the limit is that of the class, not the kit's own. ByClass: it
	// is that of the class at the volume measured.
	ClassLimit, ByClass bool
	// Stated: how good the piece is, is stated; it is not that of a class. ShapeAssumed: the kit
	// does not state the shape.
	Stated, ShapeAssumed bool
	// BetweenMarks is the correlation of the biases at two different marks.
	BetweenMarks float64
}

// Shape is the shape of the distribution of a bias.
type Shape string

// The shapes of a bias. The triangle is the choice of EURACHEM/CITAC CG 4 for
// class tolerances; others take the rectangle.
const (
	triangle  Shape = "triangular"
	rectangle Shape = "rectangular"
	Gauss     Shape = "normal"
)

func (s Shape) within(limit float64) uncertainty.Distribution {
	switch s {
	case rectangle:
		return uncertainty.PlusMinus(limit)
	case Gauss:
		return uncertainty.Normal{Sigma: limit}
	default:
		return uncertainty.Peaked(limit)
	}
}

// Limit of the error when a volume is measured: the half-width in mL, or for
// [Gauss] the standard uncertainty.
func (k *Measure) Limit(volume float64) float64 {
	if k.Bias.ByClass {
		return k.Class.limit(volume)
	}
	return k.Bias.Limit + float64(k.Bias.Share*volume)
}

// bias appends e_bias. The same mark of a piece has one draw. Different marks
// have a common and an own part, so that their correlation is BetweenMarks.
// Where the limit grows with the volume, one draw z of the piece makes the
// error z·limit at every volume. Where own readings count, they say it.
func (k *Measure) bias(u Use, mark float64, own *Judged) []uncertainty.Node {
	if own != nil {
		return k.ownError(u, own, mark)
	}
	limit := k.Limit(mark)
	if limit == 0 && k.Bias.Correction == 0 {
		return nil
	}
	if k.Bias.ByClass || k.Bias.Share > 0 {
		z := u.Model.Influence(k.shaped(influence(k.owner(u), biasRelative, "", k.Bias.Shape.within(1))))
		return []uncertainty.Node{u.Model.Multiply(z, k.known(u, limitOfError, limit, "mL", k.groundOfLimit()))}
	}
	switch r := k.Bias.BetweenMarks; {
	case k.Bias.Correction != 0:
		return []uncertainty.Node{u.Model.Influence(influence(k.owner(u), correction, "mL", uncertainty.Normal{Mu: k.Bias.Correction, Sigma: limit}))}
	case u.Marks <= 1 || r == 0:
		return []uncertainty.Node{k.partOfBias(u, biasAt, mark, limit, 1)}
	case r == 1:
		return []uncertainty.Node{k.partOfBias(u, biasOfPiece, 0, limit, 1)}
	default:
		return []uncertainty.Node{k.partOfBias(u, biasCommon, 0, limit, r), k.partOfBias(u, biasOwn, mark, limit, 1-r)}
	}
}

// partOfBias appends a part of the error within a limit, which has a share of its variance.
func (k *Measure) partOfBias(u Use, code uncertainty.Code, at, limit, share float64) uncertainty.Node {
	in := k.shaped(influence(k.owner(u), code, "mL", k.Bias.Shape.within(limit*math.Sqrt(share))))
	in.At = quantity.Round(at, 7) // as it is printed
	if share < 1 {
		in.Ground.Figures[0] = limit
	}
	return u.Model.Influence(in)
}

// assumesTriangle: that errors within the limits are triangular is assumed, and not stated.
func (b *bias) assumesTriangle() bool { return b.ShapeAssumed && b.Shape == triangle }

// shaped marks an influence within the limit with what that rests on, and that its shape is assumed.
func (k *Measure) shaped(in uncertainty.Influence) uncertainty.Influence {
	in.Ground = k.groundOfLimit()
	in.Assumed, in.AssumedShape = k.Bias.assumesTriangle(), k.Bias.assumesTriangle()
	return in
}

// owner of what stays the same with a piece: of single-use ware each use has a
// new one.
func (k *Measure) owner(u Use) uncertainty.Owner {
	if k.SingleUse {
		return with(u.Step, k.Name)
	}
	return u.piece(k.Name, k.Count)
}
