package bench

import (
	"cmp"
	"fmt"
	"slices"

	"minim/equipment"
	"minim/equipment/benchfile"
	"minim/equipment/quantity"
	"minim/uncertainty"
	"minim/uncertainty/route"
)

// ownReadings reads the repeatability of a measure, or readings of one's own: a plain list, a table
// that says what they are of, or several. It returns the tables of the sets.
func ownReadings(t *benchfile.Table, k *equipment.Measure) (tables []*benchfile.Table) {
	sets, several := readingSets(t)
	if !several {
		k.Repeatability = spread(t, quantity.Volume)
		if k.Repeatability.DegreesOfFreedom > 0 && t.Sound("readings") {
			k.Own = append(k.Own, equipment.Own{Spread: k.Repeatability})
		}
		return nil
	}
	var liquids []string
	dropOf := ""
	if k.Kind.Traits().Counts {
		dropOf = t.Text("drop-of")
	}
	for _, sub := range sets {
		own, ok := oneOwn(sub, k, dropOf)
		if !ok {
			continue
		}
		if own.Liquid != "" && !slices.ContainsFunc(liquids, func(other string) bool { return equipment.SameLiquid(other, own.Liquid) }) {
			liquids = append(liquids, own.Liquid)
		}
		own.Spread.Liquid = 1 + slices.IndexFunc(liquids, func(other string) bool { return equipment.SameLiquid(other, own.Liquid) })
		k.Own, tables = append(k.Own, own), append(tables, sub)
	}
	k.Repeatability = ofWater(k.Own)
	return tables
}

// readingSets are the tables of readings of an instrument, where it has one or several in place of a
// plain list.
func readingSets(t *benchfile.Table) (sets []*benchfile.Table, several bool) {
	switch {
	case t.IsTable("readings"):
		sets = append(sets, t.Table("readings"))
	case t.ListsTables("readings"):
		sets = t.Tables("readings")
	default:
		return nil, false
	}
	if t.Has("repeatability") {
		t.Fail("readings", bothStated, stateOne)
	}
	return sets, true
}

// ofWater are the spreads of all sets that are not of another liquid.
func ofWater(sets []equipment.Own) (s equipment.Spread) {
	for _, own := range sets {
		if own.Liquid == "" {
			s.Join(own.Spread)
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
		another := func(o equipment.Own) bool {
			return o.Of == own.Of && o.At == own.At && o.Spread.Liquid == own.Spread.Liquid
		}
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

// oneOwn reads a set of readings; ok is false where it is none. A dropper says beside them of which
// liquid its drops are.
func oneOwn(t *benchfile.Table, k *equipment.Measure, dropOf string) (own equipment.Own, ok bool) {
	t.Call("readings")
	key, values := ownValues(t)
	of, mark, span := ofWhat(t, k), t.Positive("at", quantity.Volume), share(t, "span", "reading")
	liquid := ofLiquid(t, k)
	kind, w := quantity.Volume, weighed{factor: 1}
	density := likely(t, "density", quantity.Density, quantity.Limits.SolventDensity, "ethanol has \"0.789 g/mL\"")
	if key == "weighed" {
		kind, w = quantity.Mass, weighedLiquid(t, k, cmp.Or(liquid, dropOf), density)
	} else if t.Has("density") {
		t.Fail("density", "no readings of a mass are there to be turned into volumes", "state weighed, or leave it out")
	}
	switch {
	case len(values) == 0 || !t.Sound(key, "of", "liquid", "density", "at", "temperature", "within", "span"):
		return own, false
	case len(values) < 2:
		t.Fail(key, twoAtLeast, "")
		return own, false
	case slipped(t, key, values, digitOf(t, key, kind)):
		return own, false
	}
	for i := range values {
		values[i] *= w.factor
	}
	own = equipment.Own{Of: of, Liquid: liquid, Spread: equipment.FromReadings(values, w.factor*digitOf(t, key, kind))}
	own.At, own.Held = mark, of == equipment.Contained
	own.Weighed, own.Temperature, own.Within, own.Density = key == "weighed", w.temperature, w.within, w.density
	own.SetCommon(w.relative, span)
	return own, true
}

// ofLiquid reads with which liquid readings were taken, "" for water.
func ofLiquid(t *benchfile.Table, k *equipment.Measure) string {
	name := t.Text("liquid")
	switch {
	case name != "" && k.Kind.Traits().Counts:
		t.Fail("liquid", "of which liquid its drops are, a dropper says by itself", "state drop-of beside drop, in place of this")
		return ""
	case equipment.IsWater(name):
		return ""
	}
	return name
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
	case k.Kind != "" && !is.Receives:
		return equipment.Held(t.Word("of", string(equipment.Delivered)))
	case k.Kind != "" && !is.Delivers:
		return equipment.Held(t.Word("of", string(equipment.Contained)))
	}
	return equipment.Held(t.Word("of", string(equipment.Delivered), string(equipment.Contained)))
}

// weighed is what turns grams of a liquid into mL; its density there is 0 for water.
type weighed struct{ temperature, within, density, factor, relative float64 }

// weighedLiquid reads the temperature of the liquid that was weighed: from it, and from its density
// there, follow the volume of 1 g, and how well that is known.
func weighedLiquid(t *benchfile.Table, k *equipment.Measure, liquid string, stated route.Estimate) weighed {
	name := cmp.Or(liquid, "water")
	w := weighed{temperature: t.Quantity("temperature", quantity.Temperature), within: 1, factor: 1}
	if t.Has("within") {
		w.within = t.NotNegative("within", quantity.Temperature)
	}
	if equipment.IsWater(name) && stated.Known {
		t.Fail("density", "that of water follows from its temperature", "leave it out")
	}
	switch {
	case !t.Has("temperature"):
		t.FailFor(t, []string{"temperature"}, "weighed", "the temperature of the "+name+" is not stated", "state temperature = \"21 °C\": 1 °C changes its volume by 0.02 % for water, by 0.1 % for alcohols")
	case !plausible(t, "temperature", w.temperature, quantity.Limits.Temperature, name+" is not weighed at this temperature", "") ||
		!plausible(t, "within", w.within, quantity.Limits.Within, "this says nothing of the temperature", ""):
	case equipment.IsWater(name):
		w.factor, w.relative = equipment.WeighedWater(w.temperature, w.within, k.Expansion.Value)
	default:
		w.ofAnother(t, k, name, stated)
	}
	return w
}

// ofAnother takes the density of another liquid than water as it is stated, or from the table.
func (w *weighed) ofAnother(t *benchfile.Table, k *equipment.Measure, name string, stated route.Estimate) {
	d, known := equipment.LiquidAt(name, w.temperature)
	switch {
	case stated.Known:
		d.Density, d.Relative = stated.Value, 0
		if stated.Distribution != nil && stated.Value > 0 {
			d.Relative = uncertainty.SummaryOf(stated.Distribution).StandardUncertainty / stated.Value
		}
	case !known:
		t.FailFor(t, []string{"density"}, "weighed", "the density of "+name+" is not known, by which grams become volumes", "state density = \"0.80 g/mL\", as it has at that temperature, or the volumes as values")
		return
	}
	if t.Sound("density") {
		w.density = d.Density
		w.factor, w.relative = equipment.WeighedLiquid(d, w.temperature, w.within, k.Expansion.Value)
	}
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
