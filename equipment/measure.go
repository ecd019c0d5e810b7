package equipment

import (
	"cmp"

	"minim/equipment/quantity"
	"minim/uncertainty"
)

// Measure is a volumetric instrument: glass with one mark or a scale.
type Measure struct {
	Name string
	Kind Kind
	// Capacity, and Division of the scale; a Division of 0 means one mark, at
	// the capacity. In mL.
	Capacity, Division float64
	// Numbered is the distance of the numbered marks of its scale, in mL; 0
	// without one.
	Numbered float64
	// DropOf is the liquid that the capacity of a dropper is a drop of; "" is water.
	DropOf string
	// Bore inside at the mark of a neck or stem, in mm, of a range the mean; 0 when not known.
	Bore float64
	// bores is the range that a standard allows; nil where the kit states the bore.
	bores *BoreRange
	// Bias of a piece.
	Bias bias
	// Expansion of the material, cubic, in 1/°C.
	Expansion Stated
	// Glass is the name of the material by which the expansion is known; "" where it is stated.
	Glass string
	// Clinging is the greatest volume of drops above the meniscus, in mL.
	Clinging Stated
	// Retained is the volume that stays behind when it is emptied.
	Retained Retained
	// Repeatability is a measured standard deviation of use, which replaces
	// the error of reading and the scatter of what is retained.
	Repeatability Spread
	// Own are sets of readings of one's own, and Judged is what their means say of the piece: see
	// [Measure.Complete].
	Own    []Own
	Judged []Judged
	// Reading is how carefully it is read; "" leaves that to the bench.
	Reading Reading
	// Vessel is the mass of the empty vessel in g. Plastic: it is not of glass; Wall is then what it
	// is made of, "" where that is not stated.
	Vessel  Stated
	Plastic bool
	Wall    string
	// Count is the number of pieces alike.
	Count int
	// Price of a piece.
	Price Price
	// Ex: adjusted to deliver, as the glass is marked; otherwise to contain. SingleUse: a
	// new piece each time.
	Ex, SingleUse bool
	// Cushion: its piston works through a cushion of air.
	Cushion bool
	// BlowOut: its last drop belongs to what it delivers, and is to be blown out. TwoMarks: a
	// pipette that delivers from its upper mark to a lower one.
	BlowOut, TwoMarks bool
	// line is how the pen line of a jar was set.
	Line line
	// Random is the limit of the standard deviation of a piston, in mL.
	Random float64
	// Class is the row of the class table that figures were taken from, nil
	// when the kit states them all.
	Class *Class
	// StandardAssumed: the kit names a class but not its standard. BoreAssumed: the bore is
	// that of another standard.
	StandardAssumed, BoreAssumed bool
}

// Reads returns a [Cannot] error when the instrument has no place to read
// a volume at, or cannot be set to it.
func (k *Measure) Reads(volume float64) error {
	switch {
	case volume > k.Capacity*(1+1e-12):
		return Cannot("more-than-it-holds", k.Name, ML(volume), ML(k.Capacity))
	case k.Division > 0 && volume < k.Division*(1-1e-12):
		return Cannot("less-than-a-division", k.Name, ML(volume), ML(k.Division))
	case k.Division == 0 && !k.Kind.Traits().Set && !k.Kind.Traits().Scale && !isMultiple(volume, k.Capacity):
		if k.TwoMarks {
			return Cannot("two-marks-only", k.Name, ML(k.Capacity), ML(volume))
		}
		return Cannot("one-mark-only", k.Name, ML(k.Capacity), ML(volume))
	}
	return nil
}

// Contain appends the volume of a solution made up to the mark M:
//
//	V = (M + e_bias + e_read + cling + meniscus [+ E[X] when adjusted to deliver]) θ
func (k *Measure) Contain(u Use, mark float64) (uncertainty.Node, error) {
	volume, err := k.upToMark(u, mark, 1, Contained)
	if err != nil {
		return 0, err
	}
	volume = u.Model.Add(volume, k.clinging(u, k.ownHeld(u, Contained, mark) != nil)...)
	switch {
	case k.Ex && !k.Retained.Known:
		u.Notes.LeaveOut("beyond-mark", k.Name)
	case k.Ex && k.Retained.Mean > 0:
		volume = u.Model.Add(volume, u.Model.Influence(influence(uncertainty.Owner{Kind: uncertainty.Instrument, Name: k.Name}, keptByDesign, "mL", exactly(k.Retained.Mean))))
	}
	return k.at20(u, volume), nil
}

