package equipment

import (
	"strings"

	"minim/equipment/benchfile"
)

// class fills in from the class table what the kit does not state itself. Kinds
// without letters have a class of their own, which is assumed.
func (r *kitReader) class(t *benchfile.Table, k *Measure) {
	traits := kinds[k.Kind]
	q := classQuery{Kind: string(k.Kind), Capacity: k.Capacity, Division: k.Division}
	if traits.lettered {
		q.Name = t.Word("class", "A", "AS", "B")
	}
	if k.Kind != Jar {
		q.Standard = t.Word("standard", "ISO", "ASTM", "DIN", "GOST", "USP", "Ph. Eur.")
	}
	q.Form = r.form(t, k.Kind)
	stated := ownLimit(t)
	if !t.Sound("kind", "class", "standard", "form", "capacity", "division") {
		return
	}
	if k.Kind == "" || k.Kind == Jar || q.Name == "" && traits.lettered || q.Capacity <= 0 {
		return
	}
	switch {
	case k.Kind == Dropper && k.DropOf != "" && q.Standard != "Ph. Eur.":
		q.Capacity, q.Form = 1, "calibrated"
	case k.Kind == Dropper:
		q.Capacity = standardDrop
	}
	c, err := findClass(q)
	if err == nil {
		k.Numbered = c.Numbered
	}
	switch wrong, failed := err.(classError); {
	case failed && stated:
		return
	case failed && traits.lettered:
		t.Fail("class", wrong.Message, wrong.Hint)
		return
	case failed:
		t.Fail("", wrong.Message, withoutClass.Replace(wrong.Hint))
		return
	case stated && !traits.lettered && !k.completedBy(c, t):
		return
	}
	k.take(c)
	k.StandardAssumed = q.Standard == "" && c.Standard != ""
}

// withoutClass words a hint for what has neither a class nor, of need, a division.
var withoutClass = strings.NewReplacer(" and division instead of the class", "", " instead of the class", "")

// completedBy reports whether a class has what is not stated of a piece whose
// limit is its own: the scatter of a piston, the dead space of a syringe, the
// drop of a dropper.
func (k *Measure) completedBy(c Class, t *benchfile.Table) bool {
	return c.Random > 0 && !k.Repeatability.Known || c.DeadSpace > 0 && !k.Retained.Known || k.Kind == Dropper && !t.Has("drop")
}

// take fills in the figures of a class that the kit does not state.
func (k *Measure) take(c Class) {
	k.Class = &c
	if k.Division == 0 {
		k.Division = c.Division
	}
	if !k.Repeatability.Known {
		k.Random = c.Random
	}
	if k.Bore == 0 {
		k.Bore = c.Bore
	}
	if k.Bore == 0 && kinds[k.Kind].reads {
		other, err := findClass(classQuery{Kind: c.Kind, Form: c.Form, Standard: "ASTM", Name: c.Name, Capacity: c.Capacity, Division: c.Division})
		if err == nil && other.Bore > 0 {
			k.Bore, k.BoreAssumed = other.Bore, true
		}
	}
}

// form reads which of several forms the standard knows.
func (r *kitReader) form(t *benchfile.Table, kind Kind) string {
	switch kind {
	case Cylinder:
		return t.Word("form", "tall", "squat", "plastic")
	case Piston:
		return t.Word("form", "air", "direct reusable", "direct single-use", "dispenser")
	case Beaker:
		return t.Word("form", "marked", "unmarked")
	}
	return ""
}
