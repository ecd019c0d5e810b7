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
func measureTables() []string {
	return []string{"cylinder", "flask", pipetteTables, "burette", "syringe", "dropper",
		"beaker", "conical-flask", "conical-measure", "jar"}
}

// tableOf is the name of the tables that hold the measures of a kind.
func tableOf(kind equipment.Kind) string {
	if slices.Contains(equipment.PipetteKinds(), string(kind)) {
		return pipetteTables
	}
	return string(kind)
}

// candidateKinds are the kinds that a [[candidate]] may be of: the name of a table,
// or the kind of a pipette.
func candidateKinds() []string {
	var list []string
	for _, table := range kitTables() {
		switch table {
		case pipetteTables:
			list = append(list, equipment.PipetteKinds()...)
		case candidateTables:
		default:
			list = append(list, table)
		}
	}
	return list
}
