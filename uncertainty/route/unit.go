package route

import (
	"strings"

	"minim/equipment/quantity"
	"minim/uncertainty"
)

// Unit is a unit of strength with its basis, such as "% w/v".
type Unit struct {
	Name  string
	basis basis
	// per is the number of units in 1 g/mL, mol/mL, g/g, mL/mL or U/mL.
	per float64
}

// Name and definition: 1 % w/v is 1 g in 100 mL; mol/L is (g/L)/M; a U is the
// unit in which the activity of the solute is stated; volumes are of hydrogen peroxide alone.
var units = []Unit{
	{"% w/v", byMassInVolume, 100},
	{"% w/w", byMass, 100},
	{"% v/v", byVolume, 100},
	{"g/L", byMassInVolume, 1e3},
	{"mg/mL", byMassInVolume, 1e3},
	{"mg/L", byMassInVolume, 1e6},
	{"µg/mL", byMassInVolume, 1e6},
	{"mol/L", byAmount, 1e3},
	{"mmol/L", byAmount, 1e6},
	{"µmol/L", byAmount, 1e9},
	{"U/mL", byActivity, 1},
	{volumes, byMassInVolume, 1000 / gramsPerVolume},
}

// volumes of oxygen, at 0 °C and 101 325 Pa, that a volume of a solution of hydrogen peroxide
// gives off.
const volumes = "volumes"

// gramsPerVolume are the g/L of hydrogen peroxide, of 34.0147 g/mol, in a solution of one volume:
// 2 mol give off 1 mol of oxygen, 22.414 L of an ideal gas. A pharmacopoeia has 3.038.
const gramsPerVolume = 2 * 34.0147 / 22.414

// basis says what a strength counts.
type basis int

// The bases of strengths.
const (
	byMassInVolume basis = iota // mass of solute in a volume of solution
	byAmount                    // amount of substance in a volume of solution
	byMass                      // mass of solute in a mass of solution
	byVolume                    // volume of solute in a volume of solution
	byActivity                  // units of activity in a volume of solution
)

// basisTraits is how strengths of a basis differ from others.
type basisTraits struct {
	// carried is the unit of what models can carry of the basis in 1 mL, in place of a
	// mass; "" of a basis that they cannot carry.
	carried string
	// limit of what is carried in 1 mL, and the mistake of what lies outside; strongest is the
	// code of why nothing is above it, "" where that is not known.
	limit     quantity.Limit
	outside   quantity.Error
	strongest string
	// part: a part of the whole, at most 1. inMass: of the mass of the solution, so that its
	// density counts.
	part, inMass bool
	// needs is what turns it into a mass concentration.
	needs property
}

var bases = [...]basisTraits{
	byMassInVolume: {
		carried: "g", strongest: "strongest-of-any",
		limit: quantity.Limits.Strength, outside: quantity.Error{Hint: "state one between 1e-12 g/L and 3000 g/L"},
	},
	byAmount: {
		carried: "mol", strongest: "strongest-of-any",
		limit: quantity.Limits.StrengthByAmount, outside: quantity.Error{Hint: "state one between 1e-15 mol/L and 100 mol/L"},
		needs: property{table: "solute", key: "molar-mass", unit: "g/mol", example: "58.44 g/mol",
			of: func(p *Prep) Estimate { return p.Solute.MolarMass }},
	},
	byMass: {
		part: true, inMass: true,
		needs: property{table: "solvent", key: "density", unit: "g/mL", example: "0.998 g/mL",
			of: func(p *Prep) Estimate {
				return Estimate{Value: p.Solvent.Density.Value, Known: p.Solvent.Density.Known}
			}},
	},
	byVolume: {
		part: true, carried: "mL", strongest: "all-by-volume",
		limit: quantity.Limits.StrengthByVolume, outside: quantity.Error{Hint: "state one between 1e-13 % v/v and 100 % v/v"},
		needs: property{table: "solute", key: "density", unit: "g/mL", example: "0.789 g/mL", weighed: true,
			of: func(p *Prep) Estimate { return p.Solute.Density }},
	},
	byActivity: {
		carried: "U",
		limit:   quantity.Limits.StrengthByActivity, outside: quantity.Error{Hint: "state one between 1e-12 U/mL and 1e12 U/mL"},
		needs: property{table: "solute", key: "activity", unit: "U/g", example: "30 U/mg", inGram: true,
			parse: quantity.ParseActivity},
	},
}

// property is what turns strengths of a basis into mass concentrations.
type property struct {
	// table and key of a prep that state it, in a unit, with an example.
	table, key, unit, example string
	// of is its value in a prep. Where it serves nothing else it is read by parse alone.
	of    func(*Prep) Estimate
	parse func(text string) (float64, error)
	// weighed: it is one of the form that is weighed, not of the substance that counts.
	weighed bool
	// inGram: it is how much there is in 1 g, and not the mass of so much.
	inGram bool
}

// code is that of its influence.
func (n *property) code() uncertainty.Code {
	return uncertainty.Code(strings.ReplaceAll(n.key, "-", " "))
}

// in is the property as a prep states it; none is needed for a mass in a volume.
func (n *property) in(p *Prep) Estimate {
	switch {
	case n.parse != nil:
		return p.Solute.Properties[n.key]
	case n.of != nil:
		return n.of(p)
	}
	return Estimate{Value: 1, Known: true}
}

// PropertyParsers read the texts of what serves nothing but to convert strengths, by the
// key of each in [Solute].Properties: "30 U/mg" for "activity". Their errors are
// *quantity.Error.
func PropertyParsers() map[string]func(text string) (float64, error) {
	parsers := make(map[string]func(string) (float64, error))
	for i := range bases {
		if n := &bases[i].needs; n.parse != nil {
			parsers[n.key] = n.parse
		}
	}
	return parsers
}

// Comparable reports whether strengths in two units can be converted into each other
// without a property of the solute.
func (u Unit) Comparable(v Unit) bool {
	needsNone := func(u Unit) bool { return bases[u.basis].needs.table != "solute" }
	return u.basis == v.basis || needsNone(u) && needsNone(v)
}

// CountsMass reports whether strengths in the unit are masses of solute.
func (u Unit) CountsMass() bool { return u.basis == byMassInVolume || u.basis == byMass }

// unitNames lists the units of strength that a file may use.
func unitNames() []string {
	names := make([]string, len(units))
	for i, u := range units {
		names[i] = u.Name
	}
	return names
}
