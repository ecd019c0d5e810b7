package equipment

import "minim/uncertainty"

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

// meniscus appends the correction for a liquid other than water in glass that
// was adjusted with water. The bottom of its meniscus stands higher against the
// same volume, so that less is held: [MeniscusCorrection], times a factor that
// is 1 with a standard uncertainty of a third, one for the whole bench. It
// cancels between two readings of one bore.
func (k *Measure) meniscus(u Use, readings int) []uncertainty.Node {
	s := u.Day.Solvent
	switch {
	case s.isWater() || !k.Kind.Traits().Read || readings == 2:
		return nil
	case u.Day.MeniscusIgnored:
		u.Notes.LeaveOut("meniscus-ignored", s.Name)
		return nil
	case k.Bore == 0 && (s.Tension > 0 || s.Parts != nil):
		u.Notes.LeaveOut("meniscus-without-bore", s.Name, k.Name)
		return nil
	}
	low, high, known := s.meniscus(k.Bore, MeniscusCorrection)
	if !known {
		u.Notes.LeaveOut("meniscus-without-tension", s.Name)
		return nil
	}
	factor := u.Model.Influence(uncertainty.Influence{
		Code:  meniscusCode,
		Owner: uncertainty.Owner{Kind: uncertainty.Bench, Name: s.Name}, Group: uncertainty.Group{Kind: uncertainty.Bench, Name: s.Name},
		Distribution: uncertainty.Normal{Mu: 1, Sigma: 1.0 / 3}, Assumed: true,
	})
	u.Notes.Assume("meniscus-computed", s.Name)
	m := u.Model
	off := m.Constant(low)
	if low != high {
		u.Notes.Assume("meniscus-of-mixture", s.Name)
		off = m.Add(off, m.Multiply(m.Constant(high-low), u.inBetween(mixedMeniscus, uncertainty.Group{Kind: uncertainty.Bench, Name: s.Name})))
	}
	return []uncertainty.Node{m.Multiply(off, factor)}
}
