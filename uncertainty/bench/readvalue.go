package bench

import (
	"fmt"
	"math"
	"slices"

	"minim/equipment"
	"minim/equipment/benchfile"
	"minim/equipment/quantity"
)

// ofMistake is a piece of a mistake that several have, or stands for a place or a file in one.
type ofMistake = string

const (
	namedByThePrep  ofMistake = "the kit is the file that the prep names"
	thePlan         ofMistake = "the plan"
	instrumentInKit ofMistake = "instrument in the kit"

	mostlyTwo      ofMistake = "certificates mostly state k = 2"
	priceOfSolute  ofMistake = "the price of the solute"
	stateOne       ofMistake = "state one of them"
	slippedDigit   ofMistake = "look at its digits and its unit"
	ownName        ofMistake = "give each its own name"
	sodiumChloride ofMistake = "sodium chloride has \"58.44 g/mol\""
)

// plausible reports whether a figure at a key lies within a limit; where one is there that
// does not, it is a mistake.
func plausible(t *benchfile.Table, key string, figure float64, limit quantity.Limit, message, hint string) bool {
	if !t.Has(key) || limit.Holds(figure) {
		return true
	}
	t.Fail(key, message, hint)
	return false
}

// holds reports whether a table has one of the keys. It asks for none of them.
func holds(t *benchfile.Table, keys ...string) bool {
	return slices.ContainsFunc(t.Keys(), func(key string) bool { return slices.Contains(keys, key) })
}

// nameOf reads the name of one of several, of which no other may have it.
func nameOf(t *benchfile.Table, several string, others []string, hint string) string {
	name := t.Text("name")
	if name != "" && slices.Contains(others, name) {
		t.Fail("name", "there are two "+several+" called \""+name+"\"", hint)
	}
	return name
}

// namesOf lists the names of those that do.
func namesOf[T any](all []T, name func(T) string, do func(T) bool) (names []string) {
	for _, one := range all {
		if do == nil || do(one) {
			names = append(names, name(one))
		}
	}
	return names
}

// capacity reads the capacity, 0 when it is none.
func capacity(t *benchfile.Table, kind quantity.Kind) float64 {
	x := t.Positive("capacity", kind)
	if !plausible(t, "capacity", x, quantity.Limits.Capacity, "no instrument of a bench has this capacity", "") {
		return 0
	}
	return x
}

// pieces reads how many pieces alike there are, 1 where that is not stated.
func pieces(t *benchfile.Table) int {
	n, limit := t.Count("count", 1), quantity.Limits.Count
	plausible(t, "count", float64(n), limit, fmt.Sprintf("%d pieces alike are not likely on a bench", n), fmt.Sprintf("state how many are at hand, at most %v", limit.Most))
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
	return equipment.Shape(t.Word("shape", "triangular", "rectangular"))
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
		t.Fail("readings", bothStated, stateOne)
	case t.Has("readings") && len(values) < 2:
		t.Fail("readings", twoAtLeast, "")
	case len(values) >= 2 && slipped(t, "readings", values, digitOf(t, "readings", kind)):
	case len(values) >= 2:
		return equipment.FromReadings(values, digitOf(t, "readings", kind))
	}
	return equipment.Spread{S: t.NotNegative("repeatability", kind), Known: t.Has("repeatability")}
}

// slipped refuses readings of one thing of which one is three times the middle one or more, or a third
// of it, and by more than twenty digits.
func slipped(t *benchfile.Table, key string, values []float64, digit float64) bool {
	sorted := slices.Sorted(slices.Values(values))
	middle := float64((sorted[(len(sorted)-1)/2] + sorted[len(sorted)/2]) / 2)
	least, most, near := middle/3, float64(3*middle), float64(20*digit)
	i := slices.IndexFunc(values, func(x float64) bool { return (x >= most || x <= least) && math.Abs(x-middle) > near })
	if i >= 0 && t.Sound(key) {
		t.Fail(key, fmt.Sprintf("%q is far from the other readings", t.Texts(key)[i]), slippedDigit)
	}
	return i >= 0
}

// digitOf is the finest step to which the quantities of a list are written.
func digitOf(t *benchfile.Table, key string, kind quantity.Kind) (finest float64) {
	if !t.Sound(key) {
		return 0
	}
	for _, text := range t.Texts(key) {
		if step, err := quantity.Step(kind, text); err == nil && (finest == 0 || step < finest) {
			finest = step
		}
	}
	return finest
}

// expansion reads a cubic expansion, or the material that has it.
func expansion(t *benchfile.Table) equipment.Stated {
	name := t.Text("material")
	switch {
	case t.Has("expansion") && t.Has("material"):
		t.Fail("expansion", "material and expansion are both stated", stateOne)
	case name != "":
		glass, ok := equipment.FindGlass(name)
		if !ok {
			none := benchfile.NoSuch("material", name, equipment.GlassNames())
			t.Fail("material", none.Message, none.Hint+"; or state its cubic expansion: expansion = \"9.9e-6 /°C\"")
		}
		return equipment.Stated{Value: glass.Expansion, Known: ok}
	}
	s := stated(t, "expansion", quantity.Expansion)
	plausible(t, "expansion", s.Value, quantity.Limits.Expansion, "nothing expands by so much", "borosilicate glass has \"9.9e-6 /°C\", plastics about \"3e-4 /°C\"")
	return s
}

// retained reads a volume, or a table of its mean and spread.
func retained(t *benchfile.Table) equipment.Retained {
	if !t.IsTable("retained") {
		return equipment.Retained{Mean: t.NotNegative("retained", quantity.Volume), Known: t.Has("retained")}
	}
	sub := t.Table("retained")
	sub.Need("mean")
	r := equipment.Retained{Mean: sub.NotNegative("mean", quantity.Volume), Spread: stated(sub, "spread", quantity.Volume), Known: true}
	if sub.Has("mean") && sub.Sound("mean") && r.Spread.Value > 2*r.Mean {
		sub.Fail("spread", "must not be above twice the mean", "a volume that cannot be negative varies by about its mean at most")
	}
	return r
}
