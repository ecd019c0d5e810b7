package equipment_test

import (
	"strings"

	"minim/equipment"
	"minim/uncertainty/bench"
)

func init() {
	equipment.ParseKit, equipment.CandidateKinds = bench.ParseKit, candidateKinds
}

// candidateKinds are those that the program says there are.
func candidateKinds() []string {
	_, err := bench.ParseKit("k", []byte("[[candidate]]\nname = \"x\"\nkind = \"qqqqqqqqqq\"\n"))
	_, list, _ := strings.Cut(err.Error(), "is not one of ")
	list, _, _ = strings.Cut(list, "\n")
	return strings.Split(list, ", ")
}
