// Package strengths has the units of strength, what strengths in each of them count, how large
// they can be, how they are read, and what turns them into masses in a volume. It knows no prep.
package strengths

import (
	"strings"

	"minim/equipment/quantity"
	"minim/uncertainty"
)

// Unit is a unit of strength with its basis, such as "% w/v".
type Unit struct {
	Name  string
	Basis Basis
	// Per is the number of units in 1 g/mL, mol/mL, g/g, mL/mL or U/mL.
	Per float64
}

// Name and definition: 1 % w/v is 1 g in 100 mL; mol/L is (g/L)/M; a U is the
// unit in which the activity of the solute is stated; volumes are of hydrogen peroxide alone.
var units = []Unit{
	{"% w/v", ByMassInVolume, 100},
	{"% w/w", ByMass, 100},
	{"% v/v", ByVolume, 100},
	{"g/L", ByMassInVolume, 1e3},
	{"mg/mL", ByMassInVolume, 1e3},
	{"mg/L", ByMassInVolume, 1e6},
	{"µg/mL", ByMassInVolume, 1e6},
	{"mol/L", ByAmount, 1e3},
	{"mmol/L", ByAmount, 1e6},
	{"µmol/L", ByAmount, 1e9},
	{"U/mL", ByActivity, 1},
	{Volumes, ByMassInVolume, 1000 / gramsPerVolume},
}

// Volumes of oxygen, at 0 °C and 101 325 Pa, that a volume of a solution of hydrogen peroxide
// gives off.
const Volumes = "volumes"

// gramsPerVolume are the g/L of hydrogen peroxide, of 34.0147 g/mol, in a solution of one volume:
// 2 mol give off 1 mol of oxygen, 22.414 L of an ideal gas. A pharmacopoeia has 3.038.
const gramsPerVolume = 2 * 34.0147 / 22.414

// Basis says what a strength counts.
type Basis int

// The bases of strengths.
const (
	ByMassInVolume Basis = iota // mass of solute in a volume of solution
	ByAmount                    // amount of substance in a volume of solution
	ByMass                      // mass of solute in a mass of solution
	ByVolume                    // volume of solute in a volume of solution
	ByActivity                  // units of activity in a volume of solution
)

// Traits of a basis are how its strengths differ from others.
type Traits struct {
	// Carried is the unit of what models can carry of the basis in 1 mL, in place of a
	// mass; "" of a basis that they cannot carry.
	Carried string
	// Limit of what is carried in 1 mL, and the mistake of what lies Outside; Strongest is the
	// code of why nothing is above it, "" where that is not known.
	Limit     quantity.Limit
	Outside   quantity.Error
	Strongest string
	// Part: a part of the whole, at most 1. InMass: of the mass of the solution, so that its
	// density counts.
	Part, InMass bool
	// Needs is what turns it into a mass concentration.
	Needs Property
}

var bases = [...]Traits{
	ByMassInVolume: {
		Carried: "g", Strongest: "strongest-of-any",
		Limit: quantity.Limits.Strength, Outside: quantity.Error{Hint: "state one between 1e-12 g/L and 3000 g/L"},
	},
	ByAmount: {
		Carried: "mol", Strongest: "strongest-of-any",
		Limit: quantity.Limits.StrengthByAmount, Outside: quantity.Error{Hint: "state one between 1e-15 mol/L and 100 mol/L"},
		Needs: Property{Table: "solute", Key: "molar-mass", Unit: "g/mol", Example: "58.44 g/mol"},
	},
	ByMass: {
		Part: true, InMass: true,
		Needs: Property{Table: "solvent", Key: "density", Unit: "g/mL", Example: "0.998 g/mL"},
	},
	ByVolume: {
		Part: true, Carried: "mL", Strongest: "all-by-volume",
		Limit: quantity.Limits.StrengthByVolume, Outside: quantity.Error{Hint: "state one between 1e-13 % v/v and 100 % v/v"},
		Needs: Property{Table: "solute", Key: "density", Unit: "g/mL", Example: "0.789 g/mL", Weighed: true},
	},
	ByActivity: {
		Carried: "U",
		Limit:   quantity.Limits.StrengthByActivity, Outside: quantity.Error{Hint: "state one between 1e-12 U/mL and 1e12 U/mL"},
		Needs: Property{Table: "solute", Key: "activity", Unit: "U/g", Example: "30 U/mg", InGram: true,
			Parse: parseActivity},
	},
}

// Property is what turns strengths of a basis into mass concentrations.
type Property struct {
	// Table and Key of a prep that state it, in a unit, with an example.
	Table, Key, Unit, Example string
	// Parse reads it where it serves nothing else; nil of what a prep states for other ends too.
	Parse func(text string) (float64, error)
	// Weighed: it is one of the form that is weighed, not of the substance that counts.
	Weighed bool
	// InGram: it is how much there is in 1 g, and not the mass of so much.
	InGram bool
}

// Code is that of its influence.
func (n *Property) Code() uncertainty.Code {
	return uncertainty.Code(strings.ReplaceAll(n.Key, "-", " "))
}

// Traits of the basis.
func (b Basis) Traits() *Traits { return &bases[b] }

// PropertyParsers read the texts of what serves nothing but to convert strengths, by the
// key of each: "30 U/mg" for "activity". Their errors are
// *quantity.Error.
func PropertyParsers() map[string]func(text string) (float64, error) {
	parsers := make(map[string]func(string) (float64, error))
	for i := range bases {
		if n := &bases[i].Needs; n.Parse != nil {
			parsers[n.Key] = n.Parse
		}
	}
	return parsers
}

// Comparable reports whether strengths in two units can be converted into each other
// without a property of the solute.
func (u Unit) Comparable(v Unit) bool {
	needsNone := func(u Unit) bool { return u.Basis.Traits().Needs.Table != "solute" }
	return u.Basis == v.Basis || needsNone(u) && needsNone(v)
}

// CountsMass reports whether strengths in the unit are masses of solute.
func (u Unit) CountsMass() bool { return u.Basis == ByMassInVolume || u.Basis == ByMass }

// unitNames lists the units of strength that a file may use.
func unitNames() []string {
	names := make([]string, len(units))
	for i, u := range units {
		names[i] = u.Name
	}
	return names
}
