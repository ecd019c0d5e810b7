package benchfile

import (
	"errors"
	"fmt"
	"math"
	"strconv"
	"strings"

	"minim/equipment/quantity"
)

// Quantity returns the quantity at the key in the base unit of its kind, 0 when
// absent. Its range is not checked.
func (t *Table) Quantity(key string, kind quantity.Kind) float64 {
	v := t.ask(key)
	if v == nil {
		return 0
	}
	value, _ := t.quantity(key, v, kind)
	return value
}

// Quantities returns the quantities of a list, nil when absent. One quantity
// without brackets is a list of one.
func (t *Table) Quantities(key string, kind quantity.Kind) []float64 {
	var values []float64
	for _, v := range t.items(key) {
		value, _ := t.quantity(key, v, kind)
		values = append(values, value)
	}
	return values
}

// Positive returns the quantity at the key, which must be above 0; 0 when absent.
func (t *Table) Positive(key string, kind quantity.Kind) float64 {
	return t.within(key, kind, "must be above 0", func(x float64) bool { return x > 0 })
}

// NotNegative returns the quantity at the key, which must not be below 0; 0 when
// absent.
func (t *Table) NotNegative(key string, kind quantity.Kind) float64 {
	return t.within(key, kind, "must not be below 0", func(x float64) bool { return x >= 0 })
}

// within returns a quantity that passes a test, or 0.
func (t *Table) within(key string, kind quantity.Kind, rule string, holds func(float64) bool) float64 {
	v := t.ask(key)
	if v == nil {
		return 0
	}
	value, ok := t.quantity(key, v, kind)
	if ok && !holds(value) {
		t.refuse(key, v, rule+", found "+quote(v.text), "")
		return 0
	}
	return value
}

// quantity reads one value as a quantity and reports whether it is one.
func (t *Table) quantity(key string, v *value, kind quantity.Kind) (float64, bool) {
	if v.shape != Text {
		t.wrong(key, v, kind.Phrase()+" in quotes", unquoted(v, kind))
		return 0, false
	}
	x, err := quantity.Parse(kind, v.text)
	var fault *quantity.Error
	if errors.As(err, &fault) {
		t.refuse(key, v, fault.Message, fault.Hint)
		return 0, false
	}
	return x, true
}

// unquoted returns the hint for a value that should be a quantity in quotes.
func unquoted(v *value, kind quantity.Kind) string {
	text := v.text + " " + kind.Unit()
	if x, err := strconv.ParseFloat(v.text, 64); kind == quantity.Share && err == nil && x > 0 && x <= 1 {
		text = strconv.FormatFloat(100*x, 'g', 6, 64) + " %" // 0.95 is meant as 95 %
	}
	if _, err := quantity.Parse(kind, text); v.shape == number && err == nil {
		return `write it in quotes with its unit, as in "` + text + `"`
	}
	return `write it in quotes with its unit, as in "1 ` + kind.Unit() + `"`
}

// countLimit is that of every whole number.
var countLimit = quantity.Limits.WholeNumber

// Count returns the whole number at the key, which must be at least the least and within
// the limit of whole numbers; 0 when absent.
func (t *Table) Count(key string, least int) int {
	v := t.ask(key)
	if v == nil {
		return 0
	}
	n, err := strconv.ParseInt(v.text, 0, 0)
	switch {
	case v.shape != number || !v.whole:
		t.wrong(key, v, "a whole number", bare(v, "3"))
		return 0
	case err != nil || n < int64(least):
		t.refuse(key, v, fmt.Sprintf("must be a whole number of at least %d, found %s", least, Shortened(v.text)), "")
		return 0
	case float64(n) > countLimit.Most:
		t.refuse(key, v, fmt.Sprintf("must be a whole number of at most %v, found %s", countLimit.Most, Shortened(v.text)), "")
		return 0
	}
	return int(n)
}

// Number returns the bare number at the key; 0 when absent.
func (t *Table) Number(key string) float64 {
	v := t.ask(key)
	if v == nil {
		return 0
	}
	if v.shape != number {
		t.wrong(key, v, "a number without quotes", bare(v, "1.5"))
		return 0
	}
	x, err := v.number()
	if err != nil || math.IsNaN(x) || math.IsInf(x, 0) {
		t.refuse(key, v, "found "+Shortened(v.text)+", expected a finite number", "")
		return 0
	}
	return x
}

// number returns the value of a bare number as TOML writes it: with underscores
// between digits, and integers also as 0x, 0o and 0b.
func (v *value) number() (float64, error) {
	if v.whole {
		n, err := strconv.ParseInt(v.text, 0, 64)
		return float64(n), err
	}
	return strconv.ParseFloat(strings.ReplaceAll(v.text, "_", ""), 64)
}

// Flag returns the true or false at the key; false when absent.
func (t *Table) Flag(key string) bool {
	v := t.ask(key)
	if v == nil {
		return false
	}
	if v.shape != flag {
		t.wrong(key, v, "true or false without quotes", bare(v, "true"))
		return false
	}
	return v.text == "true"
}

// bare returns the hint for a text that should stand without quotes.
func bare(v *value, example string) string {
	if v.shape == Text {
		return "write it without quotes, as in " + example
	}
	return ""
}
