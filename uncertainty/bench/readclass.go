package bench

import (
	"strings"

	"minim/equipment"
	"minim/equipment/benchfile"
	"minim/equipment/quantity"
)

// statedClass is by which row of the class table a piece is said to be.
type statedClass struct{ name, standard, form string }

func readClass(t *benchfile.Table, k *equipment.Measure) (c statedClass) {
	if k.Kind.Lettered() {
		c.name = t.Word("class", "A", "AS", "B")
	}
	if k.Kind != equipment.Jar {
		c.standard = t.Word("standard", "ISO", "ASTM", "DIN", "GOST", "USP", "Ph. Eur.")
	}
	c.form = form(t, k.Kind)
	return c
}

// form reads which of several forms the standard knows.
func form(t *benchfile.Table, kind equipment.Kind) string {
	switch kind {
	case equipment.Cylinder:
		return t.Word("form", "tall", "squat", "plastic")
	case equipment.Piston:
		return t.Word("form", "air", "direct reusable", "direct single-use", "dispenser")
	case equipment.Beaker:
		return t.Word("form", "marked", "unmarked")
	}
	return ""
}

// complete fills in what is not stated. Where what the class rests on is not sound, nothing
// but that nothing is stated can be wrong.
func complete(t *benchfile.Table, k *equipment.Measure, c statedClass, sound bool) {
	if !t.Sound("drop") {
		return
	}
	err, failed := k.Complete(c.name, c.standard, c.form).(*quantity.Error)
	unlimited := func(key string) {
		t.FailFor(t, append([]string{key}, limitKeys...), "", err.Message, err.Hint)
	}
	switch {
	case !failed || k.Kind == equipment.Jar && t.Has("set-with"):
	case k.Kind == equipment.Jar:
		unlimited("set-with")
	case k.Kind.Lettered() && !t.Has("class"):
		unlimited("class")
	case !sound:
	case k.Kind.Lettered():
		t.Fail("class", err.Message, err.Hint)
	default:
		t.Fail("", err.Message, withoutClass.Replace(err.Hint))
	}
}

// withoutClass words a hint for what has neither a class nor, of need, a division.
var withoutClass = strings.NewReplacer([]ofMistake{" and division instead of the class", "", " instead of the class", ""}...)
