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

// aim sets the target of a prep that is being read, and what its models carry.
func (p *Prep) aim(s Strength) {
	p.Target = s
	if b := &bases[s.Unit.basis]; b.carried != "" && !b.needs.in(p).Known {
		p.own = s.Unit.basis
	}
}

// CountsMass reports whether the models of the prep carry masses of solute, so that it
// can be weighed.
func (p *Prep) CountsMass() bool { return p.own == byMassInVolume }

// SoluteUnit is the unit in which the solute of a route is counted: g, or mol, mL or U
// where the prep does not say what turns its strengths into grams.
func (p *Prep) SoluteUnit() string { return bases[p.own].carried }

// countsVolume reports whether the models carry volumes of a liquid solute.
func (p *Prep) countsVolume() bool { return bases[p.own].carried == "mL" }

// WeighingNeeds says why nothing can be weighed where the models carry no masses: "a mass
// needs the molar mass of the solute, since the target is in mol/L".
func (p *Prep) WeighingNeeds() string {
	return p.lacks("a mass", "", &bases[p.own].needs).Error()
}

// errFollows is the error of what cannot be worked out for a mistake in a property that
// has been recorded.
var errFollows = errors.New("follows from a mistake that is recorded already")

// lackError says which property is not stated.
type lackError struct {
	says *quantity.Error
	*property
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
		need := &bases[b].needs
		switch is := need.in(p); {
		case is.Value != 0:
		case is.Known || p.Target.Unit.per == 0:
			return errFollows
		default:
			return p.lacks(s.Unit.Name, s.Text, need)
		}
	}
	return nil
}

// lacks is the error that something needs a property.
func (p *Prep) lacks(what, found string, need *property) error {
	message := fmt.Sprintf("%s needs the %s of the %s", what, need.name(), need.table)
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
	case s.Verb.brings(aVolume) && p.countsVolume():
	case s.Verb.BringsSolute():
		what = string(grammars[s.Verb].brings)
	case s.Balance != nil:
		what = "a mass of solution"
	}
	if what == "" || p.CountsMass() {
		return nil
	}
	return p.lacks(what, "", &bases[p.own].needs)
}