// Deliver appends the volume that leaves the instrument when M is measured:
//
//	a = (M + e_bias + Σ e_read + e_rep + meniscus + μ - ρX) (1 + zδ) θ,  if poured: + cling
//
// X is the volume retained, ρ the part of it that remains, and μ = E[X] for an
// instrument adjusted to deliver, 0 for one adjusted to contain, or made to be blown out; zδ is
// what a cushion of air does with a liquid other than water.
func (k *Measure) Deliver(u Use, mark float64) (uncertainty.Node, error) {
	readings := 1 // to the tip, or poured out
	if k.BetweenMarks(mark, u.Emptying) {
		readings = 2
	}
	volume, err := k.upToMark(u, mark, readings, Delivered)
	if err != nil {
		return 0, err
	}
	if k.wholeDelivery(u, mark) != nil {
		return k.at20(u, volume), nil
	}
	if k.Kind.Traits().Receives {
		volume = u.Model.Add(volume, k.clinging(u, k.ownHeld(u, Delivered, mark) != nil)...)
	}
	if volume, err = k.lessRetained(u, volume, mark); err != nil {
		return 0, err
	}
	if volume, err = k.cushioned(u, mark, volume); err != nil {
		return 0, err
	}
	return k.at20(u, volume), nil
}

// BetweenMarks reports whether a volume runs from a mark to a lower one, and not to the tip: all
// of a burette and of a pipette with two marks, and a part of the scale of a pipette that is
// then neither blown out nor rinsed.
func (k *Measure) BetweenMarks(mL float64, e Emptying) bool {
	is := k.Kind.Traits()
	return k.TwoMarks || is.toMark || is.difference && e == drained && !isMultiple(mL, k.Capacity)
}

// upToMark appends M with what is wrong with the piece, which its own readings may say, and with
// its reading.
func (k *Measure) upToMark(u Use, mark float64, readings int, of Held) (uncertainty.Node, error) {
	if err := k.Reads(mark); err != nil {
		return 0, err
	}
	own := k.ownAt(u, mark)
	if of == Delivered {
		own = cmp.Or(k.wholeDelivery(u, mark), own)
	}
	k.note(u, mark, own)
	volume := u.Model.Constant(mark)
	if k.Line.With != nil && own == nil {
		line, err := k.setLine(u)
		if err != nil {
			return 0, err
		}
		volume = u.Model.Add(volume, line...)
	}
	volume = u.Model.Add(volume, k.bias(u, mark, own)...)
	volume = u.Model.Add(volume, k.readings(u, mark, readings, of)...)
	return u.Model.Add(volume, k.meniscus(u, own.beside(k, mark, readings))...), nil
}

// readings appends n errors of reading, or the measured repeatability, or one that is assumed.
// When nothing says how carefully is read, ordinary care is assumed.
func (k *Measure) readings(u Use, mark float64, n int, of Held) []uncertainty.Node {
	if s := k.spread(u, of, mark); s.Known || k.Random > 0 {
		s.noteReadings(u.Notes, k.Name, mark, showML)
		in := k.ofUse(u, repeatability, nil)
		if !s.Known {
			in.Ground = k.Class.ground(k.Class.Trust)
		}
		return []uncertainty.Node{u.Model.Influence(s.scattering(in, k.Name, s.S, mark))}
	}
	how := k.care(u)
	switch {
	case k.scatters(u):
		return []uncertainty.Node{k.assumedScatter(u)}
	case how == noReading || !k.Kind.Traits().Read:
		return nil
	case k.Division == 0 && k.Kind.Traits().Scale:
		u.Notes.LeaveOut("reading-without-division", k.Name)
		return nil
	case k.Division == 0 && k.Bore == 0:
		u.Notes.LeaveOut("reading-without-bore", k.Name)
		return nil
	case how == "":
		u.Notes.Assume("ordinary-reading", "")
	}
	nodes := make([]uncertainty.Node, n)
	for i := range nodes {
		in := k.ofUse(u, readingCode, k.readingError(cmp.Or(how, ordinary)))
		in.At, in.Assumed, in.Ground = float64(i), how == "", k.groundOfReading(cmp.Or(how, ordinary))
		nodes[i] = u.Model.Influence(in)
	}
	return nodes
}

// spread of the volume measured at a mark: that of readings of the same at the nearest one, of
// the liquid where there are any and else of water, or other measured ones, or that of a piston's
// class.
func (k *Measure) spread(u Use, of Held, mark float64) Spread {
	ofLiquid := k.spreads(func(j *Judged) bool { return j.ofLiquid(u) && (j.Of == of || j.Of == "") })
	ofWater := k.spreads(func(j *Judged) bool { return j.Liquid == "" && j.Of == of })
	for _, s := range []Spread{ofLiquid, ofWater, k.Repeatability} {
		if s.Known {
			return s.nearest(mark)
		}
	}
	return Spread{S: k.Random}
}

