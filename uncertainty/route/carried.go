package route

import (
	"errors"
	"fmt"

	"minim/equipment/quantity"
	"minim/report/words/note"
	"minim/uncertainty/mixed"
	"minim/uncertainty/strengths"
)

// A model carries mass concentrations in g/mL. Where the property is not stated that
// would turn the target into one, such as the molar mass, and nothing that is measured
// needs it, it carries the target's own quantity in its place: mol/mL, mL/mL or U/mL.
// Every formula stays the same, and what would need a mass is refused.

// carries is the basis of what the models carry in place of a mass.
func (p *Prep) carries() strengths.Basis {
	b := p.Target.Unit.Basis
	if own := b.Traits(); own.Carried != "" && own.Needs.Key != "" && !p.stated(&own.Needs).Known {
		return b
	}
	return strengths.ByMassInVolume
}

// CountsMass reports whether the models of the prep carry masses of solute, so that it
// can be weighed.
func (p *Prep) CountsMass() bool { return p.carries() == strengths.ByMassInVolume }

// NotPure says why what is taken out of the solute would count as the pure substance, for want of an assay
// or by one that no solution has, though nobody takes it so: it is a gas ("is-gas"), or had as a solution
// alone ("only-dissolved"). Nothing for all else.
func (p *Prep) NotPure() (why note.Note) {
	s := &p.Solute
	if code, pure := mixed.NotPure(s.Weighed(), s.As, s.stateOf()); code != "" && !s.Converted() && !(s.Assay.Known && s.Assay.Value < pure) {
		why = note.Of(code, s.Weighed())
	}
	return why
}

// Fluid reports whether what is weighed is known to be a liquid, or a solution.
func (s *Solute) Fluid() bool { return mixed.Fluid(s.Weighed(), s.stateOf()) }

// stateOf is the stated state of what is weighed, "" where another form than the solute is.
func (s *Solute) stateOf() string {
	if s.WeighedAs != "" {
		return ""
	}
	return s.State
}

// SoluteUnit is the unit in which the solute of a route is counted: g, or mol, mL or U
// where the prep does not say what turns its strengths into grams.
func (p *Prep) SoluteUnit() string { return p.carries().Traits().Carried }

// countsVolume reports whether the models carry volumes of a liquid solute.
func (p *Prep) countsVolume() bool { return p.carries().Traits().Carried == "mL" }

// NeedsMass is the error of something that needs masses where the models carry none: "a
// mass needs the molar mass of the solute, since the target is in mol/L". It is nil where
// they do, and a [*LackError] otherwise.
func (p *Prep) NeedsMass(what string) error {
	if p.CountsMass() {
		return nil
	}
	return p.lacks(what, "", &p.carries().Traits().Needs)
}

// ErrFollows is the error of what cannot be worked out since a property that it rests on
// is stated as 0: where that was read with a mistake, nothing else is wrong.
var ErrFollows = errors.New("follows from a mistake that is recorded already")

// LackError says which property of the solute or the solvent is not stated: the Key of it
// in the table "solute" or "solvent" of a prep.
type LackError struct {
	Says       *quantity.Error
	Table, Key string
}

func (e *LackError) Error() string { return e.Says.Message }

func (e *LackError) Unwrap() error { return e.Says }

// canConvert says which property is missing for a strength. One that is stated as 0 has
// a mistake in it.
func (p *Prep) canConvert(s strengths.Strength) error {
	if s.Unit.Basis == p.carries() {
		return nil
	}
	for _, b := range []strengths.Basis{p.carries(), s.Unit.Basis} {
		need := &b.Traits().Needs
		switch is := p.stated(need); {
		case is.Value != 0:
		case is.Known || p.Target.Unit.Per == 0:
			return ErrFollows
		default:
			return p.lacks(s.Unit.Name, s.Text, need)
		}
	}
	return nil
}

// CanState says which property is missing for the strength of a stock: of one by mass whose
// own density is stated the solvent need not have one.
func (p *Prep) CanState(k *Stock, s strengths.Strength) error {
	err := p.canConvert(s)
	var lack *LackError
	if k.Density.Known && errors.As(err, &lack) && lack.Table == "solvent" && p.CountsMass() {
		return nil
	}
	return err
}

// lacks is the error that something needs a property.
func (p *Prep) lacks(what, found string, need *strengths.Property) error {
	message := fmt.Errorf("%s needs the %s of the %s", what, need.Code(), need.Table)
	if !p.CountsMass() {
		message = fmt.Errorf("%w, since the target is in %s", message, p.Target.Unit.Name)
	}
	return &LackError{&quantity.Error{
		Found: found, Message: message.Error(),
		Hint: fmt.Sprintf("state it in the table [%s]: %s = %q", need.Table, need.Key, need.Example),
	}, need.Table, need.Key}
}

// Lacks is the error of a step that brings in a mass which the models cannot carry, or a gas;
// nil for all others.
func (p *Prep) Lacks(s *Step) error {
	what, activity := "", &strengths.ByActivity.Traits().Needs
	switch {
	case s.Packet != nil && s.Packet.InUnits && (p.carries() == strengths.ByActivity || p.CountsMass()):
		if p.CountsMass() && !p.stated(activity).Known {
			return p.lacks(note.Of(string(s.Verb.Traits().brings), "").String(), "", activity)
		}
	case s.Verb.brings(aVolume) && p.countsVolume():
	case s.Verb.Traits().BringsSolute:
		what = note.Of(string(s.Verb.Traits().brings), "").String()
	case s.Balance != nil:
		what = note.Of("mass-of-solution", "").String()
	}
	if what == "" {
		return nil
	}
	return p.NeedsMass(what)
}
