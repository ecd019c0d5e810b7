package bench

import (
	"fmt"

	"minim/equipment"
	"minim/equipment/benchfile"
	"minim/equipment/quantity"
	"minim/uncertainty"
)

// Limits of what is plausible for an instrument.
var (
	capacityLimit = quantity.Limits.Capacity
	displayLimit  = quantity.Limits.DisplaySteps
	linesLimit    = quantity.Limits.ScaleLines
	numbersLimit  = quantity.Limits.ScaleNumbers
	dropLimit     = quantity.Limits.Drop
	fillsLimit    = quantity.Limits.LineFills
	countLimit    = quantity.Limits.Count
	factorLimit   = quantity.Limits.CoverageFactor
	expandsLimit  = quantity.Limits.Expansion
	priceLimit    = quantity.Limits.Price
)

// capacity reads the capacity, 0 when it is none.
func capacity(t *benchfile.Table, kind quantity.Kind) float64 {
	x := t.Positive("capacity", kind)
	if x != 0 && !capacityLimit.Holds(x) {
		t.Fail("capacity", "no instrument of a bench has this capacity", "")
		return 0
	}
	return x
}

// pieces reads how many pieces alike there are, 1 where that is not stated.
func pieces(t *benchfile.Table) int {
	n := t.Count("count", 1)
	if t.Has("count") && n != 0 && !countLimit.Holds(float64(n)) {
		t.Fail("count", fmt.Sprintf("%d pieces alike are not likely on a bench", n), fmt.Sprintf("state how many are at hand, at most %v", countLimit.Most))
	}
	return max(1, n)
}

// below refuses a figure at a key that is not smaller than the capacity.
func below(t *benchfile.Table, key string, figure, capacity float64) {
	if t.Has(key) && capacity > 0 && !(figure < capacity) {
		t.Fail(key, "must be smaller than the capacity", "")
	}
}

// spreadBelow refuses readings or a repeatability that scatter by the capacity.
func spreadBelow(t *benchfile.Table, s equipment.Spread, capacity float64) {
	below(t, "repeatability", s.S, capacity)
	below(t, "readings", s.S, capacity)
}

func shapeOf(t *benchfile.Table) equipment.Shape {
	return equipment.Shape(t.Word("shape", string(equipment.Triangle), string(equipment.Rectangle)))
}

func stated(t *benchfile.Table, key string, kind quantity.Kind) equipment.Stated {
	return equipment.Stated{Value: t.NotNegative(key, kind), Known: t.Has(key)}
}

// share reads a fraction of something that the text must name, like
// "0.1 % of reading".
func share(t *benchfile.Table, key, of string) float64 {
	text := t.Text(key)
	if text == "" {
		return 0
	}
	value, what, err := quantity.ParseShareOf(text)
	switch {
	case err != nil:
		t.FailWith(key, err)
	case what != of:
		t.Fail(key, "is stated as a share of "+what, "write it as a share of the "+of+": \"0.1 % of "+of+"\"")
	case value < 0 || value >= 1:
		t.Fail(key, "must lie between 0 and 100 %", "")
	}
	return value
}

// spread reads a repeatability, or works it out from readings.
func spread(t *benchfile.Table, kind quantity.Kind) equipment.Spread {
	values := t.Quantities("readings", kind)
	switch {
	case t.Has("readings") && t.Has("repeatability"):
		t.Fail("readings", "repeatability and readings are both stated", "state one of them")
	case t.Has("readings") && len(values) < 2:
		t.Fail("readings", "a repeatability needs at least two readings", "")
	case len(values) >= 2:
		_, s, nu := uncertainty.Readings(values)
		return equipment.Spread{S: s, DegreesOfFreedom: nu, Known: true}
	}
	return equipment.Spread{S: t.NotNegative("repeatability", kind), Known: t.Has("repeatability")}
}

// expansion reads a cubic expansion, or the material that has it.
func expansion(t *benchfile.Table) equipment.Stated {
	name := t.Text("material")
	switch {
	case t.Has("expansion") && t.Has("material"):
		t.Fail("expansion", "material and expansion are both stated", "state one of them")
	case name != "":
		glass, ok := equipment.FindGlass(name)
		if !ok {
			t.FailChoice("material", "material", name, equipment.GlassNames(), "or state its cubic expansion: expansion = \"9.9e-6 /°C\"")
		}
		return equipment.Stated{Value: glass.Expansion, Known: ok}
	}
	value := t.NotNegative("expansion", quantity.Expansion)
	if !expandsLimit.Holds(value) {
		t.Fail("expansion", "nothing expands by so much", "borosilicate glass has \"9.9e-6 /°C\", plastics about \"3e-4 /°C\"")
	}
	return equipment.Stated{Value: value, Known: t.Has("expansion")}
}

// retained reads a volume, or a table of its mean and spread.
func retained(t *benchfile.Table) equipment.Retained {
	if t.Shape("retained") != benchfile.Sub {
		return equipment.Retained{Mean: t.NotNegative("retained", quantity.Volume), Known: t.Has("retained")}
	}
	sub := t.Table("retained")
	sub.Need("mean")
	r := equipment.Retained{
		Mean:   sub.NotNegative("mean", quantity.Volume),
		Spread: stated(sub, "spread", quantity.Volume),
		Known:  true,
	}
	if sub.Has("mean") && sub.Sound("mean") && r.Spread.Value > 2*r.Mean {
		sub.Fail("spread", "must not be above twice the mean", "a volume that cannot be negative varies by about its mean at most")
	}
	return r
}
