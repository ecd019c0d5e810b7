package equipment

import "minim/uncertainty"

// What the figures of instruments rest on, beside what any figure may. The figures of each, in
// their order: of a reading its half-width in divisions and the division in mL, or its standard
// deviation in mm of level and the bore in mm; of a meniscus the bore in mm, the surface tension in
// mN/m and the density in g/mL.
const (
	byScale    uncertainty.By = "reading of a scale"
	byLevel    uncertainty.By = "reading of a level"
	byMeniscus uncertainty.By = "shape of a meniscus"
	byTate     uncertainty.By = "law of drops"
	// Of liquids: the formula for water, the table of ethanol and water, the table of liquids.
	ByWater   uncertainty.By = "formula of water"
	ByAlcohol uncertainty.By = "table of ethanol and water"
	byLiquids uncertainty.By = "table of liquids"
	byGlasses uncertainty.By = "table of glasses"
)

// ground is a row of a class table, by which a figure is known that was seen as trust says.
func (c *Class) ground(trust string) uncertainty.Ground {
	if c.Superseded != "" {
		trust += ", superseded " + c.Superseded
	}
	return uncertainty.Ground{By: uncertainty.Tabled, Of: c.String(), Trust: trust}
}

// groundOfLimit is what the limit of the error rests on.
func (k *Measure) groundOfLimit() uncertainty.Ground {
	if k.Class == nil || !k.Bias.ClassLimit {
		return uncertainty.Ground{}
	}
	return k.Class.ground(k.Class.Trust)
}

// groundOf is that of the error which readings say, where a limit may count as well.
func (k *Measure) groundOf(j *Judged) uncertainty.Ground {
	if j.Standing != Combined {
		return j.ground()
	}
	g := k.groundOfLimit()
	g.By, g.Figures = uncertainty.ObservedWithin, j.ground().Figures
	return g
}

// ground is that of readings, with their number, and the mark or load that they were taken at.
func (s *Spread) ground() uncertainty.Ground {
	if s.DegreesOfFreedom == 0 {
		return uncertainty.Ground{}
	}
	return uncertainty.Ground{By: uncertainty.Observed, Figures: [3]float64{s.Readings(), s.place()}}
}

// groundOfRetained is what is known of what stays.
func (k *Measure) groundOfRetained() uncertainty.Ground {
	switch {
	case k.Retained.Known:
	case k.Class != nil && k.Class.DeadSpace > 0:
		return k.Class.ground(k.Class.DeadSpaceTrust)
	case k.Kind.Traits().keeps != filmByCapacity && k.Capacity < 5:
		return uncertainty.Ground{By: uncertainty.Remembered}
	}
	return uncertainty.Ground{}
}

// groundOfReading is how carefully is read, and what by.
func (k *Measure) groundOfReading(how Reading) uncertainty.Ground {
	size := readingSizes[how]
	if k.Division > 0 {
		return uncertainty.Ground{By: byScale, Of: string(how), Figures: [3]float64{size.divisions, k.Division}}
	}
	return uncertainty.Ground{By: byLevel, Of: string(how), Figures: [3]float64{size.level, k.Bore}}
}

// ground is a range of bores.
func (r *BoreRange) ground() uncertainty.Ground {
	return uncertainty.Ground{By: uncertainty.Tabled, Of: r.class, Trust: r.Trust}
}

// groundOfMeniscus is what its shape was worked out from; a bore of 0 is one of a range.
func (k *Measure) groundOfMeniscus(u Use, bore float64) uncertainty.Ground {
	return uncertainty.Ground{By: byMeniscus, Of: u.Day.Solvent.Name, Figures: [3]float64{bore, u.Day.Solvent.Tension, u.Day.Solvent.Density}}
}

// groundOfExpansion is what the expansion of a piece rests on.
func (k *Measure) groundOfExpansion() uncertainty.Ground {
	if k.Glass == "" {
		return uncertainty.Ground{}
	}
	g, _ := FindGlass(k.Glass)
	return uncertainty.Ground{By: byGlasses, Of: g.Name, Trust: g.Trust}
}

// GroundOfLiquid is what the table of liquids rests on, for a liquid that it has.
func GroundOfLiquid(name string) uncertainty.Ground {
	l, _ := FindLiquid(name)
	return uncertainty.Ground{By: byLiquids, Of: l.Name, Trust: l.Trust}
}

// known appends an exactly known figure of a measure.
func (k *Measure) known(u Use, code uncertainty.Code, x float64, unit string, g uncertainty.Ground) uncertainty.Node {
	as := influence(uncertainty.Owner{Kind: uncertainty.Instrument, Name: k.Name}, code, unit, nil)
	as.Ground = g
	return u.Model.Name(u.Model.Constant(x), as)
}

// assumed is known for a figure that is assumed.
func (k *Measure) assumed(u Use, code uncertainty.Code, x float64, unit string) uncertainty.Node {
	as := influence(uncertainty.Owner{Kind: uncertainty.Instrument, Name: k.Name}, code, unit, nil)
	as.Assumed = true
	return u.Model.Name(u.Model.Constant(x), as)
}