// spreads are those of some sets of readings.
func (k *Measure) spreads(some func(*Judged) bool) (s Spread) {
	for i := range k.Judged {
		if j := &k.Judged[i]; some(j) {
			s.Join(j.Own.Spread)
		}
	}
	return s
}

// clinging appends the drops above the meniscus, rectangular from 0 to K; of measured ones the
// mean, since readings hold their scatter.
func (k *Measure) clinging(u Use, measured bool) []uncertainty.Node {
	switch {
	case !k.Clinging.Known:
		u.Notes.LeaveOut("clinging-drops", k.Name)
		return nil
	case k.Clinging.Value == 0:
		return nil
	}
	d := uncertainty.Distribution(uncertainty.Rectangular{Low: 0, High: k.Clinging.Value})
	if measured {
		d = exactly(k.Clinging.Value / 2)
	}
	return []uncertainty.Node{u.Model.Influence(k.ofUse(u, clingingDrops, d))}
}

// at20 multiplies a volume by θ = 1 + (γ_vessel - γ_liquid)(T - 20 °C), which
// turns it into the volume that the liquid has at 20 °C.
func (k *Measure) at20(u Use, volume uncertainty.Node) uncertainty.Node {
	span := u.Day.ExpansionSpan
	if !u.Day.Known || k.Expansion.Value == u.Day.LiquidExpansion && span == 0 {
		return volume
	}
	m := u.Model
	expands := m.Subtract(k.known(u, expansionOfPiece, k.Expansion.Value, perDegree, k.groundOfExpansion()), u.ofLiquid(expansionOfLiquid, u.Day.LiquidExpansion))
	if span != 0 {
		code := mixedExpansion + uncertainty.Code(" beside "+u.Day.Solvent.Name)
		expands = m.Subtract(expands, m.Multiply(u.ofLiquid(expansionSpan, span), u.inBetween(code, uncertainty.Group{Kind: uncertainty.Day})))
	}
	return m.Multiply(volume, m.Add(m.Constant(1), m.Multiply(expands, u.Day.Excess)))
}

const perDegree = "1/°C"

// ofLiquid appends a figure of the expansion of the liquid of the day.
func (u *Use) ofLiquid(code uncertainty.Code, x float64) uncertainty.Node {
	return u.Model.Name(u.Model.Constant(x), uncertainty.Influence{
		Code: code, Group: uncertainty.Group{Kind: uncertainty.Substance, Name: u.Day.Solvent.Name}, Unit: perDegree, Ground: u.Day.Expands, Assumed: u.Day.ExpandsAssumed,
	})
}

// note records what the use of the instrument rests on, and what its own readings say.
func (k *Measure) note(u Use, mark float64, own *Judged) {
	k.tellOwn(u)
	if own == nil || own.Standing != Alone || !sameVolume(own.Mark, mark) {
		k.noteLimit(u, mark)
	}
	if k.bores != nil && k.bores.Trust == fromMemory && k.Division == 0 {
		u.Notes.Remember("bore", k.Name, quantity.Round(k.Bore, 4), k.bores.class)
	}
	if u.Day.Known && !k.Expansion.Known && !k.Kind.Traits().Counts {
		u.Notes.LeaveOut("expansion-of-glass", k.Name)
	}
	if k.Division > 0 && !isMultiple(mark, k.Division) {
		u.Notes.Warn("between-two-lines", k.Name, ML(mark), ML(k.Division))
	}
	if k.Division > 0 && mark < leastOfScale*k.Capacity*(1-1e-12) {
		u.Notes.Warn("low-on-scale", k.Name, ML(mark))
	}
}

// noteLimit records what the limit of the error rests on.
func (k *Measure) noteLimit(u Use, mark float64) {
	switch {
	case k.StandardAssumed && k.Bias.ClassLimit:
		u.Notes.Assume("limits-of-class", k.Name, k.Class.String())
	case k.StandardAssumed:
		u.Notes.Assume("as-in-class", k.Name, k.Class.String())
	}
	byClass := k.Class != nil && k.Bias.ClassLimit
	if byClass && k.Class.Standard == "" {
		u.Notes.Assume("limit-by-practice", k.Name, ML(mark), ML(k.Limit(mark)))
	}
	switch {
	case !byClass || k.Class.Trust != fromMemory:
	case k.Bias.ByClass:
		u.Notes.Remember("limit-at", k.Name, ML(k.Limit(mark)), ML(mark), k.Class.String())
	default:
		u.Notes.Remember("limit", k.Name, ML(k.Limit(mark)), k.Class.String())
	}
	if k.Class != nil && k.Class.Superseded != "" && (byClass || k.Random > 0) {
		u.Notes.Assume("superseded", "", k.Class.Published(), k.Class.Superseded)
	}
	if k.Bias.assumesTriangle() && k.Limit(mark) > 0 {
		u.Notes.Assume("triangular-errors", "")
	}
}
