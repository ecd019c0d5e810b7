package bench

import (
	"fmt"
	"math"
	"slices"

	"minim/equipment"
	"minim/equipment/benchfile"
	"minim/equipment/quantity"
)

// balanceReadings reads the repeatability of a balance, or its readings: a plain list, a table that
// says with which check weight they were taken, or several.
func balanceReadings(t *benchfile.Table, b *equipment.Balance) {
	sets, several := readingSets(t)
	if !several {
		b.Repeatability = spread(t, quantity.Mass)
		if values := t.Quantities("readings", quantity.Mass); len(values) >= 2 && shown(t, "readings", values, b) {
			b.Repeatability = equipment.FromReadings(values, b.Readability)
		}
		return
	}
	for _, sub := range sets {
		readCheck(sub, b)
	}
}

// readCheck reads a set of readings.
func readCheck(t *benchfile.Table, b *equipment.Balance) {
	t.Call("readings")
	t.Need("values")
	values, weight := t.Quantities("values", quantity.Mass), equipment.CheckWeight{}
	if t.Has("check-weight") {
		weight = checkWeight(t.Table("check-weight"))
	}
	switch {
	case !t.Has("values") || !t.Sound("values", "check-weight"):
		return
	case len(values) < 2:
		t.Fail("values", twoAtLeast, "")
		return
	case !shown(t, "values", values, b):
		return
	}
	s := equipment.FromReadings(values, b.Readability)
	s.At = weight.Mass
	if weight.Mass > 0 && !(s.Mean > weight.Mass/2 && s.Mean < 2*weight.Mass) {
		t.Fail("check-weight", fmt.Sprintf("the readings are %s on average", quantity.Grams(quantity.Round(s.Mean, 4))), "state the weight that they were taken with")
		return
	}
	if i := slices.IndexFunc(values, func(x float64) bool {
		return !(x > weight.Mass/2 && x < 2*weight.Mass) && math.Abs(x-weight.Mass) > float64(20*b.Readability)
	}); weight.Mass > 0 && i >= 0 {
		t.Fail("values", fmt.Sprintf("%q is not about the %s of the check weight", t.Texts("values")[i], quantity.Grams(quantity.Round(weight.Mass, 4))), slippedDigit)
		return
	}
	b.Repeatability.Join(s)
	if weight.Mass > 0 {
		b.Checks = append(b.Checks, equipment.Check{Spread: s, Weight: weight})
	}
}

// shown reports whether readings are what the display of a balance can show; those that are finer
// are a mistake.
func shown(t *benchfile.Table, key string, values []float64, b *equipment.Balance) bool {
	if b.Readability == 0 || !t.Sound(key) {
		return false
	}
	for i, text := range t.Texts(key) {
		if steps := values[i] / b.Readability; math.Abs(steps-math.Round(steps)) > 1e-6*max(1, steps) {
			t.Fail(key, fmt.Sprintf("%q is finer than the display shows, which has steps of %s", text, quantity.Grams(b.Readability)), "write what it showed, or state its readability")
			return false
		}
	}
	return true
}

// checkWeight reads a weight by its class, or by its certificate; its mass is 0 where it is none.
func checkWeight(t *benchfile.Table) (w equipment.CheckWeight) {
	if t == nil {
		return w
	}
	if t.Has("class") || t.Has("nominal") {
		t.Need("nominal", "class")
		nominal, class := t.Positive("nominal", quantity.Mass), t.Word("class", equipment.WeightClasses()...)
		if !t.Has("nominal") || !t.Has("class") || !t.Sound("nominal", "class") {
			return w
		}
		w, found := equipment.WeightOfClass(nominal, class)
		if !found {
			t.Fail("nominal", "OIML R 111 has no weight of class "+class+" with "+quantity.Grams(nominal), "state a nominal mass of 1, 2 or 5 and noughts, or the certificate: value, expanded and k")
		}
		return w
	}
	t.Need("value", "expanded", "k")
	value, expanded, k := t.Positive("value", quantity.Mass), t.NotNegative("expanded", quantity.Mass), t.Number("k")
	if !plausible(t, "k", k, quantity.Limits.CoverageFactor, "this coverage factor is not likely", mostlyTwo) || !t.Sound("value", "expanded", "k") || k == 0 {
		return w
	}
	if expanded >= value {
		t.Fail("expanded", "the expanded uncertainty is not smaller than the value", "")
		return w
	}
	return equipment.CheckWeight{Mass: value, Uncertainty: expanded / k}
}
