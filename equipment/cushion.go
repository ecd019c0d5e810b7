package equipment

import (
	"math"

	"minim/equipment/quantity"
	"minim/uncertainty"
)

// A piston that works through a cushion of air is adjusted with water, and its limits hold
// for water alone (ISO 8655-2). The air above a liquid with more vapour swells until it is
// saturated, by p/(P - p) at most: ethanol 6.1 %, isopropanol 4.2 %, acetone 32 % of the
// volume (derived), which pushes liquid out; taken up, it drips. Open tuning data for 80 %
// ethanol, which was not wetted before, let the plunger travel 1 to 4.5 % less than for water
// from 10 µL on (one source); hand pipettes are described as dripping. The sign is open.
const (
	// mostOfCushion is the greatest limit that is counted; what has a greater one is refused.
	// It is that of ethanol and isopropanol, a judgement.
	mostOfCushion = 0.05
	// vapourOverShare bounds the vapour of a liquid over its mixture: this many times its share
	// of the volume, up to all of it (from memory of ethanol, isopropanol and acetone in water).
	vapourOverShare = 2
)

// Part of a mixture is a liquid, and the share that it had of the volumes that were mixed.
type Part struct {
	Name  string
	Share float64
}

// parted lists the parts of the liquid, which of a pure one is itself.
func (s Solvent) parted() []Part {
	if s.Parts == nil {
		return []Part{{s.Name, 1}}
	}
	return s.Parts
}

// offCushion is the limit of what a piston over air is off with the liquid, as a share of the
// volume, beyond what it is off with water. It is not known where a part of it has no figure.
func (s Solvent) offCushion() (limit float64, known bool) {
	if s.isWater() {
		return 0, true
	}
	most := 0.0
	known = true
	for _, p := range s.parted() {
		l, _ := FindLiquid(p.Name)
		known = known && (l.Cushion > 0 || IsWater(p.Name))
		most = max(most, l.Cushion)
		limit += float64(math.Min(1, vapourOverShare*p.Share) * l.Cushion)
	}
	return math.Min(limit, most), known
}

// cushioned multiplies a volume by 1 + zδ for a piston over a cushion of air, where δ is the
// limit of the liquid and z lies anywhere between -1 and 1, the same in each use at one mark.
// The mean of own readings of the liquid ends it, and so does direct displacement; such readings at
// another mark leave of its variance what the correlation between marks does.
func (k *Measure) cushioned(u Use, mark float64, volume uncertainty.Node) (uncertainty.Node, error) {
	own := k.ownAt(u, mark)
	elsewhere := own != nil && own.Liquid != ""
	if !k.Cushion || elsewhere && sameVolume(own.Mark, mark) {
		return volume, nil
	}
	s := u.Day.Solvent
	limit, known := s.offCushion()
	if limit > mostOfCushion {
		return 0, Cannot("piston-refused", k.Name, s.Name)
	}
	if !known {
		u.Notes.LeaveOut("piston-unknown", k.Name, s.Name)
	}
	if limit == 0 {
		return volume, nil
	}
	u.Notes.Assume("piston-off", k.Name, s.Name, quantity.Percent(limit))
	m := u.Model
	off := m.Multiply(k.assumed(u, limitWithCushion, limit, ""), k.offWith(u, mark, elsewhere))
	return m.Multiply(volume, m.Add(m.Constant(1), off)), nil
}

// offWith appends z for the liquid of the day, or what is left of it where it was measured
// elsewhere. Different marks have a common and an own part, as they have of the bias.
func (k *Measure) offWith(u Use, mark float64, elsewhere bool) uncertainty.Node {
	part := func(code uncertainty.Code, at, share float64) uncertainty.Node {
		in := influence(k.owner(u), code+uncertainty.Code(" beside "+liquidName(u.Day.Solvent.Name)), "", uncertainty.PlusMinus(math.Sqrt(share)))
		in.At, in.Assumed = quantity.Round(at, 7), true
		return u.Model.Influence(in)
	}
	switch r := k.Bias.BetweenMarks; {
	case elsewhere && r == 1:
		return u.Model.Constant(0)
	case elsewhere && r > 0:
		return u.Model.Add(part(cushionCommon, 0, r*(1-r)), part(cushionOwn, mark, 1-r))
	case u.Marks <= 1 || r == 0:
		return part(cushionAt, mark, 1)
	case r == 1:
		return part(cushionOfPiece, 0, 1)
	default:
		return u.Model.Add(part(cushionCommon, 0, r), part(cushionOwn, mark, 1-r))
	}
}
