package bench

import (
	"fmt"
	"math"
	"strings"

	"minim/equipment/benchfile"
	"minim/equipment/quantity"
	"minim/uncertainty"
	"minim/uncertainty/route"
)

// readTolerances reads `tolerance`, one text or several, or the one-sided
// `not-above` and `not-below`.
func (p prepReader) readTolerances(t *benchfile.Table) []route.Tolerance {
	if t.Has("not-above") || t.Has("not-below") {
		return p.readOneSided(t)
	}
	var list []route.Tolerance
	if t.Has("tolerance") && len(t.Texts("tolerance")) == 0 {
		t.Fail("tolerance", "the list of tolerances is empty", "leave tolerance out, or write \"8 % of target\"")
	}
	for _, text := range t.Texts("tolerance") {
		if text == "" {
			return nil
		}
		tolerance, err := p.ParseTolerance(text)
		if err != nil {
			failStrength(t, "tolerance", err)
			return nil
		}
		list = append(list, tolerance)
	}
	return list
}

func (p prepReader) readOneSided(t *benchfile.Table) []route.Tolerance {
	if t.Has("tolerance") {
		t.Fail("tolerance", "a tolerance and a one-sided limit are both stated", "state tolerance, or not-above and not-below")
	}
	tol := route.Tolerance{Stated: true, Limits: uncertainty.Limits{Lower: math.Inf(-1), Upper: math.Inf(1)}}
	const rounding = 1e-9 // of the conversion from another unit
	var said []string
	for _, side := range []struct {
		key   string
		limit *float64
	}{{"not-below", &tol.Limits.Lower}, {"not-above", &tol.Limits.Upper}} {
		if s := p.strength(t, side.key); p.CanCompare(s) {
			*side.limit = p.InTargetUnit(s)
			said = append(said, strings.ReplaceAll(side.key, "-", " ")+" "+s.Text)
		}
	}
	tol.Text = strings.Join(said, ", ")
	switch {
	case tol.Limits.Lower >= tol.Limits.Upper:
		t.Fail("not-above", "the upper limit is not above the lower", "")
	case p.TooNarrow(tol.Text, tol.Limits) != nil:
		t.FailWith("not-above", p.TooNarrow(tol.Text, tol.Limits))
	case p.Target.Value > tol.Limits.Upper*(1+rounding):
		t.Fail("not-above", fmt.Sprintf("the target, %s, is above it", p.Target.Text), "")
	case p.Target.Value < tol.Limits.Lower*(1-rounding):
		t.Fail("not-below", fmt.Sprintf("the target, %s, is below it", p.Target.Text), "")
	}
	return []route.Tolerance{tol}
}

// readLeastChance reads the chance of being inside that is asked for.
func (p prepReader) readLeastChance(t *benchfile.Table) {
	if !t.Has("least-chance") {
		return
	}
	p.LeastChance = t.Positive("least-chance", quantity.Share)
	if p.LeastChance >= 1 {
		t.Fail("least-chance", "a chance of 100 % cannot be promised", "write \"95 %\"")
	}
}
