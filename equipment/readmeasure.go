package equipment

import (
	"fmt"
	"strings"

	"minim/equipment/benchfile"
	"minim/equipment/quantity"
)

// measure reads a volumetric instrument.
func (r *kitReader) measure(t *benchfile.Table, table string) {
	kind := Kind(table)
	t.Need("name")
	if table == kinds[OneMark].table {
		t.Need("kind")
		kind = Kind(t.Word("kind", PipetteKinds()...))
	}
	k := &Measure{
		Name:          r.name(t),
		Kind:          kind,
		Expansion:     expansion(t),
		Clinging:      stated(t, "clinging", quantity.Volume),
		Retained:      retained(t),
		Repeatability: spread(t, quantity.Volume),
		Count:         max(1, t.Count("count", 1)),
		SingleUse:     t.Flag("single-use"),
		Ex:            kinds[kind].deliver,
	}
	t.Text("price") // used where costs are compared
	k.size(t)
	r.line(t, k)
	if kinds[kind].receives {
		if word := t.Word("marked", "In", "Ex"); word != "" {
			k.Ex = word == "Ex"
		}
	}
	if kinds[kind].reads {
		k.Reading = Reading(t.Word("reading", Readings()...))
	}
	r.class(t, k)
	r.bias(t, k)
	k.check(t)
	r.kit.Measures = append(r.kit.Measures, k)
}

// size reads the capacity, and the division and the bore of what has them.
func (k *Measure) size(t *benchfile.Table) {
	switch k.Kind {
	case Dropper:
		k.Capacity = standardDrop
		if t.Has("drop") {
			k.Capacity = t.Positive("drop", quantity.Volume)
		}
		if t.Has("drop") && (k.Capacity < 0.001 || k.Capacity > 1) {
			t.Fail("drop", "no drop has this volume", "a drop of water from a common dropper is about 0.05 mL")
		}
		return
	case Jar:
		t.Need("line")
		k.Capacity = t.Positive("line", quantity.Volume)
		if t.Has("line") && k.Capacity != 0 && (k.Capacity < smallest || k.Capacity > largest) {
			t.Fail("line", "no jar of a bench holds this volume", "")
			k.Capacity = 0
		}
	default:
		t.Need("capacity")
		k.Capacity = capacity(t, quantity.Volume)
	}
	if kinds[k.Kind].scale {
		k.Division = t.Positive("division", quantity.Volume)
	}
	if kinds[k.Kind].reads {
		k.Bore = t.Positive("bore", quantity.Length)
	}
}

// line reads how the pen line of a jar was set. The measure must stand in the
// same kit, in a table that is read before the jars.
func (r *kitReader) line(t *benchfile.Table, k *Measure) {
	if k.Kind != Jar {
		return
	}
	name := t.Text("set-with")
	if name == "" {
		return
	}
	with := r.kit.Measure(name)
	switch {
	case with == nil || !with.Kind.Delivers() || with.Kind == Dropper:
		var names []string
		for _, m := range r.kit.Measures {
			if m.Kind.Delivers() && m.Kind != Dropper {
				names = append(names, m.Name)
			}
		}
		t.FailChoice("set-with", "measure in this kit", name, names, "")
	case with.Capacity > 0 && k.Capacity > 0:
		k.Line = lineSetWith(with, k.Capacity)
		if k.Line.Fills > 100 {
			t.Fail("set-with", fmt.Sprintf("the line would take %d fills", k.Line.Fills), "set it with a larger measure")
		} else if err := with.Reads(k.Line.Each); err != nil {
			t.Fail("set-with", err.Error(), "")
		}
	}
}

// class fills in from the class table what the kit does not state itself. Kinds
// without letters have a class of their own, which is assumed.
func (r *kitReader) class(t *benchfile.Table, k *Measure) {
	traits := kinds[k.Kind]
	q := ClassQuery{Kind: string(k.Kind), Capacity: k.Capacity, Division: k.Division}
	if traits.lettered {
		q.Name = t.Word("class", "A", "AS", "B")
	}
	if k.Kind != Jar {
		q.Standard = t.Word("standard", "ISO", "ASTM", "DIN", "GOST", "USP", "Ph. Eur.")
	}
	q.Form = r.form(t, k.Kind)
	own := ownLimit(t)
	if k.Kind == "" || k.Kind == Jar || q.Name == "" && traits.lettered || q.Capacity <= 0 {
		return
	}
	if k.Kind == Dropper {
		q.Capacity = standardDrop
	}
	c, err := FindClass(q)
	switch classError, failed := err.(ClassError); {
	case failed && own:
		return
	case failed && traits.lettered:
		t.Fail("class", classError.Message, classError.Hint)
		return
	case failed:
		t.Fail("", classError.Message, strings.TrimSuffix(classError.Hint, " instead of the class"))
		return
	case own && !traits.lettered && !k.completedBy(c, t):
		return
	}
	k.take(c)
	k.StandardAssumed = q.Standard == "" && c.Standard != ""
}

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
		other, err := FindClass(ClassQuery{Kind: c.Kind, Form: c.Form, Standard: "ASTM", Name: c.Name, Capacity: c.Capacity, Division: c.Division})
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
