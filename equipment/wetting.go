package equipment

import (
	"cmp"
	"math"
	"sync"

	"minim/uncertainty"
	"minim/uncertainty/portable"
)

// usualPlastic is what is made of plastic where the kit does not say of which.
const usualPlastic = "polypropylene"

// wall is what a piece is made of.
func (k *Measure) wall() glass {
	g, _ := FindGlass(cmp.Or(k.Wall, usualPlastic))
	return g
}

// correction is what a piece holds of a liquid beyond its mark, in mL.
func (k *Measure) correction(bore, tension, density float64) float64 {
	if k.Plastic {
		return plasticCorrection(k.wall(), bore, tension, density)
	}
	return MeniscusCorrection(bore, tension, density)
}

// wetting appends what part there is of the correction in plastic, from none to all: it vanishes
// where the maker adjusts to the lower line of a liquid that wets, and nobody has measured it. Half
// of it is the estimate, and that half its limit.
func (k *Measure) wetting(u Use) uncertainty.Node {
	name := u.Day.Solvent.Name
	in := influence(k.owner(u), wettingCode+uncertainty.Code(" beside "+name), "", uncertainty.Rectangular{Low: 0, High: 1})
	in.Group, in.Assumed = uncertainty.Group{Kind: uncertainty.Bench, Name: name}, true
	return u.Model.Influence(in)
}

// plasticCorrection is [MeniscusCorrection] for a wall of plastic, in which water stands flat and
// most other liquids do not: they hold more.
func plasticCorrection(wall glass, bore, tension, density float64) float64 {
	asked := inPlastic{wall.Name, bore, tension, density}
	if v, solved := plasticCorrections.Load(asked); solved {
		return v.(float64)
	}
	w, _ := FindLiquid(water)
	_, pull := portable.Sincos(wall.WaterAngle * math.Pi / 180)
	v := pulledMeniscus(bore, tension, density, wall.pull(tension)) - pulledMeniscus(bore, w.SurfaceTension, w.Density, pull)
	plasticCorrections.Store(asked, v)
	return v
}

type inPlastic struct {
	wall                   string
	bore, tension, density float64
}

var plasticCorrections sync.Map

// pull is the cosine of the angle at which a liquid meets the wall, from its surface tension σ
// and that σs of the solid:
//
//	cos θ = -1 + 2 √(σs/σ) e^(-β(σ-σs)²),  β = 0.0001247 m⁴/mJ²
//
// at most 1. Source: the equation of state for interfacial tensions (Kwok and Neumann, Adv.
// Colloid Interface Sci. 81 (1999) 167). It gives water an angle 4 to 13 degrees too small.
func (g glass) pull(tension float64) float64 {
	if g.Tension == 0 || tension <= g.Tension {
		return 1
	}
	apart := tension - g.Tension
	return math.Min(1, float64(2*math.Sqrt(g.Tension/tension)*portable.Exp(-0.0001247*apart*apart))-1)
}
