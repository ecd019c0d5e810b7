package equipment_test

import (
	"minim/equipment"
	"minim/uncertainty/bench"
)

func init() {
	equipment.ParseKit, equipment.CandidateKinds = bench.ParseKit, bench.CandidateKinds
}
