package equipment

import (
	"minim/equipment/quantity"
	"minim/uncertainty"
)

// Solvent is the liquid that is read at the marks.
type Solvent struct {
	Name string
	// Density in g/mL and Tension, the surface tension, in mN/m; 0 when not
	// known.
	Density, Tension float64
	// Parts of a mixture; nil of a pure liquid.
	Parts []Part
}

// isWater reports whether the liquid is water under one of its names, or not stated.
func (s Solvent) isWater() bool { return s.Name == "" || IsWater(s.Name) }

// meniscus appends the correction for a liquid other than water in what was adjusted with
// water. In glass the bottom of its meniscus stands higher against the same volume, so that
// less is held: [MeniscusCorrection], times a factor that is 1 with a standard uncertainty of a
// third, one for the whole bench. In plastic the sign turns: see [Measure.wetting]. The bore that
// a standard leaves open is an influence of the piece, the mean being the estimate. Of it a share
// counts: see [Judged.beside].
func (k *Measure) meniscus(u Use, share float64) []uncertainty.Node {
	s := u.Day.Solvent
	switch {
	case s.isWater() || !k.Kind.Traits().Read || share == 0:
		return nil
	case u.Day.MeniscusIgnored:
		u.Notes.LeaveOut("meniscus-ignored", s.Name)
		return nil
	case k.Bore == 0 && (s.Tension > 0 || s.Parts != nil):
		u.Notes.LeaveOut("meniscus-without-bore", s.Name, k.Name)
		return nil
	case k.Bore == 0:
		u.Notes.LeaveOut("meniscus-without-tension", s.Name)
		return nil
	}
	least, greatest := k.widths()
	low1, high1, known := s.meniscus(least, k.correction)
	low2, high2, _ := s.meniscus(greatest, k.correction)
	if !known {
		u.Notes.LeaveOut("meniscus-without-tension", s.Name)
		return nil
	}
	k.noteBore(u)
	m := u.Model
	off := k.byBore(u, low1, low2)
	if low1 != high1 {
		u.Notes.Assume("meniscus-of-mixture", s.Name)
		where := u.inBetween(mixedMeniscus, uncertainty.Group{Kind: uncertainty.Bench, Name: s.Name})
		off = m.Add(off, m.Multiply(k.byBore(u, high1-low1, high2-low2), where))
	}
	if share != 1 {
		off = m.Multiply(off, m.Constant(share))
	}
	if k.Plastic {
		u.Notes.Assume("meniscus-in-plastic", k.Name, s.Name, k.wall().Name, ML(quantity.Round((low1+high1+low2+high2)/4, 2)))
		return []uncertainty.Node{m.Multiply(off, k.wetting(u))}
	}
	u.Notes.Assume("meniscus-computed", s.Name)
	return []uncertainty.Node{m.Multiply(off, u.computed())}
}

// computed appends by how much the computation of a meniscus is right.
func (u *Use) computed() uncertainty.Node {
	name := u.Day.Solvent.Name
	return u.Model.Influence(uncertainty.Influence{
		Code:  meniscusCode,
		Owner: uncertainty.Owner{Kind: uncertainty.Bench, Name: name}, Group: uncertainty.Group{Kind: uncertainty.Bench, Name: name},
		Distribution: uncertainty.Normal{Mu: 1, Sigma: 1.0 / 3}, Assumed: true,
	})
}
