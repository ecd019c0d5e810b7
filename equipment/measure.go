package equipment

import (
	"cmp"
	"fmt"
	"math"

	"minim/uncertainty"
)

// Kind is a kind of volumetric instrument.
type Kind string

// The kinds of volumetric instrument, named as in the class tables.
const (
	Cylinder  Kind = "cylinder"
	Flask     Kind = "flask"
	OneMark   Kind = "one-mark"
	Graduated Kind = "graduated"
)

// Receives reports whether a solution is made up in it.
func (k Kind) Receives() bool { return k == Cylinder || k == Flask }

// Delivers reports whether a measured volume is taken out of it.
func (k Kind) Delivers() bool { return k != Flask }

// poured reports whether it delivers by being poured out, adjusted to contain.
func (k Kind) poured() bool { return k == Cylinder }

// Measure is a volumetric instrument: glass with one mark or a scale.
type Measure struct {
	Name string
	Kind Kind
	// Capacity, and Division of the scale; a Division of 0 means one mark, at
	// the capacity. In mL.
	Capacity, Division float64
	// Bore inside at the mark of a neck or stem, in mm; 0 when not known.
	Bore float64
	// Bias of a piece.
	Bias Bias
	// Expansion of the material, cubic, in 1/°C.
	Expansion Stated
	// Clinging is the greatest volume of drops above the meniscus, in mL.
	Clinging Stated
	// Retained is the volume that stays behind when it is emptied.
	Retained Retained
	// Repeatability is a measured standard deviation of use, which replaces
	// the error of reading and the scatter of what is retained.
	Repeatability Spread
	// Reading is how carefully it is read; "" leaves that to the bench.
	Reading Reading
	// Count is the number of pieces alike.
	Count int
	// Class is the row of the class table that figures were taken from, nil
	// when the kit states them all.
	Class *Class
	// StandardAssumed: the kit names a class but not its standard.
	StandardAssumed bool
}

// Bias is the error of a piece that stays the same each time it is used.
type Bias struct {
	// Shape of the distribution: Triangle, Rectangle, or Gauss.
	Shape Shape
	// Limit is the half-width in mL, or for Gauss the standard uncertainty.
	Limit float64
	// ShapeAssumed: the kit does not state the shape.
	ShapeAssumed bool
	// BetweenMarks is the correlation of the biases at two different marks.
	BetweenMarks float64
}

// Shape is the shape of the distribution of a bias.
type Shape string

// The shapes of a bias. The triangle is the choice of EURACHEM/CITAC CG 4 for
// class tolerances; others take the rectangle.
const (
	Triangle  Shape = "triangular"
	Rectangle Shape = "rectangular"
	Gauss     Shape = "normal"
)

func (s Shape) within(limit float64) uncertainty.Distribution {
	switch s {
	case Rectangle:
		return uncertainty.PlusMinus(limit)
	case Gauss:
		return uncertainty.Normal{Sigma: limit}
	default:
		return uncertainty.Peaked(limit)
	}
}

// StandardUncertainty of the bias at one mark.
func (b Bias) StandardUncertainty() float64 { return b.Shape.within(b.Limit).StandardUncertainty() }

// Retained is the volume that stays in an instrument that was emptied: a gamma
// distribution, or rectangular from 0 to twice the mean when no spread is
// stated.
type Retained struct {
	Mean   float64
	Spread Stated
	Known  bool
}

func (r Retained) distribution() uncertainty.Distribution {
	switch {
	case !r.Spread.Known:
		return uncertainty.Rectangular{Low: 0, High: 2 * r.Mean}
	case r.Spread.Value <= 1e-9*r.Mean:
		return uncertainty.Rectangular{Low: r.Mean, High: r.Mean}
	default:
		return uncertainty.Gamma{Mu: r.Mean, Sigma: r.Spread.Value}
	}
}

// Reads returns an [Impossible] error when the instrument has no place to read
// a volume at.
func (k *Measure) Reads(volume float64) error {
	switch {
	case volume > k.Capacity*(1+1e-12):
		return impossible("%s is more than the %s holds: %s", Millilitres(volume), k.Name, Millilitres(k.Capacity))
	case k.Division == 0 && !isMultiple(volume, k.Capacity):
		return impossible("the %s has one mark, at %s, and cannot measure %s", k.Name, Millilitres(k.Capacity), Millilitres(volume))
	case k.Division > 0 && volume < k.Division*(1-1e-12):
		return impossible("%s is less than one division of the %s: %s", Millilitres(volume), k.Name, Millilitres(k.Division))
	}
	return nil
}

