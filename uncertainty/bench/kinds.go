package bench

import (
	"slices"
	"strings"

	"minim/equipment"
	"minim/equipment/benchfile"
)

// The tables of a kit file that do not hold volumetric instruments of one kind on the bench.
const (
	balanceTables   = "balance"
	pipetteTables   = "pipette"
	candidateTables = "candidate"
)

// kitTables are the names of the tables of a kit file.
func kitTables() []string {
	return slices.Concat([]string{balanceTables}, measureTables(), []string{candidateTables})
}

// measureTables are those of volumetric instruments, in the order in which they
// are read: a jar may rest on any other.
func measureTables() (tables []string) {
	for _, kind := range equipment.Kinds() {
		if table := kind.Traits().Table; !slices.Contains(tables, table) {
			tables = append(tables, table)
		}
	}
	return tables
}

// kindsIn are the kinds of which a table holds measures; "" stands for any table.
func kindsIn(table string) (list []string) {
	for _, kind := range equipment.Kinds() {
		if table == "" || kind.Traits().Table == table {
			list = append(list, string(kind))
		}
	}
	return list
}

// candidateKinds are the kinds that a [[candidate]] may be of: the name of a table,
// or the kind of a pipette.
func candidateKinds() []string { return append([]string{balanceTables}, kindsIn("")...) }

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
