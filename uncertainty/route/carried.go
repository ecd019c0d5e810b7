package route

import (
	"errors"
	"fmt"

	"minim/equipment/benchfile"
	"minim/equipment/quantity"
)

// A model carries mass concentrations in g/mL. Where the property is not stated that
// would turn the target into one, such as the molar mass, and nothing that is measured
// needs it, it carries the target's own quantity in its place: mol/mL, mL/mL or U/mL.
// Every formula stays the same, and what would need a mass is refused.

// property is what turns strengths of a basis into mass concentrations.
type property struct {
	what, table, key, example string
	stated                    bool
	value                     float64
}

// propertyOf is the property that a basis needs; none for a mass in a volume.
func (p *Prep) propertyOf(b basis) property {
	of := func(e Estimate, what, table, key, example string) property {
		return property{what, table, key, example, e.Known, e.Value}
	}
	switch b {
	case byAmount:
		return of(p.Solute.MolarMass, "the molar mass of the solute", "solute", "molar-mass", "58.44 g/mol")
	case byMass:
		density := Estimate{Value: p.Solvent.Density.Value, Known: p.Solvent.Density.Known}
		return of(density, "the density of the solvent", "solvent", "density", "0.998 g/mL")
	case byVolume:
		return of(p.Solute.Density, "the density of the solute", "solute", "density", "0.789 g/mL")
	case byActivity:
		return of(p.Solute.Activity, "the activity of the solute", "solute", "activity", "30 U/mg")
	}
	return property{stated: true, value: 1}
}

// aim sets the target of a prep that is being read, and what its models carry.
func (p *Prep) aim(s Strength) {
	p.Target = s
	if b := s.Unit.basis; b != byMass && !p.propertyOf(b).stated {
		p.own = b
	}
}

// CountsMass reports whether the models of the prep carry masses of solute, so that it
// can be weighed.
func (p *Prep) CountsMass() bool { return p.own == byMassInVolume }

// SoluteUnit is the unit in which the solute of a route is counted: g, or mol, mL or U
// where the prep does not say what turns its strengths into grams.
func (p *Prep) SoluteUnit() string {
	return map[basis]string{byMassInVolume: "g", byAmount: "mol", byVolume: "mL", byActivity: "U"}[p.own]
}

// WeighingNeeds says why nothing can be weighed where the models carry no masses: "a mass
// needs the molar mass of the solute, since the target is in mol/L".
func (p *Prep) WeighingNeeds() string {
	return p.lacks("a mass", "", p.propertyOf(p.own)).Error()
}

// errFollows is the error of what cannot be worked out for a mistake in a property that
// has been recorded.
var errFollows = errors.New("follows from a mistake that is recorded already")

// lackError says which property is not stated.
type lackError struct {
	says *quantity.Error
	property
}

func (e *lackError) Error() string { return e.says.Message }

func (e *lackError) Unwrap() error { return e.says }

// canConvert says which property is missing for a strength. One that is stated as 0 has
// a mistake in it.
func (p *Prep) canConvert(s Strength) error {
	if s.Unit.basis == p.own {
		return nil
	}
	for _, b := range []basis{p.own, s.Unit.basis} {
		switch need := p.propertyOf(b); {
		case need.value != 0:
		case need.stated || p.Target.Unit.per == 0:
			return errFollows
		default:
			return p.lacks(s.Unit.Name, s.Text, need)
		}
	}
	return nil
}

// lacks is the error that something needs a property.
func (p *Prep) lacks(what, found string, need property) error {
	message := fmt.Sprintf("%s needs %s", what, need.what)
	if !p.CountsMass() {
		message += ", since the target is in " + p.Target.Unit.Name
	}
	return &lackError{&quantity.Error{
		Found: found, Message: message,
		Hint: fmt.Sprintf("state it in the table [%s]: %s = %q", need.table, need.key, need.example),
	}, need}
}

// failStrength records what is wrong with a strength, unless it follows from a mistake
// elsewhere.
func failStrength(t *benchfile.Table, key string, err error) {
	var lack *lackError
	switch {
	case err == nil || errors.Is(err, errFollows):
	case errors.As(err, &lack):
		in := t.Root().Table(lack.table)
		if in != nil && in.Has("name") && in.Sound("name") {
			t.FailFor(in, []string{lack.key}, key, lack.says.Message, lack.says.Hint)
		}
	default:
		t.FailWith(key, err)
	}
}

// lackOf is the error of a step that brings in a mass which the models cannot carry;
// nil for all others.
func (p *Prep) lackOf(s *Step) error {
	what := ""
	switch {
	case s.Verb.brings(aVolume) && p.own == byVolume:
	case s.Verb.BringsSolute():
		what = string(grammars[s.Verb].brings)
	case s.Balance != nil:
		what = "a mass of solution"
	}
	if what == "" || p.CountsMass() {
		return nil
	}
	return p.lacks(what, "", p.propertyOf(p.own))
}
