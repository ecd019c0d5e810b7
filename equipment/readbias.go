package equipment

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"minim/equipment/benchfile"
	"minim/equipment/quantity"
)

// bias reads the limit of the piece: its own, a certificate's, or that of its
// class.
func (r *kitReader) bias(t *benchfile.Table, k *Measure) {
	k.Bias = Bias{Shape: kinds[k.Kind].shape, ShapeAssumed: true, BetweenMarks: 0.5}
	if k.Kind != Jar {
		k.Bias.BetweenMarks = betweenMarks(t)
	}
	for _, shape := range []Shape{r.shape, shapeOf(t)} {
		if shape != "" {
			k.Bias.Shape, k.Bias.ShapeAssumed = shape, false
		}
	}
	if k.statedTwice(t) {
		return
	}
	switch {
	case t.Has("correction"):
		k.correction(t)
	case t.Has("standard-uncertainty"):
		k.Bias.Shape, k.Bias.ShapeAssumed = Gauss, false
		k.Bias.Limit = t.NotNegative("standard-uncertainty", quantity.Volume)
		below(t, "standard-uncertainty", k.Bias.Limit, k.Capacity)
	case t.Has("tolerance"):
		k.tolerance(t)
	case k.Class != nil:
		k.Bias.ClassLimit = true
		k.Bias.Limit, k.Bias.ByClass = k.Class.Tolerance, k.Class.varies()
		if k.Kind == Dropper && k.Capacity != k.Class.Capacity {
			k.Bias.Limit = k.Class.Limit(k.Capacity)
		}
	case k.Kind == Jar && !t.Has("set-with"):
		t.FailFor(t, append([]string{"set-with"}, limitKeys...), "", "nothing says how good the line of the "+k.called()+" is", "state what it was set with, set-with = \"50 mL cylinder\", or its tolerance")
	case kinds[k.Kind].lettered && !t.Has("class"):
		t.FailFor(t, append([]string{"class"}, limitKeys...), "", "nothing says how good the "+k.called()+" is", "state its class (\"A\" or \"B\"), or its own tolerance")
	}
}

// limitKeys are the keys that state how good a piece is.
var limitKeys = []string{"tolerance", "standard-uncertainty", "correction"}

// ownLimit reports whether the kit states how good a piece is.
func ownLimit(t *benchfile.Table) bool {
	own := false
	for _, key := range limitKeys {
		own = t.Has(key) || own
	}
	return own
}

// statedTwice refuses two statements of how good a piece is.
func (k *Measure) statedTwice(t *benchfile.Table) bool {
	keys := slices.Clone(limitKeys)
	if k.Kind == Jar {
		keys = append(keys, "set-with")
	}
	own, last := 0, len(keys)-1
	for _, key := range keys {
		if t.Has(key) {
			own++
		}
		if own == 2 {
			t.Fail(key, "how good the "+k.called()+" is, is stated twice", "state one of "+strings.Join(keys[:last], ", ")+" and "+keys[last])
			return true
		}
	}
	return false
}

// varies reports whether the limit depends on the volume measured.
func (c Class) varies() bool { return c.Share > 0 || c.BelowHalf != Sloped{} }

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
func (k *Measure) tolerance(t *benchfile.Table) {
	if t.Shape("tolerance") == benchfile.Text {
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
func (k *Measure) correction(t *benchfile.Table) {
	sub := t.Table("correction")
	if sub == nil {
		return
	}
	sub.Need("value", "expanded", "k")
	k.Bias.Correction = sub.Quantity("value", quantity.Volume)
	expanded, factor := sub.NotNegative("expanded", quantity.Volume), sub.Number("k")
	switch {
	case sub.Has("k") && !factorLimit.Holds(factor):
		sub.Fail("k", "this coverage factor is not likely", "certificates mostly state k = 2")
	case k.Capacity > 0 && (k.Bias.Correction >= k.Capacity || -k.Bias.Correction >= k.Capacity):
		sub.Fail("value", "must be smaller than the capacity", "")
	case factor > 0:
		k.Bias.Shape, k.Bias.ShapeAssumed, k.Bias.BetweenMarks = Gauss, false, 1
		k.Bias.Limit = expanded / factor
		below(sub, "expanded", expanded, k.Capacity)
	}
}

// called is what it goes by in a message, which for want of a name is its kind.
func (k *Measure) called() string { return cmp.Or(k.Name, string(k.Kind), "measure") }

// check refuses what cannot be.
func (k *Measure) check(t *benchfile.Table) {
	scale := kinds[k.Kind].scale && kinds[k.Kind].lettered
	switch {
	case k.Capacity == 0:
		// said already
	case scale && (ownLimit(t) || !t.Has("class")) && k.Division == 0 && !t.Has("division"):
		t.FailFor(t, []string{"division", "class"}, "", "the "+k.called()+" has a scale, but its division is not stated", "state division, or the class that fixes it")
	case k.Division > k.Capacity:
		t.Fail("division", "the division is larger than the capacity", "")
	case k.Division > 0 && k.Capacity/k.Division > linesLimit.Most*(1+1e-9):
		t.Fail("division", fmt.Sprintf("a scale of %.5g lines up to its capacity is not likely", k.Capacity/k.Division), fmt.Sprintf("the finest have some hundreds; at most %v are read", linesLimit.Most))
	case perMillimetre(k.Bore) >= k.Capacity:
		t.Fail("bore", "one millimetre of so wide a neck holds more than the capacity", "state the inside width at the mark, as in \"13 mm\"")
	}
	k.Repeatability.below(t, k.Capacity)
	below(t, "clinging", k.Clinging.Value, k.Capacity)
	below(t, "retained", k.Retained.Mean, k.Capacity)
}
