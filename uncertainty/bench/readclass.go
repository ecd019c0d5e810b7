package bench

import (
	"strings"

	"minim/equipment"
	"minim/equipment/benchfile"
)

// classQuery reads by which row of the class table a piece is.
func classQuery(t *benchfile.Table, k *equipment.Measure) (q equipment.ClassQuery) {
	if k.Kind.Lettered() {
		q.Name = t.Word("class", "A", "AS", "B")
	}
	if k.Kind != equipment.Jar {
		q.Standard = t.Word("standard", "ISO", "ASTM", "DIN", "GOST", "USP", "Ph. Eur.")
	}
	q.Form = form(t, k.Kind)
	return q
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
func complete(t *benchfile.Table, k *equipment.Measure, q equipment.ClassQuery, sound bool) {
	if !t.Sound("drop") {
		return
	}
	err, failed := k.Complete(q).(equipment.ClassError)
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
var withoutClass = strings.NewReplacer(" and division instead of the class", "", " instead of the class", "")
