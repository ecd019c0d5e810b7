package equipment

import (
	"fmt"
	"slices"

	"minim/equipment/benchfile"
	"minim/equipment/quantity"
)

// measureKind is that of an instrument in a table, which a pipette states.
func measureKind(t *benchfile.Table, table string) Kind {
	if table != kinds[OneMark].table {
		return Kind(table)
	}
	t.Need("name", "kind")
	return Kind(t.Word("kind", PipetteKinds()...))
}

// measure reads a volumetric instrument.
func (r *kitReader) measure(t *benchfile.Table, kind Kind) {
	t.Need("name")
	k := &Measure{
		Name:          r.name(t),
		Kind:          kind,
		Expansion:     expansion(t),
		Clinging:      stated(t, "clinging", quantity.Volume),
		Retained:      retained(t),
		Repeatability: spread(t, quantity.Volume),
		Count:         pieces(t),
		SingleUse:     t.Flag("single-use"),
		Price:         r.price(t),
		Ex:            kinds[kind].deliver,
	}
	k.size(t)
	r.line(t, k)
	if kinds[kind].receives {
		k.marked(t)
		k.vessel(t)
	}
	if kinds[kind].reads {
		k.Reading = Reading(t.Word("reading", Readings()...))
	}
	r.class(t, k)
	k.numbered(t)
	r.bias(t, k)
	k.check(t)
	if kind == "" {
		t.Accept() // what other keys it may have is not known
	}
	r.into.Measures = append(r.into.Measures, k)
}

// marked reads what is printed on the glass, In or Ex; TC and TD stand on
// American glass.
func (k *Measure) marked(t *benchfile.Table) {
	other := map[string]string{"TC": "In", "TD": "Ex"}
	switch word := t.Text("marked"); {
	case word == "":
	case other[word] != "":
		t.Fail("marked", "\""+word+"\" is not one of In, Ex", "write \""+other[word]+"\", which is the same")
	default:
		k.Ex = t.Word("marked", "In", "Ex") == "Ex"
	}
}

// size reads the capacity, and the division and the bore of what has them.
func (k *Measure) size(t *benchfile.Table) {
	switch k.Kind {
	case Dropper:
		k.drop(t)
		return
	case Jar:
		t.Need("line")
		k.Capacity = t.Positive("line", quantity.Volume)
		if t.Has("line") && k.Capacity != 0 && !capacityLimit.Holds(k.Capacity) {
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

// drop reads the size of a drop, and of which liquid it is one.
func (k *Measure) drop(t *benchfile.Table) {
	k.Capacity = standardDrop
	if t.Has("drop") {
		k.Capacity = t.Positive("drop", quantity.Volume)
	}
	if t.Has("drop") && !dropLimit.Holds(k.Capacity) {
		t.Fail("drop", "no drop has this volume", "a drop of water from a common dropper is about 0.05 mL")
	}
	if k.DropOf = t.Text("drop-of"); k.DropOf == "" {
		return
	}
	if !t.Has("drop") {
		t.Fail("drop-of", "the size of a drop of "+k.DropOf+" is not stated", "weigh twenty drops, and state drop as well")
	}
	if IsWater(k.DropOf) {
		k.DropOf = ""
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
		if !slices.Contains(names, "") { // one has no name, which is the mistake
			t.FailAmong(measureTables(), "set-with", "measure in this kit", name, names)
		}
	case with.Capacity > 0 && k.Capacity > 0:
		k.Line = lineSetWith(with, k.Capacity)
		if !fillsLimit.Holds(float64(k.Line.Fills)) {
			t.Fail("set-with", fmt.Sprintf("the line would take %d fills", k.Line.Fills), "set it with a larger measure")
		} else if err := with.Reads(k.Line.Each); err != nil {
			t.Fail("set-with", err.Error(), "set it with a measure that reads "+quantity.Millilitres(k.Line.Each)+", or draw the line elsewhere")
		}
	}
}
