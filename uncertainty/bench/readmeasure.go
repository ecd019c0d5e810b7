package bench

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"minim/equipment"
	"minim/equipment/benchfile"
	"minim/equipment/quantity"
)

// measureKind is that of an instrument in a table, which a pipette states.
func measureKind(t *benchfile.Table, table string) equipment.Kind {
	if table != pipetteTables {
		return equipment.Kind(table)
	}
	t.Need("name", "kind")
	return equipment.Kind(t.Word("kind", kindsIn(pipetteTables)...))
}

// callPiston calls a pipette with a piston so in messages: its keys are others than those of glass.
func callPiston(t *benchfile.Table, kind equipment.Kind) {
	if kind.Traits().Dial {
		t.Name = strings.TrimSuffix(t.Name, pipetteTables) + string(kind)
	}
}

// measure reads a volumetric instrument.
func (r *kitReader) measure(t *benchfile.Table, kind equipment.Kind) {
	t.Need("name")
	callPiston(t, kind)
	k := equipment.NewMeasure(r.name(t), kind)
	k.Expansion, k.Glass = expansion(t), t.Text("material")
	k.Clinging = stated(t, "clinging", quantity.Volume)
	k.Retained = retained(t)
	sets := ownReadings(t, k)
	k.Count = pieces(t)
	k.SingleUse = t.Flag("single-use")
	k.Price = r.price(t)
	size(t, k)
	wall(t, k)
	r.line(t, k)
	checkOwn(sets, k)
	if kind.Traits().Receives || kind.Traits().LastDrop {
		marked(t, k)
	}
	if kind.Traits().Receives {
		k.Vessel = vesselMass(t)
	}
	runsOut(t, k)
	if kind.Traits().Read {
		k.Reading = equipment.Reading(t.Word("reading", equipment.Readings()...))
	}
	class := readClass(t, k)
	k.Bias.Stated = ownLimit(t)
	sound := t.Sound("kind", "class", "standard", "form", "capacity", "division", "drop") && (k.Capacity > 0 || kind.Traits().Counts)
	if kind.Traits().Numbers && t.Has("numbered") {
		k.Numbered = t.Positive("numbered", quantity.Volume)
	}
	r.bias(t, k)
	complete(t, k, class, sound)
	check(t, k)
	if kind == "" {
		t.Accept() // what other keys it may have is not known
	}
	r.into.Measures = append(r.into.Measures, k)
}

// marked reads what is printed on the glass, In or Ex; TC and TD stand on
// American glass.
func marked(t *benchfile.Table, k *equipment.Measure) {
	other := map[string]string{"TC": "In", "TD": "Ex"}
	switch word := t.Text("marked"); {
	case word == "":
	case other[word] != "":
		t.Fail("marked", "\""+word+"\" is not one of In, Ex", "write \""+other[word]+"\", which is the same")
	default:
		k.Ex = t.Word("marked", "In", "Ex") == "Ex"
	}
}

// runsOut reads how far a pipette with a tip is made to run out.
func runsOut(t *benchfile.Table, k *equipment.Measure) {
	if !k.Kind.Traits().LastDrop {
		return
	}
	k.BlowOut, k.TwoMarks = t.Flag("made-for-blow-out"), t.Flag("two-marks")
	switch {
	case k.BlowOut && !k.Ex:
		t.Fail("made-for-blow-out", "what is marked In is not adjusted to what leaves it", "leave one of the two out")
	case k.BlowOut && k.TwoMarks:
		t.Fail("two-marks", "what runs from mark to mark has no last drop to blow out", "leave one of the two out")
	}
}

// size reads the capacity, and the division and the bore of what has them.
func size(t *benchfile.Table, k *equipment.Measure) {
	switch is := k.Kind.Traits(); {
	case is.Counts:
		drop(t, k)
		return
	case is.PenLine:
		t.Need("line")
		k.Capacity = t.Positive("line", quantity.Volume)
		if !plausible(t, "line", k.Capacity, quantity.Limits.Capacity, "no jar of a bench holds this volume", "") {
			k.Capacity = 0
		}
	default:
		t.Need("capacity")
		k.Capacity = capacity(t, quantity.Volume)
	}
	if k.Kind.Traits().Scale {
		k.Division = t.Positive("division", quantity.Volume)
	}
	if k.Kind.Traits().Read {
		k.Bore = t.Positive("bore", quantity.Length)
	}
}

