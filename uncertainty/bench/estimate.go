package bench

import (
	"errors"
	"fmt"
	"strings"

	"minim/equipment/benchfile"
	"minim/equipment/quantity"
	"minim/uncertainty/route"
)

// estimate reads a text, or a table of limits { from, to }, or of a
// certificate { value, expanded, k }. The parsers turn a text into a value, and
// into an expanded uncertainty.
func estimate(t *benchfile.Table, key string, parse, parseExpanded parser) route.Estimate {
	if t.IsTable(key) {
		return estimateFromTable(t.Table(key), key, parse, parseExpanded)
	}
	text := t.Text(key)
	rest, least := strings.CutPrefix(text, "at least ")
	if !least || key != "assay" {
		return route.Estimate{Value: number(t, key, text, parse), Known: t.Has(key)}
	}
	switch low := number(t, key, rest, parse); {
	case !t.Sound(key):
		return route.Estimate{Known: true}
	case low < 1:
		return route.Between(low, 1)
	}
	return route.Estimate{Value: 1, Known: true}
}

func estimateFromTable(t *benchfile.Table, key string, parse, parseExpanded parser) route.Estimate {
	value := func(key string) float64 { return number(t, key, t.Text(key), parse) }
	if t.Has("from") || t.Has("to") {
		t.Need("from", "to")
		low, high := value("from"), value("to")
		sound := t.Has("from") && t.Has("to") && t.Sound("from", "to")
		if sound && low < high {
			return route.Between(low, high)
		} else if sound {
			t.Fail("to", fmt.Sprintf("the upper limit of %s is not above the lower", key), "")
		}
		return route.Estimate{Known: true}
	}
	t.Need("value", "expanded", "k")
	v, expanded, k := value("value"), number(t, "expanded", t.Text("expanded"), parseExpanded), t.Number("k")
	switch {
	case !plausible(t, "k", k, quantity.Limits.CoverageFactor, fmt.Sprintf("a coverage factor of %v is not likely", k), mostlyTwo):
	case !t.Sound("value", "expanded", "k"):
		return route.Estimate{Known: true}
	case v > 0 && expanded >= v:
		t.Fail("expanded", "the expanded uncertainty is not smaller than the value", "")
	case expanded < 0:
		t.Fail("expanded", "an expanded uncertainty must not be below 0", "")
	case expanded > 0 && k > 0:
		return route.ExpandedBy(v, expanded, k)
	}
	return route.Estimate{Value: v, Known: true}
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
var parseAssay = inLimit(quantity.Share, quantity.Limits.Assay, "an assay lies between 0 and 100 %%, found %q", "")

// failStrength records what is wrong with a strength, unless it follows from a mistake
// elsewhere.
func failStrength(t *benchfile.Table, key string, err error) {
	var lack *route.LackError
	switch {
	case err == nil || errors.Is(err, route.ErrFollows):
	case errors.As(err, &lack):
		in := t.Root().Table(lack.Table)
		if in != nil && in.Has("name") && in.Sound("name") {
			t.FailFor(in, []string{lack.Key}, key, lack.Says.Message, lack.Says.Hint)
		}
	default:
		t.FailWith(key, err)
	}
}
