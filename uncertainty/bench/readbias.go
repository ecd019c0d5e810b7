package bench

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"minim/equipment"
	"minim/equipment/benchfile"
	"minim/equipment/quantity"
)

// bias reads the limit of the piece: its own, or a certificate's.
func (r *kitReader) bias(t *benchfile.Table, k *equipment.Measure) {
	if !k.Kind.Traits().PenLine {
		k.Bias.BetweenMarks = betweenMarks(t)
	}
	if shape := cmp.Or(shapeOf(t), r.shape); shape != "" {
		k.Bias.Shape, k.Bias.ShapeAssumed = shape, false
	}
	switch {
	case statedTwice(t, k):
	case t.Has("correction"):
		correction(t, k)
	case t.Has("standard-uncertainty"):
		k.Bias.Shape, k.Bias.ShapeAssumed = equipment.Gauss, false
		k.Bias.Limit = t.NotNegative("standard-uncertainty", quantity.Volume)
		below(t, "standard-uncertainty", k.Bias.Limit, k.Capacity)
	case t.Has("tolerance"):
		tolerance(t, k)
	}
}

// limitKeys are the keys that state how good a piece is.
var limitKeys = []string{"tolerance", "standard-uncertainty", "correction"}

// ownLimit reports whether the kit states how good a piece is.
func ownLimit(t *benchfile.Table) bool { return len(statedKeys(t, limitKeys)) > 0 }

// statedTwice refuses two statements of how good a piece is.
func statedTwice(t *benchfile.Table, k *equipment.Measure) bool {
	keys := slices.Clone(limitKeys)
	if k.Kind.Traits().PenLine {
		keys = append(keys, "set-with")
	}
	own, last := statedKeys(t, keys), len(keys)-1
	if len(own) < 2 {
		return false
	}
	t.Fail(own[1], "how good the "+called(k)+" is, is stated twice", "state one of "+strings.Join(keys[:last], ", ")+" and "+keys[last])
	return true
}

// statedKeys asks for keys, and lists those that are there.
func statedKeys(t *benchfile.Table, keys []string) []string {
	return slices.DeleteFunc(slices.Clone(keys), func(key string) bool { return !t.Has(key) })
}

func betweenMarks(t *benchfile.Table) float64 {
	if !t.Has("between-marks") {
		return 0.5
	}
	r := t.Number("between-marks")
	if r < 0 || r > 1 {
		t.Fail("between-marks", "the correlation between marks must lie between 0 and 1", "leave it out for 1/2")
	}
	return r
}

// tolerance reads the piece's own limit: a volume, a share of its capacity, or
// a share of what is measured.
func tolerance(t *benchfile.Table, k *equipment.Measure) {
	if t.IsText("tolerance") {
		text := t.Text("tolerance")
		share, of, err := quantity.ParseShareOf(text)
		switch {
		case err != nil && strings.Contains(text, "%"):
			t.FailWith("tolerance", err)
			return
		case err != nil:
		case share < 0 || share >= 1:
			t.Fail("tolerance", "must lie between 0 and 100 %", "")
			return
		case of == "capacity":
			k.Bias.Limit = share * k.Capacity
			return
		case of == "reading":
			k.Bias.Share = share
			return
		default:
			t.Fail("tolerance", "is stated as a share of "+of, "write it as a volume, as a share of capacity, or of reading")
			return
		}
	}
	k.Bias.Limit = t.NotNegative("tolerance", quantity.Volume)
	below(t, "tolerance", k.Bias.Limit, k.Capacity)
}

// correction reads what a certificate says is to be added to a reading, with U
// and k.
func correction(t *benchfile.Table, k *equipment.Measure) {
	sub := t.Table("correction")
	if sub == nil {
		return
	}
	sub.Need("value", "expanded", "k")
	k.Bias.Correction = sub.Quantity("value", quantity.Volume)
	expanded, factor := sub.NotNegative("expanded", quantity.Volume), sub.Number("k")
	switch {
	case !plausible(sub, "k", factor, quantity.Limits.CoverageFactor, "this coverage factor is not likely", mostlyTwo):
	case k.Capacity > 0 && (k.Bias.Correction >= k.Capacity || -k.Bias.Correction >= k.Capacity):
		sub.Fail("value", "must be smaller than the capacity", "")
	case factor > 0:
		k.Bias.Shape, k.Bias.ShapeAssumed, k.Bias.BetweenMarks = equipment.Gauss, false, 1
		k.Bias.Limit = expanded / factor
		below(sub, "expanded", expanded, k.Capacity)
	}
}

// called is what it goes by in a message, which for want of a name is its kind.
func called(k *equipment.Measure) string { return cmp.Or(k.Name, string(k.Kind), "measure") }

// check refuses what cannot be.
func check(t *benchfile.Table, k *equipment.Measure) {
	scale := k.Kind.Traits().Scale && k.Kind.Traits().Lettered
	switch {
	case k.Capacity == 0:
		// said already
	case scale && (ownLimit(t) || !t.Has("class")) && k.Division == 0 && !t.Has("division"):
		t.FailFor(t, []string{"division", "class"}, "", "the "+called(k)+" has a scale, but its division is not stated", "state division, or the class that fixes it")
	case k.Division > k.Capacity:
		t.Fail("division", "the division is larger than the capacity", "")
	case k.Division > 0 && k.Capacity/k.Division > quantity.Limits.ScaleLines.Most*(1+1e-9):
		t.Fail("division", fmt.Sprintf("a scale of %.5g lines up to its capacity is not likely", k.Capacity/k.Division), fmt.Sprintf("the finest have some hundreds; at most %v are read", quantity.Limits.ScaleLines.Most))
	case equipment.PerMillimetre(k.Bore) >= k.Capacity:
		t.Fail("bore", "one millimetre of so wide a neck holds more than the capacity", "state the inside width at the mark, as in \"13 mm\"")
	}
	checkNumbered(t, k)
	widest := k.Repeatability
	for i := range k.Own {
		if k.Own[i].S > widest.S {
			widest = k.Own[i].Spread
		}
	}
	spreadBelow(t, widest, k.Capacity)
	below(t, "clinging", k.Clinging.Value, k.Capacity)
	below(t, "retained", k.Retained.Mean, k.Capacity)
}

// checkNumbered refuses numbered marks that no scale has.
func checkNumbered(t *benchfile.Table, k *equipment.Measure) {
	const hint ofMistake = "state the volume from one number on the scale to the next"
	switch {
	case k.Capacity == 0 || !k.Kind.Traits().Numbers || !t.Has("numbered") || !t.Sound("numbered"):
		// said already
	case k.Numbered > k.Capacity:
		t.Fail("numbered", "is more than the capacity", hint)
	case k.Division > 0 && !whole(k.Numbered/k.Division):
		t.Fail("numbered", "is not a whole number of divisions of "+quantity.Millilitres(k.Division), hint)
	case k.Capacity/k.Numbered > quantity.Limits.ScaleNumbers.Most*(1+1e-9):
		t.Fail("numbered", "no scale has so many numbers", hint)
	}
}

// whole reports a whole number, up to the rounding of decimal fractions.
func whole(n float64) bool {
	return math.Round(n) >= 1 && math.Abs(n-math.Round(n)) <= 1e-9*math.Max(1, n)
}