// drop reads the size of a drop, and of which liquid it is one.
func drop(t *benchfile.Table, k *equipment.Measure) {
	if t.Has("drop") {
		k.Capacity = t.Positive("drop", quantity.Volume)
	}
	plausible(t, "drop", k.Capacity, quantity.Limits.Drop, "no drop has this volume", "a drop of water from a common dropper is about 0.05 mL")
	if k.DropOf = t.Text("drop-of"); k.DropOf == "" {
		return
	}
	if !t.Has("drop") {
		t.Fail("drop-of", "the size of a drop of "+k.DropOf+" is not stated", "weigh twenty drops, and state drop as well")
	}
}

// line reads how the pen line of a jar was set. The measure must stand in the
// same kit, in a table that is read before the jars.
func (r *kitReader) line(t *benchfile.Table, k *equipment.Measure) {
	if !k.Kind.Traits().PenLine {
		return
	}
	name := t.Text("set-with")
	if name == "" {
		return
	}
	with := r.kit.Measure(name)
	sets := func(m *equipment.Measure) bool { return m.Kind.Traits().Delivers && !m.Kind.Traits().Counts }
	switch {
	case with == nil || !sets(with):
		names := namesOf(r.kit.Measures, measureName, sets)
		if !slices.Contains(names, "") { // one has no name, which is the mistake
			none := benchfile.NoSuch("measure in this kit", name, names)
			t.FailFor(t.Root(), measureTables(), "set-with", none.Message, none.Hint)
		}
	case with.Capacity > 0 && k.Capacity > 0:
		fills := math.Ceil(k.Capacity / with.Capacity * (1 - 1e-12)) // as few as will do
		k.Line.With, k.Line.Fills, k.Line.Each = with, int(fills), k.Capacity/fills
		if !quantity.Limits.LineFills.Holds(float64(k.Line.Fills)) {
			t.Fail("set-with", fmt.Sprintf("the line would take %d fills", k.Line.Fills), "set it with a larger measure")
		} else if err := with.Reads(k.Line.Each); err != nil {
			t.Fail("set-with", err.Error(), "set it with a measure that reads "+quantity.Millilitres(k.Line.Each)+", or draw the line elsewhere")
		}
	}
}

// wall reads what it is made of, if not of glass.
func wall(t *benchfile.Table, k *equipment.Measure) {
	glass, _ := equipment.FindGlass(t.Text("material"))
	if k.Plastic = glass.Plastic || k.Kind.Traits().Receives && k.Kind.Traits().Forms != nil && t.Text("form") == "plastic"; glass.Plastic {
		k.Wall = glass.Name
	}
}

// vesselMass reads the mass of what stands on a balance with what is weighed in it.
func vesselMass(t *benchfile.Table) equipment.Stated {
	s := equipment.Stated{Value: t.Positive("vessel", quantity.Mass), Known: t.Has("vessel")}
	plausible(t, "vessel", s.Value, quantity.Limits.Vessel, "no vessel of a bench has this mass", "state the mass of the empty vessel, as in \"35 g\"")
	return s
}

// statedClass is by which row of the class table a piece is said to be.
type statedClass struct{ name, standard, form string }

func readClass(t *benchfile.Table, k *equipment.Measure) (c statedClass) {
	if k.Kind.Traits().Lettered {
		c.name = t.Word("class", "A", "AS", "B")
	}
	if !k.Kind.Traits().PenLine {
		c.standard = t.Word("standard", "ISO", "ASTM", "DIN", "GOST", "USP", "Ph. Eur.")
	}
	if forms := k.Kind.Traits().Forms; forms != nil {
		c.form = t.Word("form", forms...)
	}
	return c
}

// complete fills in what is not stated. Where what the class rests on is not sound, nothing
// but that nothing is stated can be wrong.
func complete(t *benchfile.Table, k *equipment.Measure, c statedClass, sound bool) {
	if !t.Sound("drop") {
		return
	}
	err, failed := k.Complete(c.name, c.standard, c.form).(*quantity.Error)
	unlimited := func(key string) {
		t.FailFor(t, append([]string{key}, limitKeys...), "", err.Message, err.Hint)
	}
	switch {
	case !failed || k.Kind.Traits().PenLine && t.Has("set-with"):
	case k.Kind.Traits().PenLine:
		unlimited("set-with")
	case k.Kind.Traits().Lettered && !t.Has("class"):
		unlimited("class")
	case !sound:
	case k.Kind.Traits().Lettered:
		t.Fail("class", err.Message, err.Hint)
	default:
		t.Fail("", err.Message, withoutClass.Replace(err.Hint))
	}
}

// withoutClass words a hint for what has neither a class nor, of need, a division.
var withoutClass = strings.NewReplacer([]ofMistake{" and division instead of the class", "", " instead of the class", ""}...)
