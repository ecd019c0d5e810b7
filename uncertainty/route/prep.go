package route

import (
	"cmp"
	"math"

	"minim/equipment"
	"minim/equipment/quantity"
	"minim/uncertainty"
	"minim/uncertainty/hazards"
	"minim/uncertainty/strengths"
)

// Prep is what is to be made, and the routes by which it might be.
type Prep struct {
	// File is the name of the file that it was read from, and Digest the SHA-256 of its
	// text as it was read.
	File, Digest string
	// Source is that text.
	Source []byte
	// Title and Note are free text.
	Title, Note string
	// Kit is the bench that it is made on, with Changes that its file does not
	// have.
	Kit     *equipment.Kit
	Changes []equipment.Change
	// Target strength, and the Volume wanted in mL.
	Target strengths.Strength
	Volume float64
	// Tolerances on the strength. The first decides; there may be none.
	Tolerances []Tolerance
	// LeastChance of being inside that is asked for.
	LeastChance float64
	Bench       Bench
	Solute      Solute
	Solvent     Solvent
	// Hazards that hold from a strength on; there may be none.
	Hazards []hazards.Stated
	Stocks  []*Stock
	Packets []*Packet
	// Routes may be none, for a search to find some, within the Limits.
	Routes []*Route
	// AssumedFactor multiplies the spread of what is assumed, to see what rests on
	// it; 0 leaves it as it is.
	AssumedFactor float64
	// Known is what is known of influences and constants of its models in place of what they were made
	// with, each time that one is made.
	Known  []uncertainty.Change
	Limits Limits
	// Ladder of weaker strengths to be made from the target; nil when none is
	// asked for.
	Ladder *Ladder
}

// NewPrep returns a prep on a kit with what holds where nothing else is stated: a least
// chance of 95 %, a solute that is weighed as such, a search of [DefaultSteps] by the usual
// policy. Target, Volume, Solute and Solvent are still to be set.
func NewPrep(kit *equipment.Kit) *Prep {
	return &Prep{
		Kit: kit, LeastChance: 0.95, Solute: Solute{FormFactor: 1},
		Limits: Limits{Steps: DefaultSteps, Prefer: Usual},
	}
}

// Tolerance is a range of permitted strengths, in the unit of the target.
type Tolerance struct {
	// Text is as the file states it: "8 % of target".
	Text   string
	Limits uncertainty.Limits
	// Stated: the limits were stated one by one, as not-above and not-below, so that the
	// text says all.
	Stated bool
}

// Bench is the state of the bench on the day.
type Bench struct {
	// Temperature in °C and the half-width within which it is known.
	Temperature, Within equipment.Stated
	// Reading is how carefully scales are read.
	Reading equipment.Reading
	// MeniscusIgnored: liquids other than water are read as if they were water.
	MeniscusIgnored bool
	// Closed: all vessels and bottles are kept closed, but where a step or a stock says more.
	Closed bool
}

// Solute is what is dissolved.
type Solute struct {
	// Name of the substance that the strength counts, and WeighedAs that of the form
	// that is weighed; "" where it is the same.
	Name, WeighedAs string
	// Unnamed: nobody said what it is, and Name stands for it.
	Unnamed bool
	Assay   Estimate
	// FormFactor is the mass of the substance that the strength counts over
	// the mass of the form that is weighed: stated, or the ratio of their molar masses.
	FormFactor float64
	// MolarMass in g/mol of the substance that the strength counts, and WeighedMolarMass
	// of the form that is weighed.
	MolarMass, WeighedMolarMass Estimate
	// Density in g/mL, for the buoyancy of the air, for % v/v, and for a liquid
	// that is measured by volume.
	Density Estimate
	// SpecificVolume is the apparent specific volume φ in solution, in mL/g.
	SpecificVolume Estimate
	// As is the form that strengths count, of a substance of which labels count one of two; ""
	// for the one that the table of stocks counts. State is what it is stated to be by itself, "solid", "liquid" or
	// "gas", "" where it is not.
	As, State string
	// Properties by key serve only to convert strengths, as the "activity" in U/g does.
	Properties map[string]Estimate
	// Solubility, at one temperature or several; none when not stated.
	Solubility []strengths.Solubility
	// Price of 1 g of what is weighed.
	Price equipment.Price
	// NonVolatile: the user states that it is a solid that stays when the solvent
	// evaporates.
	NonVolatile bool
	// Hazards are the user's words for it undiluted; none means not stated.
	Hazards []string
}

// Converted reports whether 1 g of what is weighed holds more or less than 1 g of the
// substance that the strength counts, apart from its assay.
func (s *Solute) Converted() bool { return s.FormFactor != 1 && s.FormFactor != 0 }

// Weighed is the name of what is weighed or measured out.
func (s *Solute) Weighed() string { return cmp.Or(s.WeighedAs, s.Name) }

// Solvent is what it is dissolved and diluted in.
type Solvent struct {
	Name string
	// Expansion, cubic, in 1/°C, and Density at 20 °C in g/mL.
	Expansion, Density equipment.Stated
	// Tension, the surface tension, in mN/m; 0 when not known.
	Tension float64
	// Evaporation is the greatest fraction that a solution loses before it is
	// taken from.
	Evaporation float64
	// EvaporationStated: nothing is assumed of it. ExpansionStated: it is not that of the
	// table of liquids, which of water changes with the temperature.
	EvaporationStated, ExpansionStated bool
	// Price of 1 mL.
	Price   equipment.Price
	Hazards []string
}

// CheckVolume refuses a volume in mL that no bench makes. Its error is a *quantity.Error.
func CheckVolume(mL float64) error {
	if quantity.Limits.VolumeWanted.Holds(mL) {
		return nil
	}
	return &quantity.Error{Message: "a bench does not make such a volume", Hint: "state between 0.001 mL and 1000 L"}
}

// NewSolvent returns a solvent with what the table of liquids knows of it by its name.
func NewSolvent(name string) Solvent {
	s := Solvent{Name: name}
	if liquid, ok := equipment.FindLiquid(name); ok {
		s.Tension = liquid.SurfaceTension
		s.Expansion = equipment.Stated{Value: liquid.Expansion, Known: true}
		s.Density = equipment.Stated{Value: liquid.Density, Known: true}
	}
	return s
}

// Stock is a solution that stands ready.
type Stock struct {
	Name string
	// Strength in the unit as stated.
	Strength Estimate
	Unit     strengths.Unit
	// Volume in mL that there is of it, where it is stated.
	Volume Estimate
	// Solvent of the stock; "" means that of the prep.
	Solvent string
	// Loss is the greatest fraction of its strength that it has lost.
	Loss float64
	// Density in g/mL at 20 °C, where it is stated.
	Density Estimate
	// As is the form that its strength counts, "" for that of the solute.
	As string
	// Opened is how often it has been opened since it had its strength.
	Opened equipment.Stated
}

// MostML is how much there is of it, in mL, infinite where that is not known. No stock
// has no end either.
func (k *Stock) MostML() float64 {
	if k == nil || !k.Volume.Known {
		return math.Inf(1)
	}
	return k.Volume.Value
}

// Packet is a bought amount of solute that is used whole.
type Packet struct {
	Name string
	// Content in g, or InUnits of activity.
	Content Estimate
	InUnits bool
}

// Route is an ordered list of steps that ends in the wanted solution.
type Route struct {
	Name  string
	Steps []Step
	// Made is how many of the steps have been done: what they made is not refused any more.
	Made int
}