// Contain appends the volume of a solution made up to the mark M:
//
//	V = (M + e_bias + e_read + cling) θ
func (k *Measure) Contain(u Use, mark float64) (uncertainty.Node, error) {
	if err := k.Reads(mark); err != nil {
		return 0, err
	}
	k.note(u, mark)
	volume := u.Model.Sum(u.Model.Constant(mark), k.bias(u, mark)...)
	volume = u.Model.Sum(volume, k.readings(u, 1)...)
	volume = u.Model.Sum(volume, k.clinging(u)...)
	return k.at20(u, volume), nil
}

// Deliver appends the volume that leaves the instrument when M is measured:
//
//	a = (M + e_bias + Σ e_read + e_rep + μ - X) θ,  if poured: + cling
//
// X is the volume retained, and μ = E[X] for an instrument adjusted to deliver,
// 0 for one adjusted to contain.
func (k *Measure) Deliver(u Use, mark float64) (uncertainty.Node, error) {
	if err := k.Reads(mark); err != nil {
		return 0, err
	}
	k.note(u, mark)
	volume := u.Model.Sum(u.Model.Constant(mark), k.bias(u, mark)...)
	volume = u.Model.Sum(volume, k.readings(u, k.readingsToDeliver(mark))...)
	if k.Kind.poured() {
		volume = u.Model.Sum(volume, k.clinging(u)...)
	}
	return k.at20(u, k.lessRetained(u, volume)), nil
}

// readingsToDeliver is one for an instrument that runs to the tip, or is
// poured out, and two from mark to mark.
func (k *Measure) readingsToDeliver(mark float64) int {
	if k.Kind == Graduated && !isMultiple(mark, k.Capacity) {
		return 2
	}
	return 1
}

// bias appends e_bias. The same mark of a piece has one draw. Different marks
// have a common and an own part, so that their correlation is BetweenMarks.
func (k *Measure) bias(u Use, mark float64) []uncertainty.Node {
	if k.Bias.Limit == 0 {
		return nil
	}
	piece := u.piece(k.Name, k.Count)
	at := fmt.Sprintf("bias of the %s at %s", piece, Millilitres(mark))
	part := func(name string, share float64) uncertainty.Node {
		return u.error(piece, k.Name, name, "mL", k.Bias.Shape.within(k.Bias.Limit*math.Sqrt(share)))
	}
	r := k.Bias.BetweenMarks
	switch {
	case u.Marks <= 1 || r == 0:
		return []uncertainty.Node{part(at, 1)}
	case r == 1:
		return []uncertainty.Node{part("bias of the "+piece, 1)}
	default:
		return []uncertainty.Node{
			part("bias of the "+piece+", common to its marks", r),
			part(at+", own", 1-r),
		}
	}
}

// readings appends n errors of reading, or the measured repeatability. The word
// of the step beats that of the instrument, which beats that of the bench; when
// there is none, ordinary care is assumed.
func (k *Measure) readings(u Use, n int) []uncertainty.Node {
	if k.Repeatability.Known {
		return []uncertainty.Node{u.Model.Influence(uncertainty.Influence{
			Name: "repeatability of the " + k.Name, Owner: u.Step, Group: k.Name, Unit: "mL",
			Distribution:     k.Repeatability.distribution(k.Repeatability.S),
			DegreesOfFreedom: k.Repeatability.DegreesOfFreedom,
		})}
	}
	how := cmp.Or(u.StepReading, k.Reading, u.BenchReading)
	switch {
	case how == NoReading:
		return nil
	case k.Division == 0 && k.Bore == 0:
		u.Notes.LeaveOut("reading of the " + k.Name + " (the bore at its mark is not known)")
		return nil
	case how == "":
		u.Notes.Assume("scales and marks are read with ordinary care")
	}
	nodes := make([]uncertainty.Node, n)
	for i := range nodes {
		name := "reading of the " + k.Name
		if i > 0 {
			name = "second " + name
		}
		nodes[i] = u.Model.Influence(uncertainty.Influence{
			Name: name, Owner: u.Step, Group: k.Name, Unit: "mL",
			Distribution: k.readingError(cmp.Or(how, Ordinary)), Assumed: how == "",
		})
	}
	return nodes
}

// readingError is the distribution of one reading.
func (k *Measure) readingError(how Reading) uncertainty.Distribution {
	if k.Division > 0 {
		return scaleReading(how, k.Division)
	}
	return neckReading(how, k.Bore)
}

