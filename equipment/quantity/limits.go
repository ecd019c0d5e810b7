package quantity

// Limit is what a number in a file may be: from Least to Most. Far outside of what is
// sold or done, it keeps a slipped unit or digit from giving figures without meaning.
type Limit struct {
	// Of says what is limited: a key, or what is worked out from two.
	Of          string
	Least, Most float64
	Unit        string
}

// Limits are the limits of single numbers (common practice, no source). A share is a
// fraction.
var Limits = struct {
	Capacity, DisplaySteps, ScaleLines, ScaleNumbers, Drop, StepDrops, LineFills, WholeNumber, Count,
	CoverageFactor, Expansion, Vessel, Price, VolumeWanted, Supply, Tolerance, Strength, StrengthByAmount,
	StrengthByVolume, StrengthByActivity, Temperature, Within, Assay, FormFactor, MolarMass, SoluteDensity,
	SolventDensity, SpecificVolume, Activity, Fraction, Open, Mouth, Opened Limit
}{
	Capacity:           Limit{"capacity, line", 1e-6, 1e9, "g or mL"},
	DisplaySteps:       Limit{"steps of a display", 1, 1e8, ""},
	ScaleLines:         Limit{"lines of a scale", 1, 2000, ""},
	ScaleNumbers:       Limit{"numbers on a scale", 1, 200, ""},
	Drop:               Limit{"drop", 1e-3, 1, "mL"},
	StepDrops:          Limit{"drops of a step", 1, 10000, ""},
	LineFills:          Limit{"fills for a pen line", 1, 100, ""},
	WholeNumber:        Limit{"whole number", 0, 1e4, ""},
	Count:              Limit{"count", 1, 100, ""},
	CoverageFactor:     Limit{"k", 1, 10, ""},
	Expansion:          Limit{"expansion", 0, 0.01, "/°C"},
	Vessel:             Limit{"vessel", 1e-3, 1e6, "g"},
	Price:              Limit{"price", 0, 1e9, ""},
	VolumeWanted:       Limit{"volume wanted", 1e-3, 1e6, "mL"},
	Supply:             Limit{"volume of a stock, content", 1e-6, 1e6, "mL or g"},
	Tolerance:          Limit{"tolerance", 1e-6, 1, "of the target"},
	Strength:           Limit{"strength", 1e-15, 3, "g/mL"},
	StrengthByAmount:   Limit{"strength by amount", 1e-18, 0.1, "mol/mL"}, // water itself holds 0.055
	StrengthByVolume:   Limit{"strength by volume", 1e-15, 1, "mL/mL"},
	StrengthByActivity: Limit{"strength by activity", 1e-12, 1e12, "U/mL"},
	Temperature:        Limit{"temperature", 0, 50, "°C"},
	Within:             Limit{"within", 0, 25, "°C"},
	Assay:              Limit{"assay", 1e-6, 1, ""},
	FormFactor:         Limit{"form-factor", 1e-3, 10, ""},
	MolarMass:          Limit{"molar-mass", 1, 1e7, "g/mol"},
	SoluteDensity:      Limit{"density of a solute", 0.05, 30, "g/mL"},
	SolventDensity:     Limit{"density of a solvent, a stock", 0.3, 5, "g/mL"},
	SpecificVolume:     Limit{"specific-volume", -1, 3, "mL/g"},
	Activity:           Limit{"activity", 1e-6, 1e15, "U/g"},
	Fraction:           Limit{"evaporation, loss, contraction", 0, 0.5, ""},
	Open:               Limit{"open", 0, 10000, "min"},
	Mouth:              Limit{"mouth", 0.1, 1000, "mm"},
	Opened:             Limit{"opened", 0, 1000, ""},
}

// Holds reports whether a number lies within the limit.
func (l Limit) Holds(x float64) bool { return x >= l.Least && x <= l.Most }
