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
	if k.Kind.Traits().Lettered {
		c.name = t.Word("class", "A", "AS", "B")
	}
	if !k.Kind.Traits().PenLine {
		c.standard = t.Word("standard", "ISO", "ASTM", "DIN", "GOST", "USP", "Ph. Eur.")
	}
	if forms := k.Kind.Traits().Forms; forms != nil {
		c.form = t.Word("form", forms...)
	}
	return c
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
	case !failed || k.Kind.Traits().PenLine && t.Has("set-with"):
	case k.Kind.Traits().PenLine:
		unlimited("set-with")
	case k.Kind.Traits().Lettered && !t.Has("class"):
		unlimited("class")
	case !sound:
	case k.Kind.Traits().Lettered:
		t.Fail("class", err.Message, err.Hint)
	default:
		t.Fail("", err.Message, withoutClass.Replace(err.Hint))
	}
}

// withoutClass words a hint for what has neither a class nor, of need, a division.
var withoutClass = strings.NewReplacer([]ofMistake{" and division instead of the class", "", " instead of the class", ""}...)