// clinging appends the drops above the meniscus, rectangular from 0 to K.
func (k *Measure) clinging(u Use) []uncertainty.Node {
	if !k.Clinging.Known {
		u.Notes.LeaveOut("drops clinging above the meniscus in the " + k.Name)
		return nil
	}
	if k.Clinging.Value == 0 {
		return nil
	}
	return []uncertainty.Node{u.error(u.Step, k.Name, "drops clinging in the "+k.Name, "mL",
		uncertainty.Rectangular{Low: 0, High: k.Clinging.Value})}
}

// lessRetained takes away what stays behind.
func (k *Measure) lessRetained(u Use, volume uncertainty.Node) uncertainty.Node {
	retained, assumed := k.Retained, false
	if !retained.Known {
		retained, assumed = k.assumedRetained(u)
	}
	if !retained.Known || retained.Mean == 0 {
		return volume
	}
	d := retained.distribution()
	if k.Repeatability.Known {
		d = uncertainty.Rectangular{Low: retained.Mean, High: retained.Mean}
	}
	m := u.Model
	in := uncertainty.Influence{
		Name: "retained in the " + k.Name, Owner: u.Step, Group: k.Name, Unit: "mL",
		Distribution: d, Assumed: assumed,
	}
	if k.adjustedToDeliver() {
		in.Nominal = retained.Mean
		volume = m.Add(volume, m.Constant(retained.Mean))
	}
	return m.Subtract(volume, m.Influence(in))
}

func (k *Measure) adjustedToDeliver() bool { return !k.Kind.poured() }

// retainedWhenPoured is what a cylinder adjusted to contain keeps when it is
// poured out, by capacity in mL, with half of it as standard deviation.
// Measured near 10 and 50 mL: small sets of student weighings; the other sizes
// follow an estimate of the drained film (collected in the project's design).
var retainedWhenPoured = map[float64]float64{5: 0.08, 10: 0.10, 25: 0.15, 50: 0.25, 100: 0.40}

func (k *Measure) assumedRetained(u Use) (Retained, bool) {
	mean, ok := retainedWhenPoured[k.Capacity]
	switch {
	case !k.Kind.poured():
		u.Notes.LeaveOut("scatter of what stays in the " + k.Name + " when it is emptied")
		return Retained{}, false
	case !ok:
		u.Notes.LeaveOut("what stays in the " + k.Name + " when it is poured out")
		return Retained{}, false
	}
	u.Notes.Assume(fmt.Sprintf("the %s keeps about %s when it is poured out", k.Name, Millilitres(mean)))
	return Retained{Mean: mean, Spread: Stated{mean / 2, true}, Known: true}, true
}

// at20 multiplies a volume by θ = 1 + (γ_vessel - γ_liquid)(T - 20 °C), which
// turns it into the volume that the liquid has at 20 °C.
func (k *Measure) at20(u Use, volume uncertainty.Node) uncertainty.Node {
	coefficient := k.Expansion.Value - u.Day.LiquidExpansion
	if !u.Day.Known || coefficient == 0 {
		return volume
	}
	m := u.Model
	return m.Multiply(volume, m.Add(m.Constant(1), m.Multiply(m.Constant(coefficient), u.Day.Excess)))
}

// note records what the use of the instrument rests on.
func (k *Measure) note(u Use, mark float64) {
	if k.StandardAssumed {
		u.Notes.Assume(fmt.Sprintf("class %s of the %s is that of %s", k.Class.Name, k.Name, k.Class.Standard))
	}
	if k.Class != nil && k.Class.Trust == "from memory" && k.Bias.Limit == k.Class.Tolerance {
		u.Notes.Remember(fmt.Sprintf("the limit of the %s, ±%s (%s)", k.Name, Millilitres(k.Class.Tolerance), k.Class))
	}
	if k.Bias.ShapeAssumed && k.Bias.Limit > 0 {
		u.Notes.Assume("the limits of glass are triangular: most pieces are better than their limit")
	}
	if u.Day.Known && !k.Expansion.Known {
		u.Notes.LeaveOut("thermal expansion of the " + k.Name)
	}
	if k.Division > 0 && !isMultiple(mark, k.Division) {
		u.Notes.Warn(fmt.Sprintf("%s lies between two lines of the %s (division %s)", Millilitres(mark), k.Name, Millilitres(k.Division)))
	}
	if k.Division > 0 && mark < 0.2*k.Capacity*(1-1e-12) {
		u.Notes.Warn(fmt.Sprintf("%s is less than a fifth of the %s; a smaller one reads better", Millilitres(mark), k.Name))
	}
}
