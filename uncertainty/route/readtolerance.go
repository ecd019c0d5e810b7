package route

import (
	"errors"
	"fmt"
	"math"
	"strings"

	"minim/equipment/benchfile"
	"minim/equipment/quantity"
	"minim/uncertainty"
)

// readTolerances reads `tolerance`, one text or several, or the one-sided
// `not-above` and `not-below`.
func (p *Prep) readTolerances(t *benchfile.Table) []Tolerance {
	if t.Has("not-above") || t.Has("not-below") {
		return p.readOneSided(t)
	}
	var list []Tolerance
	if t.Shape("tolerance") == benchfile.List && len(t.Texts("tolerance")) == 0 {
		t.Fail("tolerance", "the list of tolerances is empty", "leave tolerance out, or write \"8 % of target\"")
	}
	for _, text := range t.Texts("tolerance") {
		if text == "" {
			return nil
		}
		limits, err := p.parseTolerance(text)
		if err == nil {
			err = p.tooNarrow(text, limits)
		}
		if err != nil {
			failStrength(t, "tolerance", err)
			return nil
		}
		if s, err := ParseStrength(text); err == nil {
			text = s.Text
		}
		list = append(list, Tolerance{Text: text, Limits: limits})
	}
	return list
}

// quantityMessage is the message of a parser without its hint.
func quantityMessage(err error) string {
	var e *quantity.Error
	if errors.As(err, &e) {
		return e.Message
	}
	return err.Error()
}

// parseTolerance returns the limits in the unit of the target. A half-width in
// another unit is laid off in that unit: g/L and % w/w are not in proportion.
func (p *Prep) parseTolerance(text string) (limits uncertainty.Limits, err error) {
	fault := func(message string) error {
		return &quantity.Error{Found: text, Message: message, Hint: "write it as a share, \"8 % of target\", or as a strength, \"0.003 % w/v\""}
	}
	target := p.Target.Value
	share, of, err := quantity.ParseShareOf(text)
	if err == nil {
		if of != "target" || share <= 0 || share >= 1 {
			return limits, fault(fmt.Sprintf("a tolerance lies between 0 and 100 %% of the target, found %q", text))
		}
		return uncertainty.Limits{Lower: target - float64(share*target), Upper: target + float64(share*target)}, nil
	}
	if strings.Contains(text, "of") || of == "" && strings.HasSuffix(text, "%") {
		return limits, fault(quantityMessage(err))
	}
	s, err := p.parseStrength(text)
	if err != nil {
		return limits, err
	}
	if !p.canCompare(s) {
		return limits, errFollows
	}
	middle := p.in(s.Unit, p.Target)
	limits.Lower = p.inTargetUnit(Strength{Value: middle - s.Value, Unit: s.Unit})
	limits.Upper = p.inTargetUnit(Strength{Value: middle + s.Value, Unit: s.Unit})
	if !(s.Value < middle && limits.Lower < target && limits.Upper > target) {
		return limits, fault("the tolerance must be smaller than the target, and not next to nothing")
	}
	return limits, nil
}

// tooNarrow is the error for limits that no preparation can be held within.
func (p *Prep) tooNarrow(text string, l uncertainty.Limits) error {
	least := quantity.LimitOf("tolerance").Least
	if l.Upper-l.Lower >= 2*least*p.Target.Value*(1-1e-9) {
		return nil
	}
	return &quantity.Error{Found: text, Message: fmt.Sprintf("%q is narrower than any preparation can be", text),
		Hint: fmt.Sprintf("state at least %.3g %% of the target on either side; most are some percent", 100*least)}
}

func (p *Prep) readOneSided(t *benchfile.Table) []Tolerance {
	if t.Has("tolerance") {
		t.Fail("tolerance", "a tolerance and a one-sided limit are both stated", "state tolerance, or not-above and not-below")
	}
	tol := Tolerance{oneByOne: true, Limits: uncertainty.Limits{Lower: math.Inf(-1), Upper: math.Inf(1)}}
	const rounding = 1e-9 // of the conversion from another unit
	var said []string
	for _, side := range []struct {
		key   string
		limit *float64
	}{{"not-below", &tol.Limits.Lower}, {"not-above", &tol.Limits.Upper}} {
		if s := p.strength(t, side.key); p.canCompare(s) {
			*side.limit = p.inTargetUnit(s)
			said = append(said, strings.ReplaceAll(side.key, "-", " ")+" "+s.Text)
		}
	}
	tol.Text = strings.Join(said, ", ")
	switch {
	case tol.Limits.Lower >= tol.Limits.Upper:
		t.Fail("not-above", "the upper limit is not above the lower", "")
	case p.tooNarrow(tol.Text, tol.Limits) != nil:
		t.FailWith("not-above", p.tooNarrow(tol.Text, tol.Limits))
	case p.Target.Value > tol.Limits.Upper*(1+rounding):
		t.Fail("not-above", fmt.Sprintf("the target, %s, is above it", p.Target.Text), "")
	case p.Target.Value < tol.Limits.Lower*(1-rounding):
		t.Fail("not-below", fmt.Sprintf("the target, %s, is below it", p.Target.Text), "")
	}
	return []Tolerance{tol}
}

func leastChance(t *benchfile.Table) float64 {
	if !t.Has("least-chance") {
		return 0.95
	}
	p := t.Positive("least-chance", quantity.Share)
	if p >= 1 {
		t.Fail("least-chance", "a chance of 100 % cannot be promised", "write \"95 %\"")
	}
	return p
}
