package bench

import (
	"fmt"
	"slices"

	"minim/equipment"
	"minim/equipment/benchfile"
	"minim/equipment/quantity"
)

// ownReadings reads the repeatability of a measure, or readings of one's own: a plain list, a table
// that says what they are of, or several. It returns the tables of the sets.
func ownReadings(t *benchfile.Table, k *equipment.Measure) (tables []*benchfile.Table) {
	var list []*benchfile.Table
	switch {
	case t.IsTable("readings"):
		list = append(list, t.Table("readings"))
	case t.ListsTables("readings"):
		list = t.Tables("readings")
	default:
		k.Repeatability = spread(t, quantity.Volume)
		if k.Repeatability.DegreesOfFreedom > 0 && t.Sound("readings") {
			k.Own = append(k.Own, equipment.Own{Spread: k.Repeatability})
		}
		return nil
	}
	if t.Has("repeatability") {
		t.Fail("readings", bothStated, stateOne)
	}
	for _, sub := range list {
		if own, ok := oneOwn(sub, k); ok {
			k.Own, tables = append(k.Own, own), append(tables, sub)
		}
	}
	k.Repeatability = ofSets(k.Own)
	return tables
}

// ofSets are the spreads of all sets.
func ofSets(sets []equipment.Own) (s equipment.Spread) {
	for i, own := range sets {
		if i == 0 {
			s = own.Spread
		} else {
			s.Elsewhere = append(s.Elsewhere, own.Spread)
		}
	}
	return s
}

// checkOwn refuses readings at marks where the measure is not read, or that are not about as much,
// and of which there are others. What they say of the piece is then left out.
func checkOwn(tables []*benchfile.Table, k *equipment.Measure) {
	sound := true
	for i, t := range tables {
		own := &k.Own[i]
		another := func(o equipment.Own) bool { return o.Of == own.Of && o.At == own.At }
		if slices.ContainsFunc(k.Own[:i], another) {
			t.Fail("", "there are readings of the same at the same mark already", "write them into one list")
			sound = false
		}
		sound = markFits(t, k, own) && sound
	}
	if !sound {
		k.Own = nil
	}
}

const (
	bothStated ofMistake = "repeatability and readings are both stated"
	twoAtLeast ofMistake = "a repeatability needs at least two readings"
)

// oneOwn reads a set of readings; ok is false where it is none.
func oneOwn(t *benchfile.Table, k *equipment.Measure) (own equipment.Own, ok bool) {
	t.Call("readings")
	key, values := ownValues(t)
	of, mark, span := ofWhat(t, k), t.Positive("at", quantity.Volume), share(t, "span", "reading")
	kind, water := quantity.Volume, water{factor: 1}
	if key == "weighed" {
		kind, water = quantity.Mass, waterOf(t, k)
	}
	switch {
	case len(values) == 0 || !t.Sound(key, "of", "at", "temperature", "within", "span"):
		return own, false
	case len(values) < 2:
		t.Fail(key, twoAtLeast, "")
		return own, false
	}
	for i := range values {
		values[i] *= water.factor
	}
	own = equipment.Own{Of: of, Spread: equipment.FromReadings(values, water.factor*digitOf(t, key, kind))}
	own.At, own.Held = mark, of == equipment.Contained
	own.Weighed, own.Temperature, own.Within = key == "weighed", water.temperature, water.within
	own.SetCommon(water.relative, span)
	return own, true
}

// ownValues are the readings of a set, and the key that they stand at: "" where none do.
func ownValues(t *benchfile.Table) (key string, values []float64) {
	volumes, masses := t.Quantities("values", quantity.Volume), t.Quantities("weighed", quantity.Mass)
	switch {
	case t.Has("values") && t.Has("weighed"):
		t.Fail("weighed", "values and weighed are both stated", stateOne)
		t.Accept()
	case t.Has("values"):
		return "values", volumes
	case t.Has("weighed"):
		return "weighed", masses
	default:
		t.FailFor(t, []string{"values", "weighed"}, "", "there are no readings in it", "state values = [\"1.00 mL\", …], or weighed = [\"0.998 g\", …] of water")
	}
	return "", nil
}

// ofWhat reads what the readings are of, of what the instrument is made for.
func ofWhat(t *benchfile.Table, k *equipment.Measure) equipment.Held {
	switch is := k.Kind.Traits(); {
	case k.Kind == "":
		return equipment.Held(t.Word("of", string(equipment.Delivered), string(equipment.Contained)))
	case !is.Receives:
		return equipment.Held(t.Word("of", string(equipment.Delivered)))
	case !is.Delivers:
		return equipment.Held(t.Word("of", string(equipment.Contained)))
	}
	return equipment.Held(t.Word("of", string(equipment.Delivered), string(equipment.Contained)))
}

// water that was weighed, and what turns grams of it into mL.
type water struct{ temperature, within, factor, relative float64 }

// waterOf reads the temperature of the water that was weighed: from it follow the volume of 1 g,
// and how well that is known.
func waterOf(t *benchfile.Table, k *equipment.Measure) water {
	w := water{temperature: t.Quantity("temperature", quantity.Temperature), within: 1, factor: 1}
	if t.Has("within") {
		w.within = t.NotNegative("within", quantity.Temperature)
	}
	switch {
	case !t.Has("temperature"):
		t.FailFor(t, []string{"temperature"}, "weighed", "the temperature of the water is not stated", "state temperature = \"21 °C\": 1 °C changes its volume by 0.02 %")
	case plausible(t, "temperature", w.temperature, quantity.Limits.Temperature, "water is not weighed at this temperature", "") &&
		plausible(t, "within", w.within, quantity.Limits.Within, "this says nothing of the temperature", ""):
		w.factor, w.relative = equipment.WeighedWater(w.temperature, w.within, k.Expansion.Value)
	}
	return w
}

// markFits reports whether readings were taken where the instrument is read, and are about as much.
func markFits(t *benchfile.Table, k *equipment.Measure, own *equipment.Own) bool {
	if own.At == 0 || k.Capacity == 0 {
		return true
	}
	if err := k.Reads(own.At); err != nil && !k.Kind.Traits().Counts {
		t.Fail("at", err.Error(), "")
		return false
	}
	if !(own.Mean > own.At/2 && own.Mean < 2*own.At) {
		t.Fail("at", fmt.Sprintf("the readings are %s on average", quantity.Millilitres(quantity.Round(own.Mean, 4))), "state the mark at which they were taken; look at their unit as well")
		return false
	}
	return true
}
