package route

import (
	"fmt"
	"strings"

	"minim/equipment/benchfile"
	"minim/equipment/quantity"
	"minim/uncertainty"
)

// Estimate is a stated value with what is known of its uncertainty. One that was stated
// with a mistake in it is known to be 0, so that its absence is no second mistake.
type Estimate struct {
	Value float64
	// Distribution is nil when the value was stated without uncertainty.
	Distribution uncertainty.Distribution
	// Known is false when nothing was stated.
	Known bool
}

// between is a value of which only the limits are known.
func between(low, high float64) Estimate {
	d := uncertainty.Rectangular{Low: low, High: high}
	return Estimate{Value: d.Mean(), Distribution: d, Known: true}
}

// expandedBy is a value from a certificate that states U and k.
func expandedBy(value, expanded, k float64) Estimate {
	return Estimate{Value: value, Distribution: uncertainty.Normal{Mu: value, Sigma: expanded / k}, Known: true}
}

// estimate reads a text, or a table of limits { from, to }, or of a
// certificate { value, expanded, k }. The parsers turn a text into a value, and
// into an expanded uncertainty.
func estimate(t *benchfile.Table, key string, parse, parseExpanded parser) Estimate {
	if t.Shape(key) == benchfile.Sub {
		return estimateFromTable(t.Table(key), key, parse, parseExpanded)
	}
	text := t.Text(key)
	if text == "" {
		return Estimate{Known: t.Has(key)}
	}
	if rest, ok := strings.CutPrefix(text, "at least "); ok && key == "assay" {
		low := number(t, key, rest, parse)
		if !t.Sound(key) {
			return Estimate{Known: true}
		}
		if low >= 1 {
			return Estimate{Value: 1, Known: true}
		}
		return between(low, 1)
	}
	return Estimate{Value: number(t, key, text, parse), Known: true}
}

func estimateFromTable(t *benchfile.Table, key string, parse, parseExpanded parser) Estimate {
	value := func(key string) float64 { return number(t, key, t.Text(key), parse) }
	if t.Has("from") || t.Has("to") {
		t.Need("from", "to")
		low, high := value("from"), value("to")
		switch {
		case !t.Has("from") || !t.Has("to") || !t.Sound("from", "to"):
			return Estimate{Known: true}
		case low >= high:
			t.Fail("to", fmt.Sprintf("the upper limit of %s is not above the lower", key), "")
			return Estimate{Known: true}
		}
		return between(low, high)
	}
	t.Need("value", "expanded", "k")
	v, expanded, k := value("value"), number(t, "expanded", t.Text("expanded"), parseExpanded), t.Number("k")
	switch {
	case t.Has("k") && !quantity.LimitOf("k").Holds(k):
		t.Fail("k", fmt.Sprintf("a coverage factor of %v is not likely", k), "certificates mostly state k = 2")
	case !t.Sound("value", "expanded", "k"):
		return Estimate{Known: true}
	case v > 0 && expanded >= v:
		t.Fail("expanded", "the expanded uncertainty is not smaller than the value", "")
	case expanded < 0:
		t.Fail("expanded", "an expanded uncertainty must not be below 0", "")
	case expanded > 0 && k > 0:
		return expandedBy(v, expanded, k)
	}
	return Estimate{Value: v, Known: true}
}

// parser turns a text into a number. Its errors are *quantity.Error.
type parser = func(text string) (float64, error)

// number parses the text at a key and puts a mistake in it there.
func number(t *benchfile.Table, key, text string, parse parser) float64 {
	if text == "" {
		return 0
	}
	v, err := parse(text)
	if err != nil {
		failStrength(t, key, err)
		return 0
	}
	return v
}

// parseAssay reads a purity: more than 0 and at most 100 %.
func parseAssay(text string) (float64, error) {
	v, err := quantity.Parse(quantity.Share, text)
	if err == nil && !quantity.LimitOf("assay").Holds(v) {
		err = &quantity.Error{Found: text, Message: fmt.Sprintf("an assay lies between 0 and 100 %%, found %q", text)}
	}
	return v, err
}
