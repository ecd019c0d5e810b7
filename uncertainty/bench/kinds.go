package bench

import (
	"slices"

	"minim/equipment"
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
