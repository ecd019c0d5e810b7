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
	return t.within(key, kind, "", func(float64) bool { return true })
}

// Quantities returns the quantities of a list, nil when absent. One quantity
// without brackets is a list of one.
func (t *Table) Quantities(key string, kind quantity.Kind) (values []float64) {
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
	if v.shape != isText {
		t.wrong(key, v, kind.Phrase()+" in quotes", `write it in quotes with its unit, as in "`+inQuotes(v, kind)+`"`)
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

// inQuotes is what a value that should be a quantity in quotes may mean, or an example.
func inQuotes(v *value, kind quantity.Kind) string {
	text := v.text + " " + kind.Unit()
	if x, err := strconv.ParseFloat(v.text, 64); kind == quantity.Share && err == nil && x > 0 && x <= 1 {
		text = strconv.FormatFloat(100*x, 'g', 6, 64) + " %" // 0.95 is meant as 95 %
	}
	if _, err := quantity.Parse(kind, text); v.shape == number && err == nil {
		return text
	}
	return "1 " + kind.Unit()
}

// Count returns the whole number at the key, which must be at least the least and within
// the limit of whole numbers; 0 when absent.
func (t *Table) Count(key string, least int) int {
	v := t.bare(key, number, "a whole number", "3")
	if v == nil {
		return 0
	}
	n, err := strconv.ParseInt(v.text, 0, 0)
	switch most := quantity.Limits.WholeNumber.Most; {
	case !v.whole:
		t.wrong(key, v, "a whole number", "")
	case err != nil || n < int64(least):
		t.refuse(key, v, fmt.Sprintf("must be a whole number of at least %d, found %s", least, quantity.Shortened(v.text)), "")
	case float64(n) > most:
		t.refuse(key, v, fmt.Sprintf("must be a whole number of at most %v, found %s", most, quantity.Shortened(v.text)), "")
	default:
		return int(n)
	}
	return 0
}

// Number returns the bare number at the key; 0 when absent.
func (t *Table) Number(key string) float64 {
	v := t.bare(key, number, "a number without quotes", "1.5")
	if v == nil {
		return 0
	}
	x, err := v.number()
	if err != nil || math.IsNaN(x) || math.IsInf(x, 0) {
		t.refuse(key, v, "found "+quantity.Shortened(v.text)+", expected a finite number", "")
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
	v := t.bare(key, flag, "true or false without quotes", "true")
	return v != nil && v.text == "true"
}

// bare returns the value of a shape at the key, which stands without quotes; nil when absent
// or of another shape.
func (t *Table) bare(key string, s shape, wanted, example string) *value {
	switch v := t.ask(key); {
	case v == nil || v.shape == s:
		return v
	case v.shape == isText:
		t.wrong(key, v, wanted, "write it without quotes, as in "+example)
	default:
		t.wrong(key, v, wanted, "")
	}
	return nil
}
