// Package tolerances reads tolerances on the target of a prep.
package tolerances

import (
	"fmt"
	"strings"

	"minim/equipment/quantity"
	"minim/uncertainty"
	"minim/uncertainty/route"
	"minim/uncertainty/strengths"
)

// Parse reads a tolerance on the target: "8 % of target", "0.003 % w/v". Its errors
// are *quantity.Error, *[route.LackError] and [route.ErrFollows].
func Parse(p *route.Prep, text string) (route.Tolerance, error) {
	limits, err := parseLimits(p, text)
	if err == nil {
		err = TooNarrow(p, text, limits)
	}
	if err != nil {
		return route.Tolerance{}, err
	}
	if s, err := strengths.Parse(text); err == nil {
		text = s.Text
	}
	return route.Tolerance{Text: text, Limits: limits}, nil
}

// parseLimits returns the limits in the unit of the target. A half-width in
// another unit is laid off in that unit: g/L and % w/w are not in proportion.
func parseLimits(p *route.Prep, text string) (limits uncertainty.Limits, err error) {
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
		return limits, fault(err.Error())
	}
	s, err := p.ParseStrength(text)
	if err != nil {
		return limits, err
	}
	if !p.CanCompare(s) {
		return limits, route.ErrFollows
	}
	middle := p.In(s.Unit, p.Target)
	limits.Lower = p.InTargetUnit(strengths.Strength{Value: middle - s.Value, Unit: s.Unit})
	limits.Upper = p.InTargetUnit(strengths.Strength{Value: middle + s.Value, Unit: s.Unit})
	if !(s.Value < middle && limits.Lower < target && limits.Upper > target) {
		return limits, fault("the tolerance must be smaller than the target, and not next to nothing")
	}
	return limits, nil
}

// TooNarrow is the error for limits that no preparation can be held within.
func TooNarrow(p *route.Prep, text string, l uncertainty.Limits) error {
	least := quantity.Limits.Tolerance.Least
	if l.Upper-l.Lower >= 2*least*p.Target.Value*(1-1e-9) {
		return nil
	}
	return &quantity.Error{Found: text, Message: fmt.Sprintf("%q is narrower than any preparation can be", text),
		Hint: fmt.Sprintf("state at least %.3g %% of the target on either side; most are some percent", 100*least)}
}

// HalfWidth of the first tolerance of a prep as a fraction of the target: to the nearer
// limit. It is 0 without a tolerance.
func HalfWidth(p *route.Prep) float64 {
	if len(p.Tolerances) == 0 {
		return 0
	}
	l := p.Tolerances[0].Limits
	return max(0, min(l.Upper-p.Target.Value, p.Target.Value-l.Lower)/p.Target.Value)
}
