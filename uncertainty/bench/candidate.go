package bench

import (
	"strings"

	"minim/equipment"
	"minim/equipment/benchfile"
)

// candidate reads an instrument that is not owned, which states its kind and
// otherwise has the keys of such instruments on the bench.
func (r *kitReader) candidate(t *benchfile.Table) {
	t.Need("kind", "name")
	switch kind := candidateKind(t); kind {
	case "":
		t.Accept() // what keys it may have is not known
	case balanceTables:
		t.Name += " balance"
		r.balance(t)
	default:
		t.Name += " " + equipment.Kind(kind).Traits().Table
		r.measure(t, equipment.Kind(kind))
	}
}

func candidateKind(t *benchfile.Table) string {
	if t.IsText("kind") && t.Text("kind") == pipetteTables {
		t.Fail("kind", "there are several kinds of pipette", "choose from "+strings.Join(kindsIn(pipetteTables), ", "))
		return ""
	}
	return t.Word("kind", candidateKinds()...)
}
